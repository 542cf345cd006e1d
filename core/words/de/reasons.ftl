# Gründe einer Empfehlung.

layer-at = { $depths } in Grube { $pit }
layer-bare = { $depths } ist { $kind } ({ $share }).
layer-for = { $depths } ist { $kind } ({ $share }): { $for }.
layer-against = { $depths } ist { $kind } ({ $share }). Dagegen: { $against }.
layer-both = { $depths } ist { $kind } ({ $share }): { $for }. Dagegen: { $against }.

why-nothing_harmed = Keine Schicht behindert die Wurzeln.
why-roots_pass = In { $depths } kommen Wurzeln und Regenwürmer noch durch.
why-roots_pass_alone = In { $depths } kommen Wurzeln noch durch.
why-worms_pass = In { $depths } kommen Regenwürmer noch durch.
why-no_pits = Noch keine Grube hier lässt eine Empfehlung zu.
why-too_shallow = Bis { $dug_to } gegraben; nötig sind { $need }, um zu sehen, was darunter liegt.
why-no_reference = Es fehlt eine Vergleichsgrube, die sich ansprechen lässt: an einer unauffälligen Stelle graben.
why-signs_too_few = In { $depths } zu wenige Merkmale für eine Aussage. Noch nicht angesehen: { $missing }.
why-kinds_open = In { $depths } wurden alle Merkmale angesehen; { $one } passt dazu ebenso wie { $other }.
why-signs_clash = Die Merkmale in { $depths } widersprechen sich. Für gesunden Boden: { $sound }. Für einen Schaden: { $harm }.
why-pits_disagree = Die Gruben widersprechen sich: { $agree } von { $pits } sagen dasselbe.
why-roots_needed = In { $depths } keine Wurzeln zum Beurteilen; ohne sie lässt sich Verdichtung nicht von Sackung unterscheiden.
why-cemented = Die Schicht in { $depths } zerfällt im Wasser nicht: Sie ist verkittet.
why-water_stands = Wasser steht im ganzen Profil: Staunässemerkmale in { $depths } und kein sauberer Boden darunter.
why-water_held_up = Staunässemerkmale in { $depths } über sauberem Boden: Die Schicht staut das Wasser.
why-face_wet = Die Grubenwand ist nass. Sie zeigt den Schaden, aber jetzt lässt sich nichts bearbeiten.
why-peat = Der Boden in { $depths } ist Torf: Blöcke und Platten kommen dort von Entwässerung und Alter. Auf Wasserstand und Fruchtfolge achten; Stahl beschleunigt nur den Schwund.
why-near_surface = Die Schicht in { $depths } liegt an der Oberfläche: flach aufbrechen, wenn sie trocken ist, nie mit einem tiefen Zinken.
why-under_grass = Die Schicht in { $depths } liegt gleich unter der Narbe: Ruhe vor Vieh und Rädern heilt sie, Schlitzen oder Stechen hilft, wenn sie trocken ist.
why-roll_missing = Noch keine Ausrollprobe mit Boden aus { $depth }.
why-surface_roll_missing = Noch keine Ausrollprobe mit Boden von der Oberfläche.
why-too_near = { $obstacle } liegen in { $depth }; eine Scharspitze in { $tip } käme näher als { $clearance } heran.
why-not_sure = Am ehesten passt „{ $call }“, aber nicht sicher genug, um danach zu handeln: Eine weitere Grube würde es klären.
why-not_sure_look = Am ehesten passt „{ $call }“, aber nicht sicher genug, um danach zu handeln. Klären würde es: { $clue } in { $depths }.
why-depth_unknown = { $obstacle } sind hier eingezeichnet, und ihre Tiefe ist nicht bekannt.
why-hangs_on_depth = Die Entscheidung hängt an wenigen Zentimetern: { $obstacle } sind in { $depth } vermerkt, die Scharspitze braucht sie in { $needs } oder tiefer. Diese Tiefe nachmessen.
why-service = Hier ist ein Kabel oder Rohr eingezeichnet; seine Tiefe ist nicht bekannt.
why-service_depth = Ein Kabel oder Rohr ist in { $depth } vermerkt.
why-service_away = Ein Kabel oder Rohr verläuft { $away } von der nächsten Grube; seine Tiefe ist nicht bekannt.
why-service_both = Ein Kabel oder Rohr verläuft { $away } von der nächsten Grube, vermerkt in { $depth }.
why-asked = Gefragt, was hier liegt: { $whom }. Der Tag ist nicht vermerkt.
why-asked_on = Gefragt, was hier liegt: { $whom }, { $day }.
why-asked_lapsed = Diese Antwort ist abgelaufen: neu fragen.
why-asked_leave = Die Erlaubnis, darüber zu arbeiten, liegt vor.
why-asked_no_leave = Eine Erlaubnis, darüber zu arbeiten, liegt nicht vor.
why-no_machine = Es braucht eine Maschine, die { $tip } erreicht, mit Scharen von { $foot } oder breiter; keine der vermerkten tut das.
why-on_day = { $told } Ausgerollt { $day }.
why-roll_past = Die Ausrollproben sind vom { $day } und gelten für diesen Tag und den nächsten: vor der Arbeit neu ausrollen.
why-rain_since = Seit den Ausrollproben vom { $day } hat es geregnet ({ $rain }): vor der Arbeit neu ausrollen.
why-strip = Seither wurde ein Probestreifen gefahren; die Gruben dahinter sagen: { $said }.
why-strip_on = Seither wurde ein Probestreifen gefahren, { $day }; die Gruben dahinter sagen: { $said }.
why-worked = Seither wurde alles bearbeitet; die Gruben hinter der Maschine sagen: { $said }.
why-worked_on = Seither wurde alles bearbeitet, { $day }; die Gruben hinter der Maschine sagen: { $said }.
why-behind_not_dug = noch nicht gegraben
why-loosened_since = Die Gruben sind älter als das Lockern ({ $day }): Sie sagen nicht mehr, wie es jetzt ist.
why-did_not_last = Gelockert { $day }, und eine geschädigte Schicht ist wieder da: vor dem nächsten Lockern klären, warum.
why-did_not_last_undated = Gelockert, und eine geschädigte Schicht ist wieder da: vor dem nächsten Lockern klären, warum.
why-beyond_reach = Die Scharspitze muss in { $tip } laufen; die Maschine erreicht { $reach }.
why-deep_clay = Das ist Ton, und die Schicht endet bei { $bottom }: So tief lohnt Lockern in Ton meist nicht.
why-deep_clay_held_to = Das ist Ton, und die Schicht endet bei { $bottom }: So tief lohnt Lockern meist nicht; es wird auf Wunsch des Betriebs trotzdem empfohlen.
why-zones_differ = Die Zonen unterscheiden sich: Jede hat ihre eigene Empfehlung.
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
