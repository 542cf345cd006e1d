# Handbook answers: texture, class, roll.

texture_scheme-usda = USDA triangle
texture_scheme-uk = UK triangle

texture_class-sand = sand
texture_class-loamy_sand = loamy sand
texture_class-sandy_loam = sandy loam
texture_class-loam = loam
texture_class-silt_loam = silt loam
texture_class-silt = silt
texture_class-sandy_silt_loam = sandy silt loam
texture_class-sandy_clay_loam = sandy clay loam
texture_class-clay_loam = clay loam
texture_class-silty_clay_loam = silty clay loam
texture_class-sandy_clay = sandy clay
texture_class-silty_clay = silty clay
texture_class-clay = clay

soil-texture = { $class } ({ $scheme })
soil-texture_sentence = { $texture }; a pit face in it is read as { $group }.
soil-texture_edge = On the edge between { $classes } ({ $scheme }).
soil-class = { $scheme }: { $value } is { $class }.

soil-roll_fit = Dry enough at depth to loosen.
soil-roll_cloddy = Dry enough at depth to loosen, but it pulls hard and comes up in clods.
soil-roll_wet_at_depth = Too wet at depth: wait.
soil-roll_wet_surface = Too wet at the surface: wait.
soil-roll_missing = Nothing is known of the working depth: roll soil from there first.
soil-roll_not_applicable = This soil does not roll at any moisture: judge whether it is dry enough another way.

particle_size-sandy = sandy soil
particle_size-coarse_loamy = coarse-loamy soil
particle_size-fine_loamy = fine-loamy soil
particle_size-coarse_silty = coarse-silty soil
particle_size-fine_silty = fine-silty soil
particle_size-clayey = clayey soil
particle_size-very_clayey = very clayey soil

packing_formula-packing_density_clay = density and clay
packing_formula-packing_density_clay_silt = density, clay and silt
packing_class-low = low
packing_class-medium = medium
packing_class-high = high
packing_class-class_1 = the loosest of five classes
packing_class-class_2 = the second of five classes
packing_class-class_3 = the middle one of five classes
packing_class-class_4 = the fourth of five classes
packing_class-class_5 = the densest of five classes

sample-g_per_cm3 = { $number }{ "\u00A0" }g/cm³
sample-density = Dry bulk density { $density }.
sample-density_stones = Dry bulk density { $whole }; stones fill { $stones } of the ring, and the fine earth between them has { $fine }. What follows is of the fine earth.
sample-pores = Pores { $pores } of the volume; how much of that is air takes the mass before drying.
sample-pores_filled = Pores { $pores } of the volume: { $water } water ({ $mass } by mass), { $air } air.
sample-air_short = Roots lack air while it is as wet as this: less than { $limit }.
sample-air_enough = Roots have air while it is no wetter than this: { $limit } or more.
sample-roots_free = It is not dense enough to hold roots back: in { $size } that begins at { $from } (National Soil Survey Handbook, moist soil).
sample-roots_restricted = It is dense enough to hold roots back: in { $size } from { $from } on; above { $above } they stop (National Soil Survey Handbook, moist soil).
sample-roots_limiting = Roots stop at such a density: in { $size } above { $above } (National Soil Survey Handbook, moist soil).
sample-roots_unknown = What this density means for roots hangs on the texture: it takes sand, silt and clay, or the particle size.
sample-settles = Ground as loose as this settles by itself once it is wetted, without any wheel.
sample-packing = Packing density by { $formula }: { $value }, { $class }.
sample-packing_apart = The two packing densities are not to be compared with each other.
sample-clay_hides = With so much clay a harmless density proves nothing: the structure can be harmed all the same.
sample-no_call = One ring is one spot of one layer and no call: the face tells how the layer is built, and why.

sample-cone_hard = { $found } holds roots back: they find it hard from { $mark } on.
sample-cone_soft = Roots can push through { $found }: they find it hard from { $mark } on.
sample-cone_dry = { $found } in dry soil says nothing: dry soil is hard whatever its structure. Push again a day or two after it was wetted through.
sample-cone_wet = { $found } in wet soil says nothing: wet soil gives way whatever its structure. Push again when it has drained for a day or two.
sample-cone_stony = A cone among stones says nothing: it stands on them. Look at the earth between them.
sample-cone_moisture = { $found } says nothing while nobody knows how moist the soil was.
sample-loosening = Just under the plough layer in spring, soil like this was held to need loosening from { $range } on (Petelkau and Rogasik 1994): { $need }.
loosening_need-not_indicated = this is below, and hard is not yet a reason to loosen
loosening_need-open = this is within, so the resistance leaves it open
loosening_need-indicated = this is above
