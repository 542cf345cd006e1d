package org.pitface

import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.json.JSONObject
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.SessionInterface
import org.pitface.core.ShownButton
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

    /** Where the core says it is: the name of the place and what of its details is chosen. */
    private fun place(): String {
        val kept = File(process.filesDir, "notes/place.json").takeIf { it.exists() }?.readText() ?: return "welcome"
        if (kept.startsWith('"')) return kept.trim('"', '\n')
        val name = JSONObject(kept).keys().next()
        val details = JSONObject(kept).getJSONObject(name)
        return (listOf(name) + listOf("pit", "layer", "clue", "machine", "pass", "dig", "legs", "power_kw").filter { !details.isNull(it) }).joinToString(" ")
    }

    /** Pits, steps of all walks, rolls, passes and holes behind them. */
    private fun counts(notes: JSONObject): List<Int> {
        val (pits, passes) = notes.list("pits") to notes.list("passes")
        return listOf(pits.size, pits.sumOf { it.list("walk").size }, pits.sumOf { it.list("rolls").size }, passes.size, passes.sumOf { it.list("after_digs").size })
    }

    private var field: String? = null

    private fun endsAndComesBack(expected: String) {
        val before = phone.shown
        val place = place()
        assertEquals("reached", expected, place)
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

    private fun ShownButton.leads(part: String) = (does as? ShownDoes.Act)?.act?.contains(part) == true

    /** By a button or a row that leads there. */
    private fun to(place: String) {
        val here = phone.shown
        val button = here.buttons.firstOrNull { it != here.back && it.leads("{\"go\":{\"$place\"") || it.leads("{\"go\":\"$place\"") }
        if (button != null) phone.tap(button) else row("{\"go\":{\"$place\"")
    }

    private fun row(part: String) = phone.tap(
        phone.shown.rows.firstOrNull { (it.does as? ShownDoes.Act)?.act?.contains(part) == true }?.title
            ?: throw AssertionError("nothing leads to $part from ${phone.shown.kind}: ${phone.shown.tappable.map { it.second }}"),
    )

    @Test fun everyPlaceIsComeBackToWithNothingLost() {
        endsAndComesBack("welcome")
        phone.tap("English")
        endsAndComesBack("fields")
        to("start_field")
        endsAndComesBack("start_field")
        phone.back()
        to("own")
        endsAndComesBack("own")
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "lapwing_ground.notes.json").path)
        phone.settle()
        field = phone.shown.field
        endsAndComesBack("field")
        for (place in listOf("outline", "hand_over", "show")) {
            to(place)
            endsAndComesBack(place)
            phone.back()
        }
        machines()
        behindTheMachine()
        aPit()
        withANeighbour()
        println("restart: $ends times, at ${places.size} places of ${kinds.size} kinds of screen: $places")
        assertEquals("every kind of screen", ScreenKind.entries.toSet(), kinds)
    }

    /** What the same field became on somebody else's phone comes back, and differs from what it is here. */
    private fun withANeighbour() {
        while (phone.shown.kind != ScreenKind.FIELDS) phone.back()
        to("partners")
        endsAndComesBack("partners")
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
        endsAndComesBack("partner")
        phone.tap(phone.shown.next)
        row("{\"go\":{\"versions\"")
        endsAndComesBack("versions")
    }

    private fun machines() {
        to("machine")
        endsAndComesBack("machine")
        row("{\"go\":{\"machine\"")
        endsAndComesBack("machine machine")
        to("measures")
        endsAndComesBack("measures machine")
        phone.back()
        phone.back()
        phone.tap(phone.shown.next)
        endsAndComesBack("new_machine")
        phone.tap(phone.shown.buttons.first { it.leads("\"legs\":3") })
        endsAndComesBack("new_machine legs")
        phone.back()
        phone.back()
        assertEquals(ScreenKind.FIELD, phone.shown.kind)
    }

    private fun behindTheMachine() {
        to("pass")
        endsAndComesBack("pass")
        row("{\"go\":{\"pass\"")
        endsAndComesBack("pass pass")
        phone.tap(phone.shown.next)
        endsAndComesBack("after_dig pass dig")
        phone.tap(phone.shown.buttons.last { it.leads("\"read\"") })
        endsAndComesBack("after_dig pass dig")
        repeat(3) { phone.back() }
    }

    private fun aPit() {
        phone.tap("Dig a pit")
        endsAndComesBack("start_pit")
        phone.tap("Wheeling")
        endsAndComesBack("start_pit pit")
        to("on_plan")
        endsAndComesBack("on_plan pit")
        phone.back()
        phone.tap("The hole is dug")
        endsAndComesBack("knife_walk pit")
        listOf("Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above").forEach(phone::tap)
        endsAndComesBack("knife_walk pit")
        phone.tap("Bottom of the hole")
        endsAndComesBack("next_look pit")
        phone.tap("Not looked")
        endsAndComesBack("next_look pit")
        to("layers")
        endsAndComesBack("layers pit")
        row("\"layer\":1")
        endsAndComesBack("layers pit layer")
        row("\"clue\":\"")
        endsAndComesBack("layers pit layer clue")
        repeat(3) { phone.back() }
        to("roll")
        endsAndComesBack("roll pit")
        to("call")
        endsAndComesBack("call pit")
        to("photos")
        endsAndComesBack("photos pit")
        phone.back()
        to("show")
        endsAndComesBack("show pit")
        assertTrue(phone.shown.kind == ScreenKind.SHOW)
    }
}
