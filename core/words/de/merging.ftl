# Weitergeben und übernehmen: Handys, was kam, was fehlt, Fassungen eines Werts.

merge-device = Handy { $device }
merge-unnamed = ein Handy ohne Namen
merge-device_named = { $holder } ({ $device })

came_in = Übernommen: { $edits ->
    [0] nichts Neues
    [one] eine Änderung
   *[other] { $edits } Änderungen
}.
came_in-photos = Übernommene Fotos: { $photos }.
came_in-photos_unnamed = Fotos, die hier zu nichts gehören und nicht behalten wurden: { $photos }. Die Datei noch einmal übernehmen, wenn die Angaben dazu da sind.
came_in-photo_wrong = Die Stücke von Foto { $photo } passen nicht zusammen. Das Foto von jemand anderem holen; es ersetzt sie.
came_in-photo_wrong_in = Die Stücke von Foto { $photo } passen nicht zusammen, seit { $file } kam. Das Foto von jemand anderem holen; es ersetzt sie.
came_in-photo_wrong_before = Foto { $photo } ist da. Als { $file } kam, passten seine Stücke nicht zusammen; dieser Datei nicht trauen.
came_in-stranger = { $who } ist hier nicht bekannt, und was von dort kommt, wartet. Die zwanzig Zeichen unten mit denen vergleichen, die das andere Handy selbst zeigt; sind sie gleich, das Handy annehmen.
came_in-missing = Von { $who } fehlen die Änderungen { $first } bis { $last }, und was darauf folgt, wartet. Wer schon Daten von diesem Handy hat, soll sie weitergeben.
came_in-missing_one = Von { $who } fehlt Änderung { $first }, und was darauf folgt, wartet. Wer schon Daten von diesem Handy hat, soll sie weitergeben.
came_in-copied = { $who } gibt es zweimal: Zwei Handys haben unter einem Namen weitergeschrieben. Alles, was beide schrieben, ist da. Nur eines davon weiter benutzen und auf dem anderen den kopierten Schlüssel entfernen.
came_in-clock_wrong = Die Uhr von { $who } geht mehr als einen Tag vor. Was von dort kam, ist da; die Uhr stellen, sonst gelten die Änderungen als später als die der anderen.
came_in-held = Die Datei stammt aus einer neueren Version. Sie bleibt, wie sie ist, und wird nach einem Update der App übernommen.

came_in-refused = Von { $who } wurde nichts mehr übernommen: Das Handy ist hier abgelehnt.
came_in-no_room = Von { $who } wartet schon so viel, dass nichts mehr behalten wird. Das Handy annehmen oder ablehnen und die Datei noch einmal übernehmen.
came_in-unknown_parts = Teile aus einer neueren Version, für die niemand unterschrieben hat und die nicht behalten wurden: { $parts }.

vouches = { $who } steht für Änderungen von Handy { $device } ein; ob man es glaubt, entscheidet sich beim Übernehmen.
vouching-asks = { $who } steht für Änderungen von { $device } ein, bis zur Änderung { $last }; dessen Schlüssel sei verloren. Sie warten. Nur glauben, wenn bekannt ist, dass es so war.
vouching-believed = { $who } steht für Änderungen von { $device } ein, bis zur Änderung { $last }; sie sind übernommen.
vouching-this_device = { $who } schreibt im Namen dieses Handys. Das wird nicht übernommen. Den Menschen dort fragen.
vouching-accepted = { $who } steht für Änderungen von { $device } ein, das hier angenommen ist und für sich selbst spricht. Sie warten. Ist das andere Handy verloren, es ablehnen.
vouching-went_on = { $who } steht für Änderungen von { $device } ein, das selbst anders weiterschrieb. Sie werden nicht übernommen. Bei beiden nachfragen.

waits = Hier wartet auf ein Wort oder ein Update: { $bundles } Bündel, { $files } Dateien, { $size } kB.
waits-emptied = Verworfen, was wartete: { $bundles } Bündel und { $files } Dateien. Sie lassen sich wieder übernehmen.

