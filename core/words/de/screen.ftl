# Bildschirme der Schläge und Gruben: was auf Knöpfen und daneben steht.

pit_text-all_fields = Schläge
pit_text-allow_position = Standort erlauben
pit_text-another_corner = hier ist eine Ecke
pit_text-behind = hinter der Maschine
pit_text-bottom_of_hole = Grubensohle
pit_text-by_hand = von Hand eintragen
pit_text-call_so_far = Ergebnis bis jetzt
pit_text-corner_crosses = Nicht vermerkt: Mit dieser Ecke würden sich zwei Seiten kreuzen. Den Rand der Reihe nach abgehen oder neu beginnen.
pit_text-corner_same = Nicht vermerkt: Hier liegt schon die letzte Ecke.
pit_text-dig_next = weitere Grube graben
pit_text-dig_pit = Grube graben
pit_text-dug_question = Die Grube ist ausgehoben: Wie feucht ist die Wand?
pit_text-enough = genug: zur Ausrollprobe
pit_text-face_question = Wie feucht ist die Wand?
pit_text-field_name = Name des Schlags
pit_text-field_name_missing = Dem Schlag einen Namen geben.
pit_text-give_call = was hier zu tun ist
pit_text-hand_over = weitergeben
pit_text-hole_dug = die Grube ist ausgehoben
pit_text-machine = Maschine
pit_text-no_corner = Noch keine Ecke. Den Rand des Schlags abgehen und an jeder Ecke einmal tippen.
pit_text-no_fields = Noch kein Schlag. Einen anlegen: Der Name genügt.
pit_text-no_layers = Von dieser Wand ist noch nichts vermerkt.
pit_text-no_pit = Noch keine Grube.
pit_text-no_position = Noch kein Standort. Das Handy unter freiem Himmel still liegen lassen; es geht auch ohne weiter.
pit_text-no_roll_at_depth = Hier ist nichts zu lockern, deshalb wird nur Boden von der Oberfläche gerollt.
pit_text-not_looked = nicht angesehen
pit_text-on_plan = auf dem Plan zeigen
pit_text-or_key_up = oder Lautstärketaste „lauter“
pit_text-outline_anew = Rand neu beginnen
pit_text-outline_gone = Der Rand ist nicht mehr vermerkt.
pit_text-own = eigene Angaben
pit_text-photos = Fotos
pit_text-place = Stelle und Standort
pit_text-position_held = Der Standort wird übernommen, wenn die Grube ausgehoben ist.
pit_text-position_noted = Der Standort ist vermerkt.
pit_text-position_refused = Der Standort ist bisher nicht erlaubt. Erlauben, auf dem Plan zeigen oder ohne weitermachen.
pit_text-position_settling = Das Handy noch etwas still liegen lassen.
pit_text-reference_stands = Damit werden die anderen Gruben verglichen; sie steht für keine eigene Fläche.
pit_text-resistance_question = Worauf trifft das Messer?
pit_text-roll_how = Eine Handvoll Boden kneten und zwischen den Händen zu einer 3 mm dünnen Walze ausrollen.
pit_text-same_as_above = wie darüber
pit_text-show = zeigen
pit_text-start_field = Schlag anlegen
pit_text-start_pit = Grube beginnen
pit_text-take_position = Standort neu übernehmen
pit_text-two_faces = Eine oder zwei Seiten; zwei saubere Wände stehen lassen.
pit_text-walk_edge = Rand des Schlags abgehen
pit_text-walk_on = Messerprobe
pit_text-where = Wo wird gegraben?
pit_text-you_are_here = Hier ist der eigene Standort.

since_year-recent = { $year }
since_year-before = vor { $year }

screen_pit-corner = Ecke { $number } ist vermerkt.
screen_pit-corners = { $count ->
    [one] { $count } Ecke vermerkt.
   *[other] { $count } Ecken vermerkt.
}
screen_pit-dig_to = Mindestens { $depth } tief graben: tiefer, als je gearbeitet werden könnte, anderthalb bis zwei Spatenstiche.
screen_pit-last_dug = { $pits }, zuletzt { $day }
screen_pit-lines_up = { $name }: { $value }
screen_pit-nudge_down = { $depth } tiefer
screen_pit-nudge_up = { $depth } höher
screen_pit-boundary = Grenze bei { $depth }
screen_pit-position = ±{ $accuracy }, { $fixes ->
    [one] eine Messung
   *[other] { $fixes } Messungen
} in { $seconds } s.
screen_pit-position_noted = Standort vermerkt, ±{ $accuracy }.
screen_pit-roll_depth = Boden aus { $depth }, gerollt: Was tut er?
screen_pit-roll_surface = Boden von der Oberfläche, gerollt: Was tut er?
screen_pit-step = { $depths }: Wie löst sich der Boden?
screen_pit-title = { $pit }: { $what }
screen_pit-why = Das { $why }.
