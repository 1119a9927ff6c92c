-- The product is no longer for whoever reaches its address: it has people, what they may do, and the devices they do it on.
CREATE TABLE `api_tokens` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	`secret_hash` text NOT NULL,
	`role` text NOT NULL,
	`scope` text NOT NULL,
	`made_at` text NOT NULL,
	`made_by` text NOT NULL,
	`last_used_at` text,
	`revoked_at` text,
	CONSTRAINT "api_tokens_secret_hash" CHECK(length("api_tokens"."secret_hash") = 64),
	CONSTRAINT "api_tokens_role" CHECK("api_tokens"."role" in ('owner', 'manager', 'counter', 'prep')),
	CONSTRAINT "api_tokens_scope" CHECK("api_tokens"."scope" in ('read', 'write')),
	CONSTRAINT "api_tokens_made_at" CHECK("api_tokens"."made_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "api_tokens_last_used_at" CHECK("api_tokens"."last_used_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "api_tokens_revoked_at" CHECK("api_tokens"."revoked_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `api_tokens_name` ON `api_tokens` (`folded`) WHERE "api_tokens"."revoked_at" is null;--> statement-breakpoint
CREATE UNIQUE INDEX `api_tokens_secret` ON `api_tokens` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `devices` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`secret_hash` text NOT NULL,
	`enrolled_at` text NOT NULL,
	`enrolled_by` text NOT NULL,
	`last_seen_at` text,
	`removed_at` text,
	CONSTRAINT "devices_secret_hash" CHECK(length("devices"."secret_hash") = 64),
	CONSTRAINT "devices_enrolled_at" CHECK("devices"."enrolled_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "devices_last_seen_at" CHECK("devices"."last_seen_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "devices_removed_at" CHECK("devices"."removed_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `devices_secret` ON `devices` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `people` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	`role` text NOT NULL,
	`is_active` integer DEFAULT true NOT NULL,
	`password_hash` text,
	`pin_hash` text,
	`wrong_pins` integer DEFAULT 0 NOT NULL,
	`added_at` text NOT NULL,
	CONSTRAINT "people_role" CHECK("people"."role" in ('owner', 'manager', 'counter', 'prep')),
	CONSTRAINT "people_name_given" CHECK("people"."folded" <> ''),
	CONSTRAINT "people_wrong_pins" CHECK("people"."wrong_pins" >= 0),
	CONSTRAINT "people_added_at" CHECK("people"."added_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `people_name` ON `people` (`folded`);--> statement-breakpoint
CREATE TABLE `sessions` (
	`id` integer PRIMARY KEY NOT NULL,
	`secret_hash` text NOT NULL,
	`person_id` integer NOT NULL,
	`device_id` integer,
	`via` text NOT NULL,
	`started_at` text NOT NULL,
	`last_seen_at` text NOT NULL,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`device_id`) REFERENCES `devices`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "sessions_secret_hash" CHECK(length("sessions"."secret_hash") = 64),
	CONSTRAINT "sessions_via" CHECK("sessions"."via" in ('password', 'pin')),
	CONSTRAINT "sessions_pin_on_device" CHECK("sessions"."via" = 'password' or "sessions"."device_id" is not null),
	CONSTRAINT "sessions_started_at" CHECK("sessions"."started_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "sessions_last_seen_at" CHECK("sessions"."last_seen_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sessions_secret` ON `sessions` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `sign_in_links` (
	`id` integer PRIMARY KEY NOT NULL,
	`secret_hash` text NOT NULL,
	`person_id` integer,
	`made_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`used_at` text,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "sign_in_links_secret_hash" CHECK(length("sign_in_links"."secret_hash") = 64),
	CONSTRAINT "sign_in_links_made_at" CHECK("sign_in_links"."made_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "sign_in_links_expires_at" CHECK("sign_in_links"."expires_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "sign_in_links_used_at" CHECK("sign_in_links"."used_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sign_in_links_secret` ON `sign_in_links` (`secret_hash`);
