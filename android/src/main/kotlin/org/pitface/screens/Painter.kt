package org.pitface.screens

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.material3.MaterialTheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.alpha
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.StrokeJoin
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.scale
import androidx.compose.ui.graphics.drawscope.translate
import androidx.compose.ui.graphics.luminance
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.sp
import org.pitface.core.Anchor
import org.pitface.core.Drawing
import org.pitface.core.Point
import org.pitface.core.Role
import org.pitface.core.Shape
import org.pitface.core.Theme
import org.pitface.core.colours

/** How a role is painted. */
private class Paint(val colour: Color, val width: Float)

private fun paints(theme: Theme): Map<Role, Paint> = colours(theme).associate {
    it.role to Paint(Color(it.red.toInt(), it.green.toInt(), it.blue.toInt()), it.strokeWidth.toFloat())
}

private val ByDay by lazy { paints(Theme.LIGHT) }
private val InTheDark by lazy { paints(Theme.DARK) }

/** What stands for the paper under a drawing: it takes the ground of what it stands on. */
private val Papers = setOf(Role.PAPER, Role.CASING)

/** A drawing, ready to be painted. */
internal class Painter(
    private val drawing: Drawing, private val paints: (Role) -> Color, private val widths: (Role) -> Float,
    private val measurer: TextMeasurer, private val family: FontFamily,
) {
    private val paths = drawing.shapes.map { it.path() }

    /** Paints it [factor] pixels a point, from [origin] on; letters smaller than can be read are left out. */
    fun paint(scope: DrawScope, factor: Float, origin: Offset = Offset.Zero) = with(scope) {
        val least = LEAST_LETTERS.sp.toPx() / factor
        translate(origin.x, origin.y) {
            scale(factor, Offset.Zero) {
                drawing.shapes.forEachIndexed { index, shape ->
                    if (shape !is Shape.Text || shape.size >= least) shape(shape, paths[index])
                }
            }
        }
    }

    private fun DrawScope.shape(shape: Shape, path: Path?) = when (shape) {
        is Shape.Rectangle -> drawRect(
            paints(shape.role), Offset(shape.left.toFloat(), shape.top.toFloat()), Size(shape.width.toFloat(), shape.height.toFloat()),
        )
        is Shape.Circle -> drawCircle(paints(shape.role), shape.radius.toFloat(), shape.centre.offset())
        is Shape.Polygon -> drawPath(path!!, paints(shape.role))
        is Shape.Line -> drawLine(paints(shape.role), shape.from.offset(), shape.to.offset(), widths(shape.role), StrokeCap.Round)
        is Shape.Polyline -> drawPath(path!!, paints(shape.role), style = Stroke(widths(shape.role), cap = StrokeCap.Round, join = StrokeJoin.Round))
        is Shape.Text -> letters(shape)
    }

    /** Letters of a drawing are in its own points: the core already made them as large as the reader wants them. */
    private fun DrawScope.letters(shape: Shape.Text) {
        val style = TextStyle(
            color = paints(shape.role), fontFamily = family, fontSize = shape.size.toFloat().toSp(),
            fontWeight = if (shape.strong) FontWeight.Bold else FontWeight.Normal,
        )
        val laid = measurer.measure(AnnotatedString(shape.text), style, softWrap = false, maxLines = 1, density = this, layoutDirection = layoutDirection)
        val shift = when (shape.anchor) {
            Anchor.START -> 0f
            Anchor.MIDDLE -> laid.size.width / 2f
            Anchor.END -> laid.size.width.toFloat()
        }
        drawText(laid, topLeft = Offset(shape.at.x.toFloat() - shift, shape.at.y.toFloat() - laid.firstBaseline))
    }

    private companion object {
        /** Scaled points; a little under nine, which the core may make exactly. */
        const val LEAST_LETTERS = 8.95f
    }
}

private fun Point.offset() = Offset(x.toFloat(), y.toFloat())

private fun Shape.path(): Path? = when (this) {
    is Shape.Polygon -> path(points).apply { close() }
    is Shape.Polyline -> path(points)
    else -> null
}

private fun path(points: List<Point>) = Path().apply {
    points.forEachIndexed { index, point ->
        if (index == 0) moveTo(point.x.toFloat(), point.y.toFloat()) else lineTo(point.x.toFloat(), point.y.toFloat())
    }
}

/** On a [ground] of its own where it stands on something; in one [ink] where it is a sign. */
@Composable
internal fun painter(drawing: Drawing, ground: Color? = null, ink: Color? = null): Painter {
    // A plan of many pits has a number at each of them.
    val measurer = rememberTextMeasurer(cacheSize = 512)
    val paints = if (MaterialTheme.colorScheme.background.luminance() > 0.5f) ByDay else InTheDark
    val family = MaterialTheme.typography.bodyLarge.fontFamily ?: FontFamily.Default
    return remember(drawing, paints, ground, ink, measurer, family) {
        val colour = { role: Role -> (if (role in Papers) ground else ink) ?: paints.getValue(role).colour }
        Painter(drawing, colour, { paints.getValue(it).width }, measurer, family)
    }
}

/** A drawing of the core at a width; its height follows. */
@Composable
internal fun Painted(drawing: Drawing, width: Dp, modifier: Modifier = Modifier, ground: Color? = null, ink: Color? = null, faint: Boolean = false) {
    val painter = painter(drawing, ground, ink)
    Canvas(modifier.size(width, width * (drawing.height / drawing.width).toFloat()).alpha(if (faint) 0.5f else 1f)) {
        painter.paint(this, size.width / drawing.width.toFloat())
    }
}
