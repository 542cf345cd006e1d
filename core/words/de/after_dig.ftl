# Ein Arbeitsgang mit der Maschine, und was die Gruben dahinter sagen.

# Was hinter der Maschine gefunden wird. .season heißt es eine Saison später; .pass steht für den ganzen Arbeitsgang, .head über allem.
verdict-done = gelungen
    .season = gehalten
    .pass = Die Lockerung hat ihr Ziel erreicht.
    .head = Ziel der Lockerung erreicht
verdict-partly = teilweise
    .season = teilweise gehalten
    .pass = Es ist nur stellenweise gelockert.
    .head = Stellenweise gelockert
verdict-not_done = nicht gelungen
    .season = nicht gehalten
    .pass = Die Schicht ist unverändert.
    .head = Nicht gelockert
verdict-worse = schlechter als vorher
    .season = schlechter als vorher
    .pass = Das Lockern hat dem Boden geschadet.
    .head = Das Lockern hat dem Boden geschadet
verdict-cannot_say = nicht zu beurteilen
    .season = ob es gehalten hat, ist nicht zu beurteilen
    .pass = Die Gruben hinter diesem Arbeitsgang sagen nicht, was er bewirkt hat.
    .head = Zu wenig gemessen

dig-sentence = { $verdict }: { $found }.
dig-layer_broken = { $share } der Schicht sind aufgebrochen
dig-layer_still_broken = { $share } der Schicht sind noch aufgebrochen
dig-loose_to = { $share } des Bodens bis { $depth } Tiefe sind gelockert
dig-loose = { $share } des Bodens sind gelockert
dig-done = Der Boden ist gelockert
dig-partly = Stellenweise ist gelockert
dig-layer_stands = Die Schicht ist unverändert
dig-ground_stands = Der Boden ist unverändert
dig-firm_again = Der Boden ist wieder fest
dig-firm_again_at = Fest ist es wieder { $where }
dig-pressed = Um die Schlitze ist der Boden verdichtet
dig-thrown = Grobe Brocken aus dem Unterboden liegen an der Oberfläche
dig-harmed = Das Bodengefüge wurde geschädigt
dig-no_depths = Es wurden keine Tiefen bis zum festen Boden gemessen
dig-no_mark = Dazu müssen die Tiefen bis zum festen Boden zwischen zwei Zinkenspuren gemessen und die Zieltiefe angegeben sein
dig-stayed_firm = fest ist es { $where }
dig-stretch = { $across } ({ $width } breit)
dig-stretches = { $across } (zusammen { $width } breit)
dig-stretch_share = { $across } ({ $share } der Breite)

across-at_line = an einer Zinkenspur
    .both = an beiden Zinkenspuren
across-between = zwischen den Zinkenspuren
across-throughout = von Zinkenspur zu Zinkenspur
stretch-at = Fest { $across }: { $depths } von der ersten Zinkenspur.
stretch-share = Fest { $across }: von { $from } bis { $to } der Strecke zur nächsten Zinkenspur.

# Worauf es beruht.
stands-no_readings = Dazu müssen die Tiefen bis zum festen Boden zwischen zwei Zinkenspuren gemessen und eine Zieltiefe angegeben sein.
stands-layer_broken = { $share } der Schicht sind aufgebrochen; als gelungen gilt es ab { $mark }, das ist unser eigener Richtwert.
stands-section_loose = Eine Schicht ist nicht bekannt; { $share } des Bodens bis zur Zieltiefe sind gelockert. Als gelungen gilt es ab { $mark }, das ist unser eigener Richtwert.
stands-no_deeper = Fester Boden beginnt im Mittel bei { $now }, nicht tiefer als vor dem Lockern ({ $before }).
stands-pressed_slot = Der Schlitz ist verschmiert oder eng, und rundum ist wenig gelockert.
stands-thrown = Grobe Brocken aus dem Unterboden liegen an der Oberfläche.
stands-plates_left = Die meisten Platten der Schicht sind noch ganz.
stands-floor_left = Unten bleibt die Schicht von Zinkenspur zu Zinkenspur stehen.
stands-slot_seen = { $seen }; Tiefen wurden nicht gemessen, aber so sieht es aus, wo nichts gelockert ist.
stands-against = { $seen }.
stands-published = Literaturwert bei besten Bedingungen: { $range } der verdichteten Schicht aufgebrochen (USDA Forest Service 0834-2828, S. 6).
stands-mark = Ab wann eine Lockerung gelungen ist, gibt keine Quelle an; unser Richtwert ist { $mark }.

