-- What was done, by whom and why is kept in a chain of rows that are only ever added; the past can be closed up to a day.
CREATE TABLE `closings` (
	`id` integer PRIMARY KEY NOT NULL,
	`through` text NOT NULL,
	`counts_json` text NOT NULL,
	`until` text,
	`closed_at` text NOT NULL,
	`closed_by` text NOT NULL,
	`reopened_at` text,
	`reopened_by` text,
	`reopened_why` text,
	CONSTRAINT "closings_through" CHECK("closings"."through" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "closings_until" CHECK("closings"."until" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "closings_closed_at" CHECK("closings"."closed_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "closings_reopened_at" CHECK("closings"."reopened_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "closings_reopened" CHECK(("closings"."reopened_at" is null) = ("closings"."reopened_by" is null) and ("closings"."reopened_at" is null) = (coalesce("closings"."reopened_why", '') = ''))
) STRICT;
--> statement-breakpoint
CREATE TABLE `history` (
	`seq` integer PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`who` text NOT NULL,
	`role` text NOT NULL,
	`via` text NOT NULL,
	`from_where` text NOT NULL,
	`act` text NOT NULL,
	`summary` text NOT NULL,
	`before_json` text,
	`after_json` text,
	`reason` text NOT NULL,
	`mend_json` text,
	`undoes` integer,
	`previous_hash` text NOT NULL,
	`hash` text NOT NULL,
	FOREIGN KEY (`undoes`) REFERENCES `history`(`seq`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "history_at" CHECK("history"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "history_who" CHECK("history"."who" <> ''),
	CONSTRAINT "history_hash" CHECK(length("history"."hash") = 64)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `history_undoes` ON `history` (`undoes`);--> statement-breakpoint
CREATE INDEX `history_by_at` ON `history` (`at`);--> statement-breakpoint
CREATE TABLE `history_subjects` (
	`seq` integer NOT NULL,
	`place` integer NOT NULL,
	`kind` text NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	PRIMARY KEY(`seq`, `place`),
	FOREIGN KEY (`seq`) REFERENCES `history`(`seq`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `history_subjects_name` ON `history_subjects` (`folded`);
--> statement-breakpoint
CREATE TRIGGER history_no_update BEFORE UPDATE ON history
BEGIN
	SELECT RAISE(ABORT, 'The history is only ever added to.');
END;
--> statement-breakpoint
CREATE TRIGGER history_no_delete BEFORE DELETE ON history
BEGIN
	SELECT RAISE(ABORT, 'The history is only ever added to.');
END;
--> statement-breakpoint
CREATE TRIGGER history_subjects_no_update BEFORE UPDATE ON history_subjects
BEGIN
	SELECT RAISE(ABORT, 'The history is only ever added to.');
END;
--> statement-breakpoint
CREATE TRIGGER history_subjects_no_delete BEFORE DELETE ON history_subjects
BEGIN
	SELECT RAISE(ABORT, 'The history is only ever added to.');
END;
--> statement-breakpoint
CREATE TRIGGER closings_no_delete BEFORE DELETE ON closings
BEGIN
	SELECT RAISE(ABORT, 'A closing stays: reopen the week, with a reason.');
END;
--> statement-breakpoint
CREATE TRIGGER closings_only_reopened BEFORE UPDATE ON closings
WHEN OLD.reopened_at IS NOT NULL OR NEW.reopened_at IS NULL OR NEW.through <> OLD.through OR NEW.counts_json <> OLD.counts_json OR NEW.until IS NOT OLD.until OR NEW.closed_at <> OLD.closed_at OR NEW.closed_by <> OLD.closed_by
BEGIN
	SELECT RAISE(ABORT, 'A closing only changes by being reopened, once.');
END;
--> statement-breakpoint
DROP TRIGGER count_entries_replaces_current;
--> statement-breakpoint
CREATE TRIGGER count_entries_replaces_current BEFORE INSERT ON count_entries
WHEN NEW.replaces_id IS NOT NULL AND (NEW.is_withdrawn = 1 OR NEW.reason = '')
	AND EXISTS (SELECT 1 FROM count_entries WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew, or undo that it was taken back.');
END;
--> statement-breakpoint
DROP TRIGGER deliveries_replaces_current;
--> statement-breakpoint
CREATE TRIGGER deliveries_replaces_current BEFORE INSERT ON deliveries
WHEN NEW.replaces_id IS NOT NULL AND (NEW.is_withdrawn = 1 OR NEW.reason = '')
	AND EXISTS (SELECT 1 FROM deliveries WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew, or undo that it was taken back.');
END;
--> statement-breakpoint
DROP TRIGGER batches_replaces_current;
--> statement-breakpoint
CREATE TRIGGER batches_replaces_current BEFORE INSERT ON batches
WHEN NEW.replaces_id IS NOT NULL AND (NEW.is_withdrawn = 1 OR NEW.reason = '')
	AND EXISTS (SELECT 1 FROM batches WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew, or undo that it was taken back.');
END;
--> statement-breakpoint
DROP TRIGGER losses_replaces_current;
--> statement-breakpoint
CREATE TRIGGER losses_replaces_current BEFORE INSERT ON losses
WHEN NEW.replaces_id IS NOT NULL AND (NEW.is_withdrawn = 1 OR NEW.reason = '')
	AND EXISTS (SELECT 1 FROM losses WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew, or undo that it was taken back.');
END;
--> statement-breakpoint
DROP TRIGGER transfers_replaces_current;
--> statement-breakpoint
CREATE TRIGGER transfers_replaces_current BEFORE INSERT ON transfers
WHEN NEW.replaces_id IS NOT NULL AND (NEW.is_withdrawn = 1 OR NEW.reason = '')
	AND EXISTS (SELECT 1 FROM transfers WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew, or undo that it was taken back.');
END;
