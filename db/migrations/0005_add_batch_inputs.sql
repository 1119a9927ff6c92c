-- A batch may have used other amounts than its spec says; they belong to the batch's entry and are only ever added with it.
CREATE TABLE `batch_inputs` (
	`id` integer PRIMARY KEY NOT NULL,
	`batch_id` integer NOT NULL,
	`item_id` integer NOT NULL,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	FOREIGN KEY (`batch_id`) REFERENCES `batches`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "batch_inputs_amount" CHECK("batch_inputs"."amount" >= 0),
	CONSTRAINT "batch_inputs_unit" CHECK("batch_inputs"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `batch_inputs_one` ON `batch_inputs` (`batch_id`,`item_id`);
--> statement-breakpoint
CREATE TRIGGER batch_inputs_no_update BEFORE UPDATE ON batch_inputs
BEGIN
	SELECT RAISE(ABORT, 'Batches are only ever added: enter a correction that replaces the old entry.');
END;
--> statement-breakpoint
CREATE TRIGGER batch_inputs_no_delete BEFORE DELETE ON batch_inputs
WHEN (SELECT is_replacing FROM ledger_state) IS NOT 1
BEGIN
	SELECT RAISE(ABORT, 'Batches are only ever added: take the entry back instead of deleting it.');
END;
