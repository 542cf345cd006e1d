# Numbers, units, lists of words.

unit-centimetres = cm
unit-inches = in
number-tenths = { $whole }.{ $tenths }
number-halves = { $whole }½
number-half = ½
# A no-break space keeps the number with its unit.
measure-length = { $number }{ "\u00A0" }{ $unit }
range-written = { $lo }–{ $hi }
range-spoken = { $lo } to { $hi }

share-exact = { $number } of 100
share-over = over { $number } of 100
share-under = under { $number } of 100
share-small = { $part } of { $whole }
percent-exact = { $number }{ "\u00A0" }%
percent-over = over { $number }{ "\u00A0" }%
percent-under = under { $number }{ "\u00A0" }%

count-pits = { $count ->
    [one] { $count } pit
   *[other] { $count } pits
}

join-next = { $before }, { $next }
join-last = { $before } and { $last }
join-clauses = { $before }; { $next }

language-en = English
language-de = German
