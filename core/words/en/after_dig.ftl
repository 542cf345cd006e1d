# A pass of the machine, and what the holes dug behind it say.

# What is found behind the machine. .season names it a season on; .pass is said of the whole pass, .head above all else.
verdict-done = done
    .season = held
    .pass = The pass did what was wanted.
    .head = Loosened as wanted
verdict-partly = partly
    .season = held in part
    .pass = The pass loosened in places only.
    .head = Loosened in places
verdict-not_done = not done
    .season = not held
    .pass = The pass left the layer as it was.
    .head = Not loosened
verdict-worse = worse
    .season = worse than before
    .pass = The pass made the ground worse.
    .head = The ground is worse for it
verdict-cannot_say = cannot say
    .season = cannot say whether it held
    .pass = The holes behind this pass do not say what it did.
    .head = Not enough read to say

dig-sentence = { $verdict }: { $found }.
dig-layer_broken = { $share } of the layer is broken
dig-layer_still_broken = { $share } of the layer is still broken
dig-loose_to = { $share } of the ground down to { $depth } is loose
dig-loose = { $share } of the ground is loose
dig-done = the ground is loosened
dig-partly = it is loosened in places
dig-layer_stands = the layer stands as it was
dig-ground_stands = the ground stands as it was
dig-firm_again = the ground is firm again
dig-firm_again_at = it is firm again { $where }
dig-pressed = the ground is pressed round the slots
dig-thrown = subsoil lies on the surface in large clods
dig-harmed = the ground took harm
dig-no_depths = no depths to firm soil were read
dig-no_mark = it takes depths to firm soil from line to line, and the depth that was wanted
dig-stayed_firm = it is firm { $where }
dig-stretch = { $across } ({ $width } wide)
dig-stretches = { $across } ({ $width } wide in all)
dig-stretch_share = { $across } ({ $share } of the width)

across-at_line = at a tine line
    .both = at both tine lines
across-between = between the tine lines
across-throughout = from tine line to tine line
stretch-at = Firm { $across }: { $depths } from the first line.
stretch-share = Firm { $across }: from { $from } to { $to } of the way to the next line.

# What it stands on.
stands-no_readings = It takes depths to firm soil from line to line, and a depth to hold them against.
stands-layer_broken = { $share } of the layer is broken; it counts as done from { $mark }, which is our own mark.
stands-section_loose = No layer is known; { $share } of the ground down to the depth wanted is loose. It counts as done from { $mark }, which is our own mark.
stands-no_deeper = Firm soil begins at { $now } on average, no deeper than before the pass ({ $before }).
stands-pressed_slot = The slot is smeared or narrow, and little is loosened round it.
stands-thrown = Subsoil lies on the surface in large clods.
stands-plates_left = Most plates of the layer are left whole.
stands-floor_left = A floor of the layer stays from tine line to tine line.
stands-slot_seen = { $seen }; no depths were read, but so it looks where nothing was loosened.
stands-against = { $seen }.
stands-published = Published for ideal conditions: { $range } of the compacted layer broken (USDA Forest Service 0834-2828, p. 6).
stands-mark = No source gives a mark from which a pass is done; ours is { $mark }.

# Figures.
measured-share = Measured: { $share } of the ground down to { $depth } is loose.
measured-share_only = Measured: { $share } of the ground is loose.
measured-no_share = How much is loose is not told: { $why }.
measured-layer = Measured: the layer, which ends at { $bottom }, is broken at { $share } of the readings.
measured-layer_only = Measured: the layer is broken at { $share } of the readings.
measured-layer_left = Measured: of the layer ({ $depths }) { $left } is left on average; { $share } of it is broken.
measured-layer_gone = Measured: nothing is left of the layer ({ $depths }).
measured-no_layer = Whether the layer is broken is not told: { $why }.
measured-ridge = The ridge between the tine lines is { $ridge } high.
measured-ridge_figure = The ridge between the tine lines is { $ridge } high; by the figure { $figure }.
measured-flat = There is no ridge between the tine lines.
measured-flat_figure = There is no ridge between the tine lines; by the figure { $figure }.
measured-no_ridge = How high the ridge is, is not told: { $why }.
measured-figure = By the figure { $share } of the ground would be loosened.
measured-no_figure = The figure gives nothing to compare with: { $why }.

# What may have gone wrong.
failure_cause-too_wet = too wet
failure_cause-too_dry = too dry
failure_cause-too_shallow = tips too shallow
failure_cause-below_critical = tips below critical depth
failure_cause-spacing_too_wide = spacing too wide
failure_cause-too_slow = too slow
failure_cause-too_fast = too fast
failure_cause-worn_feet = feet worn or wings lost
failure_cause-not_level = machine not level
failure_cause-old_loosening = slots of an older loosening

