# Auskünfte der Tabellen: Bodenart, Klasse, Rollprobe.
# Die Klassennamen sind übersetzt; es sind nicht die Bodenarten der deutschen Kartieranleitung.

texture_scheme-usda = USDA-Dreieck
texture_scheme-uk = britisches Dreieck

texture_class-sand = Sand
texture_class-loamy_sand = lehmiger Sand
texture_class-sandy_loam = sandiger Lehm
texture_class-loam = Lehm
texture_class-silt_loam = schluffiger Lehm
texture_class-silt = Schluff
texture_class-sandy_silt_loam = sandig-schluffiger Lehm
texture_class-sandy_clay_loam = sandig-toniger Lehm
texture_class-clay_loam = toniger Lehm
texture_class-silty_clay_loam = schluffig-toniger Lehm
texture_class-sandy_clay = sandiger Ton
texture_class-silty_clay = schluffiger Ton
texture_class-clay = Ton

soil-texture = { $class } ({ $scheme })
soil-texture_sentence = { $texture }; eine Grubenwand darin wird als { $group } angesprochen.
soil-texture_edge = Auf der Grenze zwischen { $classes } ({ $scheme }).
soil-class = { $scheme }: { $value } ist { $class }.

soil-roll_fit = In der Tiefe trocken genug zum Lockern.
soil-roll_cloddy = In der Tiefe trocken genug zum Lockern, zieht aber schwer und bricht in Kluten.
soil-roll_wet_at_depth = In der Tiefe zu nass: warten.
soil-roll_wet_surface = An der Oberfläche zu nass: warten.
soil-roll_missing = Über die Arbeitstiefe ist nichts bekannt: erst Boden von dort rollen.
soil-roll_not_applicable = Dieser Boden rollt bei keiner Feuchte: anders prüfen, ob er trocken genug ist.
