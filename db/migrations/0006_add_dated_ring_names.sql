-- A meaning given to a ring name is dated and can be taken back; sums of a file say whether they replaced earlier sums.
ALTER TABLE `ring_names` ADD `entered_at` text;--> statement-breakpoint
ALTER TABLE `ring_names` ADD `entered_by` text;--> statement-breakpoint
ALTER TABLE `ring_names` ADD `before_json` text;--> statement-breakpoint
ALTER TABLE `sale_imports` ADD `replaces_sums` integer DEFAULT false NOT NULL;