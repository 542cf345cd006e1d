package org.pitface

import android.content.ComponentName
import androidx.activity.ComponentActivity
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasSetTextAction
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
import org.pitface.core.ShownDoes
import org.pitface.core.ShownDoing
import org.pitface.core.ShownScreen
import org.pitface.core.Size
import org.pitface.screens.Doer
import org.pitface.screens.Earth
import org.pitface.screens.ScreenView
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Every kind of thing to be tapped is as high as a wet thumb needs it, on every kind of screen of the real core. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w1000dp-h1000dp-mdpi")
class HeightsTest {
    @get:Rule(order = 0) val window = TestRule { test, _ ->
        object : Statement() {
            override fun evaluate() {
                shadowOf(process.packageManager).addActivityIfNotPresent(ComponentName(process, ComponentActivity::class.java))
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 1) val rule = createComposeRule()

    private var at: Pair<ShownScreen, Pair<Int, Int>>? by mutableStateOf(null)
    private val nobody = object : Doer {
        override fun does(what: ShownDoes) = Unit
        override fun typed(act: String, text: String) = Unit
        override fun enter() = Unit
    }

    private class Wanted(val what: String, val words: String, val heightDp: Int)

    private fun Size.wanted() = when (this) {
        Size.SMALL -> 48
        Size.USUAL -> 64
        Size.LARGE -> 72
    }

    /** In the order in which they stand: rows, buttons, bar. */
    private fun ShownScreen.wanted(): List<Wanted> {
        val bar = if (leftHanded) listOf(back, main, undo) else listOf(undo, main, back)
        return rows.map { Wanted("row", it.title, 64) } +
            doing.filterIsInstance<ShownDoing.Choices>().flatMap { it.buttons }.map { Wanted("button ${it.size}", it.label, it.size.wanted()) } +
            bar.filterNotNull().map { Wanted(if (it == main) "main" else "bar", it.label, maxOf(64, it.size.wanted())) }
    }

    private fun SemanticsNode.words() = config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }

    @Test fun everythingToBeTappedIsHighEnough() {
        rule.setContent {
            val (screen, size) = at ?: return@setContent
            CompositionLocalProvider(LocalDensity provides Density(1f, 1f)) {
                key(screen, size) { Earth(false) { Box(Modifier.requiredSize(size.first.dp, size.second.dp)) { ScreenView(screen, nobody) } } }
            }
        }
        val screens = (Samples.all(german = false, left = false) + (Tour.screens("en") + Walk.screens("en")).groupBy { it.kind }.values.map { kind -> kind.maxBy { it.toString().length } })
            .filter { it.kind != ScreenKind.SHOW } // all of it is one thing to be tapped
        val least = sortedMapOf<String, Int>()
        val faults = sortedSetOf<String>()
        for (screen in screens) for (left in listOf(false, true)) for (size in listOf(360 to 640, 411 to 891, 891 to 411)) {
            val here = screen.copy(leftHanded = left)
            at = here to size
            rule.waitForIdle()
            val found = rule.onAllNodes(hasClickAction() and !hasSetTextAction()).fetchSemanticsNodes()
            val wanted = here.wanted()
            assertEquals("${screen.kind}: all that can be tapped is known", wanted.map { it.words }.sorted(), found.map { it.words().first() }.sorted())
            for ((words, those) in wanted.groupBy { it.words }) {
                // The same words twice on a screen: each is held to its own height, smallest to smallest.
                val heights = found.filter { it.words().first() == words }.map { it.size.height }.sorted()
                for ((one, height) in those.sortedBy { it.heightDp }.zip(heights)) {
                    least.merge(one.what, height, ::minOf)
                    if (height < one.heightDp) faults += "${screen.kind} $size: ${one.what} \"${one.words}\" is $height dp high, not ${one.heightDp}"
                }
            }
        }
        println("sweep: least heights in dp, of ${screens.size} screens at three sizes for either hand: $least")
        assertTrue(faults.joinToString("\n"), faults.isEmpty())
        assertTrue("$least", least.keys.containsAll(listOf("row", "button USUAL", "button LARGE", "button SMALL", "main", "bar")))
    }
}
