# Notes files read into a store: what they bring and what they no longer say; saves, what is deleted, fields that are one.

read_in = { $field }: new here { $added }; values changed: { $changed }.
read_in-only_changed = { $field }: nothing new here; values changed: { $changed }.
read_in-would = { $field }: the file would add { $added }; values it would change: { $changed }.
read_in-would_change = { $field }: the file would add nothing; values it would change: { $changed }.
read_in-nothing = { $field }: the file says nothing that is not here.
read_in-changed = { $place }: { $cell } as the file has it.
read_in-versions = { $place }: { $cell } was changed in the file and by somebody else; both values are kept, to be settled.
read_in-deleted = Records of the file that were deleted here and stay so: { $count }.
read_in-same_name = Another field is called { $field } too. They stay two; if they are one field, join them.
read_in-more = … and { $count } more.

missing = The file said this earlier and no longer does. It stays:
missing-removed = The file no longer says this, and it was removed:
missing-record = { $place }, made by { $who } on { $when }.
missing-touched = { $place }, made by { $who } on { $when }: somebody else has written to it since, or it is needed by what stays, so it is not removed with the file.
missing-value = { $place }: { $cell }.
missing-value_touched = { $place }: { $cell } was changed by somebody else since, so it is not removed with the file.
missing-remove = To remove it as it is listed here: --remove-missing { $word }

history-line = { $number }. { $when }, { $who }, { $fields }: { $what }
history-line_alone = { $number }. { $when }, { $who }: { $what }
history-made = new { $what }
history-changed = changed { $what }
history-deleted = deleted { $what }
history-back = brought back { $what }
history-joined = fields joined or taken apart
history-undid = an undo
history-undid_named = an undo of { $what }
history-nothing = Nothing was saved here yet.

deleted = { $count ->
    [0] Nothing is deleted.
    [one] One record is deleted, with all that hangs on it:
   *[other] { $count } records are deleted, each with all that hangs on it:
}
deleted-line = { $number }. { $place }: deleted by { $who } on { $when }

joined = These are one field now: { $field }, with { $pits ->
    [one] one pit
   *[other] { $pits } pits
}. What is noted under either is shown under it; undo takes it apart.
joined-already = These are one field already: { $field }.
joined-apart = Taken apart: { $count ->
    [one] it was one record and stays one
   *[other] { $count } fields again
}.
joined-hidden = They differ in one value: { $cell }. { $shown } is shown; { $hidden } is kept.

count-field = { $count ->
    [one] one field
   *[other] { $count } fields
}
count-pit = { $count ->
    [one] one pit
   *[other] { $count } pits
}
count-step = { $count ->
    [one] one step
   *[other] { $count } steps
}
count-layer = { $count ->
    [one] one layer
   *[other] { $count } layers
}
count-roll = { $count ->
    [one] one roll test
   *[other] { $count } roll tests
}
count-photo = { $count ->
    [one] one photo
   *[other] { $count } photos
}
count-person = { $count ->
    [one] one person
   *[other] { $count } people
}
count-machine = { $count ->
    [one] one machine
   *[other] { $count } machines
}
count-pass = { $count ->
    [one] one pass
   *[other] { $count } passes
}
count-after_dig = { $count ->
    [one] one hole behind the machine
   *[other] { $count } holes behind the machine
}
count-part = { $count ->
    [one] one marked patch
   *[other] { $count } marked patches
}
count-line = { $count ->
    [one] one marked line
   *[other] { $count } marked lines
}
