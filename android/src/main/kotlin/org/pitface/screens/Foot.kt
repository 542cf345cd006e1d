package org.pitface.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.HorizontalDivider
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.max
import org.pitface.core.ShownButton
import org.pitface.core.ShownScreen

/** What was told of the last tap, and what to heed. */
@Composable
internal fun Read(shown: ShownScreen) {
    if (shown.told.isNotEmpty()) Told(shown.told)
    if (shown.caution.isNotEmpty() && shown.caution != shown.told) Caution(shown.caution)
}

/** How high [Read] is. */
internal fun Letters.readHeight(shown: ShownScreen, width: Dp): Dp {
    val told = if (shown.told.isEmpty()) 0.dp else height(shown.told, type.bodySmall, width - Edge * 2) + 8.dp
    return told + if (shown.caution.isEmpty() || shown.caution == shown.told) 0.dp else height(shown.caution, type.bodyMedium, width - Edge * 2 - 12.dp) + 8.dp
}

@Composable
private fun Told(told: String) = Text(
    told,
    Modifier.fillMaxWidth().background(MaterialTheme.colorScheme.surfaceVariant).padding(horizontal = Edge, vertical = 4.dp)
        .testTag("told").semantics { liveRegion = LiveRegionMode.Polite },
    style = MaterialTheme.typography.bodySmall, color = MaterialTheme.colorScheme.onSurface,
)

/** A thick stroke before it tells it from all other lines. */
@Composable
private fun Caution(caution: String) {
    val ink = MaterialTheme.colorScheme.onBackground
    Text(
        caution,
        Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = 4.dp).drawBehind {
            val half = 2.dp.toPx()
            drawLine(ink, Offset(half, half), Offset(half, size.height - half), half * 2, StrokeCap.Round)
        }.padding(start = 12.dp),
        style = MaterialTheme.typography.bodyMedium, color = ink,
    )
}

/** The one thing worth doing now: filled and wide. */
@Composable
internal fun Next(next: ShownButton, doer: Doer, width: Dp, low: Boolean = false) {
    val letters = letters()
    val scheme = MaterialTheme.colorScheme
    val ink = if (next.enabled) scheme.onPrimary else scheme.tertiary
    val ground = if (next.enabled) scheme.primary else scheme.background
    val fit = letters.fit(next, width, low)
    Surface(
        onClick = { doer.does(next.does) },
        modifier = Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = 4.dp).heightIn(min = 56.dp).testTag(NEXT).semantics {
            role = Role.Button
            if (next.spoken.isNotEmpty()) contentDescription = next.spoken
        },
        enabled = next.enabled, shape = RoundedCornerShape(28.dp), color = ground, contentColor = ink,
    ) {
        Row(Modifier.padding(horizontal = Edge, vertical = 6.dp), Arrangement.spacedBy(Gap, Alignment.CenterHorizontally), Alignment.CenterVertically) {
            next.drawing?.let { Painted(it, 24.dp, ground = ground, ink = ink) }
            Column(horizontalAlignment = Alignment.CenterHorizontally) {
                Text(next.label, style = letters.type.titleMedium * fit, textAlign = TextAlign.Center)
                if (next.note.isNotEmpty()) Text(next.note, style = letters.type.labelMedium * fit, textAlign = TextAlign.Center)
            }
        }
    }
}

/** What the next step is found by in tests. */
internal const val NEXT = "next"

private fun roomOn(next: ShownButton, width: Dp) = width - Edge * 4 - if (next.drawing == null) 0.dp else 32.dp

/** Where room is scarce, letters that the reader wants large come down to their usual size before they take a second line. */
private fun Letters.fit(next: ShownButton, width: Dp, low: Boolean): Float {
    val room = roomOn(next, width)
    val whole = fit(wordsOf(next.label, next.note), type.titleMedium, room)
    if (!low) return whole
    val usual = Smaller.filter { it in 1 / scale..whole }
    return usual.firstOrNull { lines(next.label, type.titleMedium * it, room) <= 1 } ?: usual.lastOrNull() ?: whole
}

/** How high [Next] is. */
internal fun Letters.nextHeight(next: ShownButton, width: Dp, low: Boolean): Dp {
    val (fit, room) = fit(next, width, low) to roomOn(next, width)
    val noted = if (next.note.isEmpty()) 0.dp else height(next.note, type.labelMedium * fit, room)
    return max(56.dp, height(next.label, type.titleMedium * fit, room) + noted + 12.dp) + 8.dp
}

