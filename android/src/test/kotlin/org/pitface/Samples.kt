package org.pitface

import org.pitface.core.Anchor
import org.pitface.core.Drawing
import org.pitface.core.Point
import org.pitface.core.Role
import org.pitface.core.ScreenKind
import org.pitface.core.Shape
import org.pitface.core.ShownButton
import org.pitface.core.ShownDoes
import org.pitface.core.ShownDoing
import org.pitface.core.ShownKnown
import org.pitface.core.ShownRow
import org.pitface.core.ShownScreen
import org.pitface.core.Size

/** Screens made up for the layout alone: every block there is, long words, many buttons. */
object Samples {
    private fun act(name: String) = ShownDoes.Act("\"$name\"")

    fun drawing(width: Double = 360.0, height: Double = 200.0) = Drawing(
        width, height,
        listOf(
            Shape.Rectangle(Role.PAPER, 0.0, 0.0, width, height),
            Shape.Rectangle(Role.SOIL_TIGHT, width * 0.2, height * 0.2, width * 0.6, height * 0.6),
            Shape.Polyline(Role.ROOT, listOf(Point(width * 0.3, 0.0), Point(width * 0.4, height * 0.5), Point(width * 0.35, height))),
            Shape.Polygon(Role.PATCH_RUST, listOf(Point(width * 0.6, height * 0.4), Point(width * 0.7, height * 0.4), Point(width * 0.65, height * 0.55))),
            Shape.Circle(Role.HATCH_OPEN, Point(width / 2, height / 2), 2.0),
            Shape.Line(Role.TIP, Point(0.0, height * 0.8), Point(width, height * 0.8)),
            Shape.Text(Role.INK, Point(width - 4, height * 0.3), Anchor.END, 12.0, true, "20–25 cm"),
        ),
    )

    private fun button(label: String, size: Size = Size.USUAL, note: String = "", drawn: Boolean = false, chosen: Boolean = false, enabled: Boolean = true) =
        ShownButton(label, note, if (drawn) drawing(96.0, 56.0) else null, act(label), size, chosen, enabled)

    private fun screen(kind: ScreenKind, german: Boolean, left: Boolean, title: String, known: List<ShownKnown>, doing: List<ShownDoing>, main: String?, told: String = "") =
        ShownScreen(
            kind, title, known, doing, button(if (german) "Zurücknehmen" else "Undo"), main?.let { button(it, Size.LARGE) },
            button(if (german) "Zurück" else "Back"), told, false, false, false, left, if (german) "de" else "en",
        )

    fun all(german: Boolean, left: Boolean): List<ShownScreen> {
        fun say(en: String, de: String) = if (german) de else en
        val rows = (1..9).map { ShownRow("Long Sedge $it", listOf(say("headland: Loosen 33–35 cm", "Vorgewende: Lockern 33–35 cm"), say("4 pits", "4 Gruben")), act("row")) }
        val kinds = listOf(
            say("crumbs", "Krümel"), say("rounded lumps", "runde Bröckel"), say("blocks", "Blöcke"), say("plates", "Platten"),
            say("one mass", "eine Masse"), say("single grains", "Einzelkörner"),
        )
        return listOf(
            screen(ScreenKind.FIELDS, german, left, say("Fields", "Schläge"), listOf(ShownKnown.Rows(rows)), emptyList(), say("Start a field", "Schlag anlegen")),
            screen(
                ScreenKind.KNIFE_WALK, german, left, say("Knife walk", "Messergang"),
                listOf(ShownKnown.Sentence("20–25 cm"), ShownKnown.Picture(drawing(), "Face", "Four layers")),
                listOf(
                    ShownDoing.Question(say("What does the knife meet?", "Worauf trifft das Messer?")),
                    ShownDoing.Choices(3u, kinds.mapIndexed { index, it -> button(it, drawn = true, chosen = index == 3) }),
                    ShownDoing.Choices(4u, listOf(say("in", "leicht"), say("firm", "fest"), say("hard", "hart"), say("stop", "Schluss")).map { button(it, Size.SMALL) }),
                    ShownDoing.Choices(1u, listOf(button(say("same as above", "wie darüber"), Size.LARGE, say("plates, hard", "Platten, hart")))),
                ),
                say("Bottom of the hole", "Grubensohle erreicht"), say("15–20 cm saved: plates.", "15–20 cm gespeichert: Platten."),
            ),
            screen(
                ScreenKind.CALL, german, left, say("The call", "Der Rat"),
                listOf(
                    ShownKnown.Sentence(say("Loosen the headland at 33–35 cm.", "Das Vorgewende in 33–35 cm Tiefe lockern.")),
                    ShownKnown.Section(say("For", "Dafür"), (1..8).map { say("Flat plates at 20–30 cm, roots turned sideways.", "Flache Platten in 20–30 cm, Wurzeln zur Seite gelenkt.") }),
                    ShownKnown.Line(say("likely, 86 of 100", "wahrscheinlich, 86 von 100")),
                ),
                listOf(ShownDoing.Choices(2u, listOf(button(say("Photo", "Foto")), button(say("Machine", "Unterbodenlockerungsgerät"), enabled = false)))),
                say("Show", "Zeigen"),
            ),
            screen(
                ScreenKind.OWN, german, left, say("Own details", "Eigene Angaben"), emptyList(),
                listOf(
                    ShownDoing.Typing(say("Name", "Name"), "A. Walker", "\"name\""),
                    ShownDoing.Question(say("Which hand holds the phone?", "Welche Hand hält das Telefon?")),
                    ShownDoing.Choices(2u, listOf(button(say("left", "links"), chosen = true), button(say("right", "rechts")))),
                ),
                null,
            ),
            screen(
                ScreenKind.SHOW, german, left, say("Headland", "Vorgewende"),
                listOf(ShownKnown.Sentence(say("Loosen at 33–35 cm.", "In 33–35 cm Tiefe lockern.")), ShownKnown.Picture(drawing(), "Face", "Four layers")),
                emptyList(), null,
            ),
        )
    }
}
