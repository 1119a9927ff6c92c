-- What is sent twice over a bad connection is entered once: the sender gives each entry a key of its own.
ALTER TABLE `batches` ADD `entry_key` text;--> statement-breakpoint
CREATE UNIQUE INDEX `batches_entry_key_unique` ON `batches` (`entry_key`);--> statement-breakpoint
ALTER TABLE `count_entries` ADD `entry_key` text;--> statement-breakpoint
CREATE UNIQUE INDEX `count_entries_entry_key_unique` ON `count_entries` (`entry_key`);--> statement-breakpoint
ALTER TABLE `deliveries` ADD `entry_key` text;--> statement-breakpoint
CREATE UNIQUE INDEX `deliveries_entry_key_unique` ON `deliveries` (`entry_key`);--> statement-breakpoint
ALTER TABLE `losses` ADD `entry_key` text;--> statement-breakpoint
CREATE UNIQUE INDEX `losses_entry_key_unique` ON `losses` (`entry_key`);--> statement-breakpoint
ALTER TABLE `transfers` ADD `entry_key` text;--> statement-breakpoint
CREATE UNIQUE INDEX `transfers_entry_key_unique` ON `transfers` (`entry_key`);