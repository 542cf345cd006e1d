# A machine set for a depth.

machine-estimate = { $mid } ({ $lo }–{ $hi })

set-tip = Tips at { $tip }.
set-not_worked = This is not to be worked: { $why }. The figures below only tell what it would take.
set-reach = The machine reaches { $reach }: it does not get to { $tip }.
set-speed = { $speed } is not among the speeds of this machine ({ $slowest } to { $fastest }).
set-critical = Critical depth of this foot lies somewhere at { $range }, 5 to 7 times its width: the tips run { $place }.
set-critical_winged = Critical depth of this foot lies at { $from } or deeper: 5 times its width without wings, and nobody says how much deeper with them. The tips run { $place }.
set-shallower = Critical depth lies shallower with { $shifts }; by how much nobody can say.
set-deeper = It lies deeper with { $shifts }.
set-deepest = The deepest tips of this machine that are held to stay above critical depth: { $depth }.
set-foot = For tips at { $tip } it takes a foot of { $sure } to stay above critical depth; one narrower than { $least } runs below it.
set-foot_winged = For tips at { $tip } it takes a foot of { $sure } to be held to stay above critical depth; with a narrower one the trial strip has to show it.
set-spacing = Spacing { $spacing }: { $fit } (published for this depth: { $range }).
set-no_spacing = The spacing is held against no range: { $why }.
set-if = Only if the trial strip shows the tips above critical depth: { $sentence }
set-ground = By the figure, with sides of { $sides }, { $share } of the ground is loosened, with ridges of { $ridge } between the tines.
set-ground_apart = By the figure, with sides of { $sides }, { $share } of the ground is loosened; what neighbouring tines loosen does not meet.
set-single = A tine on its own loosens { $area }, { $width } wide at the surface.
set-no_ground = How much is loosened is not told: { $why }.
set-layer_full = By the figure the layer is broken over the full width down to { $bottom }; a spacing of up to { $widest } would do.
set-layer_part = By the figure the layer is not broken over the full width at { $bottom }: that takes a spacing of at most { $widest }, by how steep its sides are.
set-layer_flat = By the figure the layer is broken over the full width at { $bottom } only where the ground breaks at flat sides; with steep ones that takes a spacing of { $widest } or less.
set-layer_tip = With this spacing it takes tips at { $tip }.
set-layer_dig = The dig behind the machine settles it. Roots need ways through, not always the full width.
set-no_layer = Whether a layer is broken is not told: { $why }.
set-leading = Leading tines: { $first } or { $second }, by two published trials that do not agree.
set-leading_fitted = They are fitted at { $depth }.
set-leading_draught = They were found to save up to { $saved } of the draught there ({ $source }); this is in no other figure.
set-leading_fuel = They were found to save { $saved } of the fuel there ({ $source }); this is in no other figure.
set-draught = Draught { $draught } after ASABE D497, with its spread of half either way; at the drawbar { $power }.
set-wings_wider = The wings of that table are { $source } wide; wider ones like these pull more than is told.
set-tractor = The tractor has { $has } at the PTO, it takes { $needed }: { $fit }.
set-held = It holds { $speed } with this machine; ground worked, fuel and cost go by that.
set-grip = Its wheels pull { $best } at the slip for best traction, { $most } at the most slip that is work: { $fit }.
set-no_grip = Whether its wheels grip is not told: { $why }.
set-fuel = Fuel { $area }, { $hour } (by the { $formula }).
set-no_fuel = Fuel is not told: { $why }.
set-work = Ground worked: { $done }.
set-no_work = Ground worked is not told: { $why }.
set-cost = Cost { $cost }.
set-break_even = It pays from { $yield } of grain more.

compare-row = { $measure }: { $one } against { $other }.
compare-none = not told ({ $why })
compare-if = { $value } if the tips run above critical depth

tine-force = By McKyes and Ali 1977 one plain tine pulls { $draught } in soil of this cohesion and friction, adhesion left out.

section-title = Section across the machine
section-loosened = Ground loosened
section-loosened_if_above = Ground loosened if the tips run above critical depth
section-hangs_on_slope = Hangs on the slope of its sides: loosened where they are as flat as { $flat }, left where they are as steep as { $steep }
section-ridge_range = Ridge between the tines, { $ridge } by the slope of the sides
section-described_slope = Dots show what even sides of { $steep } loosen; upright strokes show what is loosened only where the sides are flatter, down to { $flat }.
section-ridge = Ridge between the tines, up to { $ridge }
section-layer = Layer to be broken, { $depths }
section-critical = Critical depth, somewhere at { $range }
section-critical_winged = Critical depth, somewhere from { $from } down
section-tip = Tips at { $tip }
section-leading = Tips of the leading tines at { $depth }
section-no_ground = No loosened ground is drawn: { $why }.
section-described = { $legs ->
    [one] Section across the machine: one leg, { $spacing } from run to run, tips at { $tip }.
   *[other] Section across the machine: { $legs } legs, { $spacing } apart, tips at { $tip }.
}
section-described_layer = The layer to be broken lies at { $depths }.
section-described_critical = Critical depth lies somewhere at { $range }: the tips run { $place }.
section-described_critical_winged = Critical depth lies somewhere from { $from } down: the tips run { $place }.

critical-above = above critical depth
critical-uncertain = within its range, so dig a trial strip
critical-below = below critical depth

critical_shift-wetter = wetter soil
critical_shift-worn_foot = a worn foot
critical_shift-wings = wings
critical_shift-leading_tines = leading tines

spacing_fit-too_wide = too wide
spacing_fit-fits = it fits
spacing_fit-closer_than_needed = closer than needed

tractor_fit-enough = enough
tractor_fit-tight = tight
tractor_fit-not_enough = not enough

why_not-below_critical_depth = below critical depth the soil is pressed aside, not lifted
why_not-too_wet = soil that rolls to a thread smears and does not break
why_not-no_layer = no layer is given
why_not-tip_above_layer_bottom = the tips do not run below the bottom of the layer
why_not-no_published_range = none is published for plain feet with leading tines
why_not-no_texture = the texture of the soil is not noted
why_not-no_machine = no machine is given
why_not-no_tractor = no tractor is given
why_not-not_enough_power = the tractor does not have the power
why_not-not_weighed = the mass of the tractor is not known, so weigh it
why_not-call_forbids = the call for this ground is not to loosen it now
why_not-not_given = what it takes is not given

fuel_formula-part_load = straight part-load line at full throttle
fuel_formula-older = older part-load curve

measure-share = Share of the ground loosened
measure-ridge = Ridge
measure-draught = Draught
measure-pto_power = PTO power
measure-work_rate = Ground worked
measure-fuel = Fuel
measure-cost = Cost
measure-break_even = Grain that pays for it
