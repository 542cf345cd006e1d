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
boundary-line_taken = Linie für { $field } übernommen: { $kind }, { $length }.
boundary_kind-drain = Drän
boundary_kind-mole_drain = Maulwurfdrän
boundary_kind-service = Kabel oder Leitung
