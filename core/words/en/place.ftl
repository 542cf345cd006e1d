# Where a pit lies, and what is marked on a field.

remark-outside = Pit { $number } lies { $distance } outside the outline.
remark-outside_accuracy = Pit { $number } lies { $distance } outside the outline, within the accuracy of its position (±{ $accuracy }).
remark-near_edge = Pit { $number } may also lie { $on }: the edge is { $distance } away, and the position is accurate to ±{ $accuracy }.
remark-differs = By its position pit { $number } lies { $on }; it was noted { $place }, and that stands.
remark-moved = Pit { $number } was noted { $place }; by its position it lies { $on } and counts there.
remark-near = less than { $distance }


readers-line = Pits { $pits } are one hole read by { $people }: they would call it differently ({ $calls }).
readers-differ = They differ most on the { $sign }{ $kappa }. Readers differ: look at it together before leaning on the call.
readers-kappa = { " " }(weighted kappa { $kappa }: 1 is always the same, 0 no more than chance)
readers-not_judged = cannot be judged
