package org.pitface.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.max
import org.pitface.core.ShownHeadline

private val SignSide = 40.dp

/** What the screen says, in the largest letters in which it takes two lines, or three of smaller ones. */
@Composable
internal fun Headline(said: ShownHeadline, width: Dp, low: Boolean = false, lined: Boolean = true, large: Boolean = false) {
    val letters = letters()
    val room = letters.roomBeside(said, width)
    Row(
        Modifier.fillMaxWidth().padding(horizontal = Edge).padding(bottom = 6.dp),
        Arrangement.spacedBy(Gap), Alignment.CenterVertically,
    ) {
        said.sign?.let { Painted(it, SignSide) }
        Column(verticalArrangement = Arrangement.spacedBy(2.dp)) {
            Text(
                said.text, Modifier.testTag(ANSWER).semantics { heading() },
                style = letters.display(said.text, room, low, large), color = MaterialTheme.colorScheme.onBackground,
            )
            if (lined && said.line.isNotEmpty()) {
                Text(said.line, style = if (large) letters.type.headlineMedium else letters.type.bodyMedium, color = MaterialTheme.colorScheme.onBackground)
            }
        }
    }
}

private fun Letters.roomBeside(said: ShownHeadline, width: Dp) = whole(width - Edge * 2 - if (said.sign == null) 0.dp else SignSide + Gap)

/** How high [Headline] is. */
internal fun Letters.headlineHeight(said: ShownHeadline, width: Dp, low: Boolean, lined: Boolean): Dp {
    val room = roomBeside(said, width)
    val line = if (!lined || said.line.isEmpty()) 0.dp else height(said.line, type.bodyMedium, room) + 2.dp
    return max(if (said.sign == null) 0.dp else SignSide, height(said.text, display(said.text, room, low, large = false), room) + line) + 6.dp
}

private fun Letters.display(text: String, room: Dp, low: Boolean, large: Boolean): TextStyle {
    val sizes = when {
        large -> listOf(type.displayLarge, type.displayMedium)
        // Letters that the reader wants large come down to their usual size before the answer goes out of sight.
        low -> listOf(type.headlineMedium, type.headlineSmall, type.titleLarge) + Smaller.filter { it >= 1 / scale }.map { type.titleMedium * it }
        else -> listOf(type.displaySmall, type.headlineMedium, type.headlineSmall, type.titleLarge)
    }
    val whole = sizes.filter { widest(wordsOf(text), it) <= room }
    return whole.firstOrNull { lines(text, it, room) <= 2 } ?: whole.firstOrNull { lines(text, it, room) <= 3 } ?: sizes.last()
}

/** What the answer is found by in tests. */
internal const val ANSWER = "answer"
