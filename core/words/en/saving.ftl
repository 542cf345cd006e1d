# What became of a save: taken back, not made, taken in.

taken-back = Taken back: { $what }.
taken-back_nothing = There is nothing to take back.
taken-again = Stands again: { $what }.
taken-again_nothing = There is nothing taken back that could stand again.
taken-field = field details
taken-pit = pit
taken-step = knife walk
taken-layer = layer
taken-roll = roll test
taken-photo = photo
taken-person = person
taken-machine = machine
taken-pass = pass
taken-after_dig = hole behind the machine
taken-part = patch marked on the field
taken-line = line marked on the field

saved-one = { $place }: { $what }
saved-more = { $place }: { $what }, and { $count } more
saved-undo = Take back: { $what }
saved-redo = Do again: { $what }
saved-deleted = deleted
saved-joined = joined or taken apart
saved-back = brought back
saved-new = new
saved-place = its place in the list
saved-value = { $cell }: { $value }
saved-named = { $kind } { $name }
saved-pass_named = pass { $number }
saved-after_dig = after-dig A{ $number }
saved-at = { $kind } { $depth }

not_saved-full = Not saved: the phone is full. Free some space and tap again.
not_saved-locked = Not saved: the app may not write to its own files.
not_saved-gone = Not saved: what it belongs to is no longer there.
not_saved-refused = Not saved: a value is outside what can be meant.
not_saved-failed = Not saved: the phone could not write it. Tap again; if it stays so, restart the phone.

photo-kept = Photo saved.
photo-lost = Photo not saved: its file cannot be read.

taken_in = Taken in: { $field }.
taken_in-field_deleted = Not taken in: the field { $field } was deleted here. Bring it back first.
taken_in-unread = Not taken in: the file cannot be read.
taken_in-faults = Not taken in: there are faults in the file. { $faults }
taken_in-more = { $faults } And { $count } more.

deleting-entry = Delete { $what } …
deleting-asked = Delete { $what }?
deleting-back = { $what }: back again.
deleting-goes = { $what } goes. Undo brings it back.
deleting-goes_with = { $what } goes, with { $along }. Undo brings all of it back.
deleting-gone = { $what } is deleted. Undo brings it back.
deleting-gone_with = { $what } is deleted, with { $along }. Undo brings all of it back.
deleting-compared = { $count ->
    [one] One hole behind the machine is compared with it and would lose that.
   *[other] { $count } holes behind the machine are compared with it and would lose that.
}
deleting-machine_kept = { $what } stays: { $count ->
    [one] pass { $passes } was made with it and keeps it. Delete that pass first.
   *[other] passes { $passes } were made with it and keep it. Delete those passes first.
}
deleting-was = { $what }, deleted on { $when }

alone = On this phone alone since { $day }: { $what } in { $fields ->
    [one] one field
   *[other] { $fields } fields
}.
alone-details = On this phone alone since { $day }: details of { $fields ->
    [one] one field
   *[other] { $fields } fields
}.
alone-short = { $what } nobody else has
alone-short_details = details nobody else has
