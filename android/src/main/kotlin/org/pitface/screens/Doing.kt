package org.pitface.screens

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.text.KeyboardActions
import androidx.compose.foundation.text.KeyboardOptions
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.OutlinedTextField
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.graphicsLayer
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.layout.onPlaced
import androidx.compose.ui.layout.positionInParent
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.LocalFocusManager
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.input.ImeAction
import androidx.compose.ui.text.input.KeyboardCapitalization
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.zIndex
import org.pitface.core.ShownDoing
import kotlin.math.floor

/** The lower part of a screen, scrolled to [at]. A question stays in sight for as long as anything is that answers it. */
@Composable
fun Doing(blocks: List<ShownDoing>, doer: Doer, width: Dp, at: ScrollState) {
    if (blocks.isEmpty()) return
    Column(Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = Margin), verticalArrangement = Arrangement.spacedBy(Gap)) {
        asked(blocks).forEach { group ->
            var top by remember { mutableStateOf(0f) }
            var height by remember { mutableStateOf(0) }
            Column(
                Modifier.fillMaxWidth().onPlaced { top = it.positionInParent().y; height = it.size.height },
                verticalArrangement = Arrangement.spacedBy(Gap),
            ) {
                group.forEach { block ->
                    when (block) {
                        is ShownDoing.Question -> Question(block.text) { own, above -> (at.value - top - above).coerceIn(0f, maxOf(0f, height - own)) }
                        is ShownDoing.Choices -> Choices(block, doer, width - Edge * 2)
                        is ShownDoing.Typing -> Typing(block, doer)
                    }
                }
            }
        }
    }
}

/** Blocks in groups, each begun by its question. */
private fun asked(blocks: List<ShownDoing>): List<List<ShownDoing>> = blocks.fold(emptyList()) { groups, block ->
    if (block is ShownDoing.Question || groups.isEmpty()) groups + listOf(listOf(block)) else groups.dropLast(1) + listOf(groups.last() + block)
}

/** A question, moved down by what [below] gives for its own height and the margin above all of them. */
@Composable
private fun Question(text: String, below: (Float, Float) -> Float) = Text(
    text,
    Modifier.fillMaxWidth().zIndex(1f).graphicsLayer { translationY = below(size.height, Margin.toPx()) }
        .background(MaterialTheme.colorScheme.background).pointerInput(Unit) {} // What it hides is not to be tapped through it.
        .padding(top = 4.dp).semantics { heading() },
    style = MaterialTheme.typography.titleMedium,
    color = MaterialTheme.colorScheme.onBackground,
)

internal val Gap = 8.dp
private val Margin = 8.dp

/** Buttons side by side; fewer in a row where a word would not fit. */
@Composable
private fun Choices(choices: ShownDoing.Choices, doer: Doer, width: Dp) {
    val fit = fit(choices.buttons, choices.columns.toInt(), width)
    val columns = fit.columns
    // In whole pixels: the height of a row is asked for and given at the same width, or a line more is needed than there is room for.
    val each = with(LocalDensity.current) { floor(((width - Gap * (columns - 1)) / columns).toPx()).toDp() }
    Column(verticalArrangement = Arrangement.spacedBy(Gap)) {
        choices.buttons.chunked(columns).forEach { row ->
            Row(Modifier.fillMaxWidth().height(IntrinsicSize.Min), horizontalArrangement = Arrangement.spacedBy(Gap)) {
                row.forEach { ShownButtonView(it, doer, each, Modifier.width(each).fillMaxHeight(), letters = fit.letters) }
            }
        }
    }
}

/** One line of text. What is typed is kept at once and entered by the key, by leaving, or by the next tap. */
@Composable
private fun Typing(typing: ShownDoing.Typing, doer: Doer) {
    var text by rememberSaveable(typing.act, typing.value) { mutableStateOf(typing.value) }
    val focus = LocalFocusManager.current
    OutlinedTextField(
        value = text,
        onValueChange = {
            text = it
            doer.typed(typing.act, it)
        },
        modifier = Modifier.fillMaxWidth(),
        label = { Text(typing.label) },
        singleLine = true,
        textStyle = MaterialTheme.typography.bodyLarge,
        keyboardOptions = KeyboardOptions(capitalization = KeyboardCapitalization.Sentences, imeAction = ImeAction.Done),
        keyboardActions = KeyboardActions(onDone = {
            focus.clearFocus()
            doer.enter()
        }),
    )
}
