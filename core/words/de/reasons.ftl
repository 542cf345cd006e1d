# Gründe einer Entscheidung.

layer-bare = { $depths } ist { $kind } ({ $share }).
layer-for = { $depths } ist { $kind } ({ $share }): { $for }.
layer-against = { $depths } ist { $kind } ({ $share }). Dagegen: { $against }.
layer-both = { $depths } ist { $kind } ({ $share }): { $for }. Dagegen: { $against }.

why-nothing_harmed = Keine Schicht hält den Bestand zurück.
why-roots_pass = In { $depths } kommen Wurzeln und Regenwürmer noch durch.
why-no_pits = Noch keine Grube hier lässt eine Entscheidung zu.
why-too_shallow = Bis { $dug_to } gegraben; es braucht { $need }, um zu sehen, was darunter liegt.
why-no_reference = Es fehlt eine Vergleichsgrube, die sich ansprechen lässt: an einer unauffälligen Stelle graben.
why-signs_too_few = In { $depths } zu wenige Zeichen für eine Aussage. Noch nicht angesehen: { $missing }.
why-kinds_open = In { $depths } wurden alle Zeichen angesehen; { $one } passt so gut dazu wie { $other }.
why-signs_clash = Die Zeichen in { $depths } widersprechen sich. Für gesunden Boden: { $sound }. Für einen Schaden: { $harm }.
why-pits_disagree = Die Gruben sind sich uneins: { $agree } von { $pits } sagen dasselbe.
why-roots_needed = In { $depths } keine Wurzeln zum Beurteilen; ohne sie ist gepresst von gesackt nicht zu unterscheiden.
why-cemented = Die Schicht in { $depths } hält im Wasser: Sie ist verkittet.
why-water_stands = Wasser steht im ganzen Profil: Nässezeichen in { $depths } und kein sauberer Boden darunter.
why-water_held_up = Nässezeichen in { $depths } über sauberem Boden: Die Schicht staut das Wasser.
why-face_wet = Die Grubenwand ist nass. Sie zeigt den Schaden, aber jetzt lässt sich nichts bearbeiten.
why-near_surface = Die Schicht in { $depths } liegt an der Oberfläche: flach aufbrechen, wenn sie trocken ist, nie mit einem tiefen Zinken.
why-under_grass = Die Schicht in { $depths } liegt gleich unter der Narbe: Ruhe vor Vieh und Rädern heilt sie, Schlitzen oder Stechen hilft, wenn sie trocken ist.
why-roll_missing = Noch keine Rollprobe mit Boden aus { $depth }.
why-surface_roll_missing = Noch keine Rollprobe mit Boden von der Oberfläche.
why-too_near = { $obstacle } liegen in { $depth }; eine Scharspitze in { $tip } käme näher als { $clearance } heran.
why-beyond_reach = Die Scharspitze muss in { $tip } laufen; die Maschine erreicht { $reach }.
why-deep_clay = Das ist Ton, und die Schicht endet bei { $bottom }: So tief lohnt Lockern in Ton meist nicht.
why-deep_clay_held_to = Das ist Ton, und die Schicht endet bei { $bottom }: So tief lohnt Lockern meist nicht, aber Sie bleiben dabei.
why-zones_differ = Die Zonen unterscheiden sich: Jede hat ihre eigene Entscheidung.
why-zones_differ_work = Die Zonen unterscheiden sich: nur { $the } bearbeiten.
why-twins_counted_once = { $twins ->
    [one] Eine Grube gleicht einer anderen und wurde nicht noch einmal gezählt.
   *[other] { $twins } Gruben gleichen anderen und wurden nicht noch einmal gezählt.
}

obstacle-drains = Dräne
    .the = die Dräne
obstacle-mole_drains = Maulwurfdräne
    .the = die Maulwurfdräne
obstacle-services = Kabel oder Leitungen
    .the = die Kabel oder Leitungen
