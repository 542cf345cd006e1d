# The screens of handing over and taking in.

partner_text-title = Hand over, take in
partner_text-everything = Hand over everything
partner_text-with_photos = with photos
partner_text-notes_alone = Hand over the notes alone
partner_text-nobody_yet = No other phone is known yet. A file that one hands over makes it known.
partner_text-others = Other devices
partner_text-waiting = Is not known here, and what it brings waits:
partner_text-lacking = Missing
partner_text-only_lacking = Handed over from here, a file holds only what that device is not known to have.
partner_text-compare = Have its holder open the same screen there and read out the twenty signs of that phone; here they stand alone on the first line.
partner_text-accept_means = Whoever is accepted can add to the notes and change them here. Nothing that stands is lost by it.
partner_text-same_signs = Are they the same?
partner_text-refuse = Refuse this device
partner_text-refuse_means = Of a device that is refused nothing more is taken in; what is here stays. It can be accepted again.
partner_text-answers_for = Answers for another device
partner_text-believe = I know that it was so: believe it
partner_text-empty_waiting = Throw away what waits
partner_text-store_damaged = The notes on this phone are damaged. Hand over what there is, and let another phone keep it.
partner_text-to_settle = To be settled
partner_text-versions = Several versions
partner_text-both_kept = Both wrote without knowing of each other. Nothing is lost: what is not chosen stays in the log.
partner_text-which_holds = Which one holds?
partner_text-regretted = Deleted by one, gone on with by another
partner_text-what_holds = What holds?
partner_text-bring_back = Bring it back
partner_text-stay_deleted = Leave it deleted
partner_text-notes_file = Notes file
partner_text-nothing_goes = Nothing that is noted here goes away by it, and undo takes it back.
partner_text-take_in = Take it in
partner_text-are_they_one = Are they one field?
partner_text-one_field = They are one field
partner_text-one_field_means = What is noted under either is then shown as one field, here and on every phone it is handed over to. Nothing is lost, and undo takes it apart.

partner_text-names_and_places = Names and positions
partner_text-regretted_short = Deleted and gone on with
partner_text-personal = Take names, positions and remarks out of every copy
partner_text-nothing_personal = No name, no position and no remark stands in these notes.
partner_text-take_out = Take it out
partner_text-take_out_means = What is taken out is gone from here for ever, earlier values too, and from every other device once it takes in what is handed over after that. That something was written there, by whom and when, stays.
partner_text-take_out_cannot = It does not reach files and pictures made from the notes, photos, or whoever takes in nothing more; and what others wrote they have to take out themselves. A short name can still be guessed from what stays.

personal-values = Values written here: { $here }; by others: { $others }
personal-taken_out = Taken out: { $name }, values: { $values }. Hand over to the others, so that it goes there too.

partner-this = Others accept this phone by these signs:
partner-this_named = This phone is that of { $holder }. Others accept it by these signs:
partner-state = { $state }, { $edits ->
    [0] no edits here
    [one] one edit here
   *[other] { $edits } edits here
}
partner-same_name = Two fields are called { $field }
partner-accept = The same: accept { $who }
partner-same_fingerprint = Not accepted: another device here shows the same signs, so one of them was made to. Tell the holder.
partner-accepted_now = { $who } is accepted.

versions-of = { $place }: { $cell }
versions-in = { $place }: { $count ->
    [one] one value in several versions
   *[other] { $count } values in several versions
}
versions-here = { $count ->
    [one] one value in several versions
   *[other] { $count } values in several versions
}
versions-wrote = { $who }, { $when }
versions-next = the next one ({ $number } of { $count })

bundle-ready = The file is ready, { $photos ->
    [0] without photos
    [one] with one photo
   *[other] with { $photos } photos
}.
bundle-without = { $ready } Damaged photos that stayed out: { $damaged }.
bundle-too_much_waits = Not kept: too many files of newer versions wait here. Update the app, or throw away what waits.
bundle-locked = Not taken in: the file is locked with a team word. Set it under own details and open the file again.
bundle-wrong_word = Not taken in: the team word set on this phone does not open the file. Compare it with whoever sent it.
bundle-none = Not taken in: this is no file that Pitface handed over.
bundle-cut_off = Not taken in: the file ends in the middle. Have it sent again.
bundle-damaged = Not taken in: the file was damaged on its way. Have it sent again.
bundle-too_large = Not taken in: the file holds more than this app takes in at once.
bundle-forged = Not taken in: the file does not come from whom it says. Ask its sender.

partner-photos_damaged = { $count ->
    [one] A photo on this phone is damaged. Take in a file of another phone that holds it.
   *[other] { $count } photos on this phone are damaged. Take in files of other phones that hold them.
}

partner-not_shown = { $records ->
    [one] One record comes from a newer version. It is kept and handed on, and shown after an update.
   *[other] { $records } records come from a newer version. They are kept and handed on, and shown after an update.
}
