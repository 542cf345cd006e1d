# Bildschirme einer Grube. Sätze unter pit_headline stehen in großer Schrift: kurz.

face_text-all_layers = alle Schichten
face_text-answer_so_far = Ergebnis bis jetzt
face_text-best_crop = wo der Bestand am besten aussieht
face_text-bottom = Grubensohle
face_text-comes_away = Wie löst es sich?
face_text-deep_enough = Tief genug: Hier ist die Sohle.
face_text-dig_reference = Vergleichsgrube graben
face_text-is_reference = Mit dieser Grube werden die anderen verglichen.
face_text-kind_of_place = Art der Stelle
face_text-moisture = Feuchte der Wand
face_text-no_knife = Noch kein Ergebnis: mit dem Messer die Wand hinabgehen.
face_text-not_rolled = nicht gerollt
face_text-photo = Foto
face_text-photo_delete = löschen
face_text-photo_deleted = Das Foto ist gelöscht.
face_text-photo_first = zuerst ein Foto der Wand
face_text-reference_first = Zuerst dort graben, wo der Bestand am besten aussieht: Das ist die Vergleichsgrube.
face_text-reference_missing = Die Vergleichsgrube graben, um dies zu vergleichen.
face_text-reference_why = Ohne sie ist nicht zu sagen, was hier normal ist.
face_text-remark = Bemerkung
face_text-remark_asked = Was ist sonst zu sagen?
face_text-roll_now = Boden rollen
face_text-scale = Maßstab am Zollstock
face_text-scale_depth = Welche Tiefe wird angetippt?
face_text-scale_kept = Das Foto hat seinen Maßstab. Gespeichert.
face_text-scale_none = noch keiner: zweimal tippen genügt
face_text-scale_there = die Schichten liegen über dem Foto
face_text-scale_zero = Die 0 am Zollstock antippen.
face_text-show_it = zeigen
face_text-stands_so = so vermerkt
face_text-tap_again = noch einmal tippen
face_text-too_few = An dieser Wand ist noch zu wenig angesehen.

pit_screen-title = Grube { $number } · { $place }
pit_screen-dig_to = Mindestens { $depth } tief graben.
pit_screen-dig_deeper = Diese Grube tiefer graben: bis { $depth }.
pit_screen-hole_ends = Die Grube endet bei { $ends }; gebraucht werden { $wanted }. Tiefer graben oder noch einmal auf die Grubensohle tippen.
pit_screen-wanted = { $depth } gebraucht
pit_screen-looks = noch { $count } anzusehen
pit_screen-looks_why = { $more }. { $why }
pit_screen-look_on = Weiter ansehen: noch { $count }
pit_screen-remark_too_long = Nicht vermerkt: Eine Bemerkung hat höchstens { $letters } Zeichen. Kürzer schreiben.
pit_screen-touch_depth = { $depth } am Zollstock antippen.
pit_screen-layers = { $count ->
    [one] Eine Schicht
   *[other] { $count } Schichten
}
pit_screen-dig_in = Graben: { $on }
pit_screen-dig_behind_in = Hinter der Maschine graben: { $on }
pit_screen-reason = { $depths }: { $told }.
pit_screen-sure_face = Diese Wand: { $sure }.
pit_screen-sure_depth = { $zone }: { $dug } von { $enough } Gruben, die die Tiefe klären würden.
pit_screen-sure_ground = { $zone }: { $agree } von { $pits } sagen dasselbe.
pit_screen-field_on_day = { $field }, { $day }
pit_screen-next = Als Nächstes: { $step }.

pit_headline-ask_buried = Erst klären, was { $on } im Boden liegt.
pit_headline-ask_machine = Keine vermerkte Maschine kann { $the } lockern.
pit_headline-ask_specialist = { $the } erst nach Fachberatung bearbeiten.
pit_headline-behind = { $on } hinter der Maschine graben.
pit_headline-loosened_since = { $on } neu graben: Seither wurde gelockert.
pit_headline-dig_again = { $on } neu graben.
pit_headline-hold_back = { $on } nicht weiterarbeiten: Der letzte Arbeitsgang ist misslungen.
pit_headline-wait_at = Warten, bis es trockener ist; dann { $the } { $tip } tief lockern.
pit_headline-wait = { $on } warten, bis es trockener ist.
pit_headline-strip_first = Zuerst hinter dem Probestreifen graben.
pit_headline-roll_first = Vor dem Lockern Boden aus { $depth } rollen.
pit_headline-judge_first = { $the } { $tip } tief lockern, falls es trocken genug ist.
pit_headline-roots_first = { $on } erst Wurzeln arbeiten lassen, jetzt nicht lockern.
