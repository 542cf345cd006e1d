package org.pitface

import org.pitface.core.Anchor
import org.pitface.core.Drawing
import org.pitface.core.Light
import org.pitface.core.Point
import org.pitface.core.Role
import org.pitface.core.ScreenKind
import org.pitface.core.Section
import org.pitface.core.Shape
import org.pitface.core.ShownBlock
import org.pitface.core.ShownButton
import org.pitface.core.ShownDoes
import org.pitface.core.ShownHeadline
import org.pitface.core.ShownPicture
import org.pitface.core.ShownRow
import org.pitface.core.ShownScreen
import org.pitface.core.ShownThumbnail
import org.pitface.core.ShownTouch
import org.pitface.core.Stand

/** Screens made up for the layout alone: every block there is, long words, many answers. */
internal object Samples {
    fun act(name: String) = ShownDoes.Act("\"$name\"")

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

    fun icon() = Drawing(24.0, 24.0, listOf(Shape.Polyline(Role.INK, listOf(Point(9.0, 4.0), Point(4.0, 9.0), Point(9.0, 14.0)))))

    fun button(label: String, note: String = "", drawn: Boolean = false, chosen: Boolean = false, enabled: Boolean = true, strong: Boolean = false) =
        ShownButton(label, note, if (drawn) drawing(96.0, 64.0) else null, act(label), strong, chosen, enabled)

    fun tool(label: String, enabled: Boolean = true) = button(label, enabled = enabled).copy(drawing = icon())

    fun picture(stand: Stand = Stand.WIDE, width: Double = 360.0, height: Double = 200.0, touches: List<ShownTouch> = emptyList(), anywhere: String? = null, zooms: Boolean = false, photo: String? = null) =
        ShownPicture(drawing(width, height), photo, "Face", "Four layers", stand, touches, anywhere, zooms)

    fun screen(
        kind: ScreenKind, title: String, answer: String, blocks: List<ShownBlock>, picture: ShownPicture? = null, next: String? = null, line: String = "",
        tools: List<String> = emptyList(), menu: List<String> = emptyList(), more: List<Section> = emptyList(), told: String = "", caution: String = "", german: Boolean = false, left: Boolean = false,
    ) = ShownScreen(
        kind = kind, title = title, back = button(if (german) "Zurück" else "Back"), menu = menu.map { button(it) }, answer = ShownHeadline(answer, icon(), line), picture = picture,
        blocks = blocks, caution = caution, next = next?.let { button(it, strong = true) }, tools = tools.map { tool(it) }, more = more, moreLabel = if (more.isEmpty()) "" else if (german) "Mehr" else "More",
        told = told, saved = false, awake = false, wantsPosition = false, leftHanded = left, light = Light.PHONE, language = if (german) "de" else "en",
    )

    fun all(german: Boolean, left: Boolean): List<ShownScreen> {
        fun say(en: String, de: String) = if (german) de else en
        val rows = (1..9).map { ShownRow(icon(), "Long Sedge $it", listOf(say("headland: Loosen 33–35 cm", "Vorgewende: Lockern 33–35 cm"), say("4 pits", "4 Gruben")), act("row")) }
        val kinds = listOf(
            say("Crumbs", "Krümel"), say("Rounded lumps", "Rundliche Bröckel"), say("Sharp-edged blocks", "Scharfe Stücke"), say("Flat plates", "Flache Platten"),
            say("One mass", "Eine Masse"), say("Loose grains", "Lose Körner"),
        )
        val tools = listOf(say("Undo", "Rückgängig"), say("Photo", "Foto"), say("Remark", "Bemerkung"))
        val why = Section(say("For", "Dafür"), (1..8).map { say("Flat plates at 20–30 cm, roots turned sideways.", "Flache Platten in 20–30 cm, Wurzeln zur Seite gelenkt.") })
        return listOf(
            screen(
                ScreenKind.FIELDS, say("Fields", "Schläge"), say("Nine fields, one of them to be loosened.", "Neun Schläge, einer davon zu lockern."), listOf(ShownBlock.Ways(say("This season", "In dieser Saison"), rows)),
                next = say("Start a field", "Schlag anlegen"), tools = tools, menu = listOf(say("Own details", "Eigene Angaben"), say("Hand over", "Weitergeben")), german = german, left = left,
            ),
            screen(
                ScreenKind.KNIFE_WALK, say("Pit 3 · headland", "Grube 3 · Vorgewende"), "20–25 cm",
                listOf(
                    ShownBlock.Question(say("How does the soil come away?", "Wie löst sich der Boden?"), 3u, kinds.mapIndexed { index, it -> button(it, drawn = true, chosen = index == 3) }),
                    ShownBlock.Question(
                        say("What does the knife meet?", "Worauf trifft das Messer?"), 4u,
                        listOf(say("Slips in", "Gleitet ein"), say("Firm push", "Fester Druck"), say("Hard push", "Harter Druck"), say("Stops", "Stockt")).map { button(it) },
                    ),
                ),
                picture(Stand.STRIP, 110.0, 400.0), say("Same as above", "Wie darüber"), tools = tools + say("Bottom of the hole", "Grubensohle"),
                told = say("15–20 cm saved: plates.", "15–20 cm gespeichert: Platten."), german = german, left = left,
            ),
            screen(
                ScreenKind.CALL, say("Pit 3 · headland", "Grube 3 · Vorgewende"), say("Loosen the headland at 33–35 cm.", "Das Vorgewende in 33–35 cm Tiefe lockern."),
                listOf(
                    ShownBlock.Text(say("This face: sure.", "Diese Wand: sicher.")),
                    ShownBlock.Photos((1..3).map { ShownThumbnail("0".repeat(63) + it, say("20–25 cm, taken today", "20–25 cm, von heute"), act("photo")) }),
                    ShownBlock.Question("", 2u, listOf(button(say("Photo", "Foto")), button(say("Machine", "Unterbodenlockerungsgerät"), say("first a machine", "erst ein Gerät"), enabled = false))),
                    ShownBlock.Picture(picture()),
                ),
                picture(touches = listOf(ShownTouch(72.0, 40.0, 216.0, 120.0, say("Tight layer", "Dichte Schicht"), act("layer"), false)), zooms = true), say("Show", "Zeigen"), tools = tools, more = listOf(why),
                caution = say("Wait until 40 cm is dry.", "Warten, bis 40 cm tief abgetrocknet ist."), line = say("sure; three of eight pits", "sicher; drei von acht Gruben"), german = german, left = left,
            ),
            screen(
                ScreenKind.OWN, say("Own details", "Eigene Angaben"), say("Which hand holds the phone?", "Welche Hand hält das Telefon?"),
                listOf(
                    ShownBlock.Question("", 2u, listOf(button(say("left", "links"), chosen = true), button(say("right", "rechts")))),
                    ShownBlock.Typing(say("Name", "Name"), "A. Walker", "\"name\"", false), ShownBlock.Typing(say("Remark", "Bemerkung"), "", "\"remark\"", true), ShownBlock.Lines(why),
                ),
                german = german, left = left,
            ),
            screen(
                ScreenKind.SHOW, say("Headland", "Vorgewende"), say("Loosen at 33–35 cm.", "In 33–35 cm Tiefe lockern."), listOf(ShownBlock.Text(say("Flat plates at 20–30 cm.", "Flache Platten in 20–30 cm."))), picture(),
                german = german, left = left,
            ),
        )
    }
}
