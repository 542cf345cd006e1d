# The plan of a field.

plan-title = Plan of { $field }
plan-described = Plan of { $field }, north up.
plan-described_area = Plan of { $field }, { $area }, north up.
plan-no_outline = The edge of the field is not noted.
plan-zone = { $zone }: { $call }.
plan-zone_area = { $zone }, { $area }: { $call }.
plan-ground_area = { $zone }, { $area }.
plan-ground = { $zone }.
plan-tramlines = { $count ->
    [one] One tramline.
   *[other] { $count } tramlines.
}
plan-part = { $label }, { $lie }.
plan-part_named = { $zone } { $lie }: { $label }.
plan-pit = Pit { $number }, { $place }, { $lie }: { $condition }.
plan-pit_off = Pit { $number }, { $place }, not on the plan: { $condition }.
plan-after_dig = Dug behind the machine, { $label }: { $lie }.
plan-after_dig_off = Dug behind the machine, { $label }: not on the plan.
plan-buried = Not to be dug on: { $lines }.
plan-buried_line = { $kind } { $from } { $to }
plan-buried_spot = { $kind } { $lie }
plan-next = Dig next { $lie }.
plan-next_from = Dig next { $lie }, { $distance } { $way } pit { $number }.
plan-you_stand = You stand { $lie }.
plan-in_middle = in the middle
plan-from_middle = from the middle
plan-to_middle = to the middle

plan-pits = Pits, by their tightest layer:
plan-not_judged = not judged
plan-reference = Reference pit
plan-after_digs = Dug behind the machine
plan-next_word = next
plan-next_here = Dig next here
plan-tramline = Tramlines
plan-lettered = { $kind } ({ $letter })
plan-named = { $zone }: { $call }
plan-pits_off = Pits not on the plan, as no position in the field is noted: { $pits }
plan-after_digs_off = Dug behind the machine, but not on the plan: { $digs }
plan-zones_off = Not on the plan: { $zones }.

walk-way = { $distance } { $way }
walk-to = Walk { $distance } { $way }.
walk-here = You are there.

buried-drain = drain
    .count = { $count ->
        [one] a drain
       *[other] { $count } drains
    }
buried-mole_drain = mole drain
    .count = { $count ->
        [one] a mole drain
       *[other] { $count } mole drains
    }
buried-service = service
    .count = { $count ->
        [one] a service line
       *[other] { $count } service lines
    }

compass-north = north
    .in = in the north
    .from = from the north
    .to = to the north
    .of = north of
compass-north_east = north-east
    .in = in the north-east
    .from = from the north-east
    .to = to the north-east
    .of = north-east of
compass-east = east
    .in = in the east
    .from = from the east
    .to = to the east
    .of = east of
compass-south_east = south-east
    .in = in the south-east
    .from = from the south-east
    .to = to the south-east
    .of = south-east of
compass-south = south
    .in = in the south
    .from = from the south
    .to = to the south
    .of = south of
compass-south_west = south-west
    .in = in the south-west
    .from = from the south-west
    .to = to the south-west
    .of = south-west of
compass-west = west
    .in = in the west
    .from = from the west
    .to = to the west
    .of = west of
compass-north_west = north-west
    .in = in the north-west
    .from = from the north-west
    .to = to the north-west
    .of = north-west of

# Behind the machine, and before beside after.

section_behind-title = Section behind the machine
section_behind-floor = Firm ground, as measured: { $readings }
section_behind-loosened = Loosened ground
section_behind-stayed = Stayed firm above the depth aimed at, { $target }
section_behind-layer_left = What is left of the layer, { $depths }
section_behind-layer_gone = The layer at { $depths } is broken at every reading.
section_behind-ridge = Ridge between the tines, { $ridge }
section_behind-tip = Tips as set, { $tip }
section_behind-slots = Bottoms of the slots from left to right: { $slots }
section_behind-narrower = Widths are drawn at another scale than depths.
section_behind-described = Section behind the machine, from tine line to tine line over { $spacing }. Depth to firm ground: { $readings }.
section_behind-described_none = Section behind the machine. Nothing is measured yet.
section_behind-described_ridge = A ridge { $ridge } high stands { $place }.
section_behind-described_no_ridge = No ridge stands between the tines.
section_behind-described_tip = The tips were set to { $tip }.
section_behind-described_stayed = Some ground stayed firm above the depth aimed at, { $target }.
section_behind-described_clear = Down to the depth aimed at, { $target }, no reading met firm ground.
section_behind-described_layer_left = Part of the layer at { $depths } is left.
section_behind-described_slots = Bottoms of the slots from left to right: { $slots }.
section_behind-ridge_middle = in the middle
section_behind-ridge_left = nearer the left tine
section_behind-ridge_right = nearer the right tine
pair-title = Before and after
pair-title_before = Before
pair-title_after = After
pair-described = Before: { $before } After: { $after }

line_sort-drain_in_stone = drain in stone
line_sort-bare_drain = drain without stone
line_sort-power_cable = power cable
line_sort-gas_or_oil = gas or oil pipe
line_sort-water_main = water main
line_sort-farm_water = farm water pipe
line_sort-telephone = telephone cable or fibre
