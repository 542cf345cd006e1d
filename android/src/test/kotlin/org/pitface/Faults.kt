package org.pitface

import android.graphics.Bitmap
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.isSpecified
import androidx.compose.ui.graphics.luminance
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.text.style.Hyphens
import org.pitface.core.ScreenKind
import org.pitface.core.ShownButton
import org.pitface.core.ShownScreen
import org.pitface.screens.ANSWER
import org.pitface.screens.NEXT
import org.pitface.screens.TITLE
import org.pitface.screens.TOOL
import org.pitface.screens.TOUCH
import kotlin.math.abs
import kotlin.math.roundToInt

/** Contrast ratio of WCAG 2.2, 1 to 21. */
internal fun contrast(one: Color, other: Color): Float {
    val (dark, light) = listOf(one.luminance(), other.luminance()).sorted()
    return (light + 0.05f) / (dark + 0.05f)
}

internal val SemanticsNode.words
    get() = (config.getOrNull(SemanticsProperties.ContentDescription).orEmpty() + config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }).joinToString(" ")

/** What is wrong with a screen as it was laid out and painted; a pixel is a dp. */
internal class Faults(private val screen: ShownScreen, private val look: Look, nodes: List<SemanticsNode>, private val painted: Bitmap) {
    /** Without places on pictures, which may be small: each has a button that does the same. */
    private val clickable = nodes.filter { SemanticsActions.OnClick in it.config && it.tag != TOUCH }
    private val answer = nodes.filter { it.tag == ANSWER }
    private val nexts = nodes.filter { it.tag == NEXT }
    private val tools = nodes.filter { it.tag == TOOL }
    private val SemanticsNode.tag get() = config.getOrNull(SemanticsProperties.TestTag)
    private val texts = nodes.filter { SemanticsActions.GetTextLayoutResult in it.config }
    private val scrolled = nodes.filter { SemanticsProperties.VerticalScrollAxisRange in it.config }

    fun all(): List<String> = clickable.flatMap(::tapped) + next() + inSight() + texts.flatMap { node -> node.layouts().flatMap { cut(node, it) + faint(node, it) } } +
        overlapping(clickable, "taps") + overlapping(texts, "words") + texts.filter { screen.kind != ScreenKind.SHOW }.flatMap(::outside) + scrolled.mapNotNull(::narrow)

    private fun SemanticsNode.whole() = Rect(positionInRoot, Size(size.width.toFloat(), size.height.toFloat()))

    private fun SemanticsNode.merged(): String = words.ifBlank { children.joinToString(" ") { it.merged() } }.trim()

    private fun tapped(node: SemanticsNode) = listOfNotNull(
        "nothing names what is tapped at ${node.boundsInRoot}".takeIf { node.merged().isBlank() },
        "\"${node.merged()}\" is ${node.size}".takeIf { node.size.width < 48 || node.size.height < 48 },
        "\"${node.merged()}\" is wider than the screen".takeIf { node.whole().left < 0 || node.whole().right > look.width },
    )

    /** The next step is large, and where the thumb is. */
    private fun next(): List<String> {
        val next = screen.next ?: return emptyList()
        val node = nexts.firstOrNull() ?: return listOf("the next step \"${next.label}\" is not there")
        return listOfNotNull(
            "the next step is ${node.size}".takeIf { node.size.width < 64 || node.size.height < 56 },
            "the next step is at ${node.boundsInRoot}".takeIf { node.boundsInRoot.center.y < look.height / 2f },
        )
    }

    private fun SemanticsNode.wholeInSight() = seen().let {
        it.height + 1 >= size.height && it.width + 1 >= size.width && it.top >= -1 && it.left >= -1 && it.right <= look.width + 1 && it.bottom <= look.height + 1
    }

    /** What is never below the fold: the answer, every answer of the questions with their questions, the next step, the tools. */
    private fun inSight(): List<String> {
        if (screen.kind == ScreenKind.SHOW) return unseen(answer, listOfNotNull(screen.answer?.text), "the answer")
        val questions = screen.questions
        val asked = questions.map { it.text }.filter { it.isNotEmpty() }
        val first = unseen(answer, listOfNotNull(screen.answer?.text), "the answer") + unseen(texts, if (look.sees) asked else asked.take(1), "the question")
        if (!look.sees) return first
        return first + unseen(clickable, questions.flatMap { it.answers }.map { it.named() }, "an answer") +
            unseen(nexts, listOfNotNull(screen.next?.named()), "the next step") + unseen(tools, screen.tools.map { it.named() }, "a tool")
    }

    private fun ShownButton.named() = spoken.ifEmpty { listOf(label, note).filter { it.isNotEmpty() }.joinToString(" ") }

    private fun unseen(nodes: List<SemanticsNode>, wanted: List<String>, what: String): List<String> {
        val seen = nodes.filter { it.wholeInSight() }.map { it.merged() }
        return wanted.groupingBy { it }.eachCount().filter { (name, times) -> seen.count { it == name } < times }.keys.map { "$OUT_OF_SIGHT$what: \"$it\"" }
    }

