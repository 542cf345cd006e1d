# Ränder und Linien in Dateien anderer Programme.

boundary-file = { $format }, { $system }.
boundary_system-wgs84 = Grad in WGS 84
boundary_system-unstated = kein Bezugssystem angegeben: für WGS 84 genommen
boundary_system-etrs89 = Grad in ETRS89, für WGS 84 genommen (weniger als 1 m Unterschied)
boundary_system-metres = Meter eines Kartengitters, in WGS 84 umgerechnet
boundary_system-etrs_metres = Meter eines Kartengitters in ETRS89, in WGS 84 umgerechnet (weniger als 1 m Unterschied)
boundary-areas = Flächen:
boundary-lines = Linien:
boundary-unnamed = ohne Namen
boundary-part = Teil { $part } von { $parts }
boundary-corners = { $corners } Ecken
boundary-places = { $places } Stellen
boundary-from_line = eine Linie, die sich schließt
boundary-holes = { $holes ->
    [one] darin ein Loch von { $area }, das ein Rand mit einschließt
   *[other] darin { $holes } Löcher von { $area }, die ein Rand mit einschließt
}
boundary-points = { $points ->
    [one] Eine einzelne Stelle bezeichnet keine Fläche und entfällt.
   *[other] { $points } einzelne Stellen bezeichnen keine Fläche und entfallen.
}
boundary-taken = Rand von { $field } übernommen: { $area }.
boundary-replaced = Rand von { $field } übernommen: { $area }, anstelle von { $before }.
boundary-line_taken = { $lines ->
    [one] Linie für { $field } übernommen: { $kind }, { $length }.
   *[other] { $lines } Linien für { $field } übernommen: { $kind }, zusammen { $length }.
}
boundary-all_lines = Alle { $lines } Linien auf einmal, { $length }
boundary_kind-drain = Dränrohr
boundary_kind-mole_drain = Maulwurfdrän
boundary_kind-service = Kabel oder Leitung

# Dasselbe auf dem Telefon.
edge-from_file = Rand aus einer Datei
edge-in_file = { $areas ->
    [0] In dieser Datei sind nur Linien.
    [one] In dieser Datei ist eine Fläche.
   *[other] In dieser Datei sind { $areas } Flächen.
}
edge-how = Ein Tippen übernimmt eine als Rand von { $field }.
edge-how_new = Ein Tippen macht aus einer einen neuen Schlag.
edge-here = Hier ist der Standort.
edge-left_out = Gezeigt werden { $shown } von { $all }.
edge-lines_need_field = { $lines ->
    [one] Auch eine Linie ist darin: zum Übernehmen zuerst einen Schlag öffnen.
   *[other] Auch { $lines } Linien sind darin: zum Übernehmen zuerst einen Schlag öffnen.
}
edge-replace_asked = Den Rand ersetzen?
edge-take_asked = Als Rand übernehmen?
edge-compared = Jetzt umschließt er { $before }, die Fläche der Datei { $area }.
edge-replace = Rand ersetzen
edge-take = als Rand übernehmen
edge-far = Das liegt { $distance } von allem, was zu { $field } notiert ist.
edge-crossed = Nicht übernommen: Zwei Seiten dieser Fläche kreuzen sich. Im anderen Programm berichtigen oder den Rand abgehen.
edge-line_asked = { $lines ->
    [one] Was liegt an dieser Linie?
   *[other] Was liegt an diesen { $lines } Linien?
}
edge-swapped = Länge und Breite sind in dieser Datei vertauscht. Sie wird richtig herum gelesen.
boundary_trouble-unknown_kind = Nicht übernommen: Diese Datei enthält keine lesbaren Ränder von Schlägen. Lesbar sind GeoJSON, KML, KMZ, GPX, ein gezipptes Shapefile und GeoPackage.
boundary_trouble-part_of_shapefile = Nicht übernommen: Das ist nur ein Teil eines Shapefiles. Seine Dateien .shp, .dbf und .prj zusammen zippen und die gezippte Datei wählen.
boundary_trouble-too_large = Nicht übernommen: Diese Datei ist zu groß. Nur die gewünschten Schläge in eine eigene Datei speichern.
boundary_trouble-empty = Nicht übernommen: In dieser Datei ist keine Fläche und keine Linie. Den Rand im anderen Programm als Polygon speichern.
boundary_trouble-other_system = Nicht übernommen: Die Koordinaten dieser Datei sind nicht lesbar. Im anderen Programm in WGS 84 (EPSG:4326) speichern.
boundary_trouble-swapped = Nicht übernommen: In dieser Datei sind Länge und Breite offenbar vertauscht. Im anderen Programm neu in WGS 84 (EPSG:4326) speichern.
boundary_trouble-damaged = Nicht übernommen: Diese Datei ist beschädigt oder unvollständig. Im anderen Programm neu speichern, am besten als GeoJSON.
