# Screens of a field's details, and of lines of what lies buried.

detail-name = name of the field
    .why = As the farm calls it.
detail-headland = width of the headland
    .why = It parts the headland from the open ground, along the edge that was walked.
detail-tramline = spacing of the tramlines
    .why = With the width of a tyre it gives the share of the ground under wheels.
detail-wheel_track = wheel track
    .why = From the middle of one tyre to the middle of the other, of the wheels that run in the tramlines.
detail-tyre = width of a tyre
    .why = Of the wheels that run in the tramlines. With the spacing it gives the share of the ground under wheels.
detail-drains = depth of the drains
    .why = To the top of the pipes or of their gravel, the shallowest there is.
detail-mole_drains = depth of the mole drains
    .why = To the top of the channels, the shallowest there is.
detail-services = depth of cables and pipes
    .why = The shallowest there is. Ask whom they belong to before anybody digs or loosens.
detail-clearance = distance kept above drains
    .why = The tips stay this far above drains. Where nothing is noted it is { $drains }, above mole drains { $moles }.
detail-services_clearance = distance kept above cables and pipes
    .why = Where nothing is noted it is { $services }. Without their owner's leave it is never less than { $floor }.
detail-services_asked = asked about cables and pipes
    .why = Who was asked what lies buried. No plan shows what the farm laid itself.
detail-services_asked_on = day of their answer
    .why = An answer lapses after a year: then ask again.
detail-services_leave = leave to work above cables and pipes
    .why = Only their owner gives it. It counts with the day it was given.
detail-texture = texture of the topsoil
    .why = As it feels between the fingers.
detail-organic_matter = organic matter of the topsoil
    .why = By the soil's colour, or from a laboratory.
detail-crop_now = crop now
    .why = What stands on the field.
detail-last_crop = last crop
    .why = What stood there before it.
detail-last_loosened = last loosening
    .why = Ground loosened not long ago settles again sooner than old ground.
detail-last_traffic = last heavy wheels
    .why = When a heavy machine last ran over the field.
detail-last_rain = last rain
    .why = Rain that wetted the soil. A roll test from before it counts no more.
detail-tillage = set depth of tillage
    .why = A layer at this depth is more likely pressed by wheels and tools than one elsewhere.
detail-stony = many stones
    .why = Where stones stop the knife, its resistance tells nothing of the soil between them.
detail-plates_soft = plates near the surface that part at a touch
    .why = Frost leaves soft plates, in the reference too; they go by summer and ask for nothing.
detail-next_crop = next crop
    .why = How deep it roots decides what a layer costs it.
detail-next_sown = day the next crop is sown
    .why = Loosened ground has to settle before it is sown, and roots need time to do their work.
detail-slope = slope of the ground
    .why = In metres of fall in 100 m, where it is steepest of what is worked. Slots down a slope carry water and soil.
detail-reach = deepest tip depth at hand
    .why = How deep the machine that is at hand can go. Nothing deeper is called for.
detail-controlled_traffic = controlled traffic
    .why = Whether all wheels run in the same lanes year after year. It tells how long a loosening may last.
detail-deep_clay = loosening deep clay
    .why = Deep in clay a loosening seldom holds and may do harm, so it is not called for. The farm may hold to it.

detail-remark = remark
    .why = Whatever else is to be known of this field.

detail_text-another = the line bends or ends here
detail_text-begin_on_plan = begin it on the plan
detail_text-buried = what lies buried
detail_text-day_to_come_wrong = Not noted: write the day as 2026-09-12, from today on and at most two years ahead.
detail_text-day_wrong = Not noted: write the day as 2026-09-12, and none that is still to come.
detail_text-details = details of the field
detail_text-drop_place = take the last place away
detail_text-go_on_by_hand = another place on the plan
detail_text-ground = the ground
detail_text-held_to = hold to it
detail_text-known = What is known of the field
detail_text-leave_given = leave was given
detail_text-leave_not_given = no leave
detail_text-line_begins = the line begins here
detail_text-line_empty = This line has no place yet. Stand where it begins, or begin it on the plan.
detail_text-line_on = Walk along it and tap wherever it bends and where it ends; or go on from here on the plan.
detail_text-line_short = A line is only begun: give it a second place or take it away, else no other phone takes the file in.
detail_text-line_sort = what it is
detail_text-lines = lines of drains, cables and pipes
detail_text-lines_short = Drains, cables and pipes, as they run.
detail_text-lines_why = A pit is never proposed near a line, and every line is on the plan. What is not marked here may still lie there: ask before digging.
detail_text-move_last = move its last place
detail_text-new_line = mark another line
detail_text-no_line = No line is marked.
detail_text-not_held_to = follow the advice
detail_text-not_none = What is not noted counts as not known, never as not there.
detail_text-or_day = another day, as 2026-09-12
detail_text-or_percent = in percent by mass
detail_text-or_slope = another slope, in percent
detail_text-outline_short = The edge of the field is only begun: walk it to the end or start it anew, else no other phone takes the file in.
detail_text-percent_wrong = Not noted: write a number from 0 to 100.
detail_text-same_place = Not noted: this is where the last place is.
detail_text-use = soil and crops

details-deep = { $depth } deep
details-places = { $count ->
    [0] no place yet
    [one] one place
   *[other] { $count } places
}
details-marked = { $count ->
    [one] One line is marked
   *[other] { $count } lines are marked
}
details-place_noted = Place { $number } of the line is noted.
details-asked = { $detail }?
details-in_weeks = { $count ->
    [one] In one week
   *[other] In { $count } weeks
}
