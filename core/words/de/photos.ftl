# Bilder, deren Datei nicht auf diesem Handy liegt.

photos-missing = { $count ->
    [one] Ein Bild ist nicht auf diesem Handy.
   *[other] { $count } Bilder sind nicht auf diesem Handy.
}
photos-not_here = { $photo }, Bild nicht auf diesem Handy
