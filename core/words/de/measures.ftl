# Zahlen, Einheiten, Aufzählungen.

unit-centimetres = cm
unit-inches = Zoll
number-tenths = { $whole },{ $tenths }
number-halves = { $whole }½
number-half = ½
# Ein geschütztes Leerzeichen hält Zahl und Einheit zusammen.
measure-length = { $number }{ "\u00A0" }{ $unit }
range-written = { $lo }–{ $hi }
range-spoken = { $lo } bis { $hi }

share-exact = { $number }{ "\u00A0" }%
share-over = über { $number }{ "\u00A0" }%
share-under = unter { $number }{ "\u00A0" }%
share-small = { $part } von { $whole }
percent-exact = { $number }{ "\u00A0" }%
percent-over = über { $number }{ "\u00A0" }%
percent-under = unter { $number }{ "\u00A0" }%

count-pits = { $count ->
    [one] { $count } Grube
   *[other] { $count } Gruben
}

join-next = { $before }, { $next }
join-last = { $before } und { $last }
join-clauses = { $before }; { $next }

language-en = Englisch
language-de = Deutsch