# Zahlen.
measured-share = Gemessen: { $share } des Bodens bis { $depth } Tiefe sind gelockert.
measured-share_only = Gemessen: { $share } des Bodens sind gelockert.
measured-no_share = Wie viel gelockert ist, wird nicht angegeben: { $why }.
measured-layer = Gemessen: Die Schicht, die bei { $bottom } endet, ist an { $share } der Messstellen aufgebrochen.
measured-layer_only = Gemessen: Die Schicht ist an { $share } der Messstellen aufgebrochen.
measured-layer_left = Gemessen: Von der Schicht ({ $depths }) sind im Mittel { $left } übrig; { $share } davon sind aufgebrochen.
measured-layer_gone = Gemessen: Von der Schicht ({ $depths }) ist nichts übrig.
measured-no_layer = Ob die Schicht aufgebrochen ist, wird nicht angegeben: { $why }.
measured-ridge = Der ungelockerte Rücken zwischen den Zinkenspuren ist { $ridge } hoch.
measured-ridge_figure = Der ungelockerte Rücken zwischen den Zinkenspuren ist { $ridge } hoch; rechnerisch { $figure }.
measured-flat = Zwischen den Zinkenspuren steht kein ungelockerter Rücken.
measured-flat_figure = Zwischen den Zinkenspuren steht kein ungelockerter Rücken; rechnerisch { $figure }.
measured-no_ridge = Wie hoch der ungelockerte Rücken ist, wird nicht angegeben: { $why }.
measured-figure = Rechnerisch wären { $share } des Bodens gelockert.
measured-no_figure = Einen rechnerischen Vergleich gibt es nicht: { $why }.

# Woran es gelegen haben kann.
failure_cause-too_wet = zu nass
failure_cause-too_dry = zu trocken
failure_cause-too_shallow = zu flach gearbeitet
failure_cause-below_critical = tiefer als die kritische Tiefe gearbeitet
failure_cause-spacing_too_wide = Zinkenabstand zu weit
failure_cause-too_slow = zu langsam
failure_cause-too_fast = zu schnell
failure_cause-worn_feet = Schare abgenutzt oder Flügel verloren
failure_cause-not_level = Maschine quer zur Fahrtrichtung nicht waagerecht
failure_cause-old_loosening = Schlitze einer älteren Lockerung

cause-likely = Wahrscheinlich: { $cause }, { $share }
cause-possible = Möglich: { $cause }, { $share }
cause-unlikely = Unwahrscheinlich: { $cause }, { $share }
cause-bare = { $line }.
cause-for = { $line }. Dafür: { $for }.
cause-against = { $line }. Dagegen: { $against }.
cause-both = { $line }. Dafür: { $for }. Dagegen: { $against }.

check-roll_at_tip = Ausrollprobe mit Boden aus der Schartiefe machen
check-measure_slots = messen, wie tief die Schlitze sind, und mit der Zieltiefe vergleichen
check-look_at_walls = einen Schlitz ansehen; sind seine Wände verschmiert und glänzend und ist er unten eng, liefen die Scharspitzen unter der kritischen Tiefe
check-read_across = die Tiefe bis zum festen Boden von einer Zinkenspur zur nächsten messen, dazu den Abstand der Zinken
check-time_the_run = die Zeit für eine abgemessene Strecke stoppen und mit dem Geschwindigkeitsbereich der Maschine vergleichen
check-look_at_feet = Schare und Flügel ansehen und ihre Breite messen
check-slots_across = die Schlitze hinter den äußeren Zinken auf beiden Seiten messen
check-look_for_old_slots = in der Grube nach Schlitzen oder lockerem Boden suchen, die nicht von diesem Arbeitsgang stammen
check-line = Prüfen: { $check }.

