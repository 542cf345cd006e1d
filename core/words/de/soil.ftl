# Auskünfte der Tabellen: Bodenart, Klasse, Ausrollprobe.
# Die Klassennamen nennen die deutsche Bodenart, die den größten Teil der Klasse deckt: Wörtlich übersetzt wäre „sandy loam“ eine
# Gruppe zu schwer. Die Grenzen sind nicht die der deutschen Kartieranleitung.

texture_scheme-usda = USDA-Dreieck
texture_scheme-uk = britisches Dreieck

texture_class-sand = Sand
texture_class-loamy_sand = schwach lehmiger Sand
texture_class-sandy_loam = lehmiger Sand
texture_class-loam = Lehm
texture_class-silt_loam = lehmiger Schluff
texture_class-silt = Schluff
texture_class-sandy_silt_loam = sandig-lehmiger Schluff
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
soil-roll_cloddy = In der Tiefe trocken genug zum Lockern, aber hoher Zugkraftbedarf, der Boden bricht in grobe Brocken.
soil-roll_wet_at_depth = In der Tiefe zu nass: warten.
soil-roll_wet_surface = An der Oberfläche zu nass: warten.
soil-roll_missing = Über die Arbeitstiefe ist nichts bekannt: erst Boden von dort ausrollen.
soil-roll_not_applicable = Dieser Boden lässt sich bei keiner Feuchte ausrollen: anders prüfen, ob er trocken genug ist.

particle_size-sandy = sandigem Boden
particle_size-coarse_loamy = grob-lehmigem Boden
particle_size-fine_loamy = fein-lehmigem Boden
particle_size-coarse_silty = grob-schluffigem Boden
particle_size-fine_silty = fein-schluffigem Boden
particle_size-clayey = tonigem Boden
particle_size-very_clayey = sehr tonigem Boden

packing_formula-packing_density_clay = Rohdichte und Ton
packing_formula-packing_density_clay_silt = Rohdichte, Ton und Schluff
packing_class-low = gering
packing_class-medium = mittel
packing_class-high = hoch
packing_class-class_1 = die lockerste von fünf Stufen
packing_class-class_2 = die zweite von fünf Stufen
packing_class-class_3 = die mittlere von fünf Stufen
packing_class-class_4 = die vierte von fünf Stufen
packing_class-class_5 = die dichteste von fünf Stufen

sample-g_per_cm3 = { $number }{ "\u00A0" }g/cm³
sample-density = Trockenrohdichte { $density }.
sample-density_stones = Trockenrohdichte { $whole }; Steine füllen { $stones } des Rings, der Feinboden dazwischen hat { $fine }. Alles Weitere gilt für den Feinboden.
sample-pores = Poren { $pores } des Volumens; wie viel davon Luft ist, zeigt erst die Masse vor dem Trocknen.
sample-pores_filled = Poren { $pores } des Volumens: { $water } Wasser ({ $mass } der Masse), { $air } Luft.
sample-air_short = So nass fehlt den Wurzeln Luft: weniger als { $limit }.
sample-air_enough = Solange es nicht nasser ist, haben die Wurzeln Luft: { $limit } oder mehr.
sample-roots_free = Es ist nicht so dicht, dass es Wurzeln hemmt: in { $size } beginnt das bei { $from } (National Soil Survey Handbook, feuchter Boden).
sample-roots_restricted = Es ist so dicht, dass es Wurzeln hemmt: in { $size } ab { $from }; über { $above } ist für sie Schluss (National Soil Survey Handbook, feuchter Boden).
sample-roots_limiting = Bei dieser Dichte ist für Wurzeln Schluss: in { $size } über { $above } (National Soil Survey Handbook, feuchter Boden).
sample-roots_unknown = Was diese Dichte für Wurzeln bedeutet, hängt an der Körnung: dafür braucht es Sand, Schluff und Ton oder die Korngrößenklasse.
sample-settles = So lockerer Boden setzt sich von selbst, wenn er nass wird, ganz ohne Rad.
sample-packing = Packungsdichte aus { $formula }: { $value }, { $class }.
sample-packing_apart = Die beiden Packungsdichten sind nicht miteinander zu vergleichen.
sample-clay_hides = Bei so viel Ton beweist eine unauffällige Dichte nichts: das Gefüge kann trotzdem geschädigt sein.
sample-no_call = Ein Ring ist eine Stelle in einer Schicht und keine Empfehlung: wie die Schicht gebaut ist und warum, zeigt die Grubenwand.

sample-cone_hard = { $found } hemmt Wurzeln: ab { $mark } wird es ihnen zu hart.
sample-cone_soft = Durch { $found } kommen Wurzeln: erst ab { $mark } wird es ihnen zu hart.
sample-cone_dry = { $found } in trockenem Boden sagt nichts: trockener Boden ist hart, wie auch immer sein Gefüge ist. Noch einmal messen, ein oder zwei Tage nachdem er durchfeuchtet wurde.
sample-cone_wet = { $found } in nassem Boden sagt nichts: nasser Boden gibt nach, wie auch immer sein Gefüge ist. Noch einmal messen, wenn er ein oder zwei Tage abgetrocknet ist.
sample-cone_stony = Zwischen Steinen sagt ein Penetrometer nichts: es steht auf ihnen. Den Feinboden dazwischen ansehen.
sample-cone_moisture = { $found } sagt nichts, solange niemand weiß, wie feucht der Boden war.
sample-loosening = Knapp unter der Krume galt solcher Boden im Frühjahr ab { $range } als lockerungsbedürftig (Petelkau und Rogasik 1994): { $need }.
loosening_need-not_indicated = das hier liegt darunter, und hart ist noch kein Grund zum Lockern
loosening_need-open = das hier liegt dazwischen, der Widerstand allein lässt es offen
loosening_need-indicated = das hier liegt darüber
