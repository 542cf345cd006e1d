# Tabellen für andere Programme.

tables-written = Für andere Programme geschrieben: { $fields ->
    [one] ein Schlag
   *[other] { $fields } Schläge
} mit { $pits ->
    [0] keiner Grube
    [one] einer Grube
   *[other] { $pits } Gruben
}.
tables-no_place = { $pits ->
    [one] Eine Grube hat keine Position: Sie steht in jeder Datei, aber auf keiner Karte.
   *[other] { $pits } Gruben haben keine Position: Sie stehen in jeder Datei, aber auf keiner Karte.
}

tables-positions_coarse = Orte sind auf etwa einen Kilometer genau angegeben: Umrisse und Linien stehen nicht in den Dateien.
tables-positions_none = In den Dateien stehen keine Orte.
tables-photos = { $photos ->
    [0] Im GeoPackage ist kein Foto.
    [one] Im GeoPackage ist ein Foto, ohne die Angaben der Kamera.
   *[other] Im GeoPackage sind { $photos } Fotos, ohne die Angaben der Kamera.
}
tables-photos_left = { $photos ->
    [one] Ein Foto wurde weggelassen: Es ist nicht hier oder kein Bild, das sich durchsehen lässt.
   *[other] { $photos } Fotos wurden weggelassen: Sie sind nicht hier oder keine Bilder, die sich durchsehen lassen.
}

# Was ein Terminal auf dem Schlepper erfährt; seine Zeilen haben Platz für 32 Buchstaben.
terminal-written = { $fields ->
    [0] Kein Boden mit einem Umriss ist jetzt zu lockern: Für ein Terminal gibt es nichts.
    [one] Für ein Terminal: ein Schlag mit der Tiefe jeder Zone.
   *[other] Für ein Terminal: { $fields } Schläge mit der Tiefe jeder Zone.
}
terminal-advice = Es ist Rat, keine Erlaubnis: nachfragen, was dort im Boden liegt, den Boden rollen und die Maschine am Tag selbst einstellen. Die Karte auf dem Terminal ansehen, bevor die Zinken in den Boden gehen.
terminal-unmarked = { $field }: Es ist noch mehr zu lockern, aber niemand hat eingetragen, wo es liegt; kein Terminal zeigt es. So ist es mit Fahrspuren.
terminal-task = Rat: lockern
terminal-leave = Nicht lockern

# Die Schläge eines Speichers.
store-field = { $name }: { $pits ->
    [0] keine Grube
    [one] eine Grube
   *[other] { $pits } Gruben
}
store-no_field = Darin ist kein Schlag.