remedy-wait_for_drier = warten, bis sich Boden aus der Schartiefe nicht mehr dünn ausrollen lässt
remedy-wait_for_moister = warten, bis der Boden in Schartiefe feuchter ist
remedy-deeper = die Scharspitzen tiefer stellen, gerade unter die Schicht
remedy-shallower_or_wider = die Scharspitzen flacher stellen oder breitere Schare oder Flügel anbauen
remedy-closer = den Zinkenabstand verringern oder ein zweites Mal zwischen den Zinkenspuren fahren
remedy-faster = schneller fahren, im Geschwindigkeitsbereich der Maschine
remedy-slower = langsamer fahren
remedy-new_feet = neue Schare oder Flügel anbauen
remedy-level_it = die Maschine in Querrichtung waagerecht einstellen
remedy-shift_lines = die Zinkenspuren versetzen oder schräg zu den alten fahren
remedy-line = Dann: { $remedy }.
remedy-if_no_thread = Dann, wenn er sich nicht dünn ausrollen lässt: { $remedy }.

# Was an Grube und Arbeitsgang gefragt wird, und was jede Antwort unter den Gründen sagt.
pass_clue-roll = Ausrollprobe in Schartiefe
pass_clue-depth = Tiefe der Schlitze
pass_clue-set_depth = eingestellte Tiefe
pass_clue-slots = Schlitze von Zinken zu Zinken
pass_clue-critical = Tiefe im Vergleich zur kritischen Tiefe
pass_clue-profile = Form des gelockerten Bodens
pass_clue-smear = Wände des Schlitzes
pass_clue-lift = Oberfläche
pass_clue-clods = Brocken
pass_clue-subsoil_up = Unterboden an der Oberfläche
pass_clue-plates = Platten der Schicht
pass_clue-pattern = Tiefe bis zum festen Boden von Zinkenspur zu Zinkenspur
pass_clue-ridge = ungelockerter Rücken zwischen den Zinkenspuren
pass_clue-spacing = Zinkenabstand
pass_clue-speed = Fahrgeschwindigkeit
pass_clue-feet = Schare und Flügel
pass_clue-old_slots = ältere Schlitze
pass_clue-loosened_before = vorige Lockerung

