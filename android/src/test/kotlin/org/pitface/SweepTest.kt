package org.pitface

import android.content.res.Configuration
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.unit.dp
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownScreen
import org.pitface.platform.resource
import org.pitface.state.Phrase
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.util.Locale

/**
 * Every kind of screen on every device, at every size of letters, by day and in the dark, in both languages, for either
 * hand: what is of rank is in sight, everything to be tapped is large and named, no letter is cut off, faint or painted over.
 */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w1300dp-h1300dp-mdpi")
internal class SweepTest : Looking() {
    private val found = sortedMapOf<String, MutableList<Look>>()
    private var looks = 0

    /** Looks at a kind in which all of rank is in sight, of all. */
    private val whole = sortedMapOf<ScreenKind, Pair<Int, Int>>()

    private fun look(screen: ShownScreen, look: Look) {
        val here = screen.copy(leftHanded = look.left)
        val painted = painted(here, look)
        looks++
        val nodes = rule.onAllNodes(SemanticsMatcher("any") { true }, useUnmergedTree = true).fetchSemanticsNodes()
        val faults = Faults(here, look, nodes, painted).all()
        if (faults.any { "${screen.kind}: $it" !in found }) painted.written("fault-${screen.kind}-$look".replace(' ', '-'))
        faults.forEach { found.getOrPut("${screen.kind}: $it", ::mutableListOf) += look }
        val seen = if (faults.none { it.startsWith(Faults.OUT_OF_SIGHT) }) 1 else 0
        whole.merge(screen.kind, seen to 1) { (one, all), (other, more) -> one + other to all + more }
    }

    private fun ended(what: String) {
        println("sweep: $looks looks at $what")
        println("sweep: of these with all of rank in sight: " + whole.map { (kind, looks) -> "${kind.name.lowercase()} ${looks.first} of ${looks.second}" }.joinToString())
        assertTrue(found.map { (fault, looks) -> "$fault (in ${looks.size}, the first: ${looks.first()})" }.joinToString("\n", "${found.size} faults\n"), found.isEmpty())
    }

    @Test fun everyKindOfScreenInEveryLook() {
        val screens = mapOf("en" to fullest("en"), "de" to fullest("de"))
        screens.forEach { (language, those) -> assertEquals(language, ScreenKind.entries.toSet(), those.keys) }
        show()
        for (look in Look.all) for (screen in screens.getValue(look.language).values) {
            look(screen, look)
        }
        ended("the fullest of each of ${screens.getValue("en").size} kinds of screen, every one in all ${Look.all.size} looks")
    }

    /** Made-up screens of long words, and what else the tour meets, each in a dozen looks that take turns. */
    @Test fun everyOtherScreenInTurn() {
        val others = listOf("en", "de").associateWith { Tour.screens(it) + Samples.all(it == "de", left = false) }
        show()
        val different = others.getValue("en").withIndex().distinctBy { (_, one) -> listOf(one.kind, one.title, one.blocks.size, one.buttons.map { it.label }, one.told) }
        different.forEachIndexed { turn, (place, _) -> Look.inTurn(turn).forEach { look(others.getValue(it.language)[place], it) } }
        ended("${different.size} further screens, each in ${Look.layouts.size} looks by turns")
    }

    @Test fun everyPhraseOfTheShellAboveAScreen() {
        val screens = listOf("en", "de").associateWith { language -> Tour.screens(language).last { it.kind == ScreenKind.START_PIT } }
        val phrases = Phrase.entries - setOf(Phrase.SETTINGS, Phrase.MENU, Phrase.LARGER, Phrase.SMALLER)
        show()
        phrases.forEachIndexed { turn, phrase ->
            for (look in Look.inTurn(turn)) {
                val words = process.createConfigurationContext(Configuration().apply { setLocale(Locale.forLanguageTag(look.language)) })
                said = words.getString(phrase.resource()) to if (phrase.leadsToSettings) words.getString(Phrase.SETTINGS.resource()) else null
                look(screens.getValue(look.language), look)
            }
        }
        ended("${phrases.size} sentences of the shell above a screen")
    }

    /** What finds nothing is to find something where something is wrong. */
    @Test fun whatIsWrongIsFound() {
        show {
            Column {
                Text("as faint as dust", color = Color(0xFF8A7A60))
                Box(Modifier.size(20.dp).clickable {})
                Box(Modifier.height(30.dp)) {
                    Text("one word", color = MaterialTheme.colorScheme.onBackground)
                    Text("and one above it", color = MaterialTheme.colorScheme.onBackground)
                }
                Text("of these words only half a line", Modifier.height(9.dp), color = MaterialTheme.colorScheme.onBackground)
                Box(Modifier.width(60.dp).height(50.dp).clickable {}) {
                    Text("Unterbodenlockerungsgerät", Modifier.requiredSize(200.dp, 40.dp), color = MaterialTheme.colorScheme.onBackground)
                }
            }
        }
        look(Samples.all(german = false, left = false).first(), Look.all.first())
        for (wanted in listOf("nothing names", "is 20 x 20", "stands at", "words overlap", "cut off", "leaves its button", "the next step \"Start a field\" is not there", "out of sight, the answer", "out of sight, a tool")) {
            assertTrue("$wanted, in ${found.keys}", found.keys.any { wanted in it })
        }
    }
}
