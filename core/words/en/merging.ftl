# Handing over and taking in: devices, what came, what is missing, versions of one value.

merge-device = device { $device }
merge-unnamed = a device without a name
merge-device_named = { $holder } ({ $device })

came_in = Taken in: { $edits ->
    [0] nothing new
    [one] one edit
   *[other] { $edits } edits
}.
came_in-photos = Photos that came: { $photos }.
came_in-photos_unnamed = Photos in it that no record here names, and that were not kept: { $photos }. Take the file in again once the records have come.
came_in-photo_wrong = The pieces of photo { $photo } do not fit together. Fetch it from somebody else; what comes then takes their place.
came_in-photo_wrong_in = The pieces of photo { $photo } do not fit together since { $file } came. Fetch it from somebody else; what comes then takes their place.
came_in-photo_wrong_before = Photo { $photo } is here. Its pieces did not fit together when { $file } came; do not trust that file.
came_in-stranger = { $who } is not known here, and what it brings waits. Compare its twenty signs, which stand alone below, with those that device shows itself; if they are the same, accept it.
came_in-missing = Of { $who }, edits { $first } to { $last } are missing, and what follows on them waits. Ask anybody who has met that device to hand over.
came_in-missing_one = Of { $who }, edit { $first } is missing, and what follows on it waits. Ask anybody who has met that device to hand over.
came_in-copied = { $who } exists twice: two devices went on under one name. All that both wrote is kept. Let only one of them go on, and remove the copied key from the other.
came_in-clock_wrong = The clock of { $who } is more than a day ahead. What it wrote is kept; set its clock before it goes on, or its edits will look later than those of others.
came_in-held = The file is from a newer version. It is kept as it is and taken in after an update of this program.

came_in-refused = Nothing more of { $who } was taken in: that device is refused here.
came_in-no_room = So much of { $who } waits already that no more is kept. Accept or refuse that device, then take the file in again.
came_in-unknown_parts = Parts of a newer version that nobody signed, and that were not kept: { $parts }.

vouches = { $who } answers for edits of device { $device }; whether they are believed is decided where they are taken in.
vouching-asks = { $who } answers for edits of { $device }, up to edit { $last }, and says that its key is lost. They wait. Believe it only if you know that it was so.
vouching-believed = { $who } answers for edits of { $device }, up to edit { $last }; they are taken in.
vouching-this_device = { $who } writes in the name of this device. That is not taken in. Ask its holder.
vouching-accepted = { $who } answers for edits of { $device }, which is accepted here and speaks for itself. They wait. Refuse that device if it is lost.
vouching-went_on = { $who } answers for edits of { $device }, which went on itself, and otherwise. They are not taken in. Ask the holders of both.

waits = Waiting here for a word or an update: { $bundles } bundles, { $files } files, { $size } kB.
waits-emptied = Thrown away: { $bundles } bundles and { $files } files that waited. They can be taken in again.

handed_over = Handed over: { $bundles ->
    [one] one bundle
   *[other] { $bundles } bundles
}, { $photos ->
    [0] no photo
    [one] one photo
   *[other] { $photos } photos
}.
handed_over-nothing = There is nothing to hand over that is not there yet.
handed_over-waiting = Edits made here that no other device is known to have: { $edits }.
handed_over-carried = Everything noted here is on another device too.
handed_over-photos = Photos here: { $here } of { $named } that records name.
handed_over-locked = It is locked with the team word: only who knows the word can open it.
handed_over-stripped = Photos that go without the place, time and camera noted in them: { $photos }. The originals stay here.
key-set_aside = The file with the key of this phone cannot be read and was set aside as { $file }. The phone has a new key: others know it as a new device until they accept it.
handed_over-chosen = Whoever reads these notes has the fields as they stand now, and nothing of any other; who wrote what and when stays here.
handed_over-stay = Photos that stay here, because what is noted in them cannot be taken out: { $photos }.
handed_over-gathered = Files of this device that went into one: { $files }.
handed_over-gathered_already = This device has no more than one file there.

partner-own = This device
partner-earlier = This store under an earlier name
partner-accepted = accepted
partner-refused = refused
partner-refused_now = { $who } is refused from now on; what was taken in of it stays. Bundles of it that waited and are gone: { $bundles }.
partner-believed_now = What { $who } answers for of device { $device } is believed.
partner-waits = waits to be accepted
partner-unsigned = known from what another device answers for
partner-line = { $who }: { $state }, { $edits ->
    [0] no edits here
    [one] one edit here
   *[other] { $edits } edits here
}.

versions = { $count ->
    [0] No value has several versions.
    [one] One value has several versions:
   *[other] { $count } values have several versions:
}
versions-title = { $number }. { $place }: { $cell }
versions-line = { $number }: { $value }, written by { $who } on { $when }
versions-shown = { $number }: { $value }, written by { $who } on { $when }; this one is shown
versions-settled = { $place }, { $cell }: { $value } stands from now on.
versions-when = { $day }, { $time }
regretted = { $count ->
    [0] Nothing was deleted that somebody else went on with.
    [one] One record was deleted while somebody else went on with it:
   *[other] { $count } records were deleted while somebody else went on with them:
}
regretted-line = { $number }. { $place }: deleted by { $who } on { $when }, changed by { $others }
regretted-short = { $place }: deleted by { $who }, changed by { $others }
regretted-one = { $who } on { $when } ({ $cell })
regretted-back = { $place } is back.
regretted-stays = { $place } stays deleted.
belongs-pit = pit { $number }
belongs-gone = { $what } (deleted)

