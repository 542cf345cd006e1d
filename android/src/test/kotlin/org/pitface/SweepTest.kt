package org.pitface

import android.content.ComponentName
import android.graphics.Bitmap
import androidx.activity.ComponentActivity
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.asAndroidBitmap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.junit4.v2.createComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.text.style.Hyphens
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
import org.pitface.core.ShownScreen
import org.pitface.screens.Doer
import org.pitface.screens.Earth
import org.pitface.screens.ScreenView
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File

/** One way of looking at a screen. */
data class View(val name: String, val width: Int, val height: Int, val font: Float, val dark: Boolean) {
    val pictured get() = (name == "phone" && font != 1.5f) || (name == "small" && font == 2f) || (name == "land" && font == 1f)
}

/** Day and dark change no size, so each size and font is looked at in one of them. Every screen at every size, font, hand and language: everything to be tapped is large and named, no letter is cut off. */
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

    private var at: Pair<View, ShownScreen>? by mutableStateOf(null)
    private val nobody = object : Doer {
        override fun does(what: ShownDoes) = Unit
        override fun typed(act: String, text: String) = Unit
        override fun enter() = Unit
    }

    private val views = listOf("small" to (360 to 640), "phone" to (411 to 891), "tablet" to (800 to 1280), "land" to (891 to 411)).flatMap { (name, size) ->
        listOf(1f, 1.5f, 2f).map { font -> View(name, size.first, size.second, font, dark = (font == 2f) != (name == "small")) }
    }

    private fun show() = rule.setContent {
        val (view, screen) = at ?: return@setContent
        CompositionLocalProvider(LocalDensity provides Density(1f, view.font)) {
            Box(contentAlignment = Alignment.TopStart) {
                key(view, screen) {
                    Earth(view.dark) { Box(Modifier.requiredSize(view.width.dp, view.height.dp).testTag("whole")) { ScreenView(screen, nobody) } }
                }
            }
        }
    }

    @Test fun everyScreenFits() {
        show()
        val faults = sortedSetOf<String>()
        var looked = 0
        for (german in listOf(false, true)) for (left in listOf(false, true)) for (screen in screens(german, left)) for (view in views) {
            at = view to screen
            rule.waitForIdle()
            looked++
            faults += faults(view).map { "${screen.kind} ${screen.language} ${view.name} ${view.font}: $it" }
            if (left == german && view.pictured) picture("${screen.kind.name.lowercase()}-${screen.language}-${view.name}-${view.font}")
        }
        println("sweep: $looked looks")
        assertTrue(faults.joinToString("\n", "${faults.size} faults\n"), faults.isEmpty())
    }

    private fun screens(german: Boolean, left: Boolean) = Samples.all(german, left) + if (left == german) walked(german).map { it.copy(leftHanded = left) } else emptyList()

    /** Of the real screens, the fullest of each kind. */
    private fun walked(german: Boolean): List<ShownScreen> {
        val found = Walk.screens(if (german) "de" else "en")
        return found.groupBy { it.kind }.values.map { kind -> kind.maxBy { it.toString().length } }
    }

    private fun faults(view: View): List<String> {
        val named = rule.onAllNodes(hasClickAction()).fetchSemanticsNodes().flatMap { node ->
            listOfNotNull(
                "nothing names ${node.boundsInRoot}".takeIf { node.words().isBlank() },
                "${node.words()} is ${node.size}".takeIf { node.size.width < 48 || node.size.height < 48 },
                "${node.words()} is wider than the screen".takeIf { node.positionInRoot.x < 0 || node.positionInRoot.x + node.size.width > view.width },
            )
        }
        val texts = rule.onAllNodes(SemanticsMatcher("text") { SemanticsActions.GetTextLayoutResult in it.config }, useUnmergedTree = true).fetchSemanticsNodes()
        return named + texts.flatMap { node -> node.layouts().flatMap { laid -> cut(node, laid) } }
    }

    /** `hasVisualOverflow` counts the room a short line leaves free; what matters is whether a letter is outside. */
    private fun cut(node: SemanticsNode, laid: TextLayoutResult): List<String> {
        val text = laid.layoutInput.text.text
        val outside = laid.didOverflowHeight || laid.multiParagraph.didExceedMaxLines || node.size.height + 1 < laid.multiParagraph.height ||
            (0 until laid.lineCount).any { laid.getLineRight(it) - laid.getLineLeft(it) > node.size.width + 1 }
        val neverParted = laid.layoutInput.style.hyphens == Hyphens.None // letters of buttons
        val broken = (0 until laid.lineCount - 1).map { laid.getLineEnd(it) }.firstOrNull { it in 1 until text.length && text[it - 1].isLetter() && text[it].isLetter() }
        return listOfNotNull(
            "cut off: $text".takeIf { outside },
            broken?.takeIf { neverParted }?.let { "broken inside a word: ${text.take(it)}|${text.drop(it)}" },
        )
    }

    private fun SemanticsNode.words() = (config.getOrNull(SemanticsProperties.ContentDescription).orEmpty() + config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }).joinToString(" ")

    private fun SemanticsNode.layouts() = mutableListOf<TextLayoutResult>().also { config[SemanticsActions.GetTextLayoutResult].action?.invoke(it) }

    private fun picture(name: String) {
        val file = File(System.getProperty("shots.dir"), "sweep/$name.png").apply { parentFile.mkdirs() }
        val bitmap = rule.onNodeWithTag("whole").captureToImage().asAndroidBitmap()
        file.outputStream().use { bitmap.compress(Bitmap.CompressFormat.PNG, 100, it) }
    }
}