handed_over = Weitergegeben: { $bundles ->
    [one] ein Bündel
   *[other] { $bundles } Bündel
}, { $photos ->
    [0] kein Foto
    [one] ein Foto
   *[other] { $photos } Fotos
}.
handed_over-nothing = Es gibt nichts weiterzugeben: Dort ist schon alles.
handed_over-waiting = Änderungen von hier, die noch kein anderes Handy hat, soweit bekannt: { $edits }.
handed_over-carried = Alles hier Notierte ist auch auf einem anderen Handy.
handed_over-photos = Fotos hier: { $here } von { $named } vermerkten.
handed_over-locked = Die Datei ist mit dem Teamwort verschlossen: Öffnen kann sie nur, wer es kennt.
handed_over-stripped = Fotos, die ohne den darin vermerkten Ort, Zeitpunkt und Fotoapparat mitgehen: { $photos }. Die Originale bleiben hier.
key-set_aside = Die Datei mit dem Schlüssel dieses Handys ist nicht lesbar und als { $file } beiseitegelegt. Das Handy hat einen neuen Schlüssel: Für andere ist es ein neues Handy, bis sie es annehmen.
handed_over-chosen = Wer diese Notizen liest, hat diese Schläge, wie sie jetzt stehen, und keine anderen; wer was wann geschrieben hat, bleibt hier.
handed_over-stay = Fotos, die hierbleiben, weil sich Ort und Zeitpunkt nicht aus ihnen entfernen lassen: { $photos }.
handed_over-gathered = Dateien dieses Handys, die in eine zusammengelegt sind: { $files }.
handed_over-gathered_already = Von diesem Handy liegt dort höchstens eine Datei.

partner-own = Dieses Handy
partner-earlier = Dieses Handy unter früherem Namen
partner-accepted = angenommen
partner-refused = abgelehnt
partner-refused_now = { $who } ist ab jetzt abgelehnt; was von dort übernommen ist, bleibt. Verworfene Bündel, die noch warteten: { $bundles }.
partner-believed_now = Was { $who } von Handy { $device } verbürgt, wird geglaubt.
partner-waits = wartet darauf, angenommen zu werden
partner-unsigned = nur durch ein Handy bekannt, das dafür einsteht
partner-line = { $who }: { $state }, { $edits ->
    [0] keine Änderungen hier
    [one] eine Änderung hier
   *[other] { $edits } Änderungen hier
}.

versions = { $count ->
    [0] Kein Wert hat mehrere Fassungen.
    [one] Ein Wert hat mehrere Fassungen:
   *[other] { $count } Werte haben mehrere Fassungen:
}
versions-title = { $number }. { $place }: { $cell }
versions-line = { $number }: { $value }, von { $who } am { $when }
versions-shown = { $number }: { $value }, von { $who } am { $when }; diese wird gezeigt
versions-settled = { $place }, { $cell }: Ab jetzt gilt { $value }.
versions-when = { $day }, { $time }
regretted = { $count ->
    [0] Nichts wurde gelöscht, woran jemand anderes weiterschrieb.
    [one] Ein Eintrag wurde gelöscht, während jemand anderes daran weiterschrieb:
   *[other] { $count } Einträge wurden gelöscht, während jemand anderes daran weiterschrieb:
}
regretted-line = { $number }. { $place }: gelöscht von { $who } am { $when }, geändert von { $others }
regretted-short = { $place }: gelöscht von { $who }, geändert von { $others }
regretted-one = { $who } am { $when } ({ $cell })
regretted-back = { $place } ist wieder da.
regretted-stays = { $place } bleibt gelöscht.
belongs-pit = Grube { $number }
belongs-gone = { $what } (gelöscht)

cell_value-none = nicht angesehen
cell_value-yes = ja
cell_value-no = nein
cell_value-record = anderer Eintrag
cell_value-other = etwas aus einer neueren Version
cell_value-places = { $count ->
    [one] eine Stelle
   *[other] { $count } Stellen
}
cell_name-newer = ein Wert aus einer neueren Version

inside-locked = Die Datei ist mit dem Teamwort verschlossen.
inside-part = { $who }: Änderungen { $first } bis { $last }, versiegelt am { $when } mit { $program }; Unterschrift, Prüfsummen und Kette stimmen.
inside-seen = { $who }: nur die Auskunft, was dort schon angekommen ist, versiegelt am { $when }; die Unterschrift stimmt.
inside-broken = Ein Bündel darin stimmt nicht: { $why }.
inside-photo = Foto { $photo }, { $size } kB: { $here } von { $pieces } Stücken.
inside-photo_whole = Foto { $photo }, { $size } kB: vollständig, die Prüfsumme stimmt.
inside-photo_wrong = Foto { $photo }, { $size } kB: alle Stücke sind da, aber die Prüfsumme stimmt nicht.
inside-unknown = Ein Teil aus einer neueren Version (Art { $kind }, { $size } kB): Niemand hat dafür unterschrieben, und es wird nicht übernommen.
inside-gap = Die Datei bringt die Änderungen { $first } bis { $last } von { $who } nicht mit, auf die andere darin folgen.
inside-no_gap = Alles, worauf die Änderungen folgen, ist in der Datei.

