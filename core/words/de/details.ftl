# Bildschirme: Angaben zum Schlag, und Linien von dem, was im Boden liegt.

detail-name = Name des Schlags
    .why = Wie er auf dem Hof heißt.
detail-headland = Breite des Vorgewendes
    .why = Sie trennt das Vorgewende vom Feldinneren, entlang des abgegangenen Randes.
detail-tramline = Abstand der Fahrgassen
    .why = Mit der Reifenbreite ergibt er den Anteil der Fläche unter Rädern.
detail-wheel_track = Spurweite
    .why = Von Reifenmitte zu Reifenmitte der Räder, die in den Fahrgassen laufen.
detail-tyre = Breite eines Reifens
    .why = Gemeint sind die Räder, die in den Fahrgassen laufen. Mit dem Abstand ergibt sie den Anteil der Fläche unter Rädern.
detail-drains = Tiefe der Dränrohre
    .why = Bis zur Oberkante der Rohre oder ihrer Kiesfüllung, an der flachsten Stelle.
detail-mole_drains = Tiefe der Maulwurfdräne
    .why = Bis zur Oberkante der Gänge, an der flachsten Stelle.
detail-services = Tiefe der Leitungen
    .why = An der flachsten Stelle. Vor dem Graben und Lockern die Eigentümer fragen.
detail-clearance = Abstand über Dränrohren
    .why = So weit bleiben die Scharspitzen über Dränrohren. Wo nichts vermerkt ist, sind es { $drains }, über Maulwurfdränen { $moles }.
detail-services_clearance = Abstand über Kabeln und Leitungen
    .why = Wo nichts vermerkt ist, sind es { $services }. Ohne Erlaubnis des Eigentümers sind es nie weniger als { $floor }.
detail-services_asked = nach Kabeln und Leitungen gefragt
    .why = Wer gefragt wurde, was hier liegt. Was der Betrieb selbst verlegt hat, steht in keinem Plan.
detail-services_asked_on = Tag der Antwort
    .why = Eine Antwort gilt ein Jahr: danach neu fragen.
detail-services_leave = Erlaubnis, über Kabeln und Leitungen zu arbeiten
    .why = Nur der Eigentümer gibt sie. Sie zählt mit dem Tag, an dem sie gegeben wurde.
detail-texture = Bodenart des Oberbodens
    .why = Wie sie sich zwischen den Fingern anfühlt.
detail-organic_matter = Humusgehalt des Oberbodens
    .why = Nach der Farbe des Bodens oder aus dem Labor.
detail-crop_now = Kultur jetzt
    .why = Was auf dem Schlag steht.
detail-last_crop = Vorfrucht
    .why = Was davor dort stand.
detail-last_loosened = letzte Lockerung
    .why = Erst vor Kurzem gelockerter Boden sackt eher wieder zusammen als alter.
detail-last_traffic = zuletzt mit schweren Maschinen befahren
    .why = Wann zuletzt eine schwere Maschine über den Schlag fuhr.
detail-last_rain = letzter Regen
    .why = Regen, der den Boden durchfeuchtet hat. Eine Ausrollprobe von vorher zählt nicht mehr.
detail-tillage = eingestellte Bearbeitungstiefe
    .why = Eine Schicht in dieser Tiefe ist eher von Rädern und Werkzeugen verdichtet als eine andere.
detail-stony = viele Steine
    .why = Wo Steine das Messer anhalten, sagt sein Widerstand nichts über den Boden dazwischen.
detail-plates_soft = Platten an der Oberfläche, die bei Berührung zerfallen
    .why = Frost hinterlässt weiche Platten, auch in der Vergleichsgrube; sie vergehen bis zum Sommer und verlangen nichts.
detail-next_crop = nächste Kultur
    .why = Wie tief sie wurzelt, entscheidet, was eine Schicht sie kostet.
detail-next_sown = Tag der nächsten Saat
    .why = Gelockerter Boden muss sich vor der Saat setzen, und Wurzeln brauchen Zeit für ihre Arbeit.
