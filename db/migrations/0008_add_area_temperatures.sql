-- An area may state how cold it is kept: a level read in a freezer is that of a shrunken volume.
ALTER TABLE `venues` ADD `area_temperature_c_json` text;