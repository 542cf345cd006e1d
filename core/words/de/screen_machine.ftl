# Bildschirme: eigene Angaben, Maschine, Arbeitsgang, Grube dahinter, Zeigen, Fotos, Weitergeben, Lage auf dem Plan.

caption-undo = Rückgängig
caption-redo = Wiederholen
caption-back = Zurück
caption-more = Gründe und was zu beachten ist
caption-menu = Mehr
caption-choose_language = Sprache wählen
caption-own = Eigene Angaben
caption-name = Name, wie er bei Gruben und Fotos stehen soll
caption-hand = Das Handy liegt in der
caption-left_hand = linken Hand
caption-right_hand = rechten Hand
caption-units = Tiefen stehen in
caption-centimetres = Zentimetern
caption-inches = Zoll
caption-language = Sprache
caption-volume_keys = Die Lautstärketasten in der Messerprobe
caption-keys_usual = stellen die Lautstärke
caption-keys_answer = antworten: lauter = wie darüber, leiser = rückgängig
caption-own_done = Zu den Schlägen
caption-privacy = Positionen und Fotos bleiben auf diesem Handy, bis sie weitergegeben werden.
caption-team_word = Teamwort, das Weitergegebenes verschließt
caption-team_word_set = Ein Teamwort ist gesetzt: Was von hier weitergegeben wird, öffnet nur, wer es kennt.
caption-forget_team_word = Das Teamwort vergessen
caption-team_word_kept = Das Teamwort ist auf diesem Handy gemerkt. Wer Weitergegebenes öffnen soll, muss es kennen.
caption-team_word_forgotten = Das Teamwort ist hier vergessen. Was ab jetzt weitergegeben wird, kann jeder öffnen.
caption-team_word_short = Das Teamwort braucht zwölf Buchstaben oder mehr: vier zufällig gewählte Wörter etwa.

caption-machines = Maschinen
caption-no_machine = Für diesen Schlag ist noch keine Maschine beschrieben.
caption-describe_machine = Maschine beschreiben
caption-copy_machine = Für einen anderen Schlag beschrieben; zum Übernehmen antippen
caption-legs = Zinken
caption-spacing = Von Zinken zu Zinken
caption-foot_width = Breite des Schars, so abgenutzt wie es ist, ohne Flügel
caption-wings = Breite über beide Flügel
caption-lift = Hubhöhe der Flügel
caption-leading = Flach vorlaufende Zinken
caption-leading_depth = Tiefe der flach vorlaufenden Zinken
caption-reach = Größte Schartiefe, die sie erreicht
caption-power = Schlepper, Leistung des Motors
caption-tractor_mass = Masse des Schleppers im Einsatz
caption-machine_name = Wie sie auf dem Hof heißt
caption-none_fitted = keine
caption-fitted = vorhanden
caption-not_noted = nicht eingetragen
caption-set_anew = Diese Maschine wurde schon eingesetzt: Mit anderen Maßen wird sie eine neue, und der Arbeitsgang behält die alte.
caption-nothing_to_loosen = Keine Zone dieses Schlags ist zu lockern: Für diese Maschine gibt es nichts einzustellen.
caption-spacing_result = Der Zinkenabstand
caption-layer_result = Die Schicht
caption-all_results = Alles Weitere
caption-faulty = Mit diesen Maßen ist nichts zu sagen.

drive-two_wheel = Hinterradantrieb
drive-front_assist = Allrad, vorn kleinere Räder
drive-four_wheel = Allrad, gleich große Räder
drive-tracks = Raupe

caption-passes = Arbeitsgänge
caption-pass = Arbeitsgang
caption-no_pass = Für diesen Schlag ist noch kein Arbeitsgang eingetragen.
caption-new_pass = Neuer Arbeitsgang
caption-which_machine = Welche Maschine?
caption-which_zone = Über welche Zone?
caption-how_much = Wie viel davon?
caption-which_day = An welchem Tag?
caption-today = heute
caption-yesterday = gestern
caption-tip_depth = Schartiefe
caption-pass_speed = Fahrgeschwindigkeit
caption-pass_machine = Maschine
caption-pass_zone = Zone
caption-pass_extent = wie viel davon
caption-driven_on = Sind seither schwere Maschinen darüber gefahren?
caption-wheels_today = ja, heute
caption-wheels_no = nichts eingetragen
caption-roll_at_tips = Boden aus der Schartiefe kneten und zwischen den Händen ausrollen
caption-dig_behind = Dahinter graben
caption-holes = Gruben dahinter
caption-no_machine_no_section = Maschine angeben, dann wird der Querschnitt über zwei Zinken gezeichnet.
caption-few_readings = Es sind wenige Messungen: Was hier steht, gilt nur, wenn sie bis zur nächsten Zinkenspur reichen.
caption-yes = ja
caption-no = nein
caption-roots = Was die Wurzeln im gelockerten Boden tun

