-- Who rang a line is kept only where the owner wants it: beside the lines and no part of them, so that it can be erased.
CREATE TABLE `sale_staff` (
	`block_id` integer PRIMARY KEY NOT NULL,
	`packed` blob NOT NULL,
	FOREIGN KEY (`block_id`) REFERENCES `sale_blocks`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `staff_names` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `staff_names_name` ON `staff_names` (`name`);--> statement-breakpoint
ALTER TABLE `venues` ADD `keep_staff` integer;