# Eine Maschine, für eine Tiefe eingestellt.

machine-estimate = { $mid } ({ $lo }–{ $hi })

set-tip = Scharspitzen in { $tip } Tiefe.
set-not_worked = Hier ist nicht zu arbeiten: { $why }. Die Zahlen darunter sagen nur, was nötig wäre.
set-reach = Die Maschine kommt nur bis { $reach }; { $tip } erreicht sie nicht.
set-speed = { $speed } gehört nicht zu den Geschwindigkeiten dieser Maschine ({ $slowest } bis { $fastest }).
set-critical = Die kritische Tiefe dieses Schars liegt irgendwo in { $range }, beim 5- bis 7-Fachen der Scharbreite: Die Scharspitzen laufen { $place }.
set-critical_winged = Die kritische Tiefe dieses Schars liegt bei { $from } oder tiefer: beim 5-Fachen der Scharbreite ohne Flügel, und wie viel tiefer mit ihnen, ist nicht bekannt. Die Scharspitzen laufen { $place }.
set-shallower = Geringer wird die kritische Tiefe durch { $shifts }; um wie viel, ist nicht bekannt.
set-deeper = Größer wird sie durch { $shifts }.
set-deepest = Geschätzt bleibt diese Maschine bis { $depth } über der kritischen Tiefe.
set-foot = Für Scharspitzen in { $tip } ist ein mindestens { $sure } breites Schar nötig, um über der kritischen Tiefe zu bleiben; eines unter { $least } läuft darunter.
set-foot_winged = Für Scharspitzen in { $tip } ist ein mindestens { $sure } breites Schar nötig, um nach Schätzung über der kritischen Tiefe zu bleiben; bei einem schmaleren muss es der Probestreifen zeigen.
set-spacing = Zinkenabstand { $spacing }: { $fit } (veröffentlicht für diese Tiefe: { $range }).
set-no_spacing = Für den Zinkenabstand gibt es keinen Vergleichswert: { $why }.
set-if = Nur wenn der Probestreifen zeigt, dass die Scharspitzen über der kritischen Tiefe laufen: { $sentence }
set-ground = Rechnerisch, mit Flanken von { $sides }, sind { $share } des Bodens gelockert, mit ungelockerten Rücken von { $ridge } zwischen den Zinken.
set-ground_apart = Rechnerisch, mit Flanken von { $sides }, sind { $share } des Bodens gelockert; die gelockerten Streifen berühren sich nicht.
set-single = Ein Zinken allein lockert { $area }, an der Oberfläche { $width } breit.
set-no_ground = Wie viel gelockert wird, wird nicht angegeben: { $why }.
set-layer_full = Rechnerisch ist die Schicht bis { $bottom } auf ganzer Breite aufgebrochen; möglich bis { $widest } Zinkenabstand.
set-layer_part = Rechnerisch ist die Schicht in { $bottom } nicht auf ganzer Breite aufgebrochen: Nötig wären höchstens { $widest } Zinkenabstand, je nachdem, wie steil die Flanken sind.
set-layer_flat = Rechnerisch ist die Schicht in { $bottom } nur dann auf ganzer Breite aufgebrochen, wenn der Boden mit flachen Flanken bricht; mit steilen wären höchstens { $widest } Zinkenabstand nötig.
set-layer_tip = Mit diesem Zinkenabstand müssen die Scharspitzen in { $tip } laufen.
set-layer_dig = Erst die Grube hinter der Maschine entscheidet. Wurzeln brauchen Durchgänge, nicht immer die ganze Breite.
set-no_layer = Ob eine Schicht aufgebrochen wird, wird nicht angegeben: { $why }.
set-leading = Flach vorlaufende Zinken: { $first } oder { $second }, nach zwei veröffentlichten Versuchen, die nicht übereinstimmen.
set-leading_fitted = Sie laufen in { $depth }.
set-leading_draught = Dort sparten sie bis zu { $saved } der Zugkraft ({ $source }); das steckt in keiner anderen Zahl.
set-leading_fuel = Dort sparten sie { $saved } des Kraftstoffs ({ $source }); das steckt in keiner anderen Zahl.
set-draught = Zugkraft { $draught } nach ASABE D497, mit ±50{ "\u00A0" }%; Zugleistung { $power }.
set-wings_wider = Die Flügel jener Tabelle sind { $source } breit; breitere wie diese ziehen mehr als gesagt.
set-tractor = Der Schlepper hat { $has } Zapfwellenleistung, gebraucht werden { $needed }: { $fit }.
set-held = Er hält mit dieser Maschine { $speed }; danach gehen Flächenleistung, Kraftstoff und Kosten.
set-grip = Seine Räder ziehen { $best } beim besten Schlupf, { $most } beim größten, der noch Arbeit ist: { $fit }.
set-no_grip = Ob seine Räder greifen, wird nicht angegeben: { $why }.
set-fuel = Kraftstoff { $area }, { $hour } (nach der { $formula }).
set-no_fuel = Der Kraftstoff wird nicht angegeben: { $why }.
set-work = Flächenleistung: { $done }.
set-no_work = Die Flächenleistung wird nicht angegeben: { $why }.
set-cost = Kosten { $cost }.
set-break_even = Kostendeckend ab { $yield } Mehrertrag (Getreide).

