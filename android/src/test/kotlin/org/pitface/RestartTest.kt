package org.pitface

import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.json.JSONObject
import org.json.JSONTokener
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.SessionInterface
import org.pitface.core.ShownDoes
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.util.ReflectionHelpers
import java.io.File

/** Wherever in the app its process is ended, it comes back to the same place, with all that was noted. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class RestartTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private val places = mutableSetOf<String>()
    private val kinds = mutableSetOf<ScreenKind>()
    private var ends = 0

    /** Where the core says it is, as it is kept; nothing before the first tap. */
    private fun kept(): Any? {
        val kept = File(process.filesDir, "notes/place.json").takeIf { it.exists() }?.readText() ?: return null
        return JSONTokener(kept).nextValue().let { whole -> (whole as? JSONObject)?.opt("place")?.takeIf { it != JSONObject.NULL } ?: whole }
    }

    /** The name of the place and what of its details is chosen, without ids. */
    private fun place(): String {
        val place = kept() ?: return "welcome"
        if (place !is JSONObject) return place.toString()
        val name = place.keys().next()
        val details = place.get(name) as? JSONObject ?: return name
        return (listOf(name) + details.keys().asSequence().filter { !details.isNull(it) && it != "field" }.map { key -> details.get(key).toString().let { if (Id.containsMatchIn(it)) key else "$key $it" } }).joinToString(" ")
    }

    /** Pits, steps of all walks, rolls, passes and holes behind them. */
    private fun counts(notes: JSONObject): List<Int> {
        val (pits, passes) = notes.list("pits") to notes.list("passes")
        return listOf(pits.size, pits.sumOf { it.list("walk").size }, pits.sumOf { it.list("rolls").size }, passes.size, passes.sumOf { it.list("after_digs").size })
    }

    private var field: String? = null

    private fun endsAndComesBack() {
        val before = phone.shown
        val place = place()
        val held = field?.let { phone.notes(it) }
        process.reopen()
        rule.activityRule.scenario.recreate()
        phone.settle()
        assertNull(phone.app.failure)
        val after = phone.shown
        assertEquals("$place: kind", before.kind, after.kind)
        assertEquals("$place: title", before.title, after.title)
        assertEquals("$place: all that stands there", before.all(), after.all())
        assertEquals("$place: the place", place, place())
        held?.let {
            val kept = phone.notes(field!!)
            assertEquals("$place: pits, steps, rolls, passes, holes", counts(it), counts(kept))
            assertEquals("$place: every record", it.toString(), kept.toString())
        }
        ends++
        places += place
        kinds += after.kind
    }

    private fun ends() = endsAndComesBack()

    /** Every kind of place that leads from here and was not seen yet, and [deep] further from there. */
    private fun around(deep: Int, by: ShownDoes? = null) {
        val (start, here) = phone.shown to kept()
        for ((_, does) in start.tappable) {
            val act = (does as? ShownDoes.Act)?.act.orEmpty()
            if (!act.startsWith("{\"go\":") || does == start.back?.does || !been.add(act.replace(Id, "#").replace(Number, "0"))) continue
            phone.app.does(does)
            ends()
            if (deep > 1) around(deep - 1, does)
            phone.back()
            if (phone.shown.title != start.title && by != null) phone.app.does(by) // back from a question of several leads past the others
            if (start.kind in Passing) { // back leads past the questions about a pit, to its walk; and the walk leads on
                assertEquals("back from $act", ScreenKind.KNIFE_WALK to start.title, phone.shown.kind to phone.shown.title)
                phone.app.does(ShownDoes.Act(JSONObject().put("go", here).toString()))
            }
            assertEquals("back from $act", start.kind to start.title, phone.shown.kind to phone.shown.title)
        }
    }

    private val been = mutableSetOf<String>()

    private fun row(part: String) = phone.tap(
        phone.shown.tappable.firstOrNull { (_, does) -> (does as? ShownDoes.Act)?.act?.contains(part) == true }?.first
            ?: throw AssertionError("nothing leads to $part from ${phone.shown.kind}: ${phone.shown.tappable.map { it.second }}"),
    )

    @Test fun everyPlaceIsComeBackToWithNothingLost() {
        ends()
        phone.tap("English")
        ends()
        around(2)
        been.clear() // What leads on from the example leads on from a field of one's own too, and deeper.
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "lapwing_ground.notes.json").path)
        phone.settle()
        field = phone.shown.field
        ends()
        around(3)
        aPit()
        withANeighbour()
        println("restart: $ends times, at ${places.size} places of ${kinds.size} kinds of screen: $places")
        assertEquals("every kind of screen", ScreenKind.entries.toSet(), kinds)
    }

    private fun aPit() {
        phone.to("start_pit")
        listOf("Wheeling", "Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above").forEach {
            phone.tap(it)
            if (it != "Slips in") ends()
            if (it == "Wheeling") around(1) // a pit that is begun can be pointed out on the plan
        }
        phone.bottom()
        ends()
        phone.tap(phone.shown.tools.last())
        ends()
        around(2)
        phone.passesOverTheRest()
        ends()
        around(2)
    }

    /** What the same field became on somebody else's phone comes back, and differs from what it is here. */
    private fun withANeighbour() {
        while (phone.shown.kind != ScreenKind.FIELDS) phone.back()
        phone.to("partners")
        ends()
        val session = ReflectionHelpers.getField<SessionInterface>(phone.app, "session")
        Neighbour("Nora").use { nora ->
            nora.takesIn(File(session.exportBundle(null, true, process.handed.path).path!!))
            nora.sets(field!!, "texture", "Heavy")
            phone.app.does(ShownDoes.Act("{\"go\":{\"detail\":{\"field\":\"$field\",\"detail\":\"texture\"}}}"))
            phone.tap("Light")
            phone.app.importFile(nora.handsOver().path)
            phone.settle()
        }
        row("{\"go\":{\"partner\"")
        ends()
        phone.tap(phone.shown.next)
        row("{\"go\":{\"versions\"")
        ends()
    }

    private companion object {
        val Id = Regex("[0-9a-f]{8}-[0-9a-f-]{27}|[0-9a-f]{32,}")
        /** Questions that are not come back to: the next one may be another by then. */
        val Passing = setOf(ScreenKind.NEXT_LOOK, ScreenKind.ROLL)

        val Number = Regex("\\d+")
    }
}
