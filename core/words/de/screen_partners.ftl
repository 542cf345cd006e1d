# Die Bildschirme zum Weitergeben und Übernehmen.

partner_text-title = Weitergeben, übernehmen
partner_text-everything = Alles weitergeben
partner_text-with_photos = mit Fotos
partner_text-notes_alone = Nur die Notizen weitergeben
partner_text-nobody_yet = Noch ist kein anderes Handy bekannt. Eine Datei, die eines weitergibt, macht es bekannt.
partner_text-others = Andere Handys
partner_text-waiting = Hier nicht bekannt; was von dort kommt, wartet:
partner_text-lacking = Es fehlt
partner_text-only_lacking = Von hier weitergegeben, enthält eine Datei nur, was jenes Handy nicht schon hat, soweit bekannt.
partner_text-compare = Dort denselben Bildschirm öffnen und die zwanzig Zeichen des anderen Handys vorlesen lassen; hier stehen sie allein in der ersten Zeile.
partner_text-accept_means = Wer angenommen ist, kann hier ergänzen und ändern. Nichts, was da ist, geht dadurch verloren.
partner_text-same_signs = Sind sie gleich?
partner_text-refuse = Dieses Handy ablehnen
partner_text-refuse_means = Von einem abgelehnten Handy wird nichts mehr übernommen; was da ist, bleibt. Es lässt sich wieder annehmen.
partner_text-answers_for = Steht für ein anderes Handy ein
partner_text-believe = Ich weiß, dass es so war: glauben
partner_text-empty_waiting = Verwerfen, was wartet
partner_text-store_damaged = Die Notizen auf diesem Handy sind beschädigt. Weitergeben, was noch da ist, damit ein anderes Handy es bewahrt.
partner_text-to_settle = Zu entscheiden
partner_text-versions = Mehrere Fassungen
partner_text-both_kept = Beide schrieben, ohne voneinander zu wissen. Nichts geht verloren: Was nicht gewählt wird, bleibt im Verlauf.
partner_text-which_holds = Was gilt?
partner_text-regretted = Von einem gelöscht, von anderen weitergeführt
partner_text-what_holds = Was soll damit sein?
partner_text-bring_back = Zurückholen
partner_text-stay_deleted = Gelöscht lassen
partner_text-notes_file = Notizdatei
partner_text-nothing_goes = Nichts hier Notiertes geht dadurch verloren, und Rückgängig nimmt es zurück.
partner_text-take_in = Übernehmen
partner_text-are_they_one = Ist es ein Schlag?
partner_text-one_field = Es ist ein Schlag
partner_text-one_field_means = Was unter einem von beiden notiert ist, wird dann als ein Schlag gezeigt, hier und auf jedem Handy, an das weitergegeben wird. Nichts geht verloren, und Rückgängig trennt sie wieder.

partner_text-names_and_places = Namen und Orte
partner_text-regretted_short = Gelöscht und weitergeführt
partner_text-personal = Namen, Orte und Bemerkungen aus allen Kopien entfernen
partner_text-nothing_personal = In diesen Notizen steht kein Name, kein Ort und keine Bemerkung.
partner_text-take_out = Entfernen
partner_text-take_out_means = Was entfernt wird, ist hier endgültig weg, auch frühere Werte, und auf jedem anderen Handy, sobald es übernimmt, was danach weitergegeben wird. Dass dort etwas stand, von wem und wann, bleibt.
partner_text-take_out_cannot = Nicht erreicht werden Dateien und Bilder, die aus den Notizen entstanden sind, Fotos und wer nichts mehr übernimmt; und was andere geschrieben haben, müssen sie selbst entfernen. Ein kurzer Name lässt sich aus dem, was bleibt, noch erraten.

personal-values = Hier geschriebene Werte: { $here }; von anderen: { $others }
personal-taken_out = Entfernt: { $name }, Werte: { $values }. An die anderen weitergeben, damit es auch dort verschwindet.

partner-this = Andere nehmen dieses Handy nach diesen Zeichen an:
partner-this_named = Dieses Handy gehört { $holder }. Andere nehmen es nach diesen Zeichen an:
partner-state = { $state }, { $edits ->
    [0] keine Änderungen hier
    [one] eine Änderung hier
   *[other] { $edits } Änderungen hier
}
partner-same_name = Zwei Schläge heißen { $field }
partner-accept = Gleich: { $who } annehmen
partner-same_fingerprint = Nicht angenommen: Ein anderes Handy hier zeigt dieselben Zeichen; eines davon ist darauf angelegt. Den Menschen dort Bescheid geben.
partner-accepted_now = { $who } ist angenommen.

versions-of = { $place }: { $cell }
versions-in = { $place }: { $count ->
    [one] ein Wert in mehreren Fassungen
   *[other] { $count } Werte in mehreren Fassungen
}
versions-here = { $count ->
    [one] ein Wert in mehreren Fassungen
   *[other] { $count } Werte in mehreren Fassungen
}
versions-wrote = { $who }, { $when }
versions-next = weiter ({ $number } von { $count })

bundle-ready = Die Datei ist fertig, { $photos ->
    [0] ohne Fotos
    [one] mit einem Foto
   *[other] mit { $photos } Fotos
}.
bundle-without = { $ready } Beschädigte Fotos, die nicht mitgehen: { $damaged }.
bundle-too_much_waits = Nicht behalten: Hier warten schon zu viele Dateien aus neueren Versionen der App. Sie aktualisieren oder verwerfen, was wartet.
bundle-locked = Nicht übernommen: Die Datei ist mit einem Teamwort verschlossen. Es unter den eigenen Angaben setzen und die Datei noch einmal öffnen.
bundle-wrong_word = Nicht übernommen: Das Teamwort auf diesem Handy öffnet die Datei nicht. Mit dem Absender vergleichen.
bundle-none = Nicht übernommen: Diese Datei hat nicht Pitface weitergegeben.
bundle-cut_off = Nicht übernommen: Die Datei hört mittendrin auf. Noch einmal schicken lassen.
bundle-damaged = Nicht übernommen: Die Datei wurde unterwegs beschädigt. Noch einmal schicken lassen.
bundle-too_large = Nicht übernommen: Die Datei enthält mehr, als diese App auf einmal übernimmt.
bundle-forged = Nicht übernommen: Die Datei kommt nicht von dort, wo sie es sagt. Beim Absender nachfragen.

partner-photos_damaged = { $count ->
    [one] Ein Foto auf diesem Handy ist beschädigt. Eine Datei eines anderen Handys übernehmen, die es enthält.
   *[other] { $count } Fotos auf diesem Handy sind beschädigt. Dateien anderer Handys übernehmen, die sie enthalten.
}

partner-not_shown = { $records ->
    [one] Ein Eintrag stammt aus einer neueren Version. Er ist da und geht mit; gezeigt wird er nach einem Update.
   *[other] { $records } Einträge stammen aus einer neueren Version. Sie sind da und gehen mit; gezeigt werden sie nach einem Update.
}
