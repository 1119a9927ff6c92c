import type { Role } from "#db/schema/people.ts";
import { foldName } from "#engine/name.ts";
import { InputError } from "#server/input-error.ts";

const PASSWORD_LENGTH_LEAST = 10;
/** Far beyond what anybody types, and short enough that hashing it is no burden. */
const PASSWORD_LENGTH_MOST = 256;
const PIN = /^\d{4,8}$/;

/** What a role signs in with. */
export function kindFor(role: Role): "password" | "pin" {
  return role === "owner" || role === "manager" ? "password" : "pin";
}

/**
 * Throws InputError for a password that is soon guessed: too short, the person's own name, or one of the commonest.
 * There are no rules about kinds of characters (NIST SP 800-63B: length and a list of bad ones, no composition rules).
 */
export function refuseWeakPassword(password: string, name: string): void {
  const length = [...password].length;
  if (length < PASSWORD_LENGTH_LEAST) {
    throw new InputError(
      `The password has ${length} characters; take at least ${PASSWORD_LENGTH_LEAST}. Three words in a row are easy to keep.`,
    );
  }
  if (length > PASSWORD_LENGTH_MOST) {
    throw new InputError(`The password is longer than ${PASSWORD_LENGTH_MOST} characters.`);
  }
  if (isMadeOf(password, name)) {
    throw new InputError("A password made of your own name is the first one tried. Take another.");
  }
  if (isCommon(password)) {
    throw new InputError(
      "That password is among the first ones tried. Take another; three words in a row will do.",
    );
  }
}

/** Throws InputError for what is no PIN of 4 to 8 digits, or is one of the first ones tried. */
export function refuseWeakPin(pin: string): void {
  if (!PIN.test(pin)) throw new InputError("A PIN is 4 to 8 digits.");
  if (isRun(pin) || isRepeat(pin) || /^(19|20)\d\d$/.test(pin) || COMMON_PINS.has(pin)) {
    throw new InputError(
      "That PIN is among the first ones tried (a row of keys, a repeat, a year). Take another.",
    );
  }
}

function isMadeOf(password: string, name: string): boolean {
  const [typed, own] = [letters(password), letters(name)];
  return own !== "" && (typed === own || typed === own + own);
}

function isCommon(password: string): boolean {
  const typed = foldName(password).replaceAll(" ", "");
  const word = typed.replace(/[^\p{L}]+$/u, "");
  const isWord = COMMON_WORDS.has(letters(word)) || COMMON_WORDS.has(letters(plainSpelling(word)));
  return isWord || isRun(typed) || isRepeat(typed) || COMMON.has(typed);
}

/** Letters alone: what is left of "Password2026!" is "password". */
function letters(text: string): string {
  return foldName(text).replace(/[^\p{L}]/gu, "");
}

/** "p@ssw0rd" → "password". */
function plainSpelling(text: string): string {
  return text.replaceAll("0", "o").replaceAll("@", "a").replaceAll("$", "s").replaceAll("3", "e");
}

/** 4567, 9876, abcdefghij: each sign one up, or each one down, from the one before. */
function isRun(text: string): boolean {
  const codes = [...text].map((sign) => sign.codePointAt(0) ?? 0);
  const steps = new Set(codes.slice(1).map((code, at) => code - (codes[at] ?? 0)));
  return steps.size === 1 && (steps.has(1) || steps.has(-1));
}

/** 0000, 1212, abcabcabcabc: a shorter text again and again. */
function isRepeat(text: string): boolean {
  return /^(.{1,4})\1+$/u.test(text);
}

/** From memory, after published lists of leaked PINs. */
const COMMON_PINS = new Set([
  "2580",
  "0852",
  "1004",
  "1122",
  "1313",
  "1342",
  "1010",
  "4321",
  "6969",
  "123123",
]);

/** Commonest words of leaked passwords, whatever digits stand around them; from memory, after published lists. */
const COMMON_WORDS = new Set([
  ..."password passwort passw motdepasse contraseña senha parola qwerty qwertyui qwertyuiop qwertz qwertzuiop azerty".split(
    " ",
  ),
  ..."azertyuiop asdfghjkl asdfghjklö zxcvbnm qwertyasdf qazwsxedc letmein welcome willkommen iloveyou sunshine".split(
    " ",
  ),
  ..."princess football baseball superman batman dragon monkey shadow master whatever trustno starwars computer".split(
    " ",
  ),
  ..."changeme secret administrator admin adminadmin passwordpassword default guest test testtest hello cocktail".split(
    " ",
  ),
  ..."cocktails bartender bar ullage inventory".split(" "),
]);

/** Common ones that neither a word nor a run gives away. */
const COMMON = new Set([
  "1234567890",
  "0123456789",
  "0987654321",
  "1q2w3e4r5t",
  "1qaz2wsx3edc",
  "q1w2e3r4t5",
  "1234qwerasdf",
  "qwer1234asdf",
  "zaq12wsxcde3",
  "147258369",
  "1472583690",
  "3141592653",
  "abc1234567",
  "abcd123456",
  "a123456789",
  "1234567891",
]);
