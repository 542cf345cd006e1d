package org.pitface.screens

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.offset
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clipToBounds
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.onClick
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.IntOffset
import androidx.compose.ui.unit.IntSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.min
import org.pitface.core.ShownPicture
import org.pitface.state.Phrase

/** Under this height a picture shows nothing. */
internal val LeastPicture = 60.dp

/** A picture as large as its place lets it be, whole, and what a finger on it does. */
@Composable
internal fun PictureView(picture: ShownPicture, doer: Doer, leftHanded: Boolean, modifier: Modifier = Modifier) = BoxWithConstraints(modifier, Alignment.TopCenter) {
    if (maxHeight < LeastPicture || maxWidth < LeastPicture) return@BoxWithConstraints
    val drawing = picture.drawing
    val width = min(maxWidth, maxHeight * (drawing.width / drawing.height).toFloat())
    val height = width * (drawing.height / drawing.width).toFloat()
    val factor = with(LocalDensity.current) { width.toPx() } / drawing.width.toFloat()
    val zoom = remember(picture.title, picture.zooms) { Zoom() }
    var line by remember { mutableStateOf<Float?>(null) }
    Box(
        Modifier.size(width, height).clipToBounds().testTag(PICTURE).semantics {
            role = Role.Image
            contentDescription = listOf(picture.title, picture.description).filter { it.isNotEmpty() }.joinToString(". ")
        }.touched(picture, doer, zoom, factor) { line = it },
    ) {
        val below = picture.photo?.let { photo(it, with(LocalDensity.current) { width.roundToPx() }, doer) }
        if (picture.photo != null && below == null) Missing(picture.title)
        Seen(picture, below, zoom, factor)
        Line(line)
        Touches(picture, doer, zoom, factor)
    }
    // At the side of the thumb, beside the drawing where there is room.
    if (picture.zooms && height > 100.dp) Closer(zoom, maxWidth - width < 100.dp, Modifier.align(if (leftHanded) Alignment.BottomStart else Alignment.BottomEnd))
}

/** What a picture, and a place on it, is found by in tests. */
internal const val PICTURE = "picture"
internal const val TOUCH = "touch"

/** The photo, and over it the drawing. */
@Composable
private fun Seen(picture: ShownPicture, photo: ImageBitmap?, zoom: Zoom, factor: Float) {
    val painter = painter(picture.drawing)
    Canvas(Modifier.fillMaxSize()) {
        val at = zoom.offset
        if (photo != null) {
            val (wide, high) = size.width * zoom.scale to size.height * zoom.scale
            drawImage(photo, dstOffset = IntOffset(at.x.toInt(), at.y.toInt()), dstSize = IntSize(wide.toInt(), high.toInt()))
        }
        painter.paint(this, factor * zoom.scale, at)
    }
}

/** Where a photo belongs that is not on this device, or not read yet. */
@Composable
internal fun Missing(title: String) = Box(Modifier.fillMaxSize().background(MaterialTheme.colorScheme.surfaceVariant), Alignment.Center) {
    if (title.isNotEmpty()) Text(title, Modifier.padding(8.dp), style = MaterialTheme.typography.bodySmall, color = MaterialTheme.colorScheme.onSurface, textAlign = TextAlign.Center)
}

/** The line that goes along with a finger. */
@Composable
private fun Line(at: Float?) {
    if (at == null) return
    val (ink, ground) = MaterialTheme.colorScheme.onBackground to MaterialTheme.colorScheme.background
    Canvas(Modifier.fillMaxSize()) {
        drawLine(ground, Offset(0f, at), Offset(size.width, at), 7.dp.toPx())
        drawLine(ink, Offset(0f, at), Offset(size.width, at), 3.dp.toPx(), StrokeCap.Round)
    }
}

/** Places that do something, as a screen reader meets them; a finger is met by the picture as a whole. */
@Composable
private fun Touches(picture: ShownPicture, doer: Doer, zoom: Zoom, factor: Float) {
    val density = LocalDensity.current
    picture.touches.forEach { touch ->
        val place = zoom.onScreen(touch.place(), factor)
        with(density) {
            Box(
                Modifier.offset(place.left.toDp(), place.top.toDp()).size(place.width.toDp(), place.height.toDp()).testTag(TOUCH).semantics {
                    role = Role.Button
                    contentDescription = touch.label
                    onClick {
                        touch.place().center.let { doer.touched(touch.does, it.x.toDouble(), it.y.toDouble()) }
                        true
                    }
                },
            )
        }
    }
}

/** Larger and smaller, for one hand. */
@Composable
private fun Closer(zoom: Zoom, abreast: Boolean, modifier: Modifier) {
    val scheme = MaterialTheme.colorScheme
    val words = LocalWords.current
    val outer = modifier.background(scheme.background, RoundedCornerShape(12.dp))
    val both = @Composable {
        for ((phrase, times) in listOf(Phrase.LARGER to 1.5f, Phrase.SMALLER to 1 / 1.5f)) {
            Sign(words(phrase), { zoom.by(times) }) {
                val (middle, half) = Offset(size.width / 2, size.height / 2) to 8.dp.toPx()
                drawLine(scheme.onBackground, middle - Offset(half, 0f), middle + Offset(half, 0f), 2.5.dp.toPx(), StrokeCap.Round)
                if (times > 1) drawLine(scheme.onBackground, middle - Offset(0f, half), middle + Offset(0f, half), 2.5.dp.toPx(), StrokeCap.Round)
            }
        }
    }
    if (abreast) Row(outer) { both() } else Column(outer) { both() }
}
