import { createHash, randomBytes } from "node:crypto";
import { hash, verify } from "@node-rs/argon2";

/** The cost of trying one password. */
export type HashCost = { memoryCost: number; timeCost: number; parallelism: number };

/**
 * argon2id (the package's algorithm unless told otherwise), 64 MiB, 3 passes, 4 lanes: the second recommended option of
 * RFC 9106 §4 (from memory). OWASP's Password Storage Cheat Sheet asks for at least 19 MiB, 2 passes, 1 lane.
 */
export const STRONG: HashCost = { memoryCost: 65_536, timeCost: 3, parallelism: 4 };

/** A password or PIN as it is kept. Two spellings of one text are one (NFKC, as NIST SP 800-63B §3.1.1.2 advises). */
export function hashSecret(secret: string, cost: HashCost): Promise<string> {
  return hash(secret.normalize("NFKC"), cost);
}

export function isSecret(kept: string, secret: string): Promise<boolean> {
  return verify(kept, secret.normalize("NFKC"));
}

/** 256 random bits as text for a cookie, a link or a header (OWASP ASVS asks for 128 at least). */
export function newSecret(): string {
  return randomBytes(32).toString("base64url");
}

/** How a random secret is kept: it cannot be guessed, so a fast hash is enough. */
export function secretHash(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}
