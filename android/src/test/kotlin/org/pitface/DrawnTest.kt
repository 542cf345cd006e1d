package org.pitface

import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.font.createFontFamilyResolver
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.LayoutDirection
import androidx.compose.ui.unit.sp
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.Anchor
import org.pitface.core.Drawing
import org.pitface.core.Point
import org.pitface.core.Role
import org.pitface.core.Shape
import org.pitface.core.ShownScreen
import org.pitface.core.Theme
import org.pitface.core.colours
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import kotlin.math.hypot

/** Every drawing of every screen: letters at 7 : 1 and marks at 3 : 1 on what is under them, no letters outside or over others. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w411dp-h891dp-mdpi")
class DrawnTest {
    private val measurer by lazy { TextMeasurer(createFontFamilyResolver(process), Density(1f, 1f), LayoutDirection.Ltr, 64) }

    private fun ShownScreen.drawings(): List<Drawing> = pictures.map { it.drawing } + buttons.mapNotNull { it.drawing } + rows.mapNotNull { it.icon } + listOfNotNull(answer?.sign)

    private fun screens(language: String) = Tour.screens(language) + Walk.screens(language)

    @Test fun everyMarkCanBeSeenAndEveryWordRead() {
        val drawings = listOf("en", "de").flatMap(::screens).flatMap { screen -> screen.drawings().map { screen.kind to it } }.distinctBy { it.second }
        val faults = sortedMapOf<String, Int>()
        for ((kind, drawing) in drawings) {
            for (theme in listOf(Theme.LIGHT, Theme.DARK)) faint(drawing, theme).forEach { faults.merge("$kind, $theme: $it", 1, Int::plus) }
            letters(drawing).forEach { faults.merge("$kind: $it", 1, Int::plus) }
        }
        println("sweep: ${drawings.size} different drawings by day and in the dark, ${drawings.sumOf { it.second.shapes.size }} shapes")
        assertTrue(faults.map { "${it.key} (${it.value})" }.joinToString("\n", "${faults.size} faults\n"), faults.isEmpty())
    }

    /** What finds nothing is to find something where something is wrong. */
    @Test fun whatIsWrongIsFound() {
        fun word(role: Role, x: Double, y: Double, text: String) = Shape.Text(role, Point(x, y), Anchor.START, 12.0, true, text)
        val drawing = Drawing(
            100.0, 100.0,
            listOf(
                Shape.Rectangle(Role.SOIL_SHUT, 0.0, 0.0, 100.0, 100.0), Shape.Rectangle(Role.HATCH_SHUT, 0.0, 40.0, 100.0, 20.0),
                word(Role.TIP, 2.0, 20.0, "faint"), word(Role.INK, 2.0, 55.0, "hidden"), word(Role.INK, 2.0, 90.0, "much too long for this"),
                word(Role.INK, 5.0, 92.0, "above"),
            ),
        )
        val found = (faint(drawing, Theme.LIGHT) + letters(drawing)).toString()
        for (wanted in listOf("TIP stands on SOIL_SHUT", "\"hidden\" lies over HATCH_SHUT", "\"much too long for this\" leaves the drawing", "\"above\" overlap")) {
            assertTrue("$wanted, in $found", wanted in found)
        }
    }

    private fun faint(drawing: Drawing, theme: Theme): Set<String> {
        val paints = colours(theme).associate { it.role to Color(it.red.toInt(), it.green.toInt(), it.blue.toInt()) }
        return drawing.shapes.withIndex().filter { it.value.marks() }.mapNotNullTo(sortedSetOf()) { (index, shape) ->
            val wanted = if (shape is Shape.Text) 7 else 3
            val under = shape.points().mapNotNull { point -> drawing.shapes.subList(0, index).lastOrNull { it.covers(point) }?.role() }
            val grounds = under.filter { it in Grounds }
            val worst = grounds.minByOrNull { contrast(paints.getValue(shape.role()), paints.getValue(it)) }
            val found = worst?.let { contrast(paints.getValue(shape.role()), paints.getValue(it)) }
            val over = under.firstOrNull { it !in Grounds }.takeIf { shape is Shape.Text }
            when {
                over != null -> "\"${(shape as Shape.Text).text}\" lies over $over"
                found != null && found < wanted -> "${shape.role()} stands on $worst at %.1f : 1, not $wanted".format(found)
                else -> null
            }
        }
    }

    private fun Shape.role() = when (this) {
        is Shape.Rectangle -> role
        is Shape.Circle -> role
        is Shape.Polygon -> role
        is Shape.Line -> role
        is Shape.Polyline -> role
        is Shape.Text -> role
    }

    /** What says something by itself: not a ground, and no patch of colour, which has an edge that does. */
    private fun Shape.marks() = role() !in Grounds && role() !in Edged

    private fun Shape.points(): List<Point> = when (this) {
        is Shape.Rectangle -> listOf(Point(left + width / 2, top + height / 2))
        is Shape.Circle -> listOf(centre)
        is Shape.Polygon -> points
        is Shape.Line -> (0..4).map { between(from, to, it / 4.0) }
        is Shape.Polyline -> points.zipWithNext().flatMap { (one, other) -> listOf(one, between(one, other, 0.5)) }
        is Shape.Text -> place(this).let { place -> (0..6).map { Point(place.left + place.width * it / 6.0, at.y - size * 0.3) } }
    }

    private fun between(one: Point, other: Point, share: Double) = Point(one.x + (other.x - one.x) * share, one.y + (other.y - one.y) * share)

    private fun Shape.covers(point: Point): Boolean = when (this) {
        is Shape.Rectangle -> point.x in left..left + width && point.y in top..top + height
        is Shape.Circle -> hypot(point.x - centre.x, point.y - centre.y) <= radius
        is Shape.Polygon -> points.encloses(point)
        is Shape.Line -> listOf(from, to).near(point, widths.getValue(role) / 2)
        is Shape.Polyline -> points.near(point, widths.getValue(role) / 2)
        is Shape.Text -> false
    }

    private val widths by lazy { colours(Theme.LIGHT).associate { it.role to it.strokeWidth } }

    private fun List<Point>.encloses(point: Point) = (this + first()).zipWithNext().count { (one, other) ->
        (one.y > point.y) != (other.y > point.y) && point.x < one.x + (point.y - one.y) / (other.y - one.y) * (other.x - one.x)
    } % 2 == 1

    private fun List<Point>.near(point: Point, within: Double) = zipWithNext().any { (one, other) ->
        val (x, y) = other.x - one.x to other.y - one.y
        val share = (((point.x - one.x) * x + (point.y - one.y) * y) / (x * x + y * y).coerceAtLeast(1e-9)).coerceIn(0.0, 1.0)
        hypot(point.x - one.x - share * x, point.y - one.y - share * y) <= within
    }

    /** Where letters are, in points of the drawing. */
    private fun place(shape: Shape.Text): Rect {
        val style = TextStyle(fontSize = shape.size.toFloat().sp, fontWeight = if (shape.strong) FontWeight.Bold else FontWeight.Normal)
        val laid = measurer.measure(AnnotatedString(shape.text), style, softWrap = false, maxLines = 1)
        val left = shape.at.x.toFloat() - when (shape.anchor) {
            Anchor.START -> 0f
            Anchor.MIDDLE -> laid.size.width / 2f
            Anchor.END -> laid.size.width.toFloat()
        }
        val (above, below) = shape.size.toFloat() * 0.72f to shape.size.toFloat() * 0.2f // capitals, and what hangs below the line
        return Rect(left, shape.at.y.toFloat() - above, left + laid.size.width, shape.at.y.toFloat() + below)
    }

    private fun letters(drawing: Drawing): Set<String> {
        val texts = drawing.shapes.filterIsInstance<Shape.Text>().filter { it.text.isNotBlank() }.map { it to place(it) }
        val whole = Rect(0f, 0f, drawing.width.toFloat(), drawing.height.toFloat()).inflate(0.5f)
        val outside = texts.filter { (_, place) -> place.left < whole.left || place.right > whole.right || place.top < whole.top || place.bottom > whole.bottom }
            .map { (shape, place) -> "\"${shape.text}\" leaves the drawing: $place of ${drawing.width} by ${drawing.height}" }
        val over = texts.flatMapIndexed { index, (one, place) ->
            texts.drop(index + 1).filter { (_, other) -> place.intersect(other).let { it.width > 0.5f && it.height > 0.5f } }.map { (other, _) -> "\"${one.text}\" and \"${other.text}\" overlap" }
        }
        return (outside + over).toSortedSet()
    }

    private companion object {
        val Grounds = setOf(Role.PAPER, Role.SOIL_PLAIN, Role.SOIL_OPEN, Role.SOIL_FIRM, Role.SOIL_TIGHT, Role.SOIL_SHUT, Role.CASING, Role.CHANNEL_HOLLOW)
        val Edged = setOf(Role.PATCH_RUST, Role.PATCH_GREY)
    }
}
