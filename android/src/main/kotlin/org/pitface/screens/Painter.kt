package org.pitface.screens

import androidx.compose.foundation.Canvas
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.StrokeJoin
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.scale
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.dp
import androidx.compose.foundation.layout.size
import androidx.compose.material3.MaterialTheme
import androidx.compose.ui.graphics.luminance
import androidx.compose.ui.text.font.FontFamily
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

/** A drawing of the core at a width given in dp; its height follows. */
@Composable
fun Painted(drawing: Drawing, width: Float, modifier: Modifier = Modifier) {
    val measurer = rememberTextMeasurer(cacheSize = 64)
    val paints = if (MaterialTheme.colorScheme.background.luminance() > 0.5f) ByDay else InTheDark
    val family = MaterialTheme.typography.bodyLarge.fontFamily ?: FontFamily.Default
    val paths = remember(drawing) { drawing.shapes.map { it.path() } }
    Canvas(modifier.size(width.dp, (width * drawing.height / drawing.width).dp)) {
        val factor = size.width / drawing.width.toFloat()
        scale(factor, Offset.Zero) {
            drawing.shapes.forEachIndexed { index, shape -> paint(shape, paths[index], paints, measurer, family) }
        }
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

private fun DrawScope.paint(shape: Shape, path: Path?, paints: Map<Role, Paint>, measurer: TextMeasurer, family: FontFamily) {
    fun of(role: Role) = paints.getValue(role)
    when (shape) {
        is Shape.Rectangle -> drawRect(
            of(shape.role).colour, Offset(shape.left.toFloat(), shape.top.toFloat()), Size(shape.width.toFloat(), shape.height.toFloat()),
        )
        is Shape.Circle -> drawCircle(of(shape.role).colour, shape.radius.toFloat(), shape.centre.offset())
        is Shape.Polygon -> drawPath(path!!, of(shape.role).colour)
        is Shape.Line -> of(shape.role).let { drawLine(it.colour, shape.from.offset(), shape.to.offset(), it.width, StrokeCap.Round) }
        is Shape.Polyline -> of(shape.role).let {
            drawPath(path!!, it.colour, style = Stroke(it.width, cap = StrokeCap.Round, join = StrokeJoin.Round))
        }
        is Shape.Text -> drawLetters(shape, of(shape.role).colour, measurer, family)
    }
}

/** Letters of a drawing grow with the drawing only: its own points, not those of the reader's font scale. */
private fun DrawScope.drawLetters(shape: Shape.Text, colour: Color, measurer: TextMeasurer, family: FontFamily) {
    val style = TextStyle(
        color = colour, fontFamily = family, fontSize = shape.size.toFloat().toSp(),
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
