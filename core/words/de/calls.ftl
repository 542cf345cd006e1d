# Empfehlungen und Zonen; Tiefe, Sicherheit, was es ändern würde; Hinweise und was folgen muss.
# $the und $on sind Zonen in den Formen unten, mehrere schon aneinandergereiht.

zone-open = Feldinneres
    .the = das Feldinnere
    .on = im Feldinneren
zone-headland = Vorgewende
    .the = das Vorgewende
    .on = auf dem Vorgewende
zone-wheelings = Fahrspuren
    .the = die Fahrspuren
    .on = in den Fahrspuren
zone-gateway = Feldeinfahrt
    .the = die Feldeinfahrt
    .on = in der Feldeinfahrt
zone-patch = eingezeichnete Stelle
    .the = die eingezeichnete Stelle
    .on = an der eingezeichneten Stelle
zone-whole = ganzer Schlag
    .the = den ganzen Schlag
    .on = auf diesem Schlag

# .sentence steht allein; .clause steht im Satz für einen Schlag, dessen Zonen sich unterscheiden.
call-leave_it = so lassen
    .sentence = { $the } so lassen.
    .clause = { $the } so lassen
call-roots_first = erst Wurzeln
    .sentence = { $on } erst Wurzeln arbeiten lassen, vorläufig nicht lockern.
    .clause = { $on } erst Wurzeln arbeiten lassen
call-loosen = lockern
    .sentence = { $the } lockern.
    .clause = nur { $the } lockern
call-wait = warten
    .sentence = Warten und { $the } lockern, wenn der Boden trocken genug ist.
    .clause = { $on } warten, bis es trockener ist
call-drain_first = erst entwässern
    .sentence = { $the } erst entwässern.
    .clause = { $the } erst entwässern
call-dig_again = noch einmal graben
    .sentence = { $on } noch einmal graben.
    .clause = { $on } noch einmal graben
call-ask_specialist = Fachberatung holen
    .sentence = { $the } erst nach Fachberatung bearbeiten.
    .clause = { $the } erst nach Fachberatung bearbeiten

loosen-at = { $the } { $tip } tief lockern.
loosen-roll_first = { $the } zu lockern ist begründet, aber erst nach der Ausrollprobe mit Boden aus { $depth }.
loosen-roll_not_applicable =
    { $the } { $tip } tief zu lockern ist begründet; dieser Boden lässt sich nicht ausrollen, die Bodenfeuchte also anders prüfen.
loosen-strip_first = { $the } zu lockern ist begründet; erst hinter dem Probestreifen graben, dann den Rest.
ask-leave = { $the } noch nicht lockern: Was dort in der Nähe liegt, darf ohne Erlaubnis des Eigentümers nicht überfahren werden.
ask-buried = { $the } noch nicht lockern: Was dort liegt, ist zu nah oder nicht bekannt. Den Eigentümer fragen.
ask-machine = { $the } zu lockern braucht eine andere Maschine als die eingetragenen; vor der Arbeit nachfragen.
dig_again-behind = { $on } zuerst hinter der Maschine graben.
dig_again-loosened = { $on } noch einmal graben: Seit den letzten Gruben wurde gelockert.
dig_again-no_reference = Zuerst die Vergleichsgrube graben: Ohne sie lässt sich { $on } nichts sagen.
wait-strip_first = { $on } nicht weiterarbeiten: Der letzte Arbeitsgang ist nicht gelungen. Die Einstellung nach der Grube dahinter ändern und noch einen Probestreifen fahren.
sentence-did_not_last = Das Lockern hat hier nicht gehalten.
wait-at = Warten und { $the } { $tip } tief lockern, wenn der Boden trocken genug ist.
call_line-at = { $call } { $tip }
call_line-no_reference = Vergleichsgrube fehlt
call_line-roll_first = { $call } { $tip }, erst Ausrollprobe
call_line-strip_first = { $call } { $tip }, erst Probestreifen
call_line-roll_not_applicable = { $call } { $tip }, erst Feuchte prüfen
sentence-whole = { $clauses }.
clause-loosen_unfit = nur { $the } lockern, sobald der Boden laut Ausrollprobe trocken genug ist
clause-ask_buried = nachfragen, was dort liegt, bevor { $the } bearbeitet wird
clause-hold_back = { $on } nicht weiterarbeiten, bis ein geänderter Probestreifen gelungen ist
clause-no_reference = für { $the } die Vergleichsgrube graben
    .rest = für den Rest die Vergleichsgrube graben
