# Eine Maschine, für eine Tiefe eingestellt.

machine-estimate = { $mid } ({ $lo }–{ $hi })

set-tip = Scharspitzen in { $tip }.
set-not_worked = Hier ist nicht zu arbeiten: { $why }. Die Zahlen darunter sagen nur, was es bräuchte.
set-reach = Die Maschine reicht bis { $reach }: Auf { $tip } kommt sie nicht.
set-speed = { $speed } gehört nicht zu den Geschwindigkeiten dieser Maschine ({ $slowest } bis { $fastest }).
set-critical = Die kritische Tiefe dieses Schars liegt irgendwo in { $range }, dem 5- bis 7-Fachen seiner Breite: Die Spitzen laufen { $place }.
set-critical_winged = Die kritische Tiefe dieses Schars liegt bei { $from } oder tiefer: beim 5-Fachen seiner Breite ohne Flügel, und wie viel tiefer mit ihnen, sagt niemand. Die Spitzen laufen { $place }.
set-shallower = Flacher liegt die kritische Tiefe durch { $shifts }; um wie viel, kann niemand sagen.
set-deeper = Tiefer liegt sie durch { $shifts }.
set-deepest = Am tiefsten über der kritischen Tiefe laufen die Spitzen dieser Maschine nach Schätzung in { $depth }.
set-foot = Für Spitzen in { $tip } braucht es ein Schar von { $sure }, um über der kritischen Tiefe zu bleiben; eines unter { $least } läuft darunter.
set-foot_winged = Für Spitzen in { $tip } braucht es ein Schar von { $sure }, um nach Schätzung über der kritischen Tiefe zu bleiben; bei einem schmaleren muss es der Probestreifen zeigen.
set-spacing = Abstand { $spacing }: { $fit } (veröffentlicht für diese Tiefe: { $range }).
set-no_spacing = Der Abstand wird an keinem Bereich gemessen: { $why }.
set-if = Nur wenn der Probestreifen die Spitzen über der kritischen Tiefe zeigt: { $sentence }
set-ground = Nach der Zeichnung, mit Seiten von { $sides }, sind { $share } des Bodens gelockert, mit Dämmen von { $ridge } zwischen den Zinken.
set-ground_apart = Nach der Zeichnung, mit Seiten von { $sides }, sind { $share } des Bodens gelockert; was benachbarte Zinken lockern, trifft sich nicht.
set-single = Ein Zinken allein lockert { $area }, an der Oberfläche { $width } breit.
set-no_ground = Wie viel gelockert wird, bleibt ungesagt: { $why }.
set-layer_full = Nach der Zeichnung ist die Schicht bis { $bottom } auf ganzer Breite gebrochen; bis { $widest } Abstand ginge es.
set-layer_part = Nach der Zeichnung ist die Schicht in { $bottom } nicht auf ganzer Breite gebrochen: Dazu braucht es höchstens { $widest } Abstand, je nachdem, wie steil die Seiten sind.
set-layer_flat = Nach der Zeichnung ist die Schicht in { $bottom } nur dann auf ganzer Breite gebrochen, wenn der Boden mit flachen Seiten bricht; mit steilen braucht es höchstens { $widest } Abstand.
set-layer_tip = Mit diesem Abstand braucht es Spitzen in { $tip }.
set-layer_dig = Erst die Grube hinter der Maschine entscheidet. Wurzeln brauchen Wege hindurch, nicht immer die ganze Breite.
set-no_layer = Ob eine Schicht gebrochen wird, bleibt ungesagt: { $why }.
set-leading = Vorlaufende Zinken: { $first } oder { $second }, nach zwei veröffentlichten Versuchen, die nicht übereinstimmen.
set-leading_fitted = Sie laufen in { $depth }.
set-leading_draught = Dort sparten sie bis zu { $saved } der Zugkraft ({ $source }); das steckt in keiner anderen Zahl.
set-leading_fuel = Dort sparten sie { $saved } des Kraftstoffs ({ $source }); das steckt in keiner anderen Zahl.
set-draught = Zugkraft { $draught } nach ASABE D497, mit der Spanne von je der Hälfte nach oben und unten; am Zugpendel { $power }.
set-wings_wider = Die Flügel jener Tabelle sind { $source } breit; breitere wie diese ziehen mehr als gesagt.
set-tractor = Der Schlepper hat { $has } an der Zapfwelle, nötig sind { $needed }: { $fit }.
set-held = Er hält mit dieser Maschine { $speed }; danach gehen Flächenleistung, Kraftstoff und Kosten.
set-grip = Seine Räder ziehen { $best } beim besten Schlupf, { $most } beim größten, der noch Arbeit ist: { $fit }.
set-no_grip = Ob seine Räder greifen, bleibt ungesagt: { $why }.
set-fuel = Kraftstoff { $area }, { $hour } (nach der { $formula }).
set-no_fuel = Der Kraftstoff bleibt ungesagt: { $why }.
set-work = Flächenleistung: { $done }.
set-no_work = Die Flächenleistung bleibt ungesagt: { $why }.
set-cost = Kosten { $cost }.
set-break_even = Es lohnt ab { $yield } mehr Korn.

