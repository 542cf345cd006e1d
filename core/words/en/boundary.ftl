# Outlines and lines in files of other programs.

boundary-file = { $format }, { $system }.
boundary_system-wgs84 = degrees on WGS 84
boundary_system-unstated = no reference system stated: taken for WGS 84
boundary_system-etrs89 = degrees on ETRS89, taken for WGS 84 (less than 1 m apart)
boundary_system-metres = metres of a map grid, reckoned to WGS 84
boundary_system-etrs_metres = metres of a map grid on ETRS89, reckoned to WGS 84 (less than 1 m apart)
boundary-areas = Areas:
boundary-lines = Lines:
boundary-unnamed = without a name
boundary-part = part { $part } of { $parts }
boundary-corners = { $corners } corners
boundary-places = { $places } places
boundary-from_line = a line that runs round
boundary-holes = { $holes ->
    [one] one hole of { $area } in it, which an outline takes along
   *[other] { $holes } holes of { $area } in it, which an outline takes along
}
boundary-points = { $points ->
    [one] One single place marks no ground and is left out.
   *[other] { $points } single places mark no ground and are left out.
}
boundary-taken = Outline of { $field } taken: { $area }.
boundary-replaced = Outline of { $field } taken: { $area }, in place of one of { $before }.
boundary-line_taken = Line taken into { $field }: { $kind }, { $length }.
boundary_kind-drain = drain
boundary_kind-mole_drain = mole drain
boundary_kind-service = cable or pipe
