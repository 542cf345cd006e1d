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
boundary-line_taken = { $lines ->
    [one] Line taken into { $field }: { $kind }, { $length }.
   *[other] { $lines } lines taken into { $field }: { $kind }, { $length } in all.
}
boundary-all_lines = All { $lines } lines at once, { $length }
boundary_kind-drain = drain
boundary_kind-mole_drain = mole drain
boundary_kind-service = cable or pipe

# The same on a phone.
edge-from_file = edge from a file
edge-in_file = { $areas ->
    [0] Only lines are in this file.
    [one] One area is in this file.
   *[other] { $areas } areas are in this file.
}
edge-how = A tap takes one as the edge of { $field }.
edge-how_new = A tap makes a new field of one.
edge-here = You are in it.
edge-left_out = { $shown } of { $all } are shown.
edge-lines_need_field = { $lines ->
    [one] One line is in it, too: open a field first to take it.
   *[other] { $lines } lines are in it, too: open a field first to take one.
}
edge-replace_asked = Replace the edge?
edge-take_asked = Take this as the edge?
edge-compared = It encloses { $before } now, the area in the file { $area }.
edge-replace = replace the edge
edge-take = take as the edge
edge-far = It lies { $distance } from everything noted of { $field }.
edge-crossed = Not taken: two sides of this area cross. Mend it in the program it comes from, or walk the edge.
edge-line_asked = { $lines ->
    [one] What lies along this line?
   *[other] What lies along these { $lines } lines?
}
edge-swapped = Latitude and longitude are swapped in this file. It is read the right way round.
boundary_trouble-unknown_kind = Not taken: this file holds no field boundaries that can be read. Choose GeoJSON, KML, KMZ, GPX, a zipped shapefile or a GeoPackage.
boundary_trouble-part_of_shapefile = Not taken: this is one part of a shapefile. Zip its .shp, .dbf and .prj together and choose the zipped file.
boundary_trouble-too_large = Not taken: this file is too large. Save only the fields you want into a file of their own.
boundary_trouble-empty = Not taken: there is no area and no line in this file. Save the boundary in the other program as a polygon.
boundary_trouble-other_system = Not taken: the coordinates of this file cannot be followed. Save it in the other program in WGS 84 (EPSG:4326).
boundary_trouble-swapped = Not taken: latitude and longitude seem to be swapped in this file. Save it anew in the other program in WGS 84 (EPSG:4326).
boundary_trouble-damaged = Not taken: this file is damaged or not complete. Save it anew in the other program, best as GeoJSON.
