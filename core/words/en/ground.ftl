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
ground-nothing = Nothing is to be loosened.
ground-no_outline = Without an outline there are no hectares: walk it, or give it in the file.
ground-not_told = Hours, fuel and cost are not told: { $why }.
ground-no_fuel = Fuel is not told: { $why }.
ground-no_cost = Cost is not told: { $why }.
ground-as_set = With { $machine }.
