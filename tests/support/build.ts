// biome-ignore lint/suspicious/noTsIgnore: the build script is plain JavaScript without types
// @ts-ignore
export { buildStale, root } from "../../server/bin/build.mjs";
