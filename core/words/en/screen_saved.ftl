# What a tap has saved, told at once: what it is first, so that it is heard first.

saved-kept = { $what }. Saved.
saved-begun = { $pit }, is begun. Saved.
saved-dug = The hole is dug; the face is { $moisture }. Saved.
saved-face = The face is { $moisture }. Saved.
saved-from = From { $depth }
saved-bottom = The hole ends at { $depth }. Saved.
saved-boundary = The boundary is at { $depth } now. Saved.
saved-soil_depth = Soil from { $depth }
saved-soil_surface = Soil from the surface
saved-reading = Reading { $number }
saved-slot = Slot { $number }
saved-driven = Heavy wheels on { $day }. Saved.
saved-not_driven = No heavy wheels noted. Saved.
saved-left_hand = For the left hand. Saved.
saved-right_hand = For the right hand. Saved.
saved-keys = The volume keys answer the knife walk. Saved.
saved-no_keys = The volume keys set the volume. Saved.