    /** `hasVisualOverflow` counts the room a short line leaves free; what matters is whether a letter is outside. */
    private fun cut(node: SemanticsNode, laid: TextLayoutResult): List<String> {
        val text = laid.layoutInput.text.text
        val outside = laid.didOverflowHeight || laid.multiParagraph.didExceedMaxLines || node.size.height + 1 < laid.multiParagraph.height ||
            (0 until laid.lineCount).any { laid.getLineRight(it) - laid.getLineLeft(it) > node.size.width + 1 }
        val neverParted = laid.layoutInput.style.hyphens == Hyphens.None // letters of buttons
        val broken = (0 until laid.lineCount - 1).map { laid.getLineEnd(it) }.firstOrNull { it in 1 until text.length && text[it - 1].isLetter() && text[it].isLetter() }
        return listOfNotNull(
            "cut off: \"$text\"".takeIf { outside && node.tag != TITLE },
            broken?.takeIf { neverParted }?.let { "broken inside a word: \"${text.take(it)}|${text.drop(it)}\"" },
        )
    }

    /** Words stay inside what is tapped to mean them, and on the screen. */
    private fun outside(node: SemanticsNode): List<String> {
        val own = node.whole()
        val around = generateSequence(node.parent) { it.parent }.firstOrNull { SemanticsActions.OnClick in it.config }
            ?.takeIf { SemanticsActions.SetText !in it.config } // the name of what is typed stands on its edge
            ?.whole()
        return listOfNotNull(
            "\"${node.words}\" leaves its button".takeIf { around != null && !(own.left >= around.left - 1 && own.right <= around.right + 1 && own.top >= around.top - 1 && own.bottom <= around.bottom + 1) },
            "\"${node.words}\" leaves the screen".takeIf { own.left < 0 || own.right > look.width + 1 },
        )
    }

    /** Questions that hold at the upper edge of what scrolls while their answers go on behind them. */
    private val held = texts.filter { text ->
        val around = generateSequence(text.parent) { it.parent }.firstOrNull { above -> scrolled.any { it.id == above.id } }
        SemanticsProperties.Heading in text.config && around != null && abs(text.boundsInRoot.top - around.boundsInRoot.top) <= MARGIN
    }

    /** What is in sight of it. */
    private fun SemanticsNode.seen(): Rect {
        val place = boundsInRoot
        val over = held.filter { it.id != id && it.boundsInRoot.overlaps(place) }.maxOfOrNull { it.boundsInRoot.bottom } ?: return place
        return place.copy(top = over.coerceIn(place.top, place.bottom))
    }

    /** Of what is in sight. */
    private fun overlapping(nodes: List<SemanticsNode>, what: String): List<String> {
        val seen = nodes.map { it to it.seen() }.filter { it.second.width > 1 && it.second.height > 1 }
        return seen.flatMapIndexed { index, (one, place) ->
            seen.drop(index + 1).filter { (other, second) ->
                val common = place.intersect(second)
                common.width > 1 && common.height > 1 && one.id !in other.above() && other.id !in one.above()
            }.map { (other, _) -> "$what overlap: \"${one.merged()}\" and \"${other.merged()}\"" }
        }
    }

    private fun SemanticsNode.above() = generateSequence(parent) { it.parent }.map { it.id }.toSet()

    /** What scrolls has room enough to see something in it. */
    private fun narrow(node: SemanticsNode): String? {
        val range = node.config[SemanticsProperties.VerticalScrollAxisRange]
        return "what scrolls is seen through ${node.size.height} dp".takeIf { range.maxValue() > 0 && node.size.height < LEAST_SEEN }
    }

    /** The colour of the letters against what most of their place is painted in. */
    private fun faint(node: SemanticsNode, laid: TextLayoutResult): List<String> {
        val ground = ground(node.seen()) ?: return emptyList()
        val ink = laid.layoutInput.style.color
        if (!ink.isSpecified) return listOf("\"${node.words}\" has no colour of its own")
        val found = contrast(ink, ground)
        return listOfNotNull("\"${node.words}\" stands at ${(found * 10).roundToInt() / 10.0} : 1".takeIf { found < 7 })
    }

    private fun ground(place: Rect): Color? {
        val (left, top) = place.left.roundToInt().coerceAtLeast(0) to place.top.roundToInt().coerceAtLeast(0)
        val (width, height) = place.right.roundToInt().coerceAtMost(painted.width) - left to place.bottom.roundToInt().coerceAtMost(painted.height) - top
        if (width < 2 || height < 4) return null // out of sight
        val pixels = IntArray(width * height).also { painted.getPixels(it, 0, width, left, top, width, height) }
        return pixels.toList().groupingBy { it }.eachCount().maxBy { it.value }.let { Color(it.key) }
    }

    private fun SemanticsNode.layouts() = mutableListOf<TextLayoutResult>().also { config[SemanticsActions.GetTextLayoutResult].action?.invoke(it) }

    companion object {
        /** What a fault of rank begins with. */
        const val OUT_OF_SIGHT = "out of sight, "
        /** Nearly two lines of the largest letters, dp. */
        private const val LEAST_SEEN = 80

        /** Above a question, dp. */
        private const val MARGIN = 5
    }
}
