# Reasons of a call.

layer-at = { $depths } in pit { $pit }
layer-bare = { $depths } reads as { $kind } ({ $share }).
layer-for = { $depths } reads as { $kind } ({ $share }): { $for }.
layer-against = { $depths } reads as { $kind } ({ $share }). Against it: { $against }.
layer-both = { $depths } reads as { $kind } ({ $share }): { $for }. Against it: { $against }.

why-nothing_harmed = No layer holds the crop back.
why-roots_pass = Roots and worms still pass at { $depths }.
why-roots_pass_alone = Roots still pass at { $depths }.
why-worms_pass = Worms still pass at { $depths }.
why-no_pits = No pit here gives a call yet.
why-too_shallow = Dug to { $dug_to }; it takes { $need } to see what lies below.
why-no_reference = There is no reference pit that can be read: dig one where the crop looks best.
why-signs_too_few = Too few signs at { $depths } to tell. Not looked at: { $missing }.
why-kinds_open = All signs at { $depths } were looked at, and { $one } fits them as well as { $other }.
why-signs_clash = The signs at { $depths } clash. For sound soil: { $sound }. For harm: { $harm }.
why-pits_disagree = The pits disagree: { $agree } of { $pits } say the same.
why-roots_needed = No roots to judge by at { $depths }, and pressed or settled cannot be told without them.
why-cemented = The layer at { $depths } holds in water: it is cemented.
why-water_stands = Water stands through the profile: wet signs at { $depths }, and no clean ground below them.
why-water_held_up = Wet signs at { $depths } over clean ground: the layer holds the water up.
why-face_wet = The face is wet. It shows the harm, but nothing can be worked now.
why-peat = The ground at { $depths } is peat: its blocks and plates come of drainage and age. Mind the water level and the crops; steel only speeds the loss.
why-near_surface = The layer at { $depths } lies at the surface: break it shallow when it is dry, never with a deep tine.
why-under_grass = The layer at { $depths } lies just under the sward: rest from stock and wheels mends it, spiking or slitting helps when it is dry.
why-roll_missing = No roll test yet of soil from { $depth }.
why-surface_roll_missing = No roll test yet of soil from the surface.
why-too_near = { $obstacle } lie at { $depth }; a tip at { $tip } would come nearer than { $clearance }.
why-not_sure = Best fits { $call }, but not surely enough to act on: another pit would settle it.
why-not_sure_look = Best fits { $call }, but not surely enough to act on. What would settle it: { $clue } at { $depths }.
why-depth_unknown = { $obstacle } are marked here, and their depth is not known.
why-hangs_on_depth = The call hangs on a few centimetres: { $obstacle } are noted at { $depth }, and the tip needs them at { $needs } or deeper. Measure that depth.
why-service = A cable or pipe is marked here; its depth is not known.
why-service_depth = A cable or pipe is noted at { $depth }.
why-service_away = A cable or pipe runs { $away } from the nearest pit; its depth is not known.
why-service_both = A cable or pipe runs { $away } from the nearest pit, noted at { $depth }.
why-asked = Asked what lies buried: { $whom }. The day is not noted.
why-asked_on = Asked what lies buried: { $whom }, { $day }.
why-asked_lapsed = That answer has lapsed: ask again.
why-asked_leave = Leave was given to work above it.
why-asked_no_leave = No leave was given to work above it.
why-no_machine = It takes a machine that reaches { $tip } with feet of { $foot } or wider; none that is noted does.
why-on_day = { $told } Rolled { $day }.
why-roll_past = The rolls are of { $day } and count for that day and the next: roll again before the work.
why-rain_since = It has rained ({ $rain }) since the rolls of { $day }: roll again before the work.
why-strip = A trial strip was run since; the holes behind it say: { $said }.
why-strip_on = A trial strip was run since, { $day }; the holes behind it say: { $said }.
why-worked = All of it was worked since; the holes behind the machine say: { $said }.
why-worked_on = All of it was worked since, { $day }; the holes behind the machine say: { $said }.
why-behind_not_dug = not dug yet
why-loosened_since = The pits were dug before it was loosened ({ $day }): they say no more how it is now.
why-did_not_last = Loosened { $day }, and a harmed layer is there again: find out why before loosening once more.
why-did_not_last_undated = Loosened, and a harmed layer is there again: find out why before loosening once more.
why-beyond_reach = The tip has to run at { $tip }; the machine reaches { $reach }.
why-deep_clay = This is clay and the layer ends at { $bottom }: loosening so deep mostly does not pay in clay.
why-deep_clay_held_to = This is clay and the layer ends at { $bottom }: loosening so deep mostly does not pay, but you hold to it.
why-zones_differ = The zones differ: each has its own call.
why-zones_differ_work = The zones differ: work only { $the }.
why-twins_counted_once = { $twins ->
    [one] One pit reads just like another and was not counted again.
   *[other] { $twins } pits read just like others and were not counted again.
}

obstacle-drains = drains
    .the = the drains
obstacle-mole_drains = mole drains
    .the = the mole drains
obstacle-services = cables or pipes
    .the = the cables or pipes