behind_roll-thread = Boden aus der Schartiefe ließ sich dünn ausrollen
behind_roll-short_lengths = Boden aus der Schartiefe brach in kurze Stücke
behind_roll-crumbles = Boden aus der Schartiefe zerkrümelte
behind_roll-will_not_hold = Boden aus der Schartiefe ließ sich nicht formen
behind_depth-short = die Schlitze sind weniger tief als nötig
behind_depth-right = die Schlitze sind so tief wie nötig
behind_depth-deep = die Schlitze sind tiefer als nötig
behind_set_depth-short = die Maschine war flacher eingestellt als nötig
behind_set_depth-right = die Maschine war so tief eingestellt wie nötig
behind_set_depth-deep = die Maschine war tiefer eingestellt als nötig
behind_slots-even = die Schlitze sind von Zinken zu Zinken gleich tief
behind_slots-sloping = die Schlitze werden von einer Seite zur anderen tiefer
behind_slots-jagged = einzelne Schlitze weichen ab
behind_critical-above = die Scharspitzen liefen über der kritischen Tiefe
behind_critical-uncertain = die kritische Tiefe kann über oder unter den Scharspitzen liegen
behind_critical-below = die Scharspitzen liefen unter der kritischen Tiefe
behind_profile-v = der Boden ist bis zur Oberfläche V-förmig aufgebrochen
behind_profile-y = der Boden ist nur oben aufgebrochen, unten ist ein enger Schlitz
behind_smear-none = die Wände des Schlitzes sind nicht verschmiert
behind_smear-smeared = die Wände des Schlitzes sind verschmiert
behind_lift-none = die Oberfläche hat sich nicht gehoben
behind_lift-even = die Oberfläche hat sich leicht und gleichmäßig gehoben
behind_lift-furrows = die Oberfläche ist zu Furchen und Wällen aufgeworfen
behind_clods-small = die Brocken sind klein
behind_clods-large = es gibt Brocken über Faustgröße
behind_subsoil_up-yes = Unterboden liegt an der Oberfläche
behind_subsoil_up-no = kein Unterboden liegt an der Oberfläche
behind_plates-none = keine Platten der Schicht sind übrig
behind_plates-some = einige Platten der Schicht sind noch ganz
behind_plates-most = die meisten Platten der Schicht sind noch ganz
behind_pattern-loose = von Zinkenspur zu Zinkenspur ist es fast überall locker
behind_pattern-ridge = zwischen den Zinkenspuren blieb der Boden fest
behind_pattern-slot_only = locker ist es nur im Schlitz, gleich daneben fest
behind_pattern-shallow = nirgends ist es tief genug locker
behind_pattern-one_side = auf einer Seite ist es locker, auf der anderen fest
behind_pattern-loose_between = zwischen den Zinkenspuren ist es lockerer als darin
behind_ridge-lower = der ungelockerte Rücken ist niedriger als berechnet
behind_ridge-as_reckoned = der ungelockerte Rücken ist etwa so hoch wie berechnet
behind_ridge-higher = der ungelockerte Rücken ist höher als berechnet
behind_spacing-too_wide = die Zinken stehen weiter auseinander als für diese Tiefe veröffentlicht
behind_spacing-fits = der Zinkenabstand liegt im veröffentlichten Bereich
behind_spacing-closer_than_needed = die Zinken stehen enger als für diese Tiefe veröffentlicht
behind_speed-below = es wurde langsamer gefahren, als für die Maschine vorgesehen
behind_speed-within = die Geschwindigkeit passte zur Maschine
behind_speed-above = es wurde schneller gefahren, als für die Maschine vorgesehen
behind_feet-as_noted = die Schare sind so breit wie eingetragen
behind_feet-worn = die Schare sind schmaler geworden
behind_feet-lost = ein Schar oder Flügel fehlt
behind_old_slots-yes = es gibt lockeren Boden oder einen Schlitz, der nicht von diesem Arbeitsgang stammt
behind_old_slots-no = von einer älteren Lockerung ist kein Schlitz da
behind_loosened_before-recent = der Boden wurde erst wenige Jahre zuvor gelockert
behind_loosened_before-long_ago = die vorige Lockerung liegt lange zurück

# Was in der Grube angetippt wird.
extent-trial_strip = Probestreifen
extent-zone = ganze Zone
profile-v = V-förmig bis zur Oberfläche aufgebrochen
profile-y = nur oben aufgebrochen, unten ein enger Schlitz
smear-none = nicht verschmiert
smear-smeared = verschmiert
lift-none = nicht höher als vorher
lift-even = leicht und gleichmäßig gehoben
lift-furrows = zu Furchen und Wällen aufgeworfen
clods-small = klein
clods-large = über Faustgröße
plates-none = keine übrig
plates-some = einige übrig
plates-most = die meisten übrig
feet-as_noted = so breit wie eingetragen
feet-worn = schmaler geworden
feet-lost = ein Schar oder Flügel fehlt

