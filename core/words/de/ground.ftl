# Der Boden Zone für Zone, und wo als Nächstes gegraben wird.

ground-zone = { $zone }, { $area }: { $call }
ground-zone_unmeasured = { $zone }, Fläche nicht bekannt: { $call }
ground-not_dug = noch nicht gegraben
ground-hours = { $hours } Arbeitszeit
ground-fuel = { $fuel } Diesel
ground-cost = Kosten { $cost }
ground-harmed = Nur geschädigte Flächen gelockert: { $spent }.
ground-everything = Ganzer Schlag, so tief wie die schlechteste Stelle es verlangt: { $spent }.
ground-saved = Gespart, wenn der Rest in Ruhe bleibt: { $spent }.
ground-unknown = { $area } sind noch nicht untersucht und hier als gelockert gerechnet: dort graben, bevor die Maschine kommt.
ground-unmeasured = Nicht mitgezählt, weil die Fläche fehlt: { $zones }. Auf dem Schlag einzeichnen.
ground-nothing = Nichts ist zu lockern.
ground-no_outline = Ohne den Rand des Schlags gibt es keine Hektar: ihn abgehen oder in der Datei angeben.
ground-not_told = Stunden, Diesel und Kosten werden nicht genannt: { $why }.
ground-no_fuel = Diesel wird nicht genannt: { $why }.
ground-no_cost = Kosten werden nicht genannt: { $why }.
ground-as_set = Mit { $machine }.

next_pit-reference = Zuerst die Vergleichsgrube graben, wo der Bestand am besten steht: weg von Fahrspuren, Vorgewende und Rand.
next_pit-at = Als Nächstes { $on } graben, { $walk } { $from }.
next_pit-by_eye = Als Nächstes { $on } graben; die Stelle nach Augenmaß wählen, weit weg von den bisherigen Gruben.
next_pit-nowhere_clear = Weitere Gruben { $on } wären sinnvoll, aber alles dort liegt näher als { $clearance } an einem eingezeichneten Dränrohr oder einer Leitung.
lacks-reference = Ohne sie ist nichts von dem zu unterscheiden, was hier üblich ist.
lacks-behind = Seit den Gruben ist dort gelockert worden, und noch hat niemand nachgesehen.
lacks-call = Die Gruben dort lassen noch keine Empfehlung zu.
lacks-sureness = Die Empfehlung dort ist nicht sicher genug, um danach zu handeln.
lacks-share = Die Gruben dort zeigen noch nicht, wie viel davon geschädigt ist.
lacks-depth = Die Schartiefe dort beruht auf zu wenigen Gruben.
next_pit-from_here = von hier aus
next_pit-from_pit = von Grube { $number } aus
next_pit-place = Geogr. Länge { $longitude }, Breite { $latitude }.
next_pit-still_expected = Dort noch zu erwarten: { $pits }, diese mitgezählt.
next_pit-nearest_wheeling = Die Fahrspur nehmen, die dieser Stelle am nächsten liegt.
next_pit-lines = Gruben bleiben { $clearance } von allem Eingezeichneten weg; was nicht eingezeichnet ist, weiß niemand: vor dem Graben fragen.

zone_share-none = { $zone }: noch keine Grube
zone_share-found = { $zone }: { $harmed } von { $pits } geschädigt; mit { $confidence } Sicherheit sind { $lo } bis { $hi } davon geschädigt
zone_share-line = { $found }. { $verdict }.
settled-worth_loosening = Entschieden: so viel ist geschädigt, dass sich Lockern lohnt
settled-not_worth_loosening = Entschieden: so wenig ist geschädigt, dass sich Lockern nicht lohnt
settled-dig_on = Nicht entschieden: weitergraben
settled-not_worth_a_pit = Nicht entschieden, aber weitere Gruben lohnen nicht
