import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, unique, uniqueIndex } from "drizzle-orm/sqlite-core";
import { id, instantCheck, named, notNegative, oneOfCheck, yesNo } from "#db/schema/columns.ts";

/** What somebody may do, from most to least; each may do what the next one may. */
export const ROLES = ["owner", "manager", "counter", "prep"] as const;
export type Role = (typeof ROLES)[number];

/** Who may sign in. Somebody who left is no longer active and keeps the name, for what they entered. */
export const people = sqliteTable(
  "people",
  {
    id: id(),
    ...named(),
    role: text("role").$type<Role>().notNull(),
    isActive: yesNo("is_active").default(true),
    /** argon2id; null until the person chose one. A password is for owner and manager, a PIN for the others. */
    passwordHash: text("password_hash"),
    pinHash: text("pin_hash"),
    /** Wrong PINs since the last right one: after too many the PIN no longer counts. */
    wrongPins: integer("wrong_pins").notNull().default(0),
    addedAt: text("added_at").notNull(),
  },
  (t) => [
    unique("people_name").on(t.folded),
    oneOfCheck("people_role", t.role, ROLES),
    check("people_name_given", sql`${t.folded} <> ''`),
    notNegative("people_wrong_pins", t.wrongPins),
    instantCheck("people_added_at", t.addedAt),
  ],
);

/** Phones and tablets of the bar, on which a PIN counts. Removed ones stay, for the sessions they had. */
export const devices = sqliteTable(
  "devices",
  {
    id: id(),
    name: text("name").notNull(),
    /** SHA-256 of the secret in the device's cookie. */
    secretHash: text("secret_hash").notNull(),
    enrolledAt: text("enrolled_at").notNull(),
    enrolledBy: text("enrolled_by").notNull(),
    lastSeenAt: text("last_seen_at"),
    removedAt: text("removed_at"),
  },
  (t) => [
    unique("devices_secret").on(t.secretHash),
    check("devices_secret_hash", sql`length(${t.secretHash}) = 64`),
    instantCheck("devices_enrolled_at", t.enrolledAt),
    instantCheck("devices_last_seen_at", t.lastSeenAt),
    instantCheck("devices_removed_at", t.removedAt),
  ],
);

/** Who is signed in, and on what. A session that ended is deleted. */
export const sessions = sqliteTable(
  "sessions",
  {
    id: id(),
    /** SHA-256 of the secret in the cookie. */
    secretHash: text("secret_hash").notNull(),
    personId: integer("person_id")
      .notNull()
      .references(() => people.id),
    deviceId: integer("device_id").references(() => devices.id),
    via: text("via").$type<"password" | "pin">().notNull(),
    startedAt: text("started_at").notNull(),
    lastSeenAt: text("last_seen_at").notNull(),
  },
  (t) => [
    unique("sessions_secret").on(t.secretHash),
    check("sessions_secret_hash", sql`length(${t.secretHash}) = 64`),
    oneOfCheck("sessions_via", t.via, ["password", "pin"]),
    check("sessions_pin_on_device", sql`${t.via} = 'password' or ${t.deviceId} is not null`),
    instantCheck("sessions_started_at", t.startedAt),
    instantCheck("sessions_last_seen_at", t.lastSeenAt),
  ],
);

/** One-time links with which a person sets a password or PIN; without a person, the one that names the first owner. */
export const signInLinks = sqliteTable(
  "sign_in_links",
  {
    id: id(),
    secretHash: text("secret_hash").notNull(),
    personId: integer("person_id").references(() => people.id),
    madeAt: text("made_at").notNull(),
    expiresAt: text("expires_at").notNull(),
    usedAt: text("used_at"),
  },
  (t) => [
    unique("sign_in_links_secret").on(t.secretHash),
    check("sign_in_links_secret_hash", sql`length(${t.secretHash}) = 64`),
    instantCheck("sign_in_links_made_at", t.madeAt),
    instantCheck("sign_in_links_expires_at", t.expiresAt),
    instantCheck("sign_in_links_used_at", t.usedAt),
  ],
);

/** Keys for scripts, shown once and kept as SHA-256. Revoked ones stay, for what was entered with them. */
export const apiTokens = sqliteTable(
  "api_tokens",
  {
    id: id(),
    ...named(),
    secretHash: text("secret_hash").notNull(),
    role: text("role").$type<Role>().notNull(),
    /** Whether it may only read, or also write what its role may write. */
    scope: text("scope").$type<"read" | "write">().notNull(),
    madeAt: text("made_at").notNull(),
    madeBy: text("made_by").notNull(),
    lastUsedAt: text("last_used_at"),
    revokedAt: text("revoked_at"),
  },
  (t) => [
    uniqueIndex("api_tokens_name").on(t.folded).where(sql`${t.revokedAt} is null`),
    unique("api_tokens_secret").on(t.secretHash),
    check("api_tokens_secret_hash", sql`length(${t.secretHash}) = 64`),
    oneOfCheck("api_tokens_role", t.role, ROLES),
    oneOfCheck("api_tokens_scope", t.scope, ["read", "write"]),
    instantCheck("api_tokens_made_at", t.madeAt),
    instantCheck("api_tokens_last_used_at", t.lastUsedAt),
    instantCheck("api_tokens_revoked_at", t.revokedAt),
  ],
);

/** Tries to sign in that went wrong, by whose account and by which address; kept so that a restart forgives none. */
export const signInTries = sqliteTable(
  "sign_in_tries",
  {
    id: id(),
    /** SHA-256 of whose tries are counted together: what was typed for a name may have been a password. */
    keyHash: text("key_hash").notNull(),
    times: integer("times").notNull(),
    lastMs: integer("last_ms").notNull(),
  },
  (t) => [
    unique("sign_in_tries_key").on(t.keyHash),
    index("sign_in_tries_last").on(t.lastMs),
    check("sign_in_tries_key_hash", sql`length(${t.keyHash}) = 64`),
    notNegative("sign_in_tries_times", t.times),
  ],
);
