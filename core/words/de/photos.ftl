# Bilder, deren Datei nicht auf diesem Handy liegt, und der Maßstab der anderen.

photos-missing = { $count ->
    [one] Ein Foto fehlt auf diesem Handy.
   *[other] { $count } Fotos fehlen auf diesem Handy.
}
photos-not_here = { $photo }, Foto fehlt auf diesem Handy
photos-drawn_over = Foto von { $pit }
scale_fault-none = Das Foto hat noch keinen Maßstab. Am Zollstock die 0 antippen, dann eine andere Tiefe.
scale_fault-one = Eine Stelle ergibt keinen Maßstab. Am Zollstock eine weitere Tiefe antippen.
scale_fault-count = { $marks } Stellen ergeben keinen Maßstab. Zwei am Zollstock antippen oder je zwei an zwei Lotlinien.
scale_fault-outside = Eine Stelle liegt außerhalb des Bildes. Neu antippen.
scale_fault-same_depth = Die Stellen { $first } und { $second } haben dieselbe Tiefe. Zwei verschiedene Tiefen antippen.
scale_fault-too_close = Die Stellen { $first } und { $second } liegen für einen Maßstab zu nah beieinander. Zwei weiter voneinander entfernte antippen.
scale_fault-on_one_line = Die vier Stellen liegen fast auf einer Linie. Die zweite Lotlinie weiter seitlich antippen.
scale_fault-crossed = Die vier Stellen sind nicht zwei Lotlinien nebeneinander. Erst beide Stellen der einen Linie antippen, dann beide der anderen.
