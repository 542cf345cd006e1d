# Was aus einer Speicherung wurde: zurückgenommen, nicht erfolgt, übernommen.

taken-back = Zurückgenommen: { $what }.
taken-back_nothing = Es gibt nichts zurückzunehmen.
taken-again = Steht wieder: { $what }.
taken-again_nothing = Es ist nichts zurückgenommen, was wieder stehen könnte.
taken-field = Angaben zum Schlag
taken-pit = Grube
taken-step = Messerprobe
taken-layer = Schicht
taken-roll = Ausrollprobe
taken-photo = Foto
taken-person = Name
taken-machine = Maschine
taken-pass = Arbeitsgang
taken-after_dig = Grube hinter der Maschine
taken-part = eingezeichnete Stelle im Schlag
taken-line = eingezeichnete Linie im Schlag

saved-one = { $place }: { $what }
saved-more = { $place }: { $what }, und { $count } weitere
saved-undo = Zurücknehmen: { $what }
saved-redo = Wieder so: { $what }
saved-deleted = gelöscht
saved-joined = verbunden oder getrennt
saved-back = zurückgeholt
saved-new = neu
saved-place = Platz in der Liste
saved-value = { $cell }: { $value }
saved-named = { $kind } { $name }
saved-pass_named = Arbeitsgang { $number }
saved-after_dig = Grube dahinter A{ $number }
saved-at = { $kind } { $depth }

not_saved-full = Nicht gespeichert: Das Handy ist voll. Platz schaffen und noch einmal tippen.
not_saved-locked = Nicht gespeichert: Die App darf ihre eigenen Dateien nicht schreiben.
not_saved-gone = Nicht gespeichert: Der zugehörige Eintrag wurde gelöscht.
not_saved-refused = Nicht gespeichert: Ein Wert ist nicht plausibel.
not_saved-failed = Nicht gespeichert: Das Handy konnte nicht speichern. Noch einmal tippen; bleibt es so, das Handy neu starten.

photo-kept = Foto gespeichert.
photo-lost = Foto nicht gespeichert: Seine Datei ist nicht lesbar.

taken_in = Übernommen: { $field }.
taken_in-field_deleted = Nicht übernommen: Der Schlag { $field } wurde hier gelöscht. Erst zurückholen.
taken_in-unread = Nicht übernommen: Die Datei ist nicht lesbar.
taken_in-faults = Nicht übernommen: In der Datei sind Fehler. { $faults }
taken_in-more = { $faults } Und { $count } weitere.

deleting-entry = { $what } löschen …
deleting-asked = { $what } löschen?
deleting-back = { $what }: wieder da.
deleting-goes = { $what } wird gelöscht. Rückgängig holt es zurück.
deleting-goes_with = { $what } wird gelöscht, dazu { $along }. Rückgängig holt alles zurück.
deleting-gone = { $what }: gelöscht. Rückgängig holt es zurück.
deleting-gone_with = { $what }: gelöscht, dazu { $along }. Rückgängig holt alles zurück.
deleting-compared = { $count ->
    [one] Eine Grube hinter der Maschine wird mit ihr verglichen und verlöre das.
   *[other] { $count } Gruben hinter der Maschine werden mit ihr verglichen und verlören das.
}
deleting-machine_kept = { $what } bleibt: { $count ->
    [one] Arbeitsgang { $passes } wurde damit gefahren und behält sie. Erst diesen Arbeitsgang löschen.
   *[other] Arbeitsgänge { $passes } wurden damit gefahren und behalten sie. Erst diese Arbeitsgänge löschen.
}
deleting-was = { $what }, gelöscht am { $when }

alone = Seit { $day } nur auf diesem Handy: { $what } in { $fields ->
    [one] einem Schlag
   *[other] { $fields } Schlägen
}.
alone-details = Seit { $day } nur auf diesem Handy: Angaben zu { $fields ->
    [one] einem Schlag
   *[other] { $fields } Schlägen
}.
alone-short = { $what } hat sonst niemand
alone-short_details = Angaben, die sonst niemand hat