clause-strip_first = erst hinter dem Probestreifen graben, dann { $the } weiter lockern
clause-rest_unknown = über den übrigen Schlag ist noch nichts bekannt

sureness-sure = sicher
sureness-likely = wahrscheinlich
sureness-cannot_say = nicht zu beurteilen
sureness-with_share = { $sure }, { $share }

how_sure-one_pit = für die gegrabene Grube { $face }; für den Boden ringsum { $ground }, denn es ist die einzige
how_sure-pits = für die gegrabenen Gruben { $face }; für den Boden dazwischen { $ground }, denn { $agree } von { $pits } sagen dasselbe

tip-clears = reicht an { $share } Stellen unter die Schicht; { $pits }, sicher zu { $confidence }
tip-unsure = soll an { $share } Stellen unter die Schicht reichen, aber mit nur { $pits } ist das zu höchstens { $confidence } sicher
tip-more = { $statement }; { $enough } würden genügen
tip-sentences = Schartiefe { $tip }, gerade unter der Schicht, die bei { $bottom } endet. { $statement }.
tip-label = Schartiefe { $tip }

change-sentence = Die Empfehlung wäre „{ $call }“, wenn { $if }.
change-hangs = Die Empfehlung hängt an einer einzigen Antwort. { $change }
change-layer = in { $depths } { $if }
change-field = { $if }
change-roll_surface = Boden von der Oberfläche { $if }
change-roll_depth = Boden aus der Schartiefe { $if }
change-deeper = { $obstacle } in { $depth } oder tiefer lägen
change-shallower = { $obstacle } weniger tief als { $depth } lägen
change-leave = der Eigentümer dessen, was dort liegt, schriftlich zustimmte
change-deep_clay = der Betrieb daran festhielte, Ton so tief zu lockern
change-another_pit = eine weitere Grube hier ausfiele wie Grube { $pit }

rooting-loss = Die Schicht ab { $top } nimmt { $percent } der möglichen Wurzeltiefe weg ({ $crop }: { $potential }).
rooting-loss_water = Die Schicht ab { $top } nimmt { $percent } der möglichen Wurzeltiefe weg ({ $crop }: { $potential }); darunter hat dieser Boden Platz für { $water } nutzbares Wasser.
water-mm = { $range }{ "\u00A0" }mm

pits-numbered = Grube { $number }, { $place }
pits-another = Eine weitere Grube bringt { $on } am meisten.
pits-enough = Weitere Gruben würden die Empfehlung nicht ändern.

