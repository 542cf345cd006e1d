# Bilder, deren Datei nicht auf diesem Handy liegt.

photos-missing = { $count ->
    [one] Ein Foto fehlt auf diesem Handy.
   *[other] { $count } Fotos fehlen auf diesem Handy.
}
photos-not_here = { $photo }, Foto fehlt auf diesem Handy
