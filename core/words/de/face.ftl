# Eine Grubenwand, wie sie vorgelesen wird.

describe-pit = { $pit }, bis { $depth } gegraben.
describe-empty = Noch nichts vermerkt.
describe-layer = { $depths }: { $kind }. { $signs }.
describe-layer_unseen = { $depths }: { $kind }.
describe-remark = Bemerkung: { $text }
describe-reference = In der Vergleichsgrube ist es dort { $kind }.
describe-reference_same = In der Vergleichsgrube ist es ebenso.
describe-tip = Die Scharspitzen sollen in { $tip } laufen.
