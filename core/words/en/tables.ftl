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

# The fields of a store.
store-field = { $name }: { $pits ->
    [0] no pit
    [one] one pit
   *[other] { $pits } pits
}
store-no_field = There is no field in it.
