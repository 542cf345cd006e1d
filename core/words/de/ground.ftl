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
ground-unknown = { $area } sind noch nicht bekannt und zählen hier als bearbeitet: dort graben, bevor das Gerät kommt.
ground-nothing = Nichts ist zu lockern.
ground-no_outline = Ohne Umriss gibt es keine Hektar: ihn abgehen oder in der Datei angeben.
ground-not_told = Stunden, Diesel und Kosten werden nicht genannt: { $why }.
ground-no_fuel = Diesel wird nicht genannt: { $why }.
ground-no_cost = Kosten werden nicht genannt: { $why }.
ground-as_set = Mit { $machine }.
