# Tables for other programs.

tables-written = Written for other programs: { $fields ->
    [one] one field
   *[other] { $fields } fields
} with { $pits ->
    [0] no pits
    [one] one pit
   *[other] { $pits } pits
}.
tables-no_place = { $pits ->
    [one] One pit has no position: it stands in every file, but on no map.
   *[other] { $pits } pits have no position: they stand in every file, but on no map.
}

tables-positions_coarse = Places are told to about a kilometre: no outlines and no lines are in the files.
tables-positions_none = No places are in the files.
tables-photos = { $photos ->
    [0] No photo is in the GeoPackage.
    [one] One photo is in the GeoPackage, without what the camera noted.
   *[other] { $photos } photos are in the GeoPackage, without what the camera noted.
}
tables-photos_left = { $photos ->
    [one] One photo was left out: it is not here, or not a picture that can be looked through.
   *[other] { $photos } photos were left out: they are not here, or not pictures that can be looked through.
}

# What a terminal on a tractor is told; its lines have room for 32 letters.
terminal-written = { $fields ->
    [0] No ground with an edge is to be loosened now: there is nothing for a terminal.
    [one] For a terminal: one field with the depth of each zone.
   *[other] For a terminal: { $fields } fields with the depth of each zone.
}
terminal-advice = It is advice, not leave to work: ask what lies buried, roll the soil and set the machine on the day. Look at the map on the terminal before the tines go down.
terminal-unmarked = { $field }: more is to be loosened, but nobody noted where it lies, so no terminal shows it. Wheelings are such.
terminal-task = Advice: loosen
terminal-leave = No loosening

# The fields of a store.
store-field = { $name }: { $pits ->
    [0] no pit
    [one] one pit
   *[other] { $pits } pits
}
store-no_field = There is no field in it.
