# Condition and cause; signs and other clues with their answers.
# Of an answer: the value stands under its question; .clause stands alone among reasons;
# .if completes "It would be … if …".

condition-open = open
condition-firm = firm
condition-tight = tight
condition-shut = shut

cause-pressed = pressed
cause-settled = settled
cause-cemented = cemented
cause-natural = natural
cause-unclear = unclear
    .beside = cause unclear

# What each clue is called, and the question that asks for it.
clue-comes_away = how the soil comes away
    .question = how does the soil come away before the knife?
clue-resistance = resistance to the knife
    .question = what does the knife meet?
clue-pores = pores
    .question = how many pores on a broken face?
clue-channels = worm and root channels
    .question = are there channels of worms or old roots?
clue-roots = roots
    .question = what do the roots do?
clue-patches = rust or grey patches
    .question = are there rust or grey patches?
clue-smell = smell
    .question = how does a fresh piece smell?
clue-clod_in_water = a dry piece in water
    .question = what does an air-dry piece do in water?
clue-texture = texture
    .question = what is it by feel?
clue-organic_matter = organic matter
    .question = how much organic matter is in the topsoil?
clue-place = kind of place
    .question = what kind of place is this?
clue-lies = where the layer lies
    .question = where does the layer lie?
clue-below = the layer below
    .question = does the knife go in easier just below?
clue-reference = the reference pit
    .question = is it the same in the reference pit?
clue-last_loosened = last loosening
    .question = when was the field last loosened?
clue-last_traffic = heavy wheels
    .question = when did heavy wheels last run here?

question-at = { $depths }: { $question }
question-why = decides between { $one } and { $other }
question-with_why = { $question } This { $why }.
question-kind = “{ $kind }”
question-none = Nothing more is worth a look here.

comes_away-crumbs = crumbs
    .clause = crumbs
    .if = the soil came away in crumbs
comes_away-rounded_lumps = rounded lumps
    .clause = rounded lumps
    .if = the soil came away in rounded lumps
comes_away-sharp_blocks = sharp-edged blocks
    .clause = sharp-edged blocks
    .if = the soil came away in sharp-edged blocks
comes_away-flat_plates = flat plates
    .clause = flat plates
    .if = the soil came away in flat plates
comes_away-one_mass = one mass
    .clause = one mass
    .if = the soil came away as one mass
comes_away-loose_grains = loose grains
    .clause = loose grains
    .if = the soil came away in loose grains

resistance-slips_in = slips in
    .clause = the knife slips in
    .if = the knife slipped in
resistance-firm_push = firm push
    .clause = the knife needs a firm push
    .if = the knife needed a firm push
resistance-hard_push = hard push
    .clause = the knife needs a hard push
    .if = the knife needed a hard push
resistance-stops = stops
    .clause = the knife stops
    .if = the knife stopped

pores-many = many
    .clause = many pores
    .if = there were many pores
pores-some = some
    .clause = some pores
    .if = there were some pores
pores-few = few
    .clause = few pores
    .if = there were few pores
pores-none = none
    .clause = no pores
    .if = there were no pores

channels-many = many
    .clause = many channels
    .if = there were many channels
channels-some = some
    .clause = some channels
    .if = there were some channels
channels-none = none
    .clause = no channels
    .if = there were no channels
channels-cut_off = cut off
    .clause = channels cut off
    .if = the channels were cut off

roots-through = go right through
    .clause = roots go right through
    .if = the roots went right through
roots-in_cracks = only in cracks
    .clause = roots only in cracks
    .if = the roots ran only in cracks
roots-sideways = turned sideways
    .clause = roots turned sideways
    .if = the roots turned sideways
roots-stopped = stop here
    .clause = roots stop here
    .if = the roots stopped
roots-none_to_judge = none to judge by
    .clause = no roots to judge by
    .if = there were no roots to judge by

patches-none = none
    .clause = no rust or grey patches
    .if = there were no rust or grey patches
patches-few = few
    .clause = few rust or grey patches
    .if = there were few rust or grey patches
patches-clear = clear
    .clause = clear rust or grey patches
    .if = there were clear rust or grey patches

smell-earthy = earthy
    .clause = earthy smell
    .if = it smelled earthy
smell-none = no smell
    .clause = no smell
    .if = it had no smell
