package org.pitface

import android.content.ComponentName
import android.content.res.Configuration
import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import androidx.activity.ComponentActivity
import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.LocalView
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.junit4.v2.createComposeRule
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TestRule
import org.junit.runner.RunWith
import org.junit.runners.model.Statement
import org.pitface.core.ScreenKind
import org.pitface.core.ShownScreen
import org.pitface.platform.resource
import org.pitface.screens.Above
import org.pitface.screens.Earth
import org.pitface.screens.ScreenView
import org.pitface.state.Phrase
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File
import java.util.Locale

/**
 * Every kind of screen on every device, at every size of letters, by day and in the dark, in both languages, for either
 * hand: everything to be tapped is large and named, no letter is cut off, faint or painted over.
 */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w1300dp-h1300dp-mdpi")
class SweepTest {
    /** A window for nothing but what is looked at; the app's own manifest has none. */
    @get:Rule(order = 0) val window = TestRule { test, _ ->
        object : Statement() {
            override fun evaluate() {
                val name = ComponentName(process, ComponentActivity::class.java)
                shadowOf(process.packageManager).addActivityIfNotPresent(name)
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 1) val rule = createComposeRule()

    private var at: Pair<Look, ShownScreen>? by mutableStateOf(null)
    private var said: Pair<String, String?>? by mutableStateOf(null)
    private lateinit var view: View
    private val found = sortedMapOf<String, MutableList<Look>>()
    private var looks = 0

    private val nobody = Nobody()

    /** Looks at a kind in which all of rank is in sight, of all. */
    private val whole = sortedMapOf<ScreenKind, Pair<Int, Int>>()

    private fun show(content: @Composable (ShownScreen) -> Unit = { screen -> Above(said?.first, said?.second, {}) { ScreenView(screen, nobody, it) } }) = rule.setContent {
        view = LocalView.current
        val (look, screen) = at ?: return@setContent
        CompositionLocalProvider(LocalDensity provides Density(1f, look.font)) {
            Box(contentAlignment = Alignment.TopStart) {
                key(look, screen) {
                    Earth(look.dark) {
                        Box(Modifier.requiredSize(look.width.dp, look.height.dp).background(MaterialTheme.colorScheme.background)) { content(screen) }
                    }
                }
            }
        }
    }

    private fun look(screen: ShownScreen, look: Look, picture: String? = null) {
        val here = screen.copy(leftHanded = look.left)
        at = look to here
        rule.waitForIdle()
        looks++
        val painted = Bitmap.createBitmap(look.width, look.height, Bitmap.Config.ARGB_8888)
        rule.runOnUiThread { view.draw(Canvas(painted)) }
        val nodes = rule.onAllNodes(SemanticsMatcher("any") { true }, useUnmergedTree = true).fetchSemanticsNodes()
        val faults = Faults(here, look, nodes, painted).all()
        faults.forEach { found.getOrPut("${screen.kind}: $it", ::mutableListOf) += look }
        val seen = if (faults.none { it.startsWith(Faults.OUT_OF_SIGHT) }) 1 else 0
        whole.merge(screen.kind, seen to 1) { (one, all), (other, more) -> one + other to all + more }
        picture?.let { name ->
            val file = File(System.getProperty("shots.dir"), "sweep/$name.png").apply { parentFile.mkdirs() }
            file.outputStream().use { painted.compress(Bitmap.CompressFormat.PNG, 100, it) }
        }
    }

    private fun ended(what: String) {
        println("sweep: $looks looks at $what")
        println("sweep: of these with all of rank in sight: " + whole.map { (kind, looks) -> "${kind.name.lowercase()} ${looks.first} of ${looks.second}" }.joinToString())
        assertTrue(found.map { (fault, looks) -> "$fault (in ${looks.size}, the first: ${looks.first()})" }.joinToString("\n", "${found.size} faults\n"), found.isEmpty())
    }

    /** The fullest of each kind, as both the tour and the walk met it. */
    private fun fullest(language: String) = (Tour.screens(language) + Walk.screens(language)).groupBy { it.kind }
        .mapValues { (_, those) -> those.maxBy { it.toString().length } }

    @Test fun everyKindOfScreenInEveryLook() {
        val screens = mapOf("en" to fullest("en"), "de" to fullest("de"))
        screens.forEach { (language, those) -> assertEquals(language, ScreenKind.entries.toSet(), those.keys) }
        show()
        for (look in Look.all) for ((kind, screen) in screens.getValue(look.language)) {
            look(screen, look, "${kind.name.lowercase()}-$look".replace(' ', '-').takeIf { look in Look.pictured })
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
        val phrases = Phrase.entries - Phrase.SETTINGS
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
