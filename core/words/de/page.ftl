# Das Blatt eines Schlags, die Karte für den Fahrer und die Übersicht der Schläge.

page_text-to_do = was zu tun ist
page_text-first = vorher
page_text-why = warum
page_text-not_looked = noch nicht angesehen
page_text-saves = Aufwand und Ersparnis
page_text-behind = hinter der Maschine
page_text-details = die Gruben im Einzelnen
page_text-key = Zeichenerklärung
page_text-called_today = Empfehlungen früherer Jahre nach den heutigen Regeln.
page_text-sure_pits = für die Gruben
page_text-sure_ground = für den Boden dazwischen
page_text-nothing_to_do = Nichts: so lassen.
page_text-decides = die Grubenwand, die entschieden hat
page_text-card = Fahrerkarte
page_text-spacing = von Zinken zu Zinken
page_text-speed = Tempo
page_text-machine = Maschine
page_text-no_machine = keine vermerkt: nach dem Probestreifen einstellen
page_text-buried = Kabel, Leitungen und Dräne
page_text-stop = anhalten, wenn
page_text-dig_behind = nach 20 m: anhalten, Schlüssel abziehen, dahinter graben
page_text-readings = Tiefe bis zum festen Boden, von einer Zinkenspur zur nächsten
page_text-set_to = eingestellte Schartiefe
page_text-day = Tag
page_text-driver = Fahrer
page_text-line_one = Spur
page_text-line_other = nächste Spur
page_text-nothing_noted = Von Kabeln, Leitungen oder Dränen ist hier nichts vermerkt. Niemand sagt, dass keine da sind: fragen, bevor die Schare in den Boden gehen.
page_text-not_named = Was hier nicht steht, kann trotzdem dort liegen.
page_text-stop_thread = Boden von den Scharen sich dünn ausrollen lässt: Er ist zu nass und verschmiert.
page_text-stop_clods = die Zinken große Klumpen oder Unterboden hochwerfen.
page_text-stop_hard = ein Zinken auf etwas stößt oder die Zugkraft springt: ausheben, anhalten, nachsehen. Dort gräbt niemand mit der Maschine.
page_text-stop_slip = die Räder durchrutschen oder die Schare ihre Tiefe nicht halten.
page_text-stop_rain = es seit der letzten Ausrollprobe geregnet hat.
page_text-look_walls = Die Wände der Schlitze bröckeln; keine ist verschmiert oder glänzt.
page_text-look_lift = Die Oberfläche ist leicht und gleichmäßig angehoben, ohne Furchen.
page_text-look_next = Sieht es so aus, weiterfahren und ab und zu wieder graben. Sonst Tiefe, Tempo oder Abstand ändern und noch 20 m versuchen, oder warten.
page_text-pages = zum Lesen und Drucken
page_text-sheet = Blatt des Schlags
page_text-sheet_line = Empfehlung, Plan und Gruben auf einem Blatt.
page_text-card_line = Was der Fahrer braucht, auf einem halben Blatt.
page_text-overview_order = Nach Dringlichkeit geordnet.
page_text-loosen_area = zu lockern

page-dug_on = { $pits }, { $day }
page-dug_between = { $pits }, { $first } bis { $last }
page-by = von { $who }
page-says = { $what }: { $told }
page-buried_noted = { $kind }: mindestens { $depth } tief
page-look_loose = Fester Boden liegt von einer Zinkenspur zur nächsten nirgends flacher als { $depth }.
page-layer_gone = Von der Schicht in { $depths } ist nicht mehr als ein Viertel übrig. Diese Grenze ist unsere eigene.
page-to_work = { $area } zu lockern
page-fields = { $count ->
    [one] Ein Schlag
   *[other] { $count } Schläge
}
page-total = { $fields }, { $area }

# Ein Teil des Schlags über die Jahre. Was in einem Jahr gesehen wurde, folgt seiner Zahl.
seasons-title = { $zone } über die Jahre
seasons-year = { $year }: { $told }.
seasons-called = Empfehlung { $call }
seasons-worst = die schlechteste von { $pits } Gruben
seasons-layer = { $condition } { $depths }
seasons-sound = nichts dicht oder verschlossen
seasons-loosened = bis { $tip } gelockert
seasons-loosened_unknown = gelockert, Tiefe nicht vermerkt
seasons-strip = Probestreifen, Schare auf { $tip }
seasons-strip_unknown = Probestreifen, Tiefe nicht vermerkt
seasons-done = { $loosened }: { $verdict }
seasons-loose = { $lasting }, im Mittel bis { $depth } locker