smell-sour = sour
    .clause = sour smell
    .if = it smelled sour

clod_in_water-falls_apart = falls apart
    .clause = a dry piece falls apart in water
    .if = a dry piece fell apart in water
clod_in_water-holds = holds
    .clause = a dry piece holds in water
    .if = a dry piece held in water

texture-sand = sand
    .clause = sand
    .if = the soil were sand
texture-light = light
    .clause = light soil
    .if = the soil were light
texture-silty = silty
    .clause = silty soil
    .if = the soil were silty
texture-medium = medium
    .clause = medium soil
    .if = the soil were medium
texture-heavy = heavy
    .clause = heavy soil
    .if = the soil were heavy

organic_matter-low = low
    .clause = little organic matter
    .if = there were little organic matter in the topsoil
organic_matter-medium = medium
    .clause = a usual share of organic matter
    .if = there were a usual share of organic matter in the topsoil
organic_matter-high = high
    .clause = much organic matter
    .if = there were much organic matter in the topsoil

# .pit names a pit dug there.
place-reference = reference pit
    .clause = at a place that looks sound
    .if = the pit were at a place that looks sound
    .pit = reference pit
place-open = open ground
    .clause = on open ground
    .if = the pit were on open ground
    .pit = pit on open ground
place-wheeling = wheeling
    .clause = in a wheeling
    .if = the pit were in a wheeling
    .pit = pit in a wheeling
place-headland = headland
    .clause = on the headland
    .if = the pit were on the headland
    .pit = pit on the headland
place-gateway = gateway
    .clause = in a gateway
    .if = the pit were in a gateway
    .pit = pit in a gateway
place-other = other
    .clause = on another patch
    .if = the pit were on another patch
    .pit = pit on another patch

lies-surface = near the surface
    .clause = near the surface
    .if = the layer lay near the surface
lies-whole_worked = through the whole worked depth
    .clause = through the whole worked depth
    .if = the layer ran through the whole worked depth
lies-worked_band = a band at the worked depth
    .clause = a band at the worked depth
    .if = the layer were a band at the worked depth
lies-subsoil = below the worked depth
    .clause = below the worked depth
    .if = the layer lay below the worked depth

below-easier = easier
    .clause = the knife goes in easier just below
    .if = the knife went in easier just below
below-not_easier = not easier
    .clause = the knife goes in no easier just below
    .if = the knife went in no easier just below

reference-far_worse = no, it is far worse here
    .clause = far better in the reference pit
    .if = it were far better in the reference pit
reference-worse = no, it is worse here
    .clause = not so in the reference pit
    .if = it were not so in the reference pit
reference-same = yes, the same or no better there
    .clause = the same in the reference pit
    .if = it were the same in the reference pit

last_loosened-recent = within two years
    .clause = loosened within two years
    .if = it had been loosened within two years
last_loosened-long_ago = longer ago
    .clause = not loosened for over two years
    .if = it had not been loosened for over two years

last_traffic-recent = within two years
    .clause = heavy wheels within two years
    .if = heavy wheels had run here within two years
last_traffic-long_ago = longer ago
    .clause = no heavy wheels for over two years
    .if = no heavy wheels had run here for over two years

# Moisture of the face.
face-dry = dry
    .unreadable = The face was too dry to read.
    .described = The face is dry.
face-moist = moist
    .unreadable = The face could not be read.
    .described = The face is moist.
face-wet = wet
    .unreadable = The face was too wet to read.
    .described = The face is wet.

# The roll test: soil kneaded and rolled between the hands.
roll-thread = rolls to a thread
    .at_depth = too wet to loosen, it would smear
    .at_surface = too wet to drive on
    .if = rolled to a thread
roll-short_lengths = cracks into short lengths
    .at_depth = right for loosening
    .at_surface = dry enough to drive on
    .if = cracked into short lengths
roll-crumbles = crumbles
    .at_depth = dry, it can be loosened but pulls hard and comes up in clods
    .at_surface = dry, it bears the machine
    .if = crumbled
roll-will_not_hold = will not hold together
    .at_depth = the roll test says nothing here, judge the moisture another way
    .at_surface = the roll test says nothing at the surface
    .if = would not hold together
rolled-depth = Soil from { $depth } { $does }: { $meaning }.
rolled-surface = Soil from the surface { $does }: { $meaning }.
