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

# Die Schläge eines Speichers.
store-field = { $name }: { $pits ->
    [0] keine Grube
    [one] eine Grube
   *[other] { $pits } Gruben
}
store-no_field = Darin ist kein Schlag.
