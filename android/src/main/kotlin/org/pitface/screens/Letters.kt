package org.pitface.screens

import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Typography
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.Hyphens
import androidx.compose.ui.unit.Constraints
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp

/** How much room words take, before they are laid out. */
internal class Letters(private val measurer: TextMeasurer, private val grain: Density, val type: Typography) {
    /** How much larger than usual the reader wants letters. */
    val scale get() = grain.fontScale

    fun height(text: String, style: TextStyle, width: Dp): Dp = with(grain) { laid(text, style, width).size.height.toDp() }

    fun lines(text: String, style: TextStyle, width: Dp): Int = laid(text, style, width).lineCount

    /** The widest of some words, each by itself. */
    fun widest(words: List<String>, style: TextStyle): Dp = words.maxOfOrNull { word ->
        with(grain) { measurer.measure(word, style, softWrap = false, density = grain).size.width.toDp() }
    } ?: 0.dp

    /** By how much letters shrink, at least, so that no word is wider than the room. */
    fun fit(words: List<String>, style: TextStyle, room: Dp): Float = Smaller.firstOrNull { widest(words, style * it) <= room } ?: Smaller.last()

    /** In whole pixels, so that what is reckoned is what is laid out. */
    fun whole(width: Dp): Dp = with(grain) { kotlin.math.floor(width.toPx()).toDp() }

    private fun laid(text: String, style: TextStyle, width: Dp) =
        measurer.measure(text, style, constraints = Constraints(maxWidth = with(grain) { width.roundToPx().coerceAtLeast(1) }), density = grain)
}

@Composable
internal fun letters(): Letters {
    val measurer = rememberTextMeasurer(cacheSize = 256)
    val density = LocalDensity.current
    val type = MaterialTheme.typography
    return remember(measurer, density, type) { Letters(measurer, density, type) }
}

internal fun wordsOf(vararg texts: String) = texts.flatMap { it.split(' ', '\n') }.filter { it.isNotEmpty() }.distinct()

/** Words on what is tapped are never parted. */
internal operator fun TextStyle.times(factor: Float) = copy(fontSize = fontSize * factor, lineHeight = lineHeight * factor, hyphens = Hyphens.None)

/** Larger letters grow by less than smaller ones where the reader wants all of them large: so it is tried, not reckoned. */
internal val Smaller = listOf(1f, 0.9f, 0.8f, 0.7f, 0.6f, 0.5f)
