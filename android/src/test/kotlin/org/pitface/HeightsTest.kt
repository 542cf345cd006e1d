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
import androidx.compose.ui.test.hasTestTag
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
import org.pitface.core.ShownBlock
import org.pitface.core.ShownScreen
import org.pitface.screens.Earth
import org.pitface.screens.ScreenView
import org.pitface.screens.TOUCH
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
    private val nobody = Nobody()

    private class Wanted(val what: String, val words: String, val heightDp: Int)

    /** All that can be tapped, at its least height: an answer has more where there is room for all of them. */
    private fun ShownScreen.wanted(low: Boolean): List<Wanted> =
        rows.map { Wanted("way", it.title, 64) } + questions.flatMap { it.answers }.map { Wanted("answer", it.label, 48) } +
            blocks.filterIsInstance<ShownBlock.Photos>().flatMap { it.photos }.map { Wanted("photo", it.label, 64) } +
            listOfNotNull(back?.let { Wanted("sign", it.label, 48) }, next?.let { Wanted("next step", it.label, 56) }) +
            tools.map { Wanted("tool", it.label, if (low) 48 else 64) } +
            listOf("menu").filter { menu.isNotEmpty() }.map { Wanted("sign", it, 48) } + listOf(moreLabel).filter { it.isNotEmpty() }.map { Wanted("way", it, 64) } +
            pictures.filter { it.zooms }.flatMap { listOf("larger", "smaller") }.map { Wanted("sign", it, 48) }

    private fun SemanticsNode.words() = config.getOrNull(SemanticsProperties.Text)?.map { it.text } ?: config[SemanticsProperties.ContentDescription]

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
            val found = rule.onAllNodes(hasClickAction() and !hasSetTextAction() and !hasTestTag(TOUCH)).fetchSemanticsNodes()
            val wanted = here.wanted(low = size.second < 420)
            val (known, met) = wanted.map { it.words }.sorted() to found.map { it.words().first() }.sorted()
            assertEquals("${screen.kind} $size: all that can be tapped is known", known - Zooming, met - Zooming) // a low picture cannot be made larger
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
        assertTrue("$least", least.keys.containsAll(listOf("way", "answer", "photo", "sign", "next step", "tool")))
    }

    private companion object {
        val Zooming = setOf("larger", "smaller")
    }
}
