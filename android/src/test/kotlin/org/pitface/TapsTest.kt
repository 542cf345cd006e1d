package org.pitface

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.isEnabled
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onLast
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File

/** How many taps the work takes, each by the words that stand on the glass. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class TapsTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private var taps = 0

    /** How something on the screen is tapped: by a finger at its place, or as a screen reader does it. */
    private fun interface Way {
        fun tap(node: SemanticsNodeInteraction)
    }

    private val byFinger = Way { node ->
        runCatching { node.performScrollTo() } // what stands in the bar does not scroll
        node.performClick()
    }

    private val byReader = Way { it.performSemanticsAction(SemanticsActions.OnClick) }

    /** Nothing but what a screen reader is told: texts and descriptions, compared without regard to the kind of a space. */
    private fun says(words: String) = SemanticsMatcher("says $words") { node ->
        val told = node.config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text } + node.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()
        told.any { it.plain() == words }
    }

    private fun String.plain() = map { if (it.isWhitespace() || it == '\u00a0' || it == '\u202f') ' ' else it }.joinToString("")

    private fun Way.tap(words: String) {
        phone.settle()
        val found = rule.onAllNodes(says(words) and hasClickAction() and isEnabled())
        if (found.fetchSemanticsNodes().isEmpty()) throw AssertionError("no \"$words\" on ${phone.shown.title}; there is: ${offered()}")
        tap(found.onLast()) // of the same words on a screen, those nearest to the thumb
        phone.settle()
        assertEquals(null, phone.app.failure)
        taps++
    }

    private fun offered() = rule.onAllNodes(hasClickAction() and isEnabled()).fetchSemanticsNodes()
        .flatMap { it.config.getOrNull(SemanticsProperties.Text).orEmpty().take(1) }.map { it.text.plain() }

    /** By the words of what leads there. */
    private fun Way.leads(place: String) =
        tap(phone.shown.let { here -> here.tappable.first { (_, does) -> does != here.back?.does && (does as? ShownDoes.Act)?.act.orEmpty().startsWith("{\"go\":{\"$place\"") } }.first.plain())

    private fun inTheField(name: String, title: String) {
        phone.tap("English")
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "$name.notes.json").path)
        phone.settle()
        assertTrue(phone.shown.title, phone.shown.title.startsWith(title))
        taps = 0
    }

    /** Crumbs to 20 cm, plates to 30 cm, rounded lumps to 50 cm; and what there is to see in each. */
    private fun wholePit(way: Way) = with(way) {
        inTheField("long_sedge", "Long Sedge")
        leads("start_pit")
        tap("Wheeling")
        tap("Moist") // the hole is dug, and its face looked at
        tap("Slips in")
        tap("Crumbs")
        repeat(3) { tap("Same as above") }
        tap("Hard push")
        tap("Flat plates")
        tap("Same as above")
        tap("Firm push")
        tap("Rounded lumps")
        repeat(3) { tap("Same as above") }
        tap("Bottom of hole")
        while (phone.shown.kind == ScreenKind.NEXT_LOOK) { // for as long as a layer is asked about
            val asked = phone.shown.answer!!.text.plain()
            val seen = Seen.entries.firstOrNull { asked.startsWith(it.key) }?.value ?: throw AssertionError(asked)
            tap(seen.firstOrNull { it in offered() } ?: throw AssertionError("$asked: ${offered()}"))
            assertTrue("the asking does not end", taps < 50)
        }
        assertEquals(ScreenKind.ROLL, phone.shown.kind)
        tap("Cracks into short lengths. Soil from 35 cm")
        tap("Crumbles. Soil from the surface")
        assertEquals(ScreenKind.CALL, phone.shown.kind)
        assertTrue("$taps taps", taps <= 25)
        val pit = phone.notes(phone.shown.field!!).list("pits").last()
        assertEquals("steps and rolls in the store", 10 to 2, pit.list("walk").size to pit.list("rolls").size)
        assertEquals("three layers were met", listOf("crumbs", "flat_plates", "rounded_lumps"), pit.list("walk").mapNotNull { it.optString("comes_away").ifEmpty { null } }.distinct())
        phone.shown.sentences().first()
    }

    @Test fun aWholePitOfThreeLayersTakesAtMost25Taps() {
        val said = wholePit(byFinger)
        println("taps: pit $taps (\"$said\")")
        phone.picture("call-after-$taps-taps")
    }

    @Test fun theSamePitByAScreenReaderAlone() {
        val said = wholePit(byReader)
        println("taps: pit $taps by a screen reader alone (\"$said\")")
    }

    @Test fun eightReadingsBehindTheMachineTakeAtMostTwelveTaps() = with(byFinger) {
        inTheField("lapwing_ground", "Lapwing Ground")
        leads("pass")
        tap(phone.shown.rows.first { it.title.contains("headland", ignoreCase = true) }.title.plain())
        taps = 0
        val before = readings()
        leads("in_hole")
        assertEquals(ScreenKind.AFTER_DIG, phone.shown.kind)
        Firm.forEach { read(it) }
        val read = taps
        assertTrue("$read taps", read <= 12)
        while ("Not looked" in offered()) { // the looks that are asked for, in the days behind the machine or a season on
            tap(SeenBehind.firstOrNull { it in offered() } ?: throw AssertionError("${phone.shown.answer?.text}: ${offered()}"))
            assertTrue("the asking does not end", taps < 50)
        }
        assertTrue("something was seen", taps > read)
        println("taps: after-dig $read to the last reading and $taps with what is seen, of them 1 to begin the hole")
        assertTrue("$taps taps, one of them to begin the hole", taps <= 12 + 1)
        assertEquals("all eight are in the store", setOf(Firm.map { it * 10 }), readings() - before)
        phone.picture("after-dig-eight-readings")
    }

    /** Depths to firm soil in every hole behind a machine that the store has of the field. */
    private fun readings() = phone.notes(phone.shown.field!!).list("passes").flatMap { it.list("after_digs") }.map { it.getJSONArray("firm_mm").numbers() }.toSet()

    /** A depth is one of the numbers offered; where it is not, they are moved until it is. */
    private fun Way.read(cm: Int) {
        while ("$cm" !in offered()) tap(if (offered().mapNotNull { it.toIntOrNull() }.min() > cm) "Shallower" else "Deeper")
        tap("$cm")
    }

    private fun ShownScreen.sentences() = listOfNotNull(answer?.text?.plain())

    private companion object {
        /** Centimetres to firm soil across the machine; the same as the core's own test takes. */
        val Firm = listOf(33, 33, 30, 26, 25, 29, 33, 34)

        val SeenBehind = listOf("Open to the surface, straight sides", "Not smeared", "Small", "None left", "Go right through")

        val Seen = mapOf(
            "0–20" to listOf("Slips in", "Go right through", "Many", "Earthy", "Falls apart", "None"),
            "20–30" to listOf("Hard push", "Turned sideways", "Cut off", "None", "No smell", "Falls apart"),
            "30–50" to listOf("Firm push", "Go right through", "Some", "Earthy", "Falls apart", "None"),
        )
    }
}
