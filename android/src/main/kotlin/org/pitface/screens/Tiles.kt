package org.pitface.screens

import androidx.compose.foundation.BorderStroke
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawWithContent
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.max
import androidx.compose.ui.unit.min
import org.pitface.core.Drawing
import org.pitface.core.ShownButton

/** How close the answers of a screen stand: share of their drawings and letters, room in and between them, least height, room between questions. */
internal class Packing(val drawn: Float, val letters: Float, val above: Dp, val beside: Dp, val gap: Dp, val least: Dp, val between: Dp = 10.dp) {
    /** Above and below a question. */
    val around get() = between * 0.4f
}

/** From the roomiest on; the first in which all answers are in sight is taken. */
internal val Packings = listOf(
    Packing(1f, 1f, 6.dp, 8.dp, 8.dp, 64.dp),
    Packing(0.8f, 1f, 4.dp, 6.dp, 8.dp, 60.dp),
    Packing(0.62f, 1f, 4.dp, 6.dp, 6.dp, 56.dp),
    Packing(0.62f, 0.9f, 3.dp, 4.dp, 6.dp, 56.dp),
    Packing(0.5f, 0.8f, 2.dp, 4.dp, 5.dp, 52.dp),
    Packing(0.35f, 0.75f, 2.dp, 4.dp, 4.dp, 48.dp, 6.dp),
    Packing(0f, 0.75f, 2.dp, 4.dp, 4.dp, 48.dp, 4.dp),
)

/** What is tapped is never narrower, nor lower. */
private val LeastTapped = 48.dp

/** Answers side by side: how many in a row, how wide each, how high each row, by how much letters shrink. */
internal class Grid(val columns: Int, val each: Dp, val letters: Float, val heights: List<Dp>, val packing: Packing) {
    val height: Dp get() = heights.fold(0.dp, Dp::plus) + packing.gap * (heights.size - 1).coerceAtLeast(0)
}

/** The size of a drawing on an answer. */
private fun Drawing.on(room: Dp, packing: Packing): Dp = min(room, (width * packing.drawn).dp)

private fun Drawing.heightAt(wide: Dp): Dp = wide * (height / width).toFloat()

private val Lines = 3.dp

/** The largest number of columns, up to the one asked for, in which no word is wider than its tile. */
internal fun Letters.grid(answers: List<ShownButton>, asked: Int, width: Dp, packing: Packing): Grid {
    val words = wordsOf(*answers.flatMap { listOf(it.label, it.note) }.toTypedArray())
    // Letters that the reader wants large may come down to their usual size before an answer goes out of sight.
    val from = maxOf(packing.letters, 1f / scale).coerceAtMost(1f)
    fun wide(letters: Float) = widest(words, type.labelLarge * letters) + packing.beside * 2 + 2.dp
    val fitting = (asked downTo 2).firstOrNull { max(wide(from), LeastTapped) <= (width - packing.gap * (it - 1)) / it } ?: 1
    val rows = (answers.size + fitting - 1) / fitting
    val columns = if (fitting < asked && rows > 0) (answers.size + rows - 1) / rows else fitting // where it is fewer, no answer stays alone
    val each = whole((width - packing.gap * (columns - 1)) / columns)
    val letters = Smaller.filter { it <= from }.let { smaller -> (listOf(from) + smaller).firstOrNull { wide(it) <= each } ?: Smaller.last() }
    return Grid(columns, each, letters, answers.chunked(columns).map { row -> row.maxOf { height(it, each, letters, packing) } }, packing)
}

private fun Letters.height(answer: ShownButton, each: Dp, letters: Float, packing: Packing): Dp {
    val room = each - packing.beside * 2
    val drawn = answer.drawing?.takeIf { packing.drawn > 0f }?.let { it.heightAt(it.on(room, packing)) + Lines } ?: 0.dp
    val noted = if (answer.note.isEmpty()) 0.dp else height(answer.note, type.labelMedium * letters, room) + Lines
    return max(if (answer.strong) packing.least + 8.dp else packing.least, drawn + height(answer.label, labelOf(answer) * letters, room) + noted + packing.above * 2 + 1.dp)
}

private fun Letters.labelOf(answer: ShownButton) = if (answer.strong) type.titleMedium else type.labelLarge

/** Answers in rows, as they were reckoned. */
@Composable
internal fun Tiles(answers: List<ShownButton>, grid: Grid, doer: Doer) {
    val letters = letters()
    Column(verticalArrangement = Arrangement.spacedBy(grid.packing.gap)) {
        answers.chunked(grid.columns).forEachIndexed { index, row ->
            Row(Modifier.fillMaxWidth().height(grid.heights[index]), horizontalArrangement = Arrangement.spacedBy(grid.packing.gap)) {
                row.forEach { Tile(it, grid, letters, doer, Modifier.width(grid.each).fillMaxHeight()) }
            }
        }
    }
}

/**
 * An answer. One not given is an outlined tile; the one given is tinted, with a thick edge and a tick; one that is off has no
 * edge, and says why.
 */
@Composable
private fun Tile(answer: ShownButton, grid: Grid, letters: Letters, doer: Doer, modifier: Modifier) {
    val scheme = MaterialTheme.colorScheme
    val (ground, ink) = when {
        !answer.enabled -> scheme.background to scheme.tertiary
        answer.chosen -> scheme.secondaryContainer to scheme.onSecondaryContainer
        else -> scheme.background to scheme.onBackground
    }
    val edge = when {
        !answer.enabled -> null
        answer.chosen -> BorderStroke(3.dp, scheme.onBackground)
        else -> BorderStroke(1.5.dp, scheme.outline)
    }
    Surface(
        onClick = { doer.does(answer.does) },
        modifier = modifier.semantics {
            role = Role.Button
            if (answer.chosen) selected = true
            if (answer.spoken.isNotEmpty()) contentDescription = answer.spoken
        },
        enabled = answer.enabled, shape = RoundedCornerShape(12.dp), color = ground, contentColor = ink, border = edge,
    ) {
        val room = grid.each - grid.packing.beside * 2
        Column(
            Modifier.ticked(answer.chosen, ink).padding(horizontal = grid.packing.beside, vertical = grid.packing.above),
            verticalArrangement = Arrangement.spacedBy(Lines, Alignment.CenterVertically),
            horizontalAlignment = Alignment.CenterHorizontally,
        ) {
            answer.drawing?.takeIf { grid.packing.drawn > 0f }?.let { Painted(it, it.on(room, grid.packing), ground = ground, faint = !answer.enabled) }
            Text(answer.label, style = letters.labelOf(answer) * grid.letters, textAlign = TextAlign.Center)
            if (answer.note.isNotEmpty()) Text(answer.note, style = letters.type.labelMedium * grid.letters, textAlign = TextAlign.Center)
        }
    }
}

private fun Modifier.ticked(chosen: Boolean, ink: Color): Modifier = if (!chosen) this else drawWithContent {
    drawContent()
    val unit = 3.5.dp.toPx()
    val (x, y) = size.width - unit * 4.6f to unit * 2.6f
    drawLine(ink, Offset(x, y), Offset(x + unit, y + unit), 2.5.dp.toPx(), StrokeCap.Round)
    drawLine(ink, Offset(x + unit, y + unit), Offset(x + unit * 2.6f, y - unit), 2.5.dp.toPx(), StrokeCap.Round)
}