detail-slope = Neigung des Geländes
    .why = In Metern Gefälle auf 100 m, dort, wo die bearbeitete Fläche am steilsten ist. Schlitze hangab führen Wasser und Boden mit.
detail-reach = größte Arbeitstiefe der vorhandenen Maschine
    .why = Wie tief die vorhandene Maschine kommt. Tiefer wird nichts empfohlen.
detail-controlled_traffic = feste Fahrspuren
    .why = Alle Räder laufen Jahr für Jahr in denselben Spuren. Davon hängt ab, wie lange eine Lockerung hält.
detail-deep_clay = tiefen Ton lockern
    .why = Tief im Ton hält eine Lockerung selten und kann schaden, darum wird sie nicht empfohlen. Der Betrieb kann darauf bestehen.

detail-remark = Bemerkung
    .why = Was sonst über diesen Schlag zu wissen ist.

detail_text-another = hier knickt oder endet die Linie
detail_text-begin_on_plan = auf dem Plan beginnen
detail_text-buried = was im Boden liegt
detail_text-day_to_come_wrong = Nicht vermerkt: den Tag schreiben wie 12.09.2026, ab heute und höchstens zwei Jahre voraus.
detail_text-day_wrong = Nicht vermerkt: den Tag schreiben wie 12.09.2026, und keinen, der erst kommt.
detail_text-details = Angaben zum Schlag
detail_text-drop_place = letzte Stelle entfernen
detail_text-go_on_by_hand = weitere Stelle auf dem Plan
detail_text-ground = die Fläche
detail_text-held_to = trotzdem lockern
detail_text-known = Was über den Schlag bekannt ist
detail_text-leave_given = Erlaubnis liegt vor
detail_text-leave_not_given = keine Erlaubnis
detail_text-line_begins = hier beginnt die Linie
detail_text-line_empty = Diese Linie hat noch keine Stelle. Dorthin gehen, wo sie beginnt, oder auf dem Plan beginnen.
detail_text-line_on = An ihr entlanggehen und tippen, wo sie knickt und wo sie endet; oder von hier auf dem Plan weiter.
detail_text-line_short = Eine Linie ist erst begonnen: eine zweite Stelle geben oder sie löschen, sonst kann kein anderes Handy die Datei lesen.
detail_text-line_sort = was es ist
detail_text-lines = Linien von Dränrohren und Leitungen
detail_text-lines_short = Wo Dränrohre und Leitungen verlaufen.
detail_text-lines_why = Nahe einer Linie wird keine Grube vorgeschlagen, und jede Linie steht auf dem Plan. Was hier nicht vermerkt ist, kann trotzdem dort liegen: vor dem Graben fragen.
detail_text-move_last = letzte Stelle verschieben
detail_text-new_line = weitere Linie vermerken
detail_text-no_line = Es ist keine Linie vermerkt.
detail_text-not_held_to = der Empfehlung folgen
detail_text-not_none = Was nicht vermerkt ist, gilt als nicht bekannt, nie als nicht vorhanden.
detail_text-or_day = anderer Tag, z. B. 12.09.2026
detail_text-or_percent = in % (Masse)
detail_text-or_slope = andere Neigung, in Prozent
detail_text-outline_short = Der Rand des Schlages ist erst begonnen: zu Ende abgehen oder neu beginnen, sonst kann kein anderes Handy die Datei lesen.
detail_text-percent_wrong = Nicht vermerkt: eine Zahl von 0 bis 100 schreiben.
detail_text-same_place = Nicht vermerkt: Hier liegt schon die letzte Stelle.
detail_text-use = Boden und Kulturen

details-deep = { $depth } tief
details-places = { $count ->
    [0] noch keine Stelle
    [one] eine Stelle
   *[other] { $count } Stellen
}
details-marked = { $count ->
    [one] Eine Linie ist vermerkt
   *[other] { $count } Linien sind vermerkt
}
details-place_noted = Stelle { $number } der Linie ist vermerkt.
details-asked = { $detail }?
details-in_weeks = { $count ->
    [one] In einer Woche
   *[other] In { $count } Wochen
}