compare-row = { $measure }: { $one } gegen { $other }.
compare-none = keine Angabe ({ $why })
compare-if = { $value }, wenn die Scharspitzen über der kritischen Tiefe laufen

tine-force = Nach McKyes und Ali 1977 braucht ein einfacher Zinken bei dieser Kohäsion und diesem Reibungswinkel { $draught } Zugkraft, ohne Adhäsion.

section-title = Querschnitt durch den Arbeitsgang der Maschine
section-loosened = Gelockerter Boden
section-loosened_if_above = Gelockerter Boden, wenn die Scharspitzen über der kritischen Tiefe laufen
section-hangs_on_slope = Hängt an der Neigung der Flanken: gelockert, wo sie nur { $flat } steil sind, stehen gelassen bei { $steep }
section-ridge_range = Ungelockerter Rücken zwischen den Zinken, { $ridge }, je nach Neigung der Flanken
section-described_slope = Getüpfelt ist, was auch Flanken von { $steep } lockern; senkrecht gestrichelt, was nur bei flacheren Flanken bis { $flat } gelockert wird.
section-ridge = Ungelockerter Rücken zwischen den Zinken, bis { $ridge }
section-layer = Aufzubrechende Schicht, { $depths }
section-critical = Kritische Tiefe, irgendwo in { $range }
section-critical_winged = Kritische Tiefe, irgendwo ab { $from } abwärts
section-tip = Scharspitzen in { $tip } Tiefe
section-leading = Flach vorlaufende Zinken, Spitzen in { $depth } Tiefe
section-no_ground = Gelockerter Boden ist nicht gezeichnet: { $why }.
section-described = { $legs ->
    [one] Querschnitt: ein Zinken, Abstand der Zinkenspuren { $spacing }, Scharspitzen in { $tip } Tiefe.
   *[other] Querschnitt: { $legs } Zinken im Abstand von { $spacing }, Scharspitzen in { $tip } Tiefe.
}
section-described_layer = Die aufzubrechende Schicht liegt in { $depths }.
section-described_critical = Die kritische Tiefe liegt irgendwo in { $range }: Die Scharspitzen laufen { $place }.
section-described_critical_winged = Die kritische Tiefe liegt irgendwo ab { $from } abwärts: Die Scharspitzen laufen { $place }.

critical-above = über der kritischen Tiefe
critical-uncertain = im Bereich der kritischen Tiefe, also einen Probestreifen fahren und dahinter graben
critical-below = unter der kritischen Tiefe

critical_shift-wetter = nasseren Boden
critical_shift-worn_foot = ein verschlissenes Schar
critical_shift-wings = Flügel
critical_shift-leading_tines = flach vorlaufende Zinken

spacing_fit-too_wide = zu weit
spacing_fit-fits = passend
spacing_fit-closer_than_needed = enger als nötig

tractor_fit-enough = genug
tractor_fit-tight = knapp
tractor_fit-not_enough = nicht genug

why_not-below_critical_depth = unter der kritischen Tiefe wird der Boden zur Seite gedrückt statt angehoben
why_not-too_wet = Boden, der sich dünn ausrollen lässt, verschmiert, statt aufzubrechen
why_not-no_layer = keine Schicht ist angegeben
why_not-tip_above_layer_bottom = die Scharspitzen reichen nicht unter die Schicht
why_not-no_published_range = für einfache Schare mit flach vorlaufenden Zinken ist keiner veröffentlicht
why_not-no_texture = die Bodenart ist nicht eingetragen
why_not-no_machine = keine Maschine ist angegeben
why_not-no_tractor = kein Schlepper ist angegeben
why_not-not_enough_power = die Schlepperleistung reicht nicht
why_not-not_weighed = die Masse des Schleppers ist nicht bekannt, also wiegen
why_not-call_forbids = dieser Boden soll jetzt nicht gelockert werden
why_not-not_given = nötige Angaben fehlen

fuel_formula-part_load = Teillastgeraden bei Vollgas
fuel_formula-older = älteren Teillastkurve

measure-share = Anteil des gelockerten Bodens
measure-ridge = Ungelockerter Rücken
measure-draught = Zugkraft
measure-pto_power = Zapfwellenleistung
measure-work_rate = Flächenleistung
measure-fuel = Kraftstoff
measure-cost = Kosten
measure-break_even = Mehrertrag zur Kostendeckung
