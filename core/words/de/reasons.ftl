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
why-signs_too_few = In { $depths } zu wenige Zeichen für eine Aussage.
why-pits_disagree = Die Gruben sind sich uneins: { $agree } von { $pits } sagen dasselbe.
why-roots_needed = In { $depths } keine Wurzeln zum Beurteilen; ohne sie ist gepresst von gesackt nicht zu unterscheiden.
why-cemented = Die Schicht in { $depths } hält im Wasser: Sie ist verkittet.
why-wet_above = Nässezeichen in { $depths }, über der geschädigten Schicht.
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
