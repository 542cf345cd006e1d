# Was ein Tippen gespeichert hat, sofort gesagt: zuerst, was es ist, damit man es zuerst hört.

saved-kept = { $what }. Gespeichert.
saved-begun = { $pit }, ist begonnen. Gespeichert.
saved-dug = Die Grube ist ausgehoben; die Wand ist { $moisture }. Gespeichert.
saved-face = Die Wand ist { $moisture }. Gespeichert.
saved-from = Ab { $depth }
saved-bottom = Die Grube endet bei { $depth }. Gespeichert.
saved-boundary = Die Grenze liegt jetzt bei { $depth }. Gespeichert.
saved-soil_depth = Boden aus { $depth }
saved-soil_surface = Boden von der Oberfläche
saved-pass = Eine neue Überfahrt ist begonnen. Gespeichert.
saved-hole = Eine Grube hinter der Maschine ist begonnen. Gespeichert.
saved-reading = Messung { $number }
saved-slot = Schlitz { $number }
saved-driven = Schwere Räder am { $day }. Gespeichert.
saved-not_driven = Keine schweren Räder vermerkt. Gespeichert.
saved-left_hand = Für die linke Hand. Gespeichert.
saved-right_hand = Für die rechte Hand. Gespeichert.
saved-keys = Die Lautstärketasten antworten im Messergang. Gespeichert.
saved-no_keys = Die Lautstärketasten stellen die Lautstärke. Gespeichert.
