# Was ein Tippen gespeichert hat, sofort gesagt: zuerst, was es ist, damit man es zuerst hört.

saved-kept = { $what }. Gespeichert.
saved-begun = { $pit }: begonnen. Gespeichert.
saved-dug = Die Grube ist ausgehoben; die Wand ist { $moisture }. Gespeichert.
saved-face = Die Wand ist { $moisture }. Gespeichert.
saved-from = Ab { $depth }
saved-bottom = Die Grube endet bei { $depth }. Gespeichert.
saved-boundary = Die Schichtgrenze liegt jetzt bei { $depth }. Gespeichert.
saved-soil_depth = Boden aus { $depth }
saved-soil_surface = Boden von der Oberfläche
saved-reading = Messung { $number }
saved-slot = Schlitz { $number }
saved-driven = Schwere Maschinen am { $day }. Gespeichert.
saved-not_driven = Keine schweren Maschinen eingetragen. Gespeichert.
saved-left_hand = Für die linke Hand. Gespeichert.
saved-right_hand = Für die rechte Hand. Gespeichert.
saved-keys = Die Lautstärketasten antworten in der Messerprobe. Gespeichert.
saved-no_keys = Die Lautstärketasten stellen die Lautstärke. Gespeichert.
