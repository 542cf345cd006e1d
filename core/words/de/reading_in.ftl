# Notizdateien in einen Speicher gelesen: was sie bringen und was sie nicht mehr sagen; Speicherungen, Gelöschtes, Schläge, die einer sind.

read_in = { $field }: neu hier { $added }; geänderte Werte: { $changed }.
read_in-only_changed = { $field }: nichts Neues hier; geänderte Werte: { $changed }.
read_in-would = { $field }: Die Datei brächte dazu: { $added }; Werte, die sie ändern würde: { $changed }.
read_in-would_change = { $field }: Die Datei brächte nichts dazu; Werte, die sie ändern würde: { $changed }.
read_in-nothing = { $field }: Die Datei sagt nichts, was nicht schon hier ist.
read_in-changed = { $place }: { $cell }, wie die Datei es hat.
read_in-versions = { $place }: { $cell } wurde in der Datei und von jemand anderem geändert; beide Werte bleiben, bis jemand entscheidet.
read_in-deleted = Einträge der Datei, die hier gelöscht wurden und es bleiben: { $count }.
read_in-same_name = Noch ein Schlag heißt { $field }. Es bleiben zwei; ist es ein und derselbe, die beiden verbinden.
read_in-more = … und { $count } weitere.

missing = Das sagte die Datei früher und sagt es nicht mehr. Es bleibt:
missing-removed = Das sagt die Datei nicht mehr, und es wurde entfernt:
missing-record = { $place }, angelegt von { $who } am { $when }.
missing-touched = { $place }, angelegt von { $who } am { $when }: Jemand anderes hat seither daran geschrieben, oder etwas, das bleibt, braucht es; mit der Datei wird es nicht entfernt.
missing-value = { $place }: { $cell }.
missing-value_touched = { $place }: { $cell } wurde seither von jemand anderem geändert; mit der Datei wird es nicht entfernt.
missing-remove = Um es zu entfernen, wie es hier steht: --remove-missing { $word }

history-line = { $number }. { $when }, { $who }, { $fields }: { $what }
history-line_alone = { $number }. { $when }, { $who }: { $what }
history-made = neu { $what }
history-changed = geändert { $what }
history-deleted = gelöscht { $what }
history-back = zurückgeholt { $what }
history-joined = Schläge verbunden oder getrennt
history-undid = etwas zurückgenommen
history-undid_named = zurückgenommen: { $what }
history-nothing = Hier wurde noch nichts gespeichert.

deleted = { $count ->
    [0] Nichts ist gelöscht.
    [one] Ein Eintrag ist gelöscht, mit allem, was daran hängt:
   *[other] { $count } Einträge sind gelöscht, jeder mit allem, was daran hängt:
}
deleted-line = { $number }. { $place }: gelöscht von { $who } am { $when }

joined = Das ist jetzt ein Schlag: { $field }, mit { $pits ->
    [one] einer Grube
   *[other] { $pits } Gruben
}. Was unter einem von beiden notiert ist, steht dort; Rückgängig trennt sie wieder.
joined-already = Das ist schon ein Schlag: { $field }.
joined-apart = Getrennt: { $count ->
    [one] es war ein einziger Eintrag und bleibt es
   *[other] wieder { $count } Schläge
}.
joined-hidden = In einem Wert weichen sie ab: { $cell }. { $shown } wird gezeigt; { $hidden } bleibt erhalten.

count-field = { $count ->
    [one] ein Schlag
   *[other] { $count } Schläge
}
count-pit = { $count ->
    [one] eine Grube
   *[other] { $count } Gruben
}
count-step = { $count ->
    [one] ein Schritt
   *[other] { $count } Schritte
}
count-layer = { $count ->
    [one] eine Schicht
   *[other] { $count } Schichten
}
count-roll = { $count ->
    [one] eine Ausrollprobe
   *[other] { $count } Ausrollproben
}
count-photo = { $count ->
    [one] ein Foto
   *[other] { $count } Fotos
}
count-person = { $count ->
    [one] eine Person
   *[other] { $count } Personen
}
count-machine = { $count ->
    [one] eine Maschine
   *[other] { $count } Maschinen
}
count-pass = { $count ->
    [one] ein Arbeitsgang
   *[other] { $count } Arbeitsgänge
}
count-after_dig = { $count ->
    [one] eine Grube hinter der Maschine
   *[other] { $count } Gruben hinter der Maschine
}
count-part = { $count ->
    [one] eine markierte Stelle
   *[other] { $count } markierte Stellen
}
count-line = { $count ->
    [one] eine markierte Leitung
   *[other] { $count } markierte Leitungen
}
