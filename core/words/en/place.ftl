# Where a pit lies, and what is marked on a field.

remark-outside = Pit { $number } lies { $distance } outside the outline.
remark-outside_accuracy = Pit { $number } lies { $distance } outside the outline, within the accuracy of its position (±{ $accuracy }).
remark-near_edge = Pit { $number } may also lie { $on }: the edge is { $distance } away, and the position is accurate to ±{ $accuracy }.
remark-differs = By its position pit { $number } lies { $on }; it was noted { $place }, and that stands.
remark-moved = Pit { $number } was noted { $place }; by its position it lies { $on } and counts there.
remark-near = less than { $distance }