caution-nobody_asked = Niemand hat nachgefragt, was unter diesem Schlag liegt. Erst fragen: In den meisten Ländern kostet es nichts.
caution-ask_anew = Die Antwort, was unter diesem Schlag liegt, trägt keinen Tag oder ist älter als ein Jahr. Erst neu fragen.
caution-lift_out = Über den genannten Streifen die Zinken ausheben: Dort liegt ein Kabel oder Rohr.
caution-ask_before_digging = Kabel, Leitungen und Dränrohre: vor dem Graben und Lockern nachfragen; örtliche Regeln gehen vor.
caution-fill_hole = Die Grube danach wieder verfüllen.
caution-deep_pit = Zum Beurteilen nie in eine Grube steigen, die tiefer als kniehoch ist; tiefere nach örtlicher Vorschrift verbauen oder abböschen.
caution-knife_away = Mit dem Messer vom Körper weg arbeiten.
caution-machine_stopped = Erst Motor abstellen, Schlüssel abziehen, Maschine gegen Wegrollen und Absenken sichern, dann an die Zinken gehen.
caution-protected_ground = Geschützte Flächen und Bodendenkmale, Verträge, Grenzen des Herstellers und amtliche oder fachkundige Beratung gehen dieser Empfehlung vor.
caution-estimates_only = Tiefen sind Schätzungen; im angegebenen Bereich bleiben.
caution-drains_unknown = Die Tiefe etwaiger Dränrohre ist nicht vermerkt: vor dem Lockern klären.
caution-cloddy_dry = In der Tiefe trocken: hoher Zugkraftbedarf, der Boden bricht in grobe Brocken.
caution-sand_slow_to_pay = Auf Sand zeigt der Eindringwiderstand allein nicht, dass sich Lockern lohnt.
caution-silt_at_risk = Schluffiger Boden kann nach dem Lockern verschlämmen und dicht zusammensacken; das kostet Ertrag.
caution-trial_strip = Erst einen Probestreifen lockern und dahinter graben, dann den Rest.
caution-across_slope = Das Gelände ist geneigt: quer zum Hang lockern, nie hangauf und hangab; ein Schlitz im Gefälle führt Wasser und Boden.
caution-slope_washes = An so steilem Hang schwemmt gelockerter Boden ab: bedeckt halten oder quer zum Hang ungelockerte Streifen stehen lassen.
caution-short_to_settle = Die nächste Kultur wird binnen vier Wochen gesät: Bis dahin hat sich gelockerter Boden vielleicht nicht gesetzt. Das Saatbett rückfestigen oder erst nach dieser Kultur lockern.
caution-short_for_roots = Die nächste Kultur wird binnen zwei Monaten gesät: zu kurz, als dass eine Zwischenfrucht tief wurzelt. Als Nächstes tief wurzelnd säen oder es nach dieser Kultur tun.

follow_up-roots_after = Bald eine tiefwurzelnde Kultur säen: Wurzeln öffnen den Boden und halten ihn offen.
follow_up-organic_matter = Organische Substanz zuführen; ohne sie sackt der Boden wieder zusammen.
follow_up-no_traffic = Gelockerten Boden nicht mit schweren Maschinen befahren.
follow_up-remove_cause = Klären, was den Boden verdichtet hat, und es abstellen, sonst kommt es wieder.
follow_up-dig_behind = Hinter der Maschine graben und sehen, ob die Schicht aufgebrochen ist.
follow_up-mend_drainage = Vor allem anderen die Entwässerung in Ordnung bringen.
follow_up-roll_again = Die Ausrollprobe wiederholen, wenn der Boden abgetrocknet ist.
follow_up-dig_when_moist = Noch einmal graben, wenn die Grubenwand feucht ist.
follow_up-dig_in_rooted_crop = In einem durchwurzelten Bestand noch einmal graben.

ask-field = { $question } Die Antwort kann { $what } { $on } ändern.
ask-field_line = Noch nicht vermerkt; die Angabe kann { $what } { $on } ändern.
bears_on-call = die Empfehlung
bears_on-tip = die Schartiefe
bears_on-caution = die Hinweise
field_input-tillage = Wie tief wird der Schlag jedes Jahr bearbeitet?
field_input-stony = Halten Steine das Messer auf?
field_input-plates_soft = Zerfallen die Platten nahe der Oberfläche bei Berührung, und gibt es sie auch in der Vergleichsgrube?
field_input-slope = Wie steil ist das Gelände, das bearbeitet wird, in Metern Gefälle auf 100 m?
field_input-next_sown = Wann wird die nächste Kultur gesät?
field_input-next_crop = Was ist die nächste Kultur?
