# Pictures whose file is not on this phone, and the scale of those that are.

photos-missing = { $count ->
    [one] One picture is not on this phone.
   *[other] { $count } pictures are not on this phone.
}
photos-not_here = { $photo }, picture not on this phone
photos-drawn_over = Photo of { $pit }
scale_fault-none = The photo has no scale yet. Touch 0 on the tape, then another depth.
scale_fault-one = One place gives no scale. Touch another depth on the tape.
scale_fault-count = { $marks } places give no scale. Touch two along the tape, or two along each of two plumb lines.
scale_fault-outside = A place lies outside the picture. Touch it anew.
scale_fault-same_depth = Places { $first } and { $second } have the same depth. Touch two different depths.
scale_fault-too_close = Places { $first } and { $second } lie too close together for a scale. Touch two that are further apart.
scale_fault-on_one_line = The four places lie nearly on one line. Touch the second plumb line further to the side.
scale_fault-crossed = The four places are not two plumb lines beside each other. Touch both places of one line, then both of the other.
