-- A venue may set from where on a variance is watched and chased; without it the usual limits hold.
ALTER TABLE `venues` ADD `thresholds_json` text;