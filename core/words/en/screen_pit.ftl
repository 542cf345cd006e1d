# Screens of one pit. Sentences under pit_headline are read at display size: short.

face_text-all_layers = all layers
face_text-answer_so_far = the answer so far
face_text-best_crop = where the crop looks best
face_text-bottom = bottom of hole
face_text-comes_away = How does it come away?
face_text-deep_enough = Deep enough: this is the bottom.
face_text-dig_reference = dig the reference pit
face_text-is_reference = The other pits are compared with this one.
face_text-kind_of_place = kind of place
face_text-moisture = moisture of the face
face_text-no_knife = No answer yet: go down the face with the knife.
face_text-not_rolled = not rolled
face_text-photo = photo
face_text-photo_delete = delete
face_text-photo_deleted = The photo is deleted.
face_text-photo_first = photo of the face first
face_text-reference_first = Dig first where the crop looks best: that is the reference pit.
face_text-reference_missing = Dig the reference pit, to compare this with.
face_text-reference_why = Without it nothing can be told from what is normal here.
face_text-remark = remark
face_text-remark_asked = What else is to be said?
face_text-roll_now = roll some soil
face_text-scale = scale by the tape
face_text-scale_depth = Which depth do you touch?
face_text-scale_kept = The photo has its scale. Saved.
face_text-scale_none = none yet: two touches give it
face_text-scale_there = the layers lie over the photo
face_text-scale_zero = Touch 0 on the tape.
face_text-show_it = show it
face_text-stands_so = as it stands
face_text-tap_again = tap again
face_text-too_few = Too little is seen of this face to tell yet.

pit_screen-title = Pit { $number } · { $place }
pit_screen-dig_to = Dig to { $depth } at least.
pit_screen-dig_deeper = Dig this pit deeper: to { $depth }.
pit_screen-hole_ends = The hole ends at { $ends }; { $wanted } are wanted. Dig deeper, or tap the bottom again.
pit_screen-wanted = { $depth } wanted
pit_screen-looks = { $count } more to see
pit_screen-looks_why = { $more }. { $why }
pit_screen-look_on = Look on: { $count } more to see
pit_screen-remark_too_long = Not noted: a remark has at most { $letters } letters. Write it shorter.
pit_screen-touch_depth = Touch { $depth } on the tape.
pit_screen-layers = { $count ->
    [one] One layer
   *[other] { $count } layers
}
pit_screen-dig_in = Dig { $on }
pit_screen-dig_behind_in = Dig behind the machine { $on }
pit_screen-reason = { $depths }: { $told }.
pit_screen-sure_face = This face: { $sure }.
pit_screen-sure_depth = { $zone }: { $dug } of { $enough } pits that would settle the depth.
pit_screen-sure_ground = { $zone }: { $agree } of { $pits } say the same.
pit_screen-field_on_day = { $field }, { $day }
pit_screen-next = Next: { $step }.

pit_headline-ask_buried = Ask first what lies buried { $on }.
pit_headline-ask_machine = No machine noted can loosen { $the }.
pit_headline-ask_specialist = Ask a specialist before working { $the }.
pit_headline-behind = Dig behind the machine { $on }.
pit_headline-loosened_since = Dig again { $on }: loosened since.
pit_headline-dig_again = Dig again { $on }.
pit_headline-hold_back = Hold back { $on }: the last run did not do it.
pit_headline-wait_at = Wait till it is drier, then loosen { $the } at { $tip }.
pit_headline-wait = Wait till it is drier { $on }.
pit_headline-strip_first = Dig behind the trial strip first.
pit_headline-roll_first = Roll soil from { $depth } before loosening.
pit_headline-judge_first = Loosen { $the } at { $tip }, if it is dry enough.
pit_headline-roots_first = Roots first { $on }: no loosening now.
