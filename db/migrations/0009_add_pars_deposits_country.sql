-- Pars set by hand with their reason, deposits on containers and empties handed back, and the country whose holidays count.
ALTER TABLE `deliveries` ADD `deposit_minor` integer;--> statement-breakpoint
ALTER TABLE `deliveries` ADD `empties` real;--> statement-breakpoint
ALTER TABLE `items` ADD `par` real;--> statement-breakpoint
ALTER TABLE `items` ADD `par_reason` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `pack_versions` ADD `deposit_minor` integer;--> statement-breakpoint
ALTER TABLE `venues` ADD `country` text;--> statement-breakpoint
ALTER TABLE `venues` ADD `region` text;