compare-row = { $measure }: { $one } gegen { $other }.
compare-none = ungesagt ({ $why })
compare-if = { $value }, wenn die Spitzen über der kritischen Tiefe laufen

tine-force = Nach McKyes und Ali 1977 zieht ein einfacher Zinken in Boden dieser Kohäsion und Reibung { $draught }, ohne Adhäsion.

section-title = Schnitt quer zur Maschine
section-loosened = Gelockerter Boden
section-loosened_if_above = Gelockerter Boden, wenn die Spitzen über der kritischen Tiefe laufen
section-hangs_on_slope = Hängt an der Neigung der Flanken: gelockert, wo sie nur { $flat } steil sind, stehen gelassen bei { $steep }
section-ridge_range = Damm zwischen den Zinken, { $ridge }, je nach Neigung der Flanken
section-described_slope = Punkte zeigen, was auch Flanken von { $steep } lockern; senkrechte Striche, was nur bei flacheren Flanken bis { $flat } gelockert wird.
section-ridge = Damm zwischen den Zinken, bis { $ridge }
section-layer = Zu brechende Schicht, { $depths }
section-critical = Kritische Tiefe, irgendwo in { $range }
section-critical_winged = Kritische Tiefe, irgendwo ab { $from } abwärts
section-tip = Spitzen in { $tip }
section-leading = Spitzen der vorlaufenden Zinken in { $depth }
section-no_ground = Gelockerter Boden ist nicht gezeichnet: { $why }.
section-described = { $legs ->
    [one] Schnitt quer zur Maschine: ein Zinken, { $spacing } von Spur zu Spur, Spitzen in { $tip }.
   *[other] Schnitt quer zur Maschine: { $legs } Zinken im Abstand von { $spacing }, Spitzen in { $tip }.
}
section-described_layer = Die zu brechende Schicht liegt in { $depths }.
section-described_critical = Die kritische Tiefe liegt irgendwo in { $range }: Die Spitzen laufen { $place }.
section-described_critical_winged = Die kritische Tiefe liegt irgendwo ab { $from } abwärts: Die Spitzen laufen { $place }.

critical-above = über der kritischen Tiefe
critical-uncertain = in ihrem Bereich, also einen Probestreifen graben
critical-below = unter der kritischen Tiefe

critical_shift-wetter = nasseren Boden
critical_shift-worn_foot = ein abgenutztes Schar
critical_shift-wings = Flügel
critical_shift-leading_tines = vorlaufende Zinken

spacing_fit-too_wide = zu weit
spacing_fit-fits = er passt
spacing_fit-closer_than_needed = enger als nötig

tractor_fit-enough = genug
tractor_fit-tight = knapp
tractor_fit-not_enough = nicht genug

why_not-below_critical_depth = unter der kritischen Tiefe wird der Boden beiseite gedrückt, nicht gehoben
why_not-too_wet = Boden, der sich zum Faden rollt, schmiert und bricht nicht
why_not-no_layer = keine Schicht ist angegeben
why_not-tip_above_layer_bottom = die Spitzen laufen nicht unter der Unterkante der Schicht
why_not-no_published_range = für einfache Schare mit vorlaufenden Zinken ist keiner veröffentlicht
why_not-no_texture = die Bodenart ist nicht notiert
why_not-no_machine = keine Maschine ist angegeben
why_not-no_tractor = kein Schlepper ist angegeben
why_not-not_enough_power = der Schlepper hat die Leistung nicht
why_not-not_weighed = die Masse des Schleppers ist nicht bekannt, also wiegen
why_not-call_forbids = dieser Boden soll jetzt nicht gelockert werden
why_not-not_given = was es dazu braucht, ist nicht angegeben

fuel_formula-part_load = Teillastgeraden bei Vollgas
fuel_formula-older = älteren Teillastkurve

measure-share = Anteil des gelockerten Bodens
measure-ridge = Damm
measure-draught = Zugkraft
measure-pto_power = Zapfwellenleistung
measure-work_rate = Flächenleistung
measure-fuel = Kraftstoff
measure-cost = Kosten
measure-break_even = Korn, das es bezahlt
