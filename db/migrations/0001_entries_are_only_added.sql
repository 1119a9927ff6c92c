-- Movements and counts are only ever added; a correction is a new entry that names the one it replaces. The one exception is the
-- replacement of the whole book, within whose transaction ledger_state says so.
INSERT INTO ledger_state (id, changes, is_replacing) VALUES (1, 0, 0);
--> statement-breakpoint
CREATE TRIGGER count_entries_no_update BEFORE UPDATE ON count_entries
BEGIN
	SELECT RAISE(ABORT, 'Count entries are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER count_entries_no_delete BEFORE DELETE ON count_entries
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Count entries are only ever added: take the entry back instead of deleting it.');
END;
--> statement-breakpoint
CREATE TRIGGER count_entries_replaces_current BEFORE INSERT ON count_entries
WHEN NEW.replaces_id IS NOT NULL AND EXISTS (SELECT 1 FROM count_entries WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew.');
END;
--> statement-breakpoint
CREATE TRIGGER deliveries_no_update BEFORE UPDATE ON deliveries
BEGIN
	SELECT RAISE(ABORT, 'Deliveries are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER deliveries_no_delete BEFORE DELETE ON deliveries
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Deliveries are only ever added: take the entry back instead of deleting it.');
END;
--> statement-breakpoint
CREATE TRIGGER deliveries_replaces_current BEFORE INSERT ON deliveries
WHEN NEW.replaces_id IS NOT NULL AND EXISTS (SELECT 1 FROM deliveries WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew.');
END;
--> statement-breakpoint
CREATE TRIGGER batches_no_update BEFORE UPDATE ON batches
BEGIN
	SELECT RAISE(ABORT, 'Batches are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER batches_no_delete BEFORE DELETE ON batches
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Batches are only ever added: take the entry back instead of deleting it.');
END;
--> statement-breakpoint
CREATE TRIGGER batches_replaces_current BEFORE INSERT ON batches
WHEN NEW.replaces_id IS NOT NULL AND EXISTS (SELECT 1 FROM batches WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew.');
END;
--> statement-breakpoint
CREATE TRIGGER losses_no_update BEFORE UPDATE ON losses
BEGIN
	SELECT RAISE(ABORT, 'Losses are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER losses_no_delete BEFORE DELETE ON losses
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Losses are only ever added: take the entry back instead of deleting it.');
END;
--> statement-breakpoint
CREATE TRIGGER losses_replaces_current BEFORE INSERT ON losses
WHEN NEW.replaces_id IS NOT NULL AND EXISTS (SELECT 1 FROM losses WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew.');
END;
--> statement-breakpoint
CREATE TRIGGER transfers_no_update BEFORE UPDATE ON transfers
BEGIN
	SELECT RAISE(ABORT, 'Transfers are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER transfers_no_delete BEFORE DELETE ON transfers
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Transfers are only ever added: take the entry back instead of deleting it.');
END;
--> statement-breakpoint
CREATE TRIGGER transfers_replaces_current BEFORE INSERT ON transfers
WHEN NEW.replaces_id IS NOT NULL AND EXISTS (SELECT 1 FROM transfers WHERE id = NEW.replaces_id AND is_withdrawn = 1)
BEGIN
	SELECT RAISE(ABORT, 'The entry has been taken back; enter it anew.');
END;
