# Der Plan eines Schlages.

plan-title = Plan von { $field }
plan-described = Plan von { $field }, Norden ist oben.
plan-described_area = Plan von { $field }, { $area }, Norden ist oben.
plan-no_outline = Der Rand des Schlages ist nicht vermerkt.
plan-zone = { $zone }: { $call }.
plan-zone_area = { $zone }, { $area }: { $call }.
plan-ground_area = { $zone }, { $area }.
plan-ground = { $zone }.
plan-tramlines = { $count ->
    [one] Eine Fahrgasse.
   *[other] { $count } Fahrgassen.
}
plan-part = { $label }, { $lie }.
plan-part_named = { $zone } { $lie }: { $label }.
plan-pit = Grube { $number }, { $place }, { $lie }: { $condition }.
plan-pit_off = Grube { $number }, { $place }, nicht im Plan: { $condition }.
plan-after_dig = Hinter der Maschine gegraben, { $label }: { $lie }.
plan-after_dig_off = Hinter der Maschine gegraben, { $label }: nicht im Plan.
plan-buried = Hier nicht graben: { $lines }.
plan-buried_line = { $kind } { $from } { $to }
plan-buried_spot = { $kind } { $lie }
plan-next = Als Nächstes { $lie } graben.
plan-next_from = Als Nächstes { $lie } graben, { $distance } { $way } Grube { $number }.
plan-you_stand = Eigener Standort: { $lie }.
plan-in_middle = in der Mitte
plan-from_middle = von der Mitte
plan-to_middle = zur Mitte

plan-pits = Gruben, nach ihrer dichtesten Schicht:
plan-not_judged = nicht beurteilt
plan-reference = Vergleichsgrube
plan-after_digs = Hinter der Maschine gegraben
plan-next_word = als Nächstes
plan-next_here = Hier als Nächstes graben
plan-tramline = Fahrgassen
plan-lettered = { $kind } ({ $letter })
plan-named = { $zone }: { $call }
plan-pits_off = Gruben nicht im Plan, weil ihre Lage nicht vermerkt ist: { $pits }
plan-after_digs_off = Hinter der Maschine gegraben, aber nicht im Plan: { $digs }
plan-zones_off = Nicht auf dem Plan: { $zones }.

walk-way = { $distance } { $way }
walk-to = { $distance } { $way } gehen.
walk-here = Sie stehen schon dort.

buried-drain = Dränrohr
    .count = { $count ->
        [one] ein Dränrohr
       *[other] { $count } Dränrohre
    }
buried-mole_drain = Maulwurfdrän
    .count = { $count ->
        [one] ein Maulwurfdrän
       *[other] { $count } Maulwurfdräne
    }
buried-service = Leitung
    .count = { $count ->
        [one] eine Leitung
       *[other] { $count } Leitungen
    }

compass-north = Norden
    .in = im Norden
    .from = von Norden
    .to = nach Norden
    .of = nördlich von
compass-north_east = Nordosten
    .in = im Nordosten
    .from = von Nordosten
    .to = nach Nordosten
    .of = nordöstlich von
compass-east = Osten
    .in = im Osten
    .from = von Osten
    .to = nach Osten
    .of = östlich von
compass-south_east = Südosten
    .in = im Südosten
    .from = von Südosten
    .to = nach Südosten
    .of = südöstlich von
compass-south = Süden
    .in = im Süden
    .from = von Süden
    .to = nach Süden
    .of = südlich von
compass-south_west = Südwesten
    .in = im Südwesten
    .from = von Südwesten
    .to = nach Südwesten
    .of = südwestlich von
compass-west = Westen
    .in = im Westen
    .from = von Westen
    .to = nach Westen
    .of = westlich von
compass-north_west = Nordwesten
    .in = im Nordwesten
    .from = von Nordwesten
    .to = nach Nordwesten
    .of = nordwestlich von

# Hinter der Maschine, und vorher neben nachher.

section_behind-title = Schnitt hinter der Maschine
section_behind-floor = Fester Boden, wie gemessen: { $readings }
section_behind-loosened = Gelockert
section_behind-stayed = Fest geblieben über der Zieltiefe, { $target }
section_behind-layer_left = Rest der Schicht, { $depths }
section_behind-layer_gone = Die Schicht in { $depths } ist an jeder Messstelle gebrochen.
section_behind-ridge = Ungelockerter Rücken zwischen den Zinken, { $ridge }
section_behind-tip = Scharspitzen, wie eingestellt, { $tip }
section_behind-slots = Grund der Schlitze von links nach rechts: { $slots }
section_behind-narrower = Breiten sind in einem anderen Maßstab gezeichnet als Tiefen.
section_behind-described = Schnitt hinter der Maschine, von Zinkenspur zu Zinkenspur über { $spacing }. Tiefe bis zum festen Boden: { $readings }.
section_behind-described_none = Schnitt hinter der Maschine. Noch nichts gemessen.
section_behind-described_ridge = Ein ungelockerter Rücken von { $ridge } Höhe steht { $place }.
section_behind-described_no_ridge = Zwischen den Zinken steht kein ungelockerter Rücken.
section_behind-described_tip = Die Scharspitzen waren auf { $tip } eingestellt.
section_behind-described_stayed = Über der Zieltiefe von { $target } blieb Boden fest.
section_behind-described_clear = Bis zur Zieltiefe von { $target } traf keine Messung auf festen Boden.
section_behind-described_layer_left = Ein Teil der Schicht in { $depths } ist noch da.
section_behind-described_slots = Grund der Schlitze von links nach rechts: { $slots }.
section_behind-ridge_middle = in der Mitte
section_behind-ridge_left = näher am linken Zinken
section_behind-ridge_right = näher am rechten Zinken
pair-title = Vorher und nachher
pair-title_before = Vorher
pair-title_after = Nachher
pair-described = Vorher: { $before } Nachher: { $after }

line_sort-drain_in_stone = Dränrohr mit Kies
line_sort-bare_drain = Dränrohr ohne Kies
line_sort-power_cable = Stromkabel
line_sort-gas_or_oil = Gas- oder Ölleitung
line_sort-water_main = Hauptwasserleitung
line_sort-farm_water = hofeigene Wasserleitung
line_sort-telephone = Telefonkabel oder Glasfaser
