# The ground zone by zone, and where to dig next.

ground-zone = { $zone }, { $area }: { $call }
ground-zone_unmeasured = { $zone }, area not known: { $call }
ground-not_dug = not dug yet
ground-hours = { $hours } of work
ground-fuel = { $fuel } of fuel
ground-cost = cost { $cost }
ground-harmed = Working only the harmed ground: { $spent }.
ground-everything = Working the whole field at the depth of its worst ground: { $spent }.
ground-saved = Saved by leaving the rest alone: { $spent }.
ground-unknown = { $area } are not known yet and count as worked here: dig there before the machine comes.
ground-unmeasured = Not counted, for want of an area: { $zones }. Mark it on the field.
ground-nothing = Nothing is to be loosened.
ground-no_outline = Without an outline there are no hectares: walk it, or give it in the file.
ground-not_told = Hours, fuel and cost are not told: { $why }.
ground-no_fuel = Fuel is not told: { $why }.
ground-no_cost = Cost is not told: { $why }.
ground-as_set = With { $machine }.

next_pit-reference = Dig the reference pit first, where the crop looks best: away from wheelings, headland and edge.
next_pit-at = Dig next { $on }, { $walk } { $from }.
next_pit-by_eye = Dig next { $on }; choose the place by eye, far from the pits dug so far.
next_pit-nowhere_clear = More pits { $on } would tell, but all of it lies within { $clearance } of a marked drain or service.
lacks-reference = Without it nothing can be told from what is normal here.
lacks-behind = It was worked since its pits were dug, and nobody has looked yet.
lacks-call = Its pits give no call yet.
lacks-sureness = Its call is not sure enough to act on.
lacks-share = Its pits do not settle yet how much of it is harmed.
lacks-depth = Its tip depth rests on too few pits.
next_pit-from_here = from where you stand
next_pit-from_pit = from pit { $number }
next_pit-place = Longitude { $longitude }, latitude { $latitude }.
next_pit-still_expected = { $pits } still to be expected there, this one counted.
next_pit-nearest_wheeling = Take the wheeling nearest to that place.
next_pit-lines = Pits are kept { $clearance } from what is marked; what is not marked nobody knows: ask before you dig.

zone_share-none = { $zone }: no pit yet
zone_share-found = { $zone }: { $harmed } of { $pits } harmed, so { $lo } to { $hi } of it with { $confidence } confidence
zone_share-line = { $found }. { $verdict }.
settled-worth_loosening = settled: more of it is harmed than loosening needs to pay
settled-not_worth_loosening = settled: less of it is harmed than loosening needs to pay
settled-dig_on = not settled: dig on
settled-not_worth_a_pit = not settled, but no number of pits would pay for itself
