# Der Boden Zone für Zone, und wo als Nächstes gegraben wird.

ground-zone = { $zone }, { $area }: { $call }
ground-zone_unmeasured = { $zone }, Fläche nicht bekannt: { $call }
ground-not_dug = noch nicht gegraben
ground-hours = { $hours } Arbeit
ground-fuel = { $fuel } Diesel
ground-cost = Kosten { $cost }
ground-harmed = Nur der geschädigte Boden bearbeitet: { $spent }.
ground-everything = Der ganze Schlag in der Tiefe des schlechtesten Bodens: { $spent }.
ground-saved = Gespart, wenn der Rest in Ruhe bleibt: { $spent }.
ground-unknown = { $area } sind noch nicht bekannt und zählen hier als bearbeitet: dort graben, bevor die Maschine kommt.
ground-unmeasured = Nicht mitgezählt, weil die Fläche fehlt: { $zones }. Auf dem Schlag einzeichnen.
ground-nothing = Nichts ist zu lockern.
ground-no_outline = Ohne Umriss gibt es keine Hektar: ihn abgehen oder in der Datei angeben.
ground-not_told = Stunden, Diesel und Kosten werden nicht genannt: { $why }.
ground-no_fuel = Diesel wird nicht genannt: { $why }.
ground-no_cost = Kosten werden nicht genannt: { $why }.
ground-as_set = Mit { $machine }.

next_pit-reference = Zuerst die Vergleichsgrube graben, wo der Bestand am besten aussieht: weg von Fahrspuren, Vorgewende und Rand.
next_pit-at = Als Nächstes { $on } graben, { $walk } { $from }.
next_pit-by_eye = Als Nächstes { $on } graben; die Stelle nach Augenmaß wählen, weit weg von den bisherigen Gruben.
next_pit-nowhere_clear = Weitere Gruben { $on } sagten etwas, aber alles dort liegt näher als { $clearance } an einem eingezeichneten Drän oder einer Leitung.
lacks-reference = Ohne sie ist nichts von dem zu unterscheiden, was hier üblich ist.
lacks-behind = Seit den Gruben ist dort gelockert worden, und noch hat niemand nachgesehen.
lacks-call = Die Gruben dort lassen noch keine Entscheidung zu.
lacks-sureness = Die Entscheidung dort ist nicht sicher genug, um danach zu handeln.
lacks-share = Die Gruben dort zeigen noch nicht, wie viel davon geschädigt ist.
lacks-depth = Die Schartiefe dort beruht auf zu wenigen Gruben.
next_pit-from_here = von hier aus
next_pit-from_pit = von Grube { $number } aus
next_pit-place = Länge { $longitude }, Breite { $latitude }.
next_pit-still_expected = Dort noch zu erwarten: { $pits }, diese mitgezählt.
next_pit-nearest_wheeling = Die Fahrspur nehmen, die dieser Stelle am nächsten liegt.
next_pit-lines = Gruben bleiben { $clearance } von allem Eingezeichneten weg; was nicht eingezeichnet ist, weiß niemand: vor dem Graben fragen.

zone_share-none = { $zone }: noch keine Grube
zone_share-found = { $zone }: { $harmed } von { $pits } geschädigt, also { $lo } bis { $hi } davon mit { $confidence } Sicherheit
zone_share-line = { $found }. { $verdict }.
settled-worth_loosening = Entschieden: mehr davon ist geschädigt, als Lockern braucht, um sich zu lohnen
settled-not_worth_loosening = Entschieden: weniger davon ist geschädigt, als Lockern braucht, um sich zu lohnen
settled-dig_on = Nicht entschieden: weitergraben
settled-not_worth_a_pit = Nicht entschieden, aber keine Zahl von Gruben machte sich bezahlt
