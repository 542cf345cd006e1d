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
