package org.pitface.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.foundation.verticalScroll
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
import org.pitface.core.ShownButton
import org.pitface.core.ShownScreen

/** What was told of the last tap, what to heed, the next step, the tools; always in sight. */
@Composable
internal fun Foot(shown: ShownScreen, doer: Doer, width: Dp, height: Dp, low: Boolean = false) {
    Column(Modifier.fillMaxWidth()) {
        // Very large letters of what is only read do not push away what is tapped.
        Column(Modifier.heightIn(max = height * READ_SHARE).verticalScroll(rememberScrollState())) {
            if (shown.told.isNotEmpty()) Told(shown.told)
            if (shown.caution.isNotEmpty() && shown.caution != shown.told) Caution(shown.caution)
        }
        shown.next?.let { Next(it, doer, width) }
        if (shown.tools.isNotEmpty()) Tools(if (shown.leftHanded) shown.tools.reversed() else shown.tools, doer, width, low)
    }
}

private const val READ_SHARE = 0.2f

/** About how high the foot is, before it is laid out. */
internal fun Letters.footHeight(shown: ShownScreen, width: Dp): Dp {
    val read = listOf(shown.told to type.bodySmall, shown.caution to type.bodyMedium).filter { it.first.isNotEmpty() }.map { (text, style) -> height(text, style, width - Edge * 4) + Gap }
    val next = shown.next?.let { height(it.label, type.titleMedium, width - Edge * 6) + 42.dp } ?: 0.dp
    val tool = width / shown.tools.size.coerceIn(1, ABREAST) - Gap
    return read.fold(next, Dp::plus) + (shown.tools.maxOfOrNull { height(it.label, type.labelSmall, tool) + 28.dp } ?: 0.dp)
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
internal fun Next(next: ShownButton, doer: Doer, width: Dp) {
    val letters = letters()
    val scheme = MaterialTheme.colorScheme
    val ink = if (next.enabled) scheme.onPrimary else scheme.tertiary
    val ground = if (next.enabled) scheme.primary else scheme.background
    val room = width - Edge * 4 - if (next.drawing == null) 0.dp else 32.dp
    val fit = Smaller.firstOrNull { letters.widest(wordsOf(next.label, next.note), letters.type.titleMedium * it) <= room } ?: Smaller.last()
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

/** Most tools in one line. */
private const val ABREAST = 5

@Composable
private fun Tools(tools: List<ShownButton>, doer: Doer, width: Dp, low: Boolean) {
    val letters = letters()
    val lines = (tools.size + ABREAST - 1) / ABREAST
    val abreast = (tools.size + lines - 1) / lines
    val room = letters.whole((width - Edge) / abreast) - 6.dp
    val words = tools.flatMap { wordsOf(it.label, it.note) }
    val fit = Smaller.firstOrNull { letters.widest(words, letters.type.labelSmall * it) <= room } ?: Smaller.last()
    HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
    tools.chunked(abreast).forEach { line ->
        Row(Modifier.fillMaxWidth().padding(horizontal = Edge / 2).height(IntrinsicSize.Min)) {
            line.forEach { Tool(it, fit, doer, low, Modifier.width(room + 6.dp).fillMaxHeight()) }
        }
    }
}

/** An icon over its word. */
@Composable
private fun Tool(tool: ShownButton, fit: Float, doer: Doer, low: Boolean, modifier: Modifier) {
    val scheme = MaterialTheme.colorScheme
    val ground = if (tool.chosen) scheme.secondaryContainer else scheme.background
    val ink = if (tool.enabled) scheme.onBackground else scheme.tertiary
    Surface(
        onClick = { doer.does(tool.does) },
        modifier = modifier.heightIn(min = if (low) 48.dp else 64.dp).testTag(TOOL).semantics {
            role = Role.Button
            if (tool.chosen) selected = true
            if (tool.spoken.isNotEmpty()) contentDescription = tool.spoken
        },
        enabled = tool.enabled, shape = RoundedCornerShape(12.dp), color = ground, contentColor = ink,
    ) {
        Column(
            Modifier.padding(horizontal = 2.dp, vertical = if (low) 2.dp else 4.dp),
            Arrangement.spacedBy(2.dp, Alignment.CenterVertically), Alignment.CenterHorizontally,
        ) {
            tool.drawing?.let { Painted(it, if (low) 20.dp else 24.dp, ground = ground, ink = ink) }
            val style = MaterialTheme.typography.labelSmall * fit
            Text(tool.label, style = style, textAlign = TextAlign.Center)
            if (tool.note.isNotEmpty()) Text(tool.note, style = style, textAlign = TextAlign.Center)
        }
    }
}

/** What the tools are found by in tests. */
internal const val TOOL = "tool"

