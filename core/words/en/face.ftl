# A pit face as spoken by a screen reader.

describe-pit = { $pit }, dug to { $depth }.
describe-empty = Nothing is noted of it yet.
describe-layer = { $depths }: { $kind }. { $signs }.
describe-layer_unseen = { $depths }: { $kind }.
describe-remark = Remark: { $text }
describe-reference = In the reference pit it is { $kind } there.
describe-reference_same = It is the same in the reference pit.
describe-tip = The tips should run at { $tip }.
