package org.pitface.screens

import androidx.compose.foundation.BorderStroke
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
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawWithContent
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownButton
import org.pitface.core.ShownScreen
import org.pitface.core.Size

private val Inside = 8.dp

private fun Size.height(): Dp = when (this) {
    Size.SMALL -> 48.dp
    Size.USUAL -> 64.dp
    Size.LARGE -> 72.dp
}

private val ShownButton.words get() = "$label $note".split(' ', '\n').filter { it.isNotEmpty() }

/** The largest number of columns, up to the one asked for, in which no word is wider than its button. */
@Composable
internal fun fittingColumns(buttons: List<ShownButton>, asked: Int, width: Dp): Int {
    val measurer = rememberTextMeasurer()
    val density = LocalDensity.current
    val style = MaterialTheme.typography.labelLarge
    return remember(buttons, asked, width, density, style) {
        val widest = buttons.flatMap { it.words }.distinct().maxOfOrNull { measurer.width(it, style, density) } ?: 0.dp
        (asked downTo 2).firstOrNull { widest + Inside * 2 + 2.dp <= (width - Gap * (it - 1)) / it } ?: 1
    }
}

private fun TextMeasurer.width(word: String, style: TextStyle, density: Density): Dp =
    with(density) { measure(word, style, softWrap = false, density = density).size.width.toDp() }

/** A button of the core. The answer given is filled, framed and ticked, so that it shows without colour too. */
@Composable
internal fun ShownButtonView(button: ShownButton, doer: Doer, width: Dp, modifier: Modifier = Modifier, main: Boolean = false) {
    val scheme = MaterialTheme.colorScheme
    val (ground, ink) = when {
        !button.enabled -> scheme.background to scheme.onSurfaceVariant
        main -> scheme.primary to scheme.onPrimary
        button.chosen -> scheme.secondaryContainer to scheme.onSecondaryContainer
        else -> scheme.surfaceVariant to scheme.onSurface
    }
    Surface(
        onClick = { doer.does(button.does) },
        modifier = modifier.heightIn(min = button.size.height()).semantics {
            role = Role.Button
            if (button.chosen) selected = true
        },
        enabled = button.enabled,
        shape = RoundedCornerShape(10.dp),
        color = ground,
        contentColor = ink,
        border = BorderStroke(if (button.chosen) 3.dp else 1.dp, if (button.chosen) scheme.onBackground else scheme.outline),
    ) {
        Column(
            Modifier.ticked(button.chosen, ink).padding(horizontal = Inside, vertical = 6.dp),
            verticalArrangement = Arrangement.spacedBy(4.dp, Alignment.CenterVertically),
            horizontalAlignment = Alignment.CenterHorizontally,
        ) {
            button.drawing?.let { drawing ->
                Painted(drawing, minOf((width - Inside * 2).value, drawing.width.toFloat()))
            }
            Text(
                button.label,
                style = if (main || button.size == Size.LARGE) MaterialTheme.typography.titleMedium else MaterialTheme.typography.labelLarge,
                textAlign = TextAlign.Center,
            )
            if (button.note.isNotEmpty()) Text(button.note, style = MaterialTheme.typography.labelMedium, textAlign = TextAlign.Center)
        }
    }
}

private fun Modifier.ticked(chosen: Boolean, ink: Color): Modifier = if (!chosen) this else drawWithContent {
    drawContent()
    val step = 4.dp.toPx()
    val (x, y) = size.width - step * 4 to step * 2.5f
    drawLine(ink, Offset(x, y), Offset(x + step, y + step), 2.dp.toPx(), StrokeCap.Round)
    drawLine(ink, Offset(x + step, y + step), Offset(x + step * 2.6f, y - step), 2.dp.toPx(), StrokeCap.Round)
}

/** Undo, the one main action, back; mirrored for the left hand. */
@Composable
internal fun ThumbBar(shown: ShownScreen, doer: Doer, width: Dp) {
    val side = width * 0.25f
    val parts: List<Pair<ShownButton?, Boolean>> = listOf(shown.undo to false, shown.main to true, shown.back to false)
    Row(
        Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = 8.dp).heightIn(min = 64.dp).height(IntrinsicSize.Min),
        horizontalArrangement = Arrangement.spacedBy(Gap),
    ) {
        (if (shown.leftHanded) parts.reversed() else parts).forEach { (button, main) ->
            val room = if (main) Modifier.weight(1f) else Modifier.width(side)
            if (button != null) ShownButtonView(button, doer, side, room.fillMaxHeight(), main)
            else androidx.compose.foundation.layout.Spacer(room)
        }
    }
}
