# The sheet of a field, the driver's card and the overview of fields.

page_text-to_do = what to do
page_text-first = first
page_text-why = why
page_text-not_looked = not looked at yet
page_text-saves = what it takes and saves
page_text-behind = behind the machine
page_text-details = the pits in detail
page_text-key = what is drawn
page_text-called_today = Calls of earlier years by the rules of today.
page_text-sure_pits = sure of the pits
page_text-sure_ground = sure of the ground
page_text-nothing_to_do = Nothing: leave it as it is.
page_text-decides = the face that decided
page_text-card = driver's card
page_text-spacing = from leg to leg
page_text-speed = speed
page_text-machine = machine
page_text-no_machine = none is noted: set it by what the trial strip shows
page_text-buried = cables, pipes and drains
page_text-stop = stop if
page_text-dig_behind = after 20 m: stop, keys out, and dig behind it
page_text-readings = depth to firm soil, from one tine line to the next
page_text-set_to = tips set to
page_text-day = day
page_text-driver = driver
page_text-line_one = line
page_text-line_other = next line
page_text-nothing_noted = Nothing is noted of cables, pipes or drains here. Nobody says that there are none: ask before the tips go in.
page_text-not_named = What is not named here may still lie there.
page_text-stop_thread = soil from the tips rolls to a thread: it is too wet, and it smears.
page_text-stop_clods = the tines throw up large clods or subsoil.
page_text-stop_hard = a leg strikes something, or the pull jumps: lift, stop, look. Nobody digs by machine there.
page_text-stop_slip = the wheels slip, or the tips do not hold their depth.
page_text-stop_rain = it has rained since soil was last rolled.
page_text-look_walls = The walls of the slots crumble; none is smeared or shiny.
page_text-look_lift = The surface is raised a little and evenly, without furrows.
page_text-look_next = If it looks so, go on and dig again now and then. If not, change depth, speed or spacing and try another 20 m, or wait.
page_text-pages = to read and print
page_text-sheet = sheet of the field
page_text-sheet_line = The call, the plan and the pits, on one page.
page_text-card_line = What the driver needs, on half a page.
page_text-overview_order = In order of urgency.
page_text-loosen_area = to be loosened

page-dug_on = { $pits }, { $day }
page-dug_between = { $pits }, { $first } to { $last }
page-by = by { $who }
page-says = { $what }: { $told }
page-buried_noted = { $kind }: { $depth } at the shallowest
page-look_loose = Firm soil lies no shallower than { $depth } from one tine line to the next.
page-layer_gone = Of the layer at { $depths } no more is left than a quarter. This mark is our own.
page-to_work = { $area } to work
page-fields = { $count ->
    [one] One field
   *[other] { $count } fields
}
page-total = { $fields }, { $area }

# A zone over the years. A list of what was seen in one year follows its number.
seasons-title = { $zone } over the years
seasons-year = { $year }: { $told }.
seasons-called = called { $call }
seasons-worst = the worst of { $pits } pits
seasons-layer = { $condition } { $depths }
seasons-sound = nothing tight or shut
seasons-loosened = loosened to { $tip }
seasons-loosened_unknown = loosened, depth not noted
seasons-strip = trial strip, tips at { $tip }
seasons-strip_unknown = trial strip, depth not noted
seasons-done = { $loosened }: { $verdict }
seasons-loose = { $lasting }, loose to { $depth } on average