cell_value-none = not looked
cell_value-yes = yes
cell_value-no = no
cell_value-record = another record
cell_value-other = something of a newer version
cell_value-places = { $count ->
    [one] one place
   *[other] { $count } places
}
cell_name-newer = a value of a newer version

inside-locked = The file is locked with the team word.
inside-part = { $who }: edits { $first } to { $last }, sealed on { $when } with { $program }; signature, hashes and chain hold.
inside-seen = { $who }: only word of what it has seen, sealed on { $when }; the signature holds.
inside-broken = A bundle in it does not hold: { $why }.
inside-photo = Photo { $photo }, { $size } kB: { $here } of { $pieces } pieces.
inside-photo_whole = Photo { $photo }, { $size } kB: whole, and its hash holds.
inside-photo_wrong = Photo { $photo }, { $size } kB: all pieces are there, but its hash does not hold.
inside-unknown = A part of a newer version (kind { $kind }, { $size } kB): nobody signed it, and it is not taken in.
inside-gap = The file does not bring edits { $first } to { $last } of { $who }, on which others in it follow.
inside-no_gap = Everything that its edits follow on is in the file.

checked-sound = Sound: { $edits } edits, { $cells } current values, { $photos } photos.
checked-damaged = { $who }: edits { $first } to { $last } are not as they were written. Keep this store, and take in bundles of others into a new one.
checked-edits = { $who }: edits { $first } to { $last } are not as they were written.
checked-cells = The current values were not those of the edits and were made anew from them.
checked-photo = Photo { $photo } is damaged. Repair it with a bundle that holds it.
checked-photo_mended = Photo { $photo } was damaged and is as it was taken again.
checked-photos_missing = Photos that records name and that are not here: { $photos }. Take in a bundle that holds them.

cell-kind = what it is
cell-parent = what it belongs to
cell-deleted = whether it is deleted
cell-unknown = what another program noted
cell-same_as = which other record is the same field
cell-name = name
cell-outline = outline
cell-headland = width of the headland
cell-tramline = distance of the tramlines
cell-texture = texture
cell-organic_matter = organic matter
cell-crop_now = crop now
cell-last_crop = last crop
cell-last_loosened = last loosened
cell-last_traffic = last driven on
cell-drains = depth of the drains
cell-mole_drains = depth of the mole drains
cell-services = depth of cables and pipes
cell-clearance = clearance above drains
cell-services_clearance = clearance above cables and pipes
cell-services_asked = asked about cables and pipes
cell-services_asked_on = day they answered
cell-services_leave = leave to work above cables and pipes
cell-last_rain = last rain
cell-tillage = set depth of tillage
cell-stony = many stones
cell-plates_soft = soft plates near the surface
cell-next_crop = next crop
cell-next_sown = day the next crop is sown
cell-slope = slope of the ground in percent
cell-reach = how deep the machine reaches
cell-controlled_traffic = controlled traffic
cell-deep_clay = deep clay to be loosened all the same
cell-wheel_track = wheel track
cell-tyre = width of the tyre
cell-place = kind of place
cell-zone = zone
cell-at = position
cell-dug = dug on
cell-by = dug by
cell-dug_to = dug to
cell-face = moisture of the face
cell-to = lower end of the step
cell-comes_away = how the soil comes away
cell-resistance = how the knife goes in
cell-top = top of the layer
cell-bottom = bottom of the layer
cell-pores = pores
cell-channels = channels
cell-roots = roots
cell-patches = patches
cell-smell = smell
cell-clod_in_water = a piece in water
cell-roll_depth = depth of the roll test
cell-roll = roll test
cell-photo = which photo
cell-photo_size = size of the photo
cell-photo_type = format of the photo
cell-photo_taken = when the photo was taken
cell-photo_depth = depth on the face
cell-photo_marks = scale of the photo
cell-left_handed = whether left-handed
cell-legs = number of legs
cell-spacing = spacing of the legs
cell-foot = width of the foot
cell-wings = width and lift of the wings
cell-leading = depth of the leading tines
cell-working_width = working width
cell-speed = slowest and fastest speed, km/h
cell-tractor = tractor: kW and driven wheels
cell-tractor_mass = mass of the tractor
cell-pass_machine = machine
cell-extent = how much was worked
cell-done = day of the pass
cell-tip = tip depth
cell-pass_speed = speed, km/h
cell-driven_on = driven on after it
cell-before = pit dug before it
cell-firm = depths to firm ground
cell-slots = places of the slots
cell-profile = shape of the loosened ground
cell-smear = smearing
cell-lift = lift of the surface
cell-clods = clods
cell-subsoil_up = whether subsoil came up
cell-plates = plates left
cell-feet = state of the feet
cell-old_slots = whether old slots are seen
cell-shape = outline of the patch
cell-buried = what lies there
cell-along = course of the line
cell-line_depth = depth of the line
cell-line_sort = what the line is made of or carries
cell-remark = remark