cause-likely = Likely: { $cause }, { $share }
cause-possible = Possible: { $cause }, { $share }
cause-unlikely = Hardly: { $cause }, { $share }
cause-bare = { $line }.
cause-for = { $line }. For it: { $for }.
cause-against = { $line }. Against it: { $against }.
cause-both = { $line }. For it: { $for }. Against it: { $against }.

check-roll_at_tip = roll soil from the depth of the tips
check-measure_slots = measure how deep the slots are, against the depth that was wanted
check-look_at_walls = look at a slot; if its walls are pressed and shining and it is narrow below, the tips ran below critical depth
check-read_across = read the depth to firm soil from one tine line to the next, and measure the spacing of the legs
check-time_the_run = time a measured run, and compare it with the speeds of the machine
check-look_at_feet = look at feet and wings, and measure how wide they are
check-slots_across = measure the slots behind the outer legs on both sides
check-look_for_old_slots = look in the hole for slots or loose ground that no tine of this pass made
check-line = Check: { $check }.

remedy-wait_for_drier = wait until soil from the depth of the tips no longer rolls to a thread
remedy-wait_for_moister = wait until the soil is moister at the depth of the tips
remedy-deeper = set the tips deeper, to just below the layer
remedy-shallower_or_wider = set the tips shallower, or fit a wider foot or wings
remedy-closer = set the legs closer, or run a second time between the lines
remedy-faster = drive faster, within the speeds of the machine
remedy-slower = drive slower
remedy-new_feet = fit new feet or wings
remedy-level_it = level the machine from side to side
remedy-shift_lines = shift the tine lines, or run at an angle to the old ones
remedy-line = Then: { $remedy }.
remedy-if_no_thread = Then, if it does not roll to a thread: { $remedy }.

# What is asked of the hole and the pass, and what each answer says among reasons.
pass_clue-roll = roll test at the depth of the tips
pass_clue-depth = depth of the slots
pass_clue-set_depth = depth the machine was set to
pass_clue-slots = slots from leg to leg
pass_clue-critical = depth against critical depth
pass_clue-profile = form of the loosened ground
pass_clue-smear = walls of the slot
pass_clue-lift = surface
pass_clue-clods = lumps
pass_clue-subsoil_up = subsoil on the surface
pass_clue-plates = plates left of the layer
pass_clue-pattern = depth to firm soil from line to line
pass_clue-ridge = ridge between the lines
pass_clue-spacing = spacing of the legs
pass_clue-speed = speed
pass_clue-feet = feet and wings
pass_clue-old_slots = older slots
pass_clue-loosened_before = loosening before this one

behind_roll-thread = soil from the depth of the tips rolled to a thread
behind_roll-short_lengths = soil from the depth of the tips cracked into short lengths
behind_roll-crumbles = soil from the depth of the tips crumbled
behind_roll-will_not_hold = soil from the depth of the tips would not hold together
behind_depth-short = the slots are less deep than needed
behind_depth-right = the slots are as deep as needed
behind_depth-deep = the slots are deeper than needed
behind_set_depth-short = the machine was set less deep than needed
behind_set_depth-right = the machine was set as deep as needed
behind_set_depth-deep = the machine was set deeper than needed
behind_slots-even = the slots are equally deep from leg to leg
behind_slots-sloping = the slots get deeper from one side to the other
behind_slots-jagged = one slot or some are off the others
behind_critical-above = the tips ran above critical depth
behind_critical-uncertain = critical depth may lie above the tips or below them
behind_critical-below = the tips ran below critical depth
behind_profile-v = the loosened ground is open to the surface, its sides straight
behind_profile-y = below the loosened ground there is only a narrow slot
behind_smear-none = the walls of the slot are not smeared
behind_smear-smeared = the walls of the slot are smeared
behind_lift-none = the surface did not lift
behind_lift-even = the surface lifted slightly and evenly
behind_lift-furrows = the surface was thrown up into furrows
behind_clods-small = the lumps are small
behind_clods-large = there are lumps larger than a fist
behind_subsoil_up-yes = subsoil lies on the surface
behind_subsoil_up-no = no subsoil lies on the surface
behind_plates-none = no plates of the layer are left
behind_plates-some = some plates of the layer are left whole
behind_plates-most = most plates of the layer are left whole
behind_pattern-loose = it is loose nearly everywhere from line to line
behind_pattern-ridge = the ground between the lines stayed firm
behind_pattern-slot_only = it is loose in the slot only and firm right beside it
behind_pattern-shallow = it is nowhere loose deep enough
behind_pattern-one_side = it is loose on one side and firm on the other
behind_pattern-loose_between = it is looser between the tine lines than in them
behind_ridge-lower = the ridge is lower than the figure has it
behind_ridge-as_reckoned = the ridge is about as high as the figure has it
behind_ridge-higher = the ridge is higher than the figure has it
behind_spacing-too_wide = the legs stand wider apart than published for this depth
behind_spacing-fits = the spacing of the legs is within the published range
behind_spacing-closer_than_needed = the legs stand closer than published for this depth
behind_speed-below = it was driven slower than the machine is meant for
behind_speed-within = the speed was one the machine is meant for
behind_speed-above = it was driven faster than the machine is meant for
behind_feet-as_noted = the feet are as wide as noted
behind_feet-worn = the feet are worn narrower
behind_feet-lost = a foot or a wing is gone
behind_old_slots-yes = there is loose ground or a slot that no tine of this pass made
behind_old_slots-no = there is no slot of an older loosening
behind_loosened_before-recent = the ground was loosened only a few years before
behind_loosened_before-long_ago = the loosening before this one was long ago

