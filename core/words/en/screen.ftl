# Screens of fields and pits: what stands on buttons and beside them.

pit_text-all_fields = fields
pit_text-allow_position = allow the position
pit_text-another_corner = a corner is here
pit_text-behind = behind the machine
pit_text-bottom_of_hole = bottom of the hole
pit_text-by_hand = fill in by hand
pit_text-call_so_far = the answer so far
pit_text-corner_crosses = Not noted: with this corner two sides would cross. Walk the edge in order, or start it anew.
pit_text-corner_same = Not noted: this is where the last corner is.
pit_text-dig_next = dig another pit
pit_text-dig_pit = dig a pit
pit_text-dug_question = The hole is dug: how moist is the face?
pit_text-enough = enough: to the roll test
pit_text-face_question = How moist is the face?
pit_text-field_name = What the farm calls the field
pit_text-field_name_missing = Give the field a name.
pit_text-give_call = what to do here
pit_text-hand_over = hand over
pit_text-hole_dug = the hole is dug
pit_text-machine = machine
pit_text-no_corner = No corner yet. Walk the edge of the field and tap once at every corner.
pit_text-no_fields = No field yet. Start one: its name is enough.
pit_text-no_layers = Nothing is noted of this face yet.
pit_text-no_pit = No pit yet.
pit_text-no_position = No position yet. Leave the phone lying still under open sky; the work goes on without it.
pit_text-no_roll_at_depth = Nothing is to be loosened here, so only soil from the surface is rolled.
pit_text-not_looked = not looked
pit_text-on_plan = point it out on the plan
pit_text-or_key_up = or volume key up
pit_text-outline_anew = start the edge anew
pit_text-outline_gone = The edge is no longer noted.
pit_text-own = own details
pit_text-photos = photos
pit_text-place = place and position
pit_text-position_held = The position is taken when the hole is dug.
pit_text-position_noted = The position is noted.
pit_text-position_refused = The position is not allowed so far. Allow it, point the pit out on the plan, or go on without.
pit_text-position_settling = Leave the phone lying still a little longer.
pit_text-reference_stands = This is what the other pits are compared with; it stands for no ground of its own.
pit_text-resistance_question = What does the knife meet?
pit_text-roll_how = Knead a handful of soil and roll it between the hands towards a 3 mm thread.
pit_text-same_as_above = same as above
pit_text-show = show
pit_text-start_field = start a field
pit_text-start_pit = start a pit
pit_text-take_position = take the position anew
pit_text-two_faces = One or two sides; keep two clean faces.
pit_text-walk_edge = walk the edge of the field
pit_text-walk_on = knife walk
pit_text-where = Where do you dig?
pit_text-you_are_here = You stand in this field.

since_year-recent = { $year }
since_year-before = before { $year }

screen_pit-corner = Corner { $number } is noted.
screen_pit-corners = { $count ->
    [one] { $count } corner noted.
   *[other] { $count } corners noted.
}
screen_pit-dig_to = Dig to { $depth } at least: below any depth that might be worked, one and a half to two spades.
screen_pit-last_dug = { $pits }, last { $day }
screen_pit-lines_up = { $name }: { $value }
screen_pit-nudge_down = { $depth } deeper
screen_pit-nudge_up = { $depth } higher
screen_pit-boundary = Boundary at { $depth }
screen_pit-position = ±{ $accuracy }, { $fixes ->
    [one] one fix
   *[other] { $fixes } fixes
} over { $seconds } s.
screen_pit-position_noted = Position noted, ±{ $accuracy }.
screen_pit-roll_depth = Soil from { $depth }, rolled: what does it do?
screen_pit-roll_surface = Soil from the surface, rolled: what does it do?
screen_pit-step = { $depths }: how does the soil come away?
screen_pit-title = { $pit }: { $what }
screen_pit-why = This { $why }.
