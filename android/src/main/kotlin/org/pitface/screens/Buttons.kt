package org.pitface.screens

import androidx.compose.foundation.BorderStroke
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
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
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.Hyphens
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.max
import androidx.compose.ui.unit.min
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

/** How buttons stand side by side: how many, and by how much letters shrink where one word alone is wider than that. */
internal class Fit(val columns: Int, val letters: Float)

/** Measures the widest word of some buttons, with the room around it; by how much letters are shrunk for that is given. */
@Composable
private fun measured(buttons: List<ShownButton>): (Float) -> Dp {
    val measurer = rememberTextMeasurer()
    val density = LocalDensity.current
    val style = MaterialTheme.typography.titleMedium
    return remember(buttons, density, style) {
        val words = buttons.flatMap { it.words }.distinct()
        val widths = HashMap<Float, Dp>();
        { letters ->
            widths.getOrPut(letters) { (words.maxOfOrNull { measurer.width(it, style * letters, density) } ?: 0.dp) + Inside * 2 + 4.dp }
        }
    }
}

/** Larger letters grow by less than smaller ones where the reader wants all of them large: so it is tried, not reckoned. */
private val Steps = listOf(1f, 0.9f, 0.8f, 0.7f, 0.6f, 0.5f)

private fun lettersThatFit(room: Dp, widest: (Float) -> Dp) = Steps.firstOrNull { widest(it) <= room } ?: Steps.last()

/** The largest number of columns, up to the one asked for, in which no word is wider than its button. */
@Composable
internal fun fit(buttons: List<ShownButton>, asked: Int, width: Dp): Fit {
    val widest = measured(buttons)
    val most = (asked downTo 2).firstOrNull { widest(1f) <= (width - Gap * (it - 1)) / it } ?: 1
    val rows = (buttons.size + most - 1) / most
    val columns = if (most < asked && rows > 0) (buttons.size + rows - 1) / rows else most // where it is fewer, no button stays alone
    return Fit(columns, lettersThatFit((width - Gap * (columns - 1)) / columns, widest))
}

private fun TextMeasurer.width(word: String, style: TextStyle, density: Density): Dp =
    with(density) { measure(word, style, softWrap = false, density = density).size.width.toDp() }

/** Words on buttons are never parted. */
private operator fun TextStyle.times(factor: Float) = copy(fontSize = fontSize * factor, lineHeight = lineHeight * factor, hyphens = Hyphens.None)

/** A button of the core. The answer given is filled, framed and ticked, so that it shows without colour too. */
@Composable
internal fun ShownButtonView(button: ShownButton, doer: Doer, width: Dp, modifier: Modifier = Modifier, main: Boolean = false, letters: Float = 1f) {
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
            if (button.spoken.isNotEmpty()) contentDescription = button.spoken
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
                style = (if (main || button.size == Size.LARGE) MaterialTheme.typography.titleMedium else MaterialTheme.typography.labelLarge) * letters,
                textAlign = TextAlign.Center,
            )
            if (button.note.isNotEmpty()) Text(button.note, style = MaterialTheme.typography.labelMedium * letters, textAlign = TextAlign.Center)
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

/** Undo, the one main action, back; mirrored for the left hand. Where letters are large, the main action has a row of its own. */
@Composable
internal fun ThumbBar(shown: ShownScreen, doer: Doer, width: Dp) {
    val room = width - Edge * 2
    val (undo, main, back) = Triple(shown.undo, shown.main, shown.back)
    val half = (room - Gap) / 2
    val (ofUndo, ofBack, ofMain) = Triple(measured(listOfNotNull(undo)), measured(listOfNotNull(back)), measured(listOfNotNull(main)))
    val aside = { widest: (Float) -> Dp, letters: Float -> max(room * SIDE, widest(letters)) }
    val mainRoom = max(room * MAIN, ofMain(1f))
    val beside = Steps.take(3).firstOrNull { main != null && aside(ofUndo, it) + aside(ofBack, it) + mainRoom + Gap * 2 <= room }
    val together = main == null || beside != null
    val letters = beside ?: lettersThatFit(half) { max(ofUndo(it), ofBack(it)) }
    Column(Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = 8.dp), verticalArrangement = Arrangement.spacedBy(Gap)) {
        if (!together && main != null) {
            val alone = fit(listOf(main), 1, room).letters
            ShownButtonView(main, doer, room, Modifier.fillMaxWidth(), main = true, letters = alone)
        }
        Row(Modifier.fillMaxWidth().heightIn(min = 64.dp).height(IntrinsicSize.Min), horizontalArrangement = Arrangement.spacedBy(Gap)) {
            val first = if (shown.leftHanded) back else undo
            val last = if (shown.leftHanded) undo else back
            val end = { button: ShownButton? ->
                val wide = aside(if (button === undo) ofUndo else ofBack, letters)
                (if (together) Modifier.width(min(wide, half)) else Modifier.weight(1f)).fillMaxHeight()
            }
            Place(first, doer, half, end(first), letters)
            if (together) Place(main, doer, room, Modifier.weight(1f).fillMaxHeight(), 1f, main = true)
            Place(last, doer, half, end(last), letters)
        }
    }
}

/** A button of the bar, or its place where there is none, so that the others stay where the thumb knows them. */
@Composable
private fun Place(button: ShownButton?, doer: Doer, width: Dp, room: Modifier, letters: Float, main: Boolean = false) {
    if (button == null) Spacer(room) else ShownButtonView(button, doer, width, room, main, letters)
}

/** Share of the width that undo and back have at least, each. */
private const val SIDE = 0.2f

/** Share of it that the main action has at least: it is the wide one. */
private const val MAIN = 0.4f
