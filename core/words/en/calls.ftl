# Calls and zones; depth, sureness, what would change it; cautions and what has to follow.
# $the and $on are zones in the forms below, joined where there are several.

zone-open = open ground
    .the = the open ground
    .on = on the open ground
zone-headland = headland
    .the = the headland
    .on = on the headland
zone-wheelings = wheelings
    .the = the wheelings
    .on = in the wheelings
zone-gateway = gateway
    .the = the gateway
    .on = in the gateway
zone-patch = marked patch
    .the = the marked patch
    .on = on the marked patch
zone-whole = whole field
    .the = the whole field
    .on = in this field

# .sentence stands alone; .clause stands in the sentence for a field whose zones differ.
call-leave_it = leave it
    .sentence = Leave { $the } as it is.
    .clause = leave { $the }
call-roots_first = roots first
    .sentence = Roots first { $on }: no loosening for now.
    .clause = roots first { $on }
call-loosen = loosen
    .sentence = Loosen { $the }.
    .clause = work only { $the }
call-wait = wait
    .sentence = Wait, and loosen { $the } when the soil is dry enough.
    .clause = wait until it is drier { $on }
call-drain_first = drain first
    .sentence = Drain { $the } first.
    .clause = drain { $the } first
call-dig_again = dig again
    .sentence = Dig again { $on }.
    .clause = dig again { $on }
call-ask_specialist = ask a specialist
    .sentence = Ask a specialist before working { $the }.
    .clause = ask a specialist before working { $the }

loosen-at = Loosen { $the } at { $tip }.
loosen-roll_first = Loosening { $the } is justified, but not yet fit: roll soil from { $depth } first.
loosen-roll_not_applicable =
    Loosening { $the } at { $tip } is justified; this soil will not roll, so judge its moisture another way.
loosen-strip_first = Loosening { $the } is justified; dig behind the trial strip before the rest.
ask-leave = Do not loosen { $the } yet: what is buried near there must not be worked over without its owner's leave.
ask-buried = Do not loosen { $the } yet: what lies buried there is too near or not known. Ask whom it belongs to.
ask-machine = Loosening { $the } takes another machine than those noted; ask before working it.
dig_again-behind = Dig behind the machine { $on } before anything else.
dig_again-loosened = Dig again { $on }: it was loosened since the pits were dug.
dig_again-no_reference = Dig the reference pit first: without it nothing can be said { $on }.
wait-strip_first = Hold back { $on }: the last run did not do it. Change what the hole behind it says, and run another trial strip.
sentence-did_not_last = Loosening did not last here.
wait-at = Wait, and loosen { $the } at { $tip } when the soil is dry enough.
call_line-at = { $call } { $tip }
call_line-no_reference = reference pit missing
call_line-roll_first = { $call } { $tip }, roll first
call_line-strip_first = { $call } { $tip }, trial strip first
call_line-roll_not_applicable = { $call } { $tip }, judge the moisture first
sentence-whole = { $clauses }.
clause-loosen_unfit = work only { $the }, once the soil is known to be dry enough
clause-ask_buried = ask what lies buried before working { $the }
clause-hold_back = hold back { $on } until a changed trial strip has done it
clause-no_reference = dig the reference pit for { $the }
    .rest = dig the reference pit for the rest
clause-strip_first = dig behind the trial strip before the rest of { $the }
clause-rest_unknown = the rest of the field is not known yet

sureness-sure = sure
sureness-likely = likely
sureness-cannot_say = cannot say
sureness-with_share = { $sure }, { $share }

how_sure-one_pit = of the pit that was dug { $face }; of the ground around it { $ground }, for it is the only one
how_sure-pits = of the pits that were dug { $face }; of the ground between them { $ground }, for { $agree } of { $pits } say the same

tip-clears = clears { $share } places; { $pits }, sure to { $confidence }
tip-unsure = meant to clear { $share } places, but with only { $pits } that is sure to no more than { $confidence }
tip-more = { $statement }; { $enough } would do
tip-sentences = Tip depth { $tip }, just below the layer, which ends at { $bottom }. { $statement }.
tip-label = Tip { $tip }

