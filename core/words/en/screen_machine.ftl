# Screens of own details, machine, pass, the hole behind it, show, photos, handing over and a place on the plan.

caption-undo = Undo
caption-redo = Redo
caption-back = Back
caption-more = Why, and what to mind
caption-menu = More
caption-choose_language = Choose your language
caption-own = Own details
caption-name = Your name, as it stands with pits and photos
caption-hand = The phone is held in the
caption-left_hand = left hand
caption-right_hand = right hand
caption-units = Depths are told in
caption-centimetres = centimetres
caption-inches = inches
caption-language = Language
caption-volume_keys = In the knife walk the volume keys
caption-keys_usual = set the volume
caption-keys_answer = answer: up same as above, down undo
caption-own_done = To the fields
caption-privacy = Positions and photos stay on this phone until you hand them over.
caption-team_word = Team word, which locks what is handed over
caption-team_word_set = A team word is set: what is handed over from here opens with it alone.
caption-forget_team_word = Forget the team word
caption-team_word_kept = The team word is kept on this phone. Whoever is to open what is handed over has to know it.
caption-team_word_forgotten = The team word is forgotten here. What is handed over from now on is open to everybody.
caption-team_word_short = The team word needs twelve letters or more: four words taken by chance, say.

caption-machines = Machines
caption-no_machine = No machine is described for this field yet.
caption-describe_machine = Describe a machine
caption-copy_machine = Described for another field; a tap takes it over
caption-legs = Legs
caption-spacing = From leg to leg
caption-foot_width = Width of the foot, as it is worn, without wings
caption-wings = Width over both wings
caption-lift = Lift of the wings
caption-leading = Shallow tines before the legs
caption-leading_depth = Depth of the shallow tines
caption-reach = Deepest tip depth it reaches
caption-power = Tractor, power of its engine
caption-tractor_mass = Mass of the tractor as it works
caption-machine_name = What the farm calls it
caption-none_fitted = none
caption-fitted = fitted
caption-not_noted = not noted
caption-set_anew = This machine has worked in a pass: with changed measures it becomes another one, and the pass keeps the old.
caption-nothing_to_loosen = No zone of this field is to be loosened: there is nothing to set this machine for.
caption-spacing_result = The spacing
caption-layer_result = The layer
caption-all_results = Everything else
caption-faulty = With these measures nothing can be told.

drive-two_wheel = rear wheels
drive-front_assist = rear wheels with smaller front wheels
drive-four_wheel = four wheels of one size
drive-tracks = tracks

caption-passes = Passes
caption-pass = Pass
caption-no_pass = No pass is noted for this field yet.
caption-new_pass = A new pass
caption-which_machine = Which machine?
caption-which_zone = Over which zone?
caption-how_much = How much of it?
caption-which_day = Which day?
caption-today = today
caption-yesterday = yesterday
caption-tip_depth = Depth of the tips
caption-pass_speed = Speed
caption-pass_machine = machine
caption-pass_zone = zone
caption-pass_extent = how much of it
caption-driven_on = Have heavy wheels run over it since?
caption-wheels_today = yes, today
caption-wheels_no = none noted
caption-roll_at_tips = Soil from the depth of the tips, kneaded and rolled between the hands
caption-dig_behind = Dig behind it
caption-holes = Holes behind it
caption-no_machine_no_section = Say which machine it was: the section across two legs is then drawn.
caption-few_readings = There are few readings: what is said holds only if they reach the next tine line.
caption-yes = yes
caption-no = no
caption-roots = What the roots do in the loosened ground

caption-show = For you to see
caption-nothing_to_show = No pit has been dug here yet.

caption-photos = Photos
caption-take_photo = Take a photo
caption-no_photo = No photo of this pit is noted.
caption-scale = Lay the knife or the spade in the picture: it gives the scale.
caption-only_noted = Listed is what is noted of each photo. The pictures lie in the app's own folder.
caption-photo_place = Where does the last one belong?
caption-whole_face = whole face

caption-hand_over = Hand over
caption-as_file = As a notes file, which other programs and people can read. Taken in on a phone it adds to the field there.
caption-or_everything = For another walker, with photos and whatever several wrote:
caption-share_field = Hand this field over
caption-open_file = Take in a file
caption-what_leaves = The notes leave this phone with everything in them: names of those who dug, days and answers.
caption-positions_leave = Positions leave with them: of the outline, of pits and of what is marked.
caption-photos_stay = Photos stay here; only what is noted of them goes along.
caption-half_read = A hole behind the machine is only begun: read it on first, else no other phone takes the file in.
caption-whom = Hand it only to whom the farm agrees to.

caption-on_plan = Where the pit lies
caption-plan_pit = this pit
caption-no_plan = Nothing of this field has a place yet: walk its outline or let the phone read its position.
caption-plan_start = It stands where the last pit was dug, or else in the middle of the field. Move it, or keep it there.
caption-plan_kept = A place by hand counts as known to 10 m.
caption-plan_here = It lies here
caption-move_far = In long steps
caption-move_near = In short steps

shown-legs = { $legs ->
    [one] one leg
   *[other] { $legs } legs
}
shown-machine_name = { $legs }, { $spacing } apart
shown-step_less = − { $step }
shown-step_more = + { $step }
shown-foot = foot { $width }
shown-wings = wings { $width }
shown-tractor = tractor { $power }
shown-set_for = { $zone }, tips at { $tip }
shown-cannot_set = It cannot be set for this: { $why }.
shown-asked = { $what }: { $value }
shown-speeds = { $slowest } to { $fastest }
shown-copy = { $field }: { $measures }
shown-name_empty = There is no name yet.
shown-name_todo = Type it in, or go back.
shown-gone = This is no longer there.
shown-gone_todo = Go back and choose again.

shown-holes = { $holes ->
    [0] no hole behind it yet
    [one] one hole behind it
   *[other] { $holes } holes behind it
}
shown-hole = Hole { $number }, { $day }
shown-hole_undated = Hole { $number }

shown-photo = { $day }, { $place }, { $size }
shown-photo_undated = No day noted, { $place }, { $size }
shown-photo_at = at { $depth }
shown-photo_nowhere = place on the face not noted
shown-photos_count = { $photos ->
    [one] One photo
   *[other] { $photos } photos
}
shown-hand_over_counts = { $field }: { $pits }, { $passes }.
shown-passes_count = { $passes ->
    [one] one pass
   *[other] { $passes } passes
}
shown-plan_walk = Pit { $number }: { $walk } from the middle of the field.
shown-plan_middle = Pit { $number } lies in the middle of the field.
shown-moved = Moved { $distance } to the { $compass }.
