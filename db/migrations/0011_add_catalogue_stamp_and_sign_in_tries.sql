-- A catalogue kept in memory between entries must know when any program writes to it: every row of it that is written renews a
-- random text. Wrong tries to sign in outlive a restart.
CREATE TABLE `sign_in_tries` (
	`id` integer PRIMARY KEY NOT NULL,
	`key_hash` text NOT NULL,
	`times` integer NOT NULL,
	`last_ms` integer NOT NULL,
	CONSTRAINT "sign_in_tries_key_hash" CHECK(length("sign_in_tries"."key_hash") = 64),
	CONSTRAINT "sign_in_tries_times" CHECK("sign_in_tries"."times" >= 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `sign_in_tries_last` ON `sign_in_tries` (`last_ms`);--> statement-breakpoint
CREATE UNIQUE INDEX `sign_in_tries_key` ON `sign_in_tries` (`key_hash`);--> statement-breakpoint
ALTER TABLE `ledger_state` ADD `catalogue_stamp` text DEFAULT '' NOT NULL;
--> statement-breakpoint
CREATE TRIGGER venues_stamp_insert AFTER INSERT ON venues
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER venues_stamp_update AFTER UPDATE ON venues
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER venues_stamp_delete AFTER DELETE ON venues
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER sales_shapes_stamp_insert AFTER INSERT ON sales_shapes
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER sales_shapes_stamp_update AFTER UPDATE ON sales_shapes
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER sales_shapes_stamp_delete AFTER DELETE ON sales_shapes
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER items_stamp_insert AFTER INSERT ON items
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER items_stamp_update AFTER UPDATE ON items
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER items_stamp_delete AFTER DELETE ON items
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER drinks_stamp_insert AFTER INSERT ON drinks
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER drinks_stamp_update AFTER UPDATE ON drinks
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER drinks_stamp_delete AFTER DELETE ON drinks
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER suppliers_stamp_insert AFTER INSERT ON suppliers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER suppliers_stamp_update AFTER UPDATE ON suppliers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER suppliers_stamp_delete AFTER DELETE ON suppliers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER supplier_days_stamp_insert AFTER INSERT ON supplier_days
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER supplier_days_stamp_update AFTER UPDATE ON supplier_days
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER supplier_days_stamp_delete AFTER DELETE ON supplier_days
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER closures_stamp_insert AFTER INSERT ON closures
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER closures_stamp_update AFTER UPDATE ON closures
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER closures_stamp_delete AFTER DELETE ON closures
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER packs_stamp_insert AFTER INSERT ON packs
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER packs_stamp_update AFTER UPDATE ON packs
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER packs_stamp_delete AFTER DELETE ON packs
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER pack_versions_stamp_insert AFTER INSERT ON pack_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER pack_versions_stamp_update AFTER UPDATE ON pack_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER pack_versions_stamp_delete AFTER DELETE ON pack_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER areas_stamp_insert AFTER INSERT ON areas
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER areas_stamp_update AFTER UPDATE ON areas
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER areas_stamp_delete AFTER DELETE ON areas
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER shelves_stamp_insert AFTER INSERT ON shelves
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER shelves_stamp_update AFTER UPDATE ON shelves
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER shelves_stamp_delete AFTER DELETE ON shelves
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER prep_versions_stamp_insert AFTER INSERT ON prep_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER prep_versions_stamp_update AFTER UPDATE ON prep_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER prep_versions_stamp_delete AFTER DELETE ON prep_versions
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_lines_stamp_insert AFTER INSERT ON spec_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_lines_stamp_update AFTER UPDATE ON spec_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_lines_stamp_delete AFTER DELETE ON spec_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_alternatives_stamp_insert AFTER INSERT ON spec_alternatives
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_alternatives_stamp_update AFTER UPDATE ON spec_alternatives
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER spec_alternatives_stamp_delete AFTER DELETE ON spec_alternatives
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER cuts_stamp_insert AFTER INSERT ON cuts
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER cuts_stamp_update AFTER UPDATE ON cuts
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER cuts_stamp_delete AFTER DELETE ON cuts
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER ring_names_stamp_insert AFTER INSERT ON ring_names
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER ring_names_stamp_update AFTER UPDATE ON ring_names
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER ring_names_stamp_delete AFTER DELETE ON ring_names
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER modifiers_stamp_insert AFTER INSERT ON modifiers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER modifiers_stamp_update AFTER UPDATE ON modifiers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER modifiers_stamp_delete AFTER DELETE ON modifiers
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER events_stamp_insert AFTER INSERT ON events
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER events_stamp_update AFTER UPDATE ON events
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER events_stamp_delete AFTER DELETE ON events
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER plans_stamp_insert AFTER INSERT ON plans
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER plans_stamp_update AFTER UPDATE ON plans
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER plans_stamp_delete AFTER DELETE ON plans
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER order_lines_stamp_insert AFTER INSERT ON order_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER order_lines_stamp_update AFTER UPDATE ON order_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
--> statement-breakpoint
CREATE TRIGGER order_lines_stamp_delete AFTER DELETE ON order_lines
BEGIN
	UPDATE ledger_state SET catalogue_stamp = hex(randomblob(16));
END;
