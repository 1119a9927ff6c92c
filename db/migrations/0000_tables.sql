-- The tables of one venue: its catalogue, its entries (movements and counts), its sales. STRICT, so that a column holds what it says.
CREATE TABLE `events` (
	`id` integer PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`event` text NOT NULL,
	`factor` real NOT NULL,
	CONSTRAINT "events_date" CHECK("events"."date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "events_factor" CHECK("events"."factor" >= 0)
) STRICT;
--> statement-breakpoint
CREATE TABLE `plans` (
	`id` integer PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`drink_id` integer NOT NULL,
	`serves` real NOT NULL,
	FOREIGN KEY (`drink_id`) REFERENCES `drinks`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "plans_date" CHECK("plans"."date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "plans_serves" CHECK("plans"."serves" >= 0)
) STRICT;
--> statement-breakpoint
CREATE TABLE `closures` (
	`id` integer PRIMARY KEY NOT NULL,
	`supplier_id` integer,
	`from_date` text NOT NULL,
	`to_date` text NOT NULL,
	FOREIGN KEY (`supplier_id`) REFERENCES `suppliers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "closures_from" CHECK("closures"."from_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "closures_to" CHECK("closures"."to_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "closures_days" CHECK("closures"."to_date" >= "closures"."from_date")
) STRICT;
--> statement-breakpoint
CREATE TABLE `order_lines` (
	`id` integer PRIMARY KEY NOT NULL,
	`order_name` text NOT NULL,
	`placed` text NOT NULL,
	`supplier_id` integer NOT NULL,
	`pack_id` integer NOT NULL,
	`quantity` real NOT NULL,
	`of` text NOT NULL,
	`expected` text NOT NULL,
	FOREIGN KEY (`supplier_id`) REFERENCES `suppliers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`pack_id`) REFERENCES `packs`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "order_lines_placed_at" CHECK("order_lines"."placed" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "order_lines_quantity" CHECK("order_lines"."quantity" >= 0),
	CONSTRAINT "order_lines_of" CHECK("order_lines"."of" in ('container', 'case')),
	CONSTRAINT "order_lines_expected" CHECK("order_lines"."expected" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `order_lines_placed` ON `order_lines` (`placed`);--> statement-breakpoint
CREATE TABLE `supplier_days` (
	`id` integer PRIMARY KEY NOT NULL,
	`supplier_id` integer NOT NULL,
	`order_day` text NOT NULL,
	`order_by` text NOT NULL,
	`delivery_day` text NOT NULL,
	`delivery_at` text NOT NULL,
	FOREIGN KEY (`supplier_id`) REFERENCES `suppliers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "supplier_days_order_day" CHECK("supplier_days"."order_day" in ('Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun')),
	CONSTRAINT "supplier_days_order_by" CHECK("supplier_days"."order_by" glob '[0-2][0-9]:[0-5][0-9]'),
	CONSTRAINT "supplier_days_delivery_day" CHECK("supplier_days"."delivery_day" in ('Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun')),
	CONSTRAINT "supplier_days_delivery_at" CHECK("supplier_days"."delivery_at" glob '[0-2][0-9]:[0-5][0-9]')
) STRICT;
--> statement-breakpoint
CREATE TABLE `suppliers` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	`email` text NOT NULL,
	`minimum_value_minor` integer,
	`minimum_cases` real,
	CONSTRAINT "suppliers_minimum_value" CHECK("suppliers"."minimum_value_minor" >= 0),
	CONSTRAINT "suppliers_minimum_cases" CHECK("suppliers"."minimum_cases" >= 0)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `suppliers_name` ON `suppliers` (`folded`);--> statement-breakpoint
CREATE TABLE `import_days` (
	`import_id` integer NOT NULL,
	`business_date` text NOT NULL,
	`block_id` integer NOT NULL,
	PRIMARY KEY(`import_id`, `business_date`),
	FOREIGN KEY (`import_id`) REFERENCES `sale_imports`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`block_id`) REFERENCES `sale_blocks`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `import_days_date` ON `import_days` (`business_date`);--> statement-breakpoint
CREATE TABLE `modifiers` (
	`id` integer PRIMARY KEY NOT NULL,
	`modifier` text NOT NULL,
	`folded` text NOT NULL,
	`effect` text NOT NULL,
	`item_id` integer,
	`with_id` integer,
	`amount` real,
	`unit` text,
	`factor` real,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`with_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "modifiers_effect" CHECK("modifiers"."effect" in ('swap', 'add', 'remove', 'times', 'none')),
	CONSTRAINT "modifiers_amount" CHECK("modifiers"."amount" > 0),
	CONSTRAINT "modifiers_unit" CHECK("modifiers"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece')),
	CONSTRAINT "modifiers_factor" CHECK("modifiers"."factor" >= 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `modifiers_name` ON `modifiers` (`folded`);--> statement-breakpoint
CREATE TABLE `ring_names` (
	`id` integer PRIMARY KEY NOT NULL,
	`ring_name` text NOT NULL,
	`folded` text NOT NULL,
	`sold_as` text NOT NULL,
	`drink_id` integer,
	`item_id` integer,
	`serves` real NOT NULL,
	`amount` real,
	`unit` text,
	FOREIGN KEY (`drink_id`) REFERENCES `drinks`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "ring_names_sold_as" CHECK(("ring_names"."drink_id" is not null) = ("ring_names"."sold_as" = 'drink') and ("ring_names"."item_id" is not null) = ("ring_names"."sold_as" = 'item') and "ring_names"."sold_as" in ('drink', 'item', 'ignore')),
	CONSTRAINT "ring_names_serves" CHECK("ring_names"."serves" > 0),
	CONSTRAINT "ring_names_amount" CHECK("ring_names"."amount" > 0),
	CONSTRAINT "ring_names_unit" CHECK("ring_names"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `ring_names_name` ON `ring_names` (`folded`);--> statement-breakpoint
CREATE TABLE `sale_blocks` (
	`id` integer PRIMARY KEY NOT NULL,
	`business_date` text NOT NULL,
	`digest` text NOT NULL,
	`lines` integer NOT NULL,
	`packed` blob NOT NULL,
	CONSTRAINT "sale_blocks_date" CHECK("sale_blocks"."business_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sale_blocks_one` ON `sale_blocks` (`business_date`,`digest`);--> statement-breakpoint
CREATE TABLE `sale_imports` (
	`id` integer PRIMARY KEY NOT NULL,
	`file` text NOT NULL,
	`imported_at` text NOT NULL,
	`imported_by` text NOT NULL,
	`shape_json` text NOT NULL,
	`lines` integer NOT NULL,
	`refused_json` text NOT NULL,
	`read_digest` text,
	`undone_at` text,
	`undone_by` text,
	CONSTRAINT "sale_imports_imported_at" CHECK("sale_imports"."imported_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "sale_imports_undone_at" CHECK("sale_imports"."undone_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z')
) STRICT;
--> statement-breakpoint
CREATE TABLE `sale_names` (
	`id` integer PRIMARY KEY NOT NULL,
	`text` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sale_names_text` ON `sale_names` (`text`);--> statement-breakpoint
CREATE TABLE `tallies` (
	`business_date` text PRIMARY KEY NOT NULL,
	`lines` integer NOT NULL,
	`quantity` real NOT NULL,
	`net_minor` integer NOT NULL,
	`packed` blob NOT NULL,
	CONSTRAINT "tallies_date" CHECK("tallies"."business_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')
) STRICT;
--> statement-breakpoint
CREATE TABLE `cuts` (
	`id` integer PRIMARY KEY NOT NULL,
	`source_id` integer NOT NULL,
	`from_date` text,
	`gives_id` integer NOT NULL,
	`per_piece` real NOT NULL,
	`unit` text NOT NULL,
	`parts_json` text NOT NULL,
	FOREIGN KEY (`source_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`gives_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "cuts_from" CHECK("cuts"."from_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "cuts_per_piece" CHECK("cuts"."per_piece" > 0),
	CONSTRAINT "cuts_unit" CHECK("cuts"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `cuts_one` ON `cuts` (`gives_id`,coalesce(`from_date`, ''));--> statement-breakpoint
CREATE TABLE `drinks` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	`price_minor` integer,
	`glass` text NOT NULL,
	`glass_ml` real,
	`ice` text,
	`technique` text,
	`garnish_note` text NOT NULL,
	`method` text NOT NULL,
	`allergens_json` text NOT NULL,
	`on_menu_from` text,
	`on_menu_until` text,
	CONSTRAINT "drinks_price" CHECK("drinks"."price_minor" >= 0),
	CONSTRAINT "drinks_glass_ml" CHECK("drinks"."glass_ml" > 0),
	CONSTRAINT "drinks_ice" CHECK("drinks"."ice" in ('none', 'cubed', 'crushed', 'large')),
	CONSTRAINT "drinks_technique" CHECK("drinks"."technique" in ('built', 'shaken', 'stirred', 'blended', 'thrown')),
	CONSTRAINT "drinks_on_menu_from" CHECK("drinks"."on_menu_from" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "drinks_on_menu_until" CHECK("drinks"."on_menu_until" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `drinks_name` ON `drinks` (`folded`);--> statement-breakpoint
CREATE TABLE `prep_versions` (
	`id` integer PRIMARY KEY NOT NULL,
	`prep_id` integer NOT NULL,
	`from_date` text NOT NULL,
	`yield` real NOT NULL,
	`unit` text NOT NULL,
	`batch_step` real,
	`vessel_max` real,
	`active_minutes` real,
	`standing_hours` real,
	`shelf_life_days` real,
	`method` text NOT NULL,
	FOREIGN KEY (`prep_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "prep_versions_from" CHECK("prep_versions"."from_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "prep_versions_yield" CHECK("prep_versions"."yield" > 0),
	CONSTRAINT "prep_versions_unit" CHECK("prep_versions"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `prep_versions_one` ON `prep_versions` (`prep_id`,`from_date`);--> statement-breakpoint
CREATE TABLE `spec_alternatives` (
	`id` integer PRIMARY KEY NOT NULL,
	`line_id` integer NOT NULL,
	`item_id` integer NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `spec_lines`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `spec_alternatives_line` ON `spec_alternatives` (`line_id`);--> statement-breakpoint
CREATE TABLE `spec_lines` (
	`id` integer PRIMARY KEY NOT NULL,
	`drink_id` integer,
	`prep_id` integer,
	`from_date` text NOT NULL,
	`line` real NOT NULL,
	`amount` real,
	`unit` text NOT NULL,
	`item_id` integer NOT NULL,
	`note` text NOT NULL,
	FOREIGN KEY (`drink_id`) REFERENCES `drinks`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`prep_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "spec_lines_makes" CHECK(("spec_lines"."drink_id" is null) <> ("spec_lines"."prep_id" is null)),
	CONSTRAINT "spec_lines_from" CHECK("spec_lines"."from_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "spec_lines_amount" CHECK(("spec_lines"."amount" is null) = ("spec_lines"."unit" = 'top') and coalesce("spec_lines"."amount", 1) > 0),
	CONSTRAINT "spec_lines_unit" CHECK("spec_lines"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece', 'top'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `spec_lines_one` ON `spec_lines` (coalesce(`drink_id`, ''),coalesce(`prep_id`, ''),`from_date`,`line`);--> statement-breakpoint
CREATE TABLE `areas` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `areas_name` ON `areas` (`folded`);--> statement-breakpoint
CREATE TABLE `batches` (
	`id` integer PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`prep_id` integer NOT NULL,
	`made` real NOT NULL,
	`unit` text NOT NULL,
	`by` text NOT NULL,
	`note` text NOT NULL,
	`entered_at` text NOT NULL,
	`entered_by` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`is_withdrawn` integer DEFAULT false NOT NULL,
	`replaces_id` integer,
	FOREIGN KEY (`prep_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`replaces_id`) REFERENCES `batches`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "batches_at" CHECK("batches"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "batches_made" CHECK("batches"."made" > 0),
	CONSTRAINT "batches_unit" CHECK("batches"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece')),
	CONSTRAINT "batches_entered_at" CHECK("batches"."entered_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "batches_withdrawn" CHECK("batches"."is_withdrawn" = 0 or "batches"."replaces_id" is not null)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `batches_replaces` ON `batches` (`replaces_id`);--> statement-breakpoint
CREATE INDEX `batches_by_at` ON `batches` (`at`);--> statement-breakpoint
CREATE TABLE `count_entries` (
	`id` integer PRIMARY KEY NOT NULL,
	`count_id` integer NOT NULL,
	`at` text NOT NULL,
	`area_id` integer NOT NULL,
	`item_id` integer NOT NULL,
	`pack_id` integer,
	`full` real,
	`parts_json` text NOT NULL,
	`gross_g_json` text NOT NULL,
	`amount` real,
	`unit` text,
	`by` text NOT NULL,
	`entered_at` text NOT NULL,
	`entered_by` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`is_withdrawn` integer DEFAULT false NOT NULL,
	`replaces_id` integer,
	FOREIGN KEY (`count_id`) REFERENCES `counts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`area_id`) REFERENCES `areas`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`pack_id`) REFERENCES `packs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`replaces_id`) REFERENCES `count_entries`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "count_entries_at" CHECK("count_entries"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "count_entries_full" CHECK("count_entries"."full" >= 0),
	CONSTRAINT "count_entries_amount" CHECK("count_entries"."amount" >= 0),
	CONSTRAINT "count_entries_unit" CHECK("count_entries"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece')),
	CONSTRAINT "count_entries_entered_at" CHECK("count_entries"."entered_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "count_entries_withdrawn" CHECK("count_entries"."is_withdrawn" = 0 or "count_entries"."replaces_id" is not null)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `count_entries_replaces` ON `count_entries` (`replaces_id`);--> statement-breakpoint
CREATE INDEX `count_entries_count` ON `count_entries` (`count_id`);--> statement-breakpoint
CREATE TABLE `counts` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `counts_name` ON `counts` (`folded`);--> statement-breakpoint
CREATE TABLE `deliveries` (
	`id` integer PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`supplier_id` integer NOT NULL,
	`invoice` text NOT NULL,
	`pack_id` integer NOT NULL,
	`quantity` real NOT NULL,
	`of` text NOT NULL,
	`price_total_minor` integer,
	`by` text NOT NULL,
	`entered_at` text NOT NULL,
	`entered_by` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`is_withdrawn` integer DEFAULT false NOT NULL,
	`replaces_id` integer,
	FOREIGN KEY (`supplier_id`) REFERENCES `suppliers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`pack_id`) REFERENCES `packs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`replaces_id`) REFERENCES `deliveries`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "deliveries_at" CHECK("deliveries"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "deliveries_quantity" CHECK("deliveries"."quantity" >= 0),
	CONSTRAINT "deliveries_of" CHECK("deliveries"."of" in ('container', 'case')),
	CONSTRAINT "deliveries_price" CHECK("deliveries"."price_total_minor" >= 0),
	CONSTRAINT "deliveries_entered_at" CHECK("deliveries"."entered_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "deliveries_withdrawn" CHECK("deliveries"."is_withdrawn" = 0 or "deliveries"."replaces_id" is not null)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `deliveries_replaces` ON `deliveries` (`replaces_id`);--> statement-breakpoint
CREATE INDEX `deliveries_by_at` ON `deliveries` (`at`);--> statement-breakpoint
CREATE TABLE `items` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	`category` text NOT NULL,
	`base` text NOT NULL,
	`abv` real,
	`brix` real,
	`density_g_per_ml` real,
	`piece_g` real,
	`shelf_life_days` real,
	`allergens_json` text NOT NULL,
	`in_house` integer NOT NULL,
	`stocked` integer NOT NULL,
	`pour` text NOT NULL,
	`service_level` real,
	`note` text NOT NULL,
	CONSTRAINT "items_base" CHECK("items"."base" in ('ml', 'g', 'each')),
	CONSTRAINT "items_pour" CHECK("items"."pour" in ('jigger', 'free', 'measured')),
	CONSTRAINT "items_abv" CHECK("items"."abv" between 0 and 100),
	CONSTRAINT "items_brix" CHECK("items"."brix" between 0 and 100),
	CONSTRAINT "items_density" CHECK("items"."density_g_per_ml" > 0),
	CONSTRAINT "items_piece" CHECK("items"."piece_g" > 0)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `items_name` ON `items` (`folded`);--> statement-breakpoint
CREATE TABLE `losses` (
	`id` integer PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`kind` text NOT NULL,
	`item_id` integer,
	`drink_id` integer,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	`by` text NOT NULL,
	`note` text NOT NULL,
	`entered_at` text NOT NULL,
	`entered_by` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`is_withdrawn` integer DEFAULT false NOT NULL,
	`replaces_id` integer,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`drink_id`) REFERENCES `drinks`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`replaces_id`) REFERENCES `losses`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "losses_at" CHECK("losses"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "losses_kind" CHECK("losses"."kind" in ('waste', 'spill', 'breakage', 'staff', 'tasting', 'comp', 'expired')),
	CONSTRAINT "losses_what" CHECK(("losses"."item_id" is null) = ("losses"."unit" = 'serve') and ("losses"."drink_id" is null) = ("losses"."unit" <> 'serve')),
	CONSTRAINT "losses_amount" CHECK("losses"."amount" > 0),
	CONSTRAINT "losses_unit" CHECK("losses"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece', 'serve')),
	CONSTRAINT "losses_entered_at" CHECK("losses"."entered_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "losses_withdrawn" CHECK("losses"."is_withdrawn" = 0 or "losses"."replaces_id" is not null)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `losses_replaces` ON `losses` (`replaces_id`);--> statement-breakpoint
CREATE INDEX `losses_by_at` ON `losses` (`at`);--> statement-breakpoint
CREATE TABLE `pack_versions` (
	`id` integer PRIMARY KEY NOT NULL,
	`pack_id` integer NOT NULL,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	`from_date` text,
	`per_case` integer NOT NULL,
	`supplier_id` integer,
	`code` text NOT NULL,
	`gtin` text NOT NULL,
	`price` real,
	`price_per` text NOT NULL,
	`split` integer NOT NULL,
	`empty_g` real,
	`full_g` real,
	FOREIGN KEY (`pack_id`) REFERENCES `packs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supplier_id`) REFERENCES `suppliers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "pack_versions_amount" CHECK("pack_versions"."amount" > 0),
	CONSTRAINT "pack_versions_unit" CHECK("pack_versions"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece')),
	CONSTRAINT "pack_versions_from" CHECK("pack_versions"."from_date" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
	CONSTRAINT "pack_versions_per_case" CHECK("pack_versions"."per_case" > 0),
	CONSTRAINT "pack_versions_price" CHECK("pack_versions"."price" >= 0),
	CONSTRAINT "pack_versions_price_per" CHECK("pack_versions"."price_per" in ('container', 'case')),
	CONSTRAINT "pack_versions_weights" CHECK("pack_versions"."full_g" > "pack_versions"."empty_g")
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `pack_versions_one` ON `pack_versions` (`pack_id`,coalesce(`supplier_id`, ''),coalesce(`from_date`, ''));--> statement-breakpoint
CREATE TABLE `packs` (
	`id` integer PRIMARY KEY NOT NULL,
	`item_id` integer NOT NULL,
	`name` text NOT NULL,
	`folded` text NOT NULL,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `packs_name` ON `packs` (`item_id`,`folded`);--> statement-breakpoint
CREATE TABLE `shelves` (
	`id` integer PRIMARY KEY NOT NULL,
	`area_id` integer NOT NULL,
	`item_id` integer NOT NULL,
	`shelf` real NOT NULL,
	FOREIGN KEY (`area_id`) REFERENCES `areas`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `shelves_one` ON `shelves` (`area_id`,`item_id`);--> statement-breakpoint
CREATE TABLE `transfers` (
	`id` integer PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`direction` text NOT NULL,
	`place` text NOT NULL,
	`item_id` integer NOT NULL,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	`entered_at` text NOT NULL,
	`entered_by` text NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`is_withdrawn` integer DEFAULT false NOT NULL,
	`replaces_id` integer,
	FOREIGN KEY (`item_id`) REFERENCES `items`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`replaces_id`) REFERENCES `transfers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "transfers_at" CHECK("transfers"."at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "transfers_direction" CHECK("transfers"."direction" in ('in', 'out')),
	CONSTRAINT "transfers_amount" CHECK("transfers"."amount" > 0),
	CONSTRAINT "transfers_unit" CHECK("transfers"."unit" in ('oz', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'dash', 'barspoon', 'drop', 'splash', 'g', 'kg', 'lb', 'oz-wt', 'each', 'piece')),
	CONSTRAINT "transfers_entered_at" CHECK("transfers"."entered_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "transfers_withdrawn" CHECK("transfers"."is_withdrawn" = 0 or "transfers"."replaces_id" is not null)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `transfers_replaces` ON `transfers` (`replaces_id`);--> statement-breakpoint
CREATE INDEX `transfers_by_at` ON `transfers` (`at`);--> statement-breakpoint
CREATE TABLE `ledger_state` (
	`id` integer PRIMARY KEY NOT NULL,
	`changes` integer NOT NULL,
	`is_replacing` integer NOT NULL,
	CONSTRAINT "ledger_state_one" CHECK("ledger_state"."id" = 1)
) STRICT;
--> statement-breakpoint
CREATE TABLE `sales_shapes` (
	`id` integer PRIMARY KEY NOT NULL,
	`shape_json` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `venues` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`currency` text NOT NULL,
	`time_zone` text NOT NULL,
	`day_ends` text NOT NULL,
	`oz` text NOT NULL,
	`show` text NOT NULL,
	`house_ml_json` text NOT NULL,
	`service_level` real NOT NULL,
	`uncertainty_json` text NOT NULL,
	CONSTRAINT "venues_one" CHECK("venues"."id" = 1),
	CONSTRAINT "venues_day_ends" CHECK("venues"."day_ends" glob '[0-2][0-9]:[0-5][0-9]'),
	CONSTRAINT "venues_oz" CHECK("venues"."oz" in ('us', 'imperial')),
	CONSTRAINT "venues_show" CHECK("venues"."show" in ('oz', 'ml', 'cl'))
) STRICT;