checked-sound = Unversehrt: { $edits } Änderungen, { $cells } gültige Werte, { $photos } Fotos.
checked-damaged = { $who }: Die Änderungen { $first } bis { $last } stehen nicht so da, wie sie geschrieben wurden. Diesen Speicher aufheben und Bündel der anderen in einen neuen übernehmen.
checked-edits = { $who }: Die Änderungen { $first } bis { $last } stehen nicht mehr so da, wie sie geschrieben wurden.
checked-cells = Die gültigen Werte passten nicht zu den Änderungen und wurden daraus neu berechnet.
checked-photo = Foto { $photo } ist beschädigt. Mit einem Bündel reparieren, das es enthält.
checked-photo_mended = Foto { $photo } war beschädigt und ist wieder, wie es aufgenommen wurde.
checked-photos_missing = Fotos, die vermerkt sind und hier fehlen: { $photos }. Ein Bündel übernehmen, das sie enthält.

cell-kind = was es ist
cell-parent = wozu es gehört
cell-deleted = gelöscht
cell-unknown = Angaben eines anderen Programms
cell-same_as = anderer Eintrag desselben Schlags
cell-name = Bezeichnung
cell-outline = Umriss
cell-headland = Breite des Vorgewendes
cell-tramline = Abstand der Fahrgassen
cell-texture = Bodenart
cell-organic_matter = Humusgehalt
cell-crop_now = Kultur jetzt
cell-last_crop = Vorfrucht
cell-last_loosened = zuletzt gelockert
cell-last_traffic = zuletzt befahren
cell-drains = Tiefe der Dränrohre
cell-mole_drains = Tiefe der Maulwurfdräne
cell-services = Tiefe der Kabel und Leitungen
cell-clearance = Abstand über Dränrohren
cell-services_clearance = Abstand über Kabeln und Leitungen
cell-services_asked = nach Kabeln und Leitungen gefragt
cell-services_asked_on = Tag der Antwort
cell-services_leave = Erlaubnis, über Kabeln und Leitungen zu arbeiten
cell-last_rain = letzter Regen
cell-tillage = eingestellte Bearbeitungstiefe
cell-stony = viele Steine
cell-plates_soft = weiche Platten an der Oberfläche
cell-next_crop = nächste Kultur
cell-next_sown = Tag der nächsten Saat
cell-slope = Hangneigung in Prozent
cell-reach = größte Arbeitstiefe der Maschine
cell-controlled_traffic = feste Fahrspuren
cell-deep_clay = tiefen Ton trotzdem lockern
cell-wheel_track = Spurweite
cell-tyre = Reifenbreite
cell-place = Art der Stelle
cell-zone = Zone
cell-at = Lage
cell-dug = gegraben am
cell-by = gegraben von
cell-dug_to = gegraben bis
cell-face = Feuchte der Wand
cell-to = Unterkante des Schritts
cell-comes_away = wie der Boden zerfällt
cell-resistance = Eindringwiderstand am Messer
cell-top = Oberkante der Schicht
cell-bottom = Unterkante der Schicht
cell-pores = Poren
cell-channels = Gänge
cell-roots = Wurzeln
cell-patches = Flecken
cell-smell = Geruch
cell-clod_in_water = Zerfall im Wasser
cell-roll_depth = Tiefe der Ausrollprobe
cell-roll = Ausrollprobe
cell-photo = welches Foto
cell-photo_size = Größe des Fotos
cell-photo_type = Format des Fotos
cell-photo_taken = Zeitpunkt des Fotos
cell-photo_depth = Tiefe an der Wand
cell-photo_marks = Maßstab des Fotos
cell-left_handed = Handy in der linken Hand
cell-legs = Zahl der Zinken
cell-spacing = Zinkenabstand
cell-foot = Scharbreite
cell-wings = Breite und Hubhöhe der Flügel
cell-leading = Tiefe der flach vorlaufenden Zinken
cell-working_width = Arbeitsbreite
cell-speed = kleinste und größte Fahrgeschwindigkeit, km/h
cell-tractor = Schlepper: kW und Antrieb
cell-tractor_mass = Masse des Schleppers
cell-pass_machine = Maschine
cell-extent = wie viel bearbeitet wurde
cell-done = Tag des Arbeitsgangs
cell-tip = Schartiefe
cell-pass_speed = Fahrgeschwindigkeit, km/h
cell-driven_on = danach befahren
cell-before = Grube von vorher
cell-firm = Tiefen bis zum festen Boden
cell-slots = Lage der Schlitze
cell-profile = Form des gelockerten Bodens
cell-smear = Verschmierung
cell-lift = Hebung der Oberfläche
cell-clods = Brocken
cell-subsoil_up = Unterboden an der Oberfläche
cell-plates = verbliebene Platten
cell-feet = Zustand der Schare
cell-old_slots = ältere Schlitze
cell-shape = Umriss der Stelle
cell-buried = was dort liegt
cell-along = Verlauf der Linie
cell-line_depth = Tiefe der Linie
cell-line_sort = Art der Leitung
cell-remark = Bemerkung
