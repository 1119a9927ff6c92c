/** The program's version, as in package.json; a test compares them. */
export const PROGRAM_VERSION = "0.1.0";
