-- What the check of a cause showed is kept: it moves how likely that kind of cause is in this venue, and can be taken back.
CREATE TABLE `settlements` (
	`id` integer PRIMARY KEY NOT NULL,
	`settled_at` text NOT NULL,
	`settled_by` text NOT NULL,
	`answer` text NOT NULL,
	`opening` text NOT NULL,
	`closing` text NOT NULL,
	`kind` text NOT NULL,
	`what_json` text NOT NULL,
	`count_name` text,
	`size` real NOT NULL,
	`unit` text NOT NULL,
	`correction_json` text,
	`entry_id` integer,
	`taken_back_at` text,
	CONSTRAINT "settlements_settled_at" CHECK("settlements"."settled_at" glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'),
	CONSTRAINT "settlements_answer" CHECK("settlements"."answer" in ('confirmed', 'refuted')),
	CONSTRAINT "settlements_kind" CHECK("settlements"."kind" in ('delivery-not-entered', 'delivery-entered-twice', 'delivery-short', 'container-miscounted', 'area-skipped', 'wrong-pack-size', 'poured-for-another', 'rung-for-another', 'not-rung', 'over-pour', 'older-spec', 'batch-not-logged', 'batch-thrown-out', 'breakage', 'yield-drift', 'unmapped-sale', 'unit-slip')),
	CONSTRAINT "settlements_size" CHECK("settlements"."size" > 0),
	CONSTRAINT "settlements_taken_back" CHECK("settlements"."taken_back_at" is null or "settlements"."taken_back_at" >= "settlements"."settled_at")
) STRICT;
