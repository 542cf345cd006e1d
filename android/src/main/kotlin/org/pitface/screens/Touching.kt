package org.pitface.screens

import androidx.compose.foundation.gestures.awaitEachGesture
import androidx.compose.foundation.gestures.awaitFirstDown
import androidx.compose.foundation.gestures.calculateCentroid
import androidx.compose.foundation.gestures.calculatePan
import androidx.compose.foundation.gestures.calculateZoom
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.input.pointer.AwaitPointerEventScope
import androidx.compose.ui.input.pointer.PointerEvent
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.input.pointer.positionChange
import androidx.compose.ui.layout.onSizeChanged
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownDoes
import org.pitface.core.ShownPicture
import org.pitface.core.ShownTouch

/** How a picture is looked at: how many times larger than whole, and from where on. */
internal class Zoom {
    var scale by mutableStateOf(1f)
        private set
    var offset by mutableStateOf(Offset.Zero)
        private set
    var size = Size.Zero

    /** Larger or smaller about a place that stays where it is. */
    fun by(times: Float, about: Offset = Offset(size.width / 2, size.height / 2)) {
        val next = (scale * times).coerceIn(1f, LARGEST)
        val from = (about - offset) / scale
        scale = next
        offset = held(about - from * next)
    }

    fun moved(by: Offset) {
        offset = held(offset + by)
    }

    /** The picture is never drawn away from the edge of its place. */
    private fun held(wanted: Offset) = Offset(wanted.x.coerceIn(size.width * (1 - scale), 0f), wanted.y.coerceIn(size.height * (1 - scale), 0f))

    fun onDrawing(at: Offset, factor: Float) = (at - offset) / (factor * scale)

    fun onScreen(place: Rect, factor: Float) = Rect(offset + place.topLeft * (factor * scale), place.size * (factor * scale))

    private companion object {
        const val LARGEST = 6f
    }
}

internal fun ShownTouch.place() = Rect(Offset(left.toFloat(), top.toFloat()), Size(width.toFloat(), height.toFloat()))

/** The uppermost place at a point; else the nearest whose place, widened to what a thumb needs, holds it. */
private fun ShownPicture.met(at: Offset, thumb: Float): ShownTouch? =
    touches.lastOrNull { at in it.place() } ?: touches.filter { touch ->
        val place = touch.place()
        val (x, y) = maxOf(0f, (thumb - place.width) / 2) to maxOf(0f, (thumb - place.height) / 2)
        at in Rect(place.left - x, place.top - y, place.right + x, place.bottom + y)
    }.minByOrNull { (it.place().center - at).getDistance() }

/** Fingers on a picture: a tap, a line drawn along, two fingers that make it larger, one that moves what is larger. */
internal fun Modifier.touched(picture: ShownPicture, doer: Doer, zoom: Zoom, factor: Float, line: (Float?) -> Unit) = onSizeChanged {
    zoom.size = Size(it.width.toFloat(), it.height.toFloat())
}.pointerInput(picture, factor) {
    awaitEachGesture {
        val down = awaitFirstDown()
        val thumb = 48.dp.toPx() / (factor * zoom.scale)
        val held = picture.met(zoom.onDrawing(down.position, factor), thumb)
        val along = held?.takeIf { it.drags }
        var far = false
        while (true) {
            val event = awaitPointerEvent()
            val change = event.changes.firstOrNull { it.id == down.id } ?: break
            if (change.isConsumed) break
            if (!change.pressed) {
                val at = zoom.onDrawing(change.position, factor)
                val what = if (far) along?.does else held?.does ?: picture.anywhere?.let(ShownDoes::Act)
                if (what != null) {
                    change.consume()
                    doer.touched(what, at.x.toDouble(), at.y.toDouble())
                }
                break
            }
            if (picture.zooms && pinched(event, zoom)) {
                far = true
                continue
            }
            far = far || (change.position - down.position).getDistance() > viewConfiguration.touchSlop
            if (far && along != null) {
                line(change.position.y.coerceIn(0f, size.height.toFloat()))
                change.consume()
            } else if (far && zoom.scale > 1f) {
                zoom.moved(change.positionChange())
                change.consume()
            }
        }
        line(null)
    }
}

private fun AwaitPointerEventScope.pinched(event: PointerEvent, zoom: Zoom): Boolean {
    if (event.changes.count { it.pressed } < 2) return false
    zoom.by(event.calculateZoom(), event.calculateCentroid())
    zoom.moved(event.calculatePan())
    event.changes.forEach { it.consume() }
    return true
}