# What is tapped in the hole.
extent-trial_strip = trial strip
extent-zone = whole zone
profile-v = open to the surface, straight sides
profile-y = open above, a narrow slot below
smear-none = not smeared
smear-smeared = smeared
lift-none = no higher than before
lift-even = slightly raised, and evenly
lift-furrows = thrown up into furrows
clods-small = small
clods-large = larger than a fist
plates-none = none left
plates-some = some left
plates-most = most left
feet-as_noted = as wide as noted
feet-worn = worn narrower
feet-lost = a foot or a wing is gone

# The pass.
pass-strip_on = Trial strip { $on }
pass-strip = Trial strip
pass-zone_on = Pass { $on }, the whole zone
pass-zone = Pass, the whole zone
pass-run_on = Pass { $on }
pass-run = Pass
pass-day = { $day } { $month ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[12] December
} { $year }
pass-with = with { $machine }
pass-with_at = with { $machine } at { $tip }
pass-at = tips at { $tip }
pass-not_dug = No hole has been dug behind this pass yet.
pass-worst = So says the worst of the { $holes } holes behind it.
pass-one_hole = All this comes from one hole, and one hole tells of one place: dig behind other legs too.
pass-thread = Soil from the depth of the tips rolled to a thread that day: too wet to loosen, whatever else was seen.
pass-lasts_unknown = How long it lasts hangs on the wheels: without controlled traffic the benefit can be gone within { $least } months, with it it lasts 2 to 3 years or more (Farming Ahead; GRDC 2017).
pass-lasts_without = Without controlled traffic the benefit can be gone within { $least } months (Farming Ahead; GRDC 2017).
pass-lasts_controlled = With controlled traffic it lasts 2 to 3 years or more (Farming Ahead; GRDC 2017).
pass-no_strip = The whole zone was worked before the hole behind a trial strip had shown that it loosens.
pass-driven_same_day = Heavy wheels ran over it on the day it was loosened.
pass-driven = { $days ->
    [one] Heavy wheels ran over it on { $day }, one day after it was loosened.
   *[other] Heavy wheels ran over it on { $day }, { $days } days after it was loosened.
}
pass-driven_why = On a sandy loam in the UK, driven on a week after loosening, any pass of the wheels left the soil firmer than before loosening, down to { $depth } (soilandwater.org.uk).

next_step-dig_behind = dig behind the machine before anything else
next_step-go_on = go on with the zone as set
next_step-keep_off = no more loosening; keep heavy wheels off and roots in the ground
next_step-check_first = make the check that tells the likely causes apart
next_step-change_and_try = change the setting, run another trial strip and dig behind it
next_step-wait = wait until the moisture is right, then run another trial strip and dig behind it
next_step-stop_loosening = loosen no more until the cause is found and removed
next-line = Next: { $step }.
next-remedy = Next: { $remedy }; then another trial strip.
next-check = Next: { $check }.

lasting-held = it has held
lasting-partly = it has held in part
lasting-lost = it has closed again
lasting-cannot_say = whether it has held cannot be said
held-sentence = { $lasting }.
held-shares = { $lasting }: { $then } was loose behind the machine, { $now } is a season on.
held-then = { $lasting }: { $then } was loose behind the machine, a season on nothing was read.
held-now = { $lasting }: { $now } is loose a season on, behind the machine nothing was read.

# The pit before beside the hole behind.
pair-before = Before: { $condition } at { $depths }.
pair-deeper = Behind the machine: firm only from { $now } on average.
pair-no_deeper = Behind the machine: firm from { $now } on average, no deeper than before.
pair-not_read = Behind the machine no depths to firm soil were read.
pair_by-noted = compared with the pit named in the notes
pair_by-nearest = compared with the nearest pit of the zone from before the pass
pair_by-last = compared with the last pit of the zone from before the pass, as positions are not known

# As spoken by a screen reader.
behind-hole = Hole behind the machine.
behind-hole_season = Hole behind the machine, a season on.
behind-readings = From tine line to tine line firm soil begins at { $depths }.
behind-slots = From left to right the slots are { $depths } deep.
behind-wanted = { $depth } was wanted.
behind-layer = The layer ended at { $bottom }.
behind-seen = { $seen }.