# Der Arbeitsgang.
pass-strip_on = Probestreifen { $on }
pass-strip = Probestreifen
pass-zone_on = Arbeitsgang { $on }, die ganze Zone
pass-zone = Arbeitsgang, die ganze Zone
pass-run_on = Arbeitsgang { $on }
pass-run = Arbeitsgang
pass-day = { $day }.{ $month }.{ $year }
pass-with = mit { $machine }
pass-with_at = mit { $machine } in { $tip } Tiefe
pass-at = Scharspitzen in { $tip } Tiefe
pass-not_dug = Hinter diesem Arbeitsgang ist noch keine Grube gegraben.
pass-worst = So steht es in der schlechtesten der { $holes } Gruben dahinter.
pass-one_hole = All das sagt eine einzige Grube, und eine Grube steht für eine Stelle: auch hinter anderen Zinken graben.
pass-thread = Boden aus der Schartiefe ließ sich an dem Tag dünn ausrollen: zu nass zum Lockern, was immer sonst zu sehen war.
pass-lasts_unknown = Wie lange es hält, hängt vom Befahren ab: Ohne feste Fahrspuren kann der Nutzen binnen { $least } Monaten dahin sein, mit ihnen hält er 2 bis 3 Jahre und mehr (Farming Ahead; GRDC 2017).
pass-lasts_without = Ohne feste Fahrspuren kann der Nutzen binnen { $least } Monaten dahin sein (Farming Ahead; GRDC 2017).
pass-lasts_controlled = Mit festen Fahrspuren hält es 2 bis 3 Jahre und mehr (Farming Ahead; GRDC 2017).
pass-no_strip = Die ganze Zone wurde bearbeitet, bevor die Grube hinter einem Probestreifen gezeigt hatte, dass es lockert.
pass-driven_same_day = Noch am Tag der Lockerung fuhren schwere Maschinen darüber.
pass-driven = { $days ->
    [one] Am { $day }, einen Tag nach der Lockerung, fuhren schwere Maschinen darüber.
   *[other] Am { $day }, { $days } Tage nach der Lockerung, fuhren schwere Maschinen darüber.
}
pass-driven_why = Auf lehmigem Sand in Großbritannien, eine Woche nach dem Lockern befahren, war der Boden nach jedem Befahren bis { $depth } Tiefe fester als vor dem Lockern (soilandwater.org.uk).

next_step-dig_behind = zuerst hinter der Maschine graben
next_step-go_on = die Zone mit dieser Einstellung fertig lockern
next_step-keep_off = nicht weiter lockern; schwere Maschinen fernhalten und den Boden durchwurzelt halten
next_step-check_first = erst die Prüfung machen, die die wahrscheinlichen Ursachen trennt
next_step-change_and_try = anders einstellen, einen weiteren Probestreifen fahren und dahinter graben
next_step-wait = warten, bis die Feuchte passt, dann einen weiteren Probestreifen fahren und dahinter graben
next_step-stop_loosening = nicht weiter lockern, bis die Ursache gefunden und abgestellt ist
next-line = Als Nächstes: { $step }.
next-remedy = Als Nächstes: { $remedy }; danach ein neuer Probestreifen.
next-check = Als Nächstes: { $check }.

lasting-held = es hat gehalten
lasting-partly = es hat teilweise gehalten
lasting-lost = der Boden ist wieder dicht
lasting-cannot_say = ob es gehalten hat, ist nicht zu beurteilen
held-sentence = { $lasting }.
held-shares = { $lasting }: Hinter der Maschine waren { $then } locker, eine Saison später sind es { $now }.
held-then = { $lasting }: Hinter der Maschine waren { $then } locker, eine Saison später wurde nichts gemessen.
held-now = { $lasting }: Eine Saison später sind { $now } locker, hinter der Maschine wurde nichts gemessen.

# Die Grube davor neben der Grube dahinter.
pair-before = Vorher { $condition } in { $depths } Tiefe.
pair-deeper = Hinter der Maschine: fest erst ab { $now } im Mittel.
pair-no_deeper = Hinter der Maschine: fest ab { $now } im Mittel, nicht tiefer als vorher.
pair-not_read = Hinter der Maschine wurden keine Tiefen bis zum festen Boden gemessen.
pair_by-noted = verglichen mit der Grube, die in den Aufzeichnungen genannt ist
pair_by-nearest = verglichen mit der nächsten Grube der Zone aus der Zeit vor dem Lockern
pair_by-last = verglichen mit der letzten Grube der Zone vor dem Lockern, da die Positionen nicht bekannt sind

# Wie es vorgelesen wird.
behind-hole = Grube hinter der Maschine.
behind-hole_season = Grube hinter der Maschine, eine Saison später.
behind-readings = Von Zinkenspur zu Zinkenspur beginnt fester Boden bei { $depths }.
behind-slots = Von links nach rechts sind die Schlitze { $depths } tief.
behind-wanted = Zieltiefe war { $depth }.
behind-layer = Die Schicht endete bei { $bottom }.
behind-seen = { $seen }.