caption-show = Zum Ansehen
caption-nothing_to_show = Hier ist noch keine Grube gegraben.

caption-photos = Fotos
caption-take_photo = Foto aufnehmen
caption-no_photo = Von dieser Grube ist kein Foto vermerkt.
caption-scale = Messer oder Spaten ins Bild legen: Das gibt den Maßstab.
caption-only_noted = Aufgeführt ist, was zu jedem Foto vermerkt ist. Die Bilder liegen im Ordner der App.
caption-photo_place = Wohin gehört das letzte?
caption-whole_face = ganze Wand

caption-hand_over = Weitergeben
caption-as_file = Als Notizdatei, die andere Programme und Menschen lesen können. Auf einem Handy übernommen, ergänzt sie dort den Schlag.
caption-or_everything = Für andere, die auch graben, mit Fotos und allem, was mehrere schrieben:
caption-share_field = Diesen Schlag weitergeben
caption-open_file = Datei übernehmen
caption-what_leaves = Die Aufzeichnungen verlassen das Handy mit allem, was darin steht: Namen der Grabenden, Tage und Antworten.
caption-positions_leave = Mit ihnen gehen die Positionen: die des Randes, der Gruben und von allem, was markiert ist.
caption-photos_stay = Fotos bleiben hier; nur was von ihnen vermerkt ist, geht mit.
caption-half_read = Eine Grube hinter der Maschine ist erst angefangen: erst weiter messen, sonst übernimmt kein anderes Handy die Datei.
caption-whom = Nur an den weitergeben, mit dem der Hof einverstanden ist.

caption-on_plan = Wo die Grube liegt
caption-plan_pit = diese Grube
caption-no_plan = Von diesem Schlag ist noch keine Lage bekannt: den Rand abgehen oder das Handy den Standort lesen lassen.
caption-plan_start = Sie steht bei der zuletzt gegrabenen Grube, sonst in der Mitte des Schlags. Verschieben oder dort lassen.
caption-plan_kept = Eine Lage von Hand gilt als auf 10 m bekannt.
caption-plan_here = Hier liegt sie
caption-move_far = In großen Schritten
caption-move_near = In kleinen Schritten

shown-legs = { $legs ->
    [one] ein Zinken
   *[other] { $legs } Zinken
}
shown-machine_name = { $legs }, Abstand { $spacing }
shown-step_less = − { $step }
shown-step_more = + { $step }
shown-foot = Schar { $width }
shown-wings = Flügel { $width }
shown-tractor = Schlepper { $power }
shown-set_for = { $zone }, Scharspitzen in { $tip } Tiefe
shown-cannot_set = Dafür ist sie nicht einzustellen: { $why }.
shown-asked = { $what }: { $value }
shown-speeds = { $slowest } bis { $fastest }
shown-copy = { $field }: { $measures }
shown-name_empty = Es fehlt noch ein Name.
shown-name_todo = Namen eingeben oder zurück.
shown-gone = Das ist nicht mehr da.
shown-gone_todo = Zurück und neu wählen.

shown-holes = { $holes ->
    [0] noch keine Grube dahinter
    [one] eine Grube dahinter
   *[other] { $holes } Gruben dahinter
}
shown-hole = Grube { $number }, { $day }
shown-hole_undated = Grube { $number }

shown-photo = { $day }, { $place }, { $size }
shown-photo_undated = Ohne Tag, { $place }, { $size }
shown-photo_at = in { $depth }
shown-photo_nowhere = Lage an der Wand nicht vermerkt
shown-photos_count = { $photos ->
    [one] Ein Foto
   *[other] { $photos } Fotos
}
shown-hand_over_counts = { $field }: { $pits }, { $passes }.
shown-passes_count = { $passes ->
    [one] ein Arbeitsgang
   *[other] { $passes } Arbeitsgänge
}
shown-plan_walk = Grube { $number }: { $walk }, von der Mitte des Schlags aus.
shown-plan_middle = Grube { $number } liegt in der Mitte des Schlags.
shown-moved = { $distance } nach { $compass } verschoben.