change-sentence = It would be { $call } if { $if }.
change-hangs = The call hangs on one answer. { $change }
change-layer = { $if } at { $depths }
change-field = { $if }
change-roll_surface = soil from the surface { $if }
change-roll_depth = soil from tip depth { $if }
change-deeper = { $obstacle } lay at { $depth } or deeper
change-shallower = { $obstacle } lay less deep than { $depth }
change-leave = the owner of what lies buried gave leave in writing
change-deep_clay = you held to loosening clay so deep
change-another_pit = another pit here read like pit { $pit }

rooting-loss = The layer from { $top } cuts off { $percent } of the { $potential } that { $crop } could root.
rooting-loss_water = The layer from { $top } cuts off { $percent } of the { $potential } that { $crop } could root; below it this soil has room for { $water } of water that crops can use.
water-mm = { $range }{ "\u00A0" }mm

pits-numbered = Pit { $number }, { $place }
pits-another = Another pit would tell most { $on }.
pits-enough = More pits would not change the call.

caution-nobody_asked = Nobody has checked what lies under this field. Ask first: in most countries it costs nothing.
caution-ask_anew = The answer about what lies under this field has no day or is more than a year old. Ask again first.
caution-lift_out = Lift the legs over the strips that are named: a cable or pipe lies there.
caution-ask_before_digging = Cables, pipes and drains: ask before you dig or loosen; local rules come first.
caution-fill_hole = Fill the hole when you are done.
caution-deep_pit = Never enter a pit deeper than your knee to read it; shore or step deeper pits by the local code.
caution-knife_away = Keep the knife pointing away from your body.
caution-machine_stopped = Machine stopped and keys out before anyone goes near the tines.
caution-protected_ground = Protected or ancient ground, contracts, the maker's limits and licensed or qualified advice come before this call.
caution-estimates_only = Depths are estimates; keep to the range shown.
caution-drains_unknown = The depth of any drains is not noted: find it out before loosening.
caution-cloddy_dry = Dry at depth: it pulls hard and comes up in clods.
caution-sand_slow_to_pay = On sand, resistance alone does not show that loosening pays.
caution-silt_at_risk = Silty soil can slump after loosening and lose yield by it.
caution-trial_strip = Loosen a trial strip first and dig behind it before doing the rest.
caution-across_slope = The ground slopes: run the legs across the slope, never up and down; a slot down the slope carries water and soil.
caution-slope_washes = On so steep a slope loosened ground washes away: keep it covered, or leave strips unloosened across it.
caution-short_to_settle = The next crop is sown within four weeks: loosened ground may not have settled by then. Firm the seedbed, or loosen after that crop.
caution-short_for_roots = The next crop is sown within two months: too short for a crop in between to root deep. Sow a deep-rooted crop next, or do it after that one.

follow_up-roots_after = Sow a deep-rooted crop soon: roots open the soil and hold it open.
follow_up-organic_matter = Add organic matter; without it the soil slumps again.
follow_up-no_traffic = Keep heavy wheels off loosened ground.
follow_up-remove_cause = Find out what pressed it and put a stop to it, or it will come back.
follow_up-dig_behind = Dig again behind the machine to see whether the layer is broken.
follow_up-mend_drainage = See to the drainage before anything else.
follow_up-roll_again = Roll the soil again when it has dried.
follow_up-dig_when_moist = Dig again when the face is moist.
follow_up-dig_in_rooted_crop = Dig again in a rooted crop.

ask-field = { $question } The answer can change { $what } { $on }.
ask-field_line = Not noted yet; it can change { $what } { $on }.
bears_on-call = the call
bears_on-tip = the tip depth
bears_on-caution = what to mind
field_input-tillage = How deep is the field tilled every year?
field_input-stony = Do stones stop the knife?
field_input-plates_soft = Do the plates near the surface part at a touch, and lie in the reference too?
field_input-slope = How steep is the ground that is worked, in metres of fall in 100 m?
field_input-next_sown = When is the next crop sown?
field_input-next_crop = What is the next crop?
