# Wo eine Grube liegt, und was auf einem Schlag markiert ist.

remark-outside = Grube { $number } liegt { $distance } außerhalb des Umrisses.
remark-outside_accuracy = Grube { $number } liegt { $distance } außerhalb des Umrisses, im Rahmen der Genauigkeit ihrer Position (±{ $accuracy }).
remark-near_edge = Grube { $number } kann auch { $on } liegen: Bis zum Rand sind es { $distance }, und die Position stimmt auf ±{ $accuracy }.
remark-differs = Nach ihrer Position liegt Grube { $number } { $on }; vermerkt ist sie { $place }, und das gilt.
remark-moved = Grube { $number } ist { $place } vermerkt; nach ihrer Position liegt sie { $on } und zählt dort.
remark-near = weniger als { $distance }


readers-line = Die Gruben { $pits } sind dieselbe Grube, beurteilt von { $people }: sie kämen zu verschiedenen Urteilen ({ $calls }).
readers-differ = Am meisten trennt sie: { $sign }{ $kappa }. Verschiedene Personen urteilen verschieden: erst gemeinsam ansehen, dann verwenden.
readers-kappa = { " " }(gewichtetes Kappa { $kappa }: 1 heißt immer gleich, 0 nicht mehr als Zufall)
readers-not_judged = nicht zu beurteilen