/** Most tools in one line. */
private const val ABREAST = 5

/** The smallest share of their letters at which tools stand in one line rather than two; it is less on a low screen. */
private const val LEAST = 0.75f
private const val LEAST_LOW = 0.6f

/** Most lines of what stands under the word of a tool. */
private const val NOTE_LINES = 2

/** Tools in lines: how many abreast, how wide each, by how much their letters shrink, how high a line, whether notes are shown. */
internal class Shelf(val abreast: Int, val each: Dp, val fit: Float, val high: Dp, val noted: Boolean, val lines: Int) {
    val height get() = high * lines + 1.dp
}

internal fun Letters.shelf(tools: List<ShownButton>, width: Dp, low: Boolean): Shelf {
    val words = tools.flatMap { wordsOf(it.label) }
    val least = type.labelSmall * maxOf(if (low) LEAST_LOW else LEAST, 1 / scale).coerceAtMost(1f)
    val most = (ABREAST downTo 2).firstOrNull { widest(words, least) <= whole((width - Edge) / it) - 4.dp } ?: 2
    val lines = (tools.size + most - 1) / most
    val abreast = (tools.size + lines - 1) / lines
    val each = whole((width - Edge) / abreast)
    val room = each - 4.dp
    val fit = fit(words, type.labelSmall, room)
    val style = type.labelSmall * fit
    // A long note is left to whoever hears the tool, and to what is told once it was tapped.
    val noted = !low && tools.all { widest(wordsOf(it.note), style) <= room && lines(it.note, style, room) <= NOTE_LINES }
    val high = tools.maxOf { height(it.label, style, room) + if (noted && it.note.isNotEmpty()) height(it.note, style, room) + 2.dp else 0.dp }
    return Shelf(abreast, each, fit, max(if (low) 48.dp else 64.dp, high + (if (low) 20.dp + 4.dp else 24.dp + 8.dp) + 2.dp), noted, lines)
}

@Composable
internal fun Tools(shown: ShownScreen, doer: Doer, width: Dp, low: Boolean) {
    if (shown.tools.isEmpty()) return
    val shelf = letters().shelf(shown.tools, width, low)
    HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
    (if (shown.leftHanded) shown.tools.reversed() else shown.tools).chunked(shelf.abreast).forEach { line ->
        Row(Modifier.fillMaxWidth().padding(horizontal = Edge / 2).height(shelf.high)) {
            line.forEach { Tool(it, shelf, doer, low, Modifier.width(shelf.each).fillMaxHeight()) }
        }
    }
}

/** An icon over its word. */
@Composable
private fun Tool(tool: ShownButton, shelf: Shelf, doer: Doer, low: Boolean, modifier: Modifier) {
    val scheme = MaterialTheme.colorScheme
    val ground = if (tool.chosen) scheme.secondaryContainer else scheme.background
    val ink = if (tool.enabled) scheme.onBackground else scheme.tertiary
    Surface(
        onClick = { doer.does(tool.does) },
        modifier = modifier.testTag(TOOL).semantics {
            role = Role.Button
            if (tool.chosen) selected = true
            contentDescription = tool.spoken.ifEmpty { listOf(tool.label, tool.note).filter { it.isNotEmpty() }.joinToString(" ") }
        },
        enabled = tool.enabled, shape = RoundedCornerShape(12.dp), color = ground, contentColor = ink,
    ) {
        Column(
            Modifier.padding(horizontal = 2.dp, vertical = if (low) 2.dp else 4.dp),
            Arrangement.spacedBy(2.dp, Alignment.CenterVertically), Alignment.CenterHorizontally,
        ) {
            tool.drawing?.let { Painted(it, if (low) 20.dp else 24.dp, ground = ground, ink = ink) }
            val style = MaterialTheme.typography.labelSmall * shelf.fit
            Text(tool.label, style = style, textAlign = TextAlign.Center)
            if (shelf.noted && tool.note.isNotEmpty()) Text(tool.note, style = style, textAlign = TextAlign.Center)
        }
    }
}

/** What the tools are found by in tests. */
internal const val TOOL = "tool"

