package org.pitface.screens

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawWithContent
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Brush
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.graphicsLayer
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.layout.onPlaced
import androidx.compose.ui.layout.positionInParent
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Constraints
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.coerceIn
import androidx.compose.ui.unit.dp
import androidx.compose.ui.zIndex
import org.pitface.core.ShownBlock
import org.pitface.core.ShownPicture
import org.pitface.core.ShownScreen
import org.pitface.core.Stand

private val Above = 4.dp

/** Share of the width a strip has at most, and of the height that is a picture's own: more where nothing is asked beside it. */
internal const val STRIP_SHARE = 0.3f
private const val PICTURE_SHARE = 0.45f
private const val PICTURE_ALONE = 0.6f

/** How the blocks stand: in which order, how many of them up to the last question, how close their answers, and how high what must be in sight is. */
private class Plan(val blocks: List<ShownBlock>, val asked: Int, val packing: Packing, val must: Dp)

/**
 * The roomiest way in which every answer is in sight: first sentences before the questions go behind them, then drawings and
 * letters of the answers shrink. The picture has already given way.
 */
private fun Letters.plan(blocks: List<ShownBlock>, width: Dp, room: Dp): Plan {
    val asked = blocks.filterIsInstance<ShownBlock.Question>()
    if (asked.isEmpty()) return Plan(blocks, 0, Packings.first(), 0.dp)
    val said = blocks.subList(0, blocks.indexOf(asked.last())).filterIsInstance<ShownBlock.Text>()
    val first = blocks.filter { it in asked || it in said }
    val orders = listOf(first + (blocks - first.toSet()), asked + (blocks - asked.toSet()))
    val plans = Packings.asSequence().flatMap { packing -> orders.asSequence().map { order -> Plan(order, order.indexOf(asked.last()) + 1, packing, must(order, asked.last(), width, packing)) } }
    return plans.firstOrNull { it.must <= room } ?: plans.last()
}

private fun Letters.must(order: List<ShownBlock>, last: ShownBlock.Question, width: Dp, packing: Packing): Dp =
    order.subList(0, order.indexOf(last) + 1).fold(Above) { sum, block -> sum + packing.between + when (block) {
        is ShownBlock.Question -> grid(block.answers, block.columns.toInt(), width - Edge * 2, packing).height +
            if (block.text.isEmpty()) 0.dp else height(block.text, question(packing), width - Edge * 2) + packing.around * 2
        is ShownBlock.Text -> height(block.text, type.bodyMedium, width - Edge * 2) + Above
        else -> 0.dp
    } }

/** Letters of a question. */
private fun Letters.question(packing: Packing) = type.titleMedium * maxOf(packing.letters, 1 / scale).coerceAtMost(1f)

/** Every answer would be in sight, with no less than that share of its drawing. */
internal fun Letters.sees(blocks: List<ShownBlock>, width: Dp, room: Dp, drawn: Float) = plan(blocks, width, room).let { it.must <= room && it.packing.drawn >= drawn }

/** What stands between the answer and the foot. */
@Composable
internal fun Body(shown: ShownScreen, doer: Doer, standing: Standing, modifier: Modifier = Modifier, pictured: Boolean = true) = BoxWithConstraints(modifier) {
    val (width, height) = maxWidth to maxHeight
    val picture = shown.picture.takeIf { pictured }
    if (picture?.stand == Stand.STRIP) {
        val wide = (height * (picture.drawing.width / picture.drawing.height).toFloat()).coerceIn(56.dp, width * STRIP_SHARE)
        val strip = @Composable { PictureView(picture, doer, shown.leftHanded, Modifier.width(wide).fillMaxHeight()) }
        Row(Modifier.padding(start = if (shown.leftHanded) 0.dp else Edge / 2, end = if (shown.leftHanded) Edge / 2 else 0.dp)) {
            if (!shown.leftHanded) strip()
            Scrolled(shown, null, doer, standing, width - wide - Edge / 2, height, Modifier.weight(1f))
            if (shown.leftHanded) strip()
        }
    } else Scrolled(shown, picture, doer, standing, width, height, Modifier.fillMaxWidth())
}

@Composable
private fun Scrolled(shown: ShownScreen, picture: ShownPicture?, doer: Doer, standing: Standing, width: Dp, height: Dp, modifier: Modifier) {
    val letters = letters()
    val plan = remember(shown.blocks, width, height, letters) { letters.plan(shown.blocks, width, height) }
    val at = rememberScrollState()
    LaunchedEffect(shown.answer?.text) { at.scrollTo(0) }
    Column(modifier.fillMaxHeight().goesOn(at).verticalScroll(at)) {
        BelowPicture(picture, height, plan.must, { PictureView(it, doer, shown.leftHanded) }) {
            Column(Modifier.fillMaxWidth().padding(top = Above), Arrangement.spacedBy(plan.packing.between)) {
                val block = @Composable { one: ShownBlock -> Block(one, plan.packing, doer, width, at, shown.leftHanded) }
                plan.blocks.take(plan.asked).forEach { block(it) }
                if (!standing.lined) shown.answer?.line?.takeIf { it.isNotEmpty() }?.let { Words(it) }
                if (standing.scrolls(Part.READ)) Read(shown)
                plan.blocks.drop(plan.asked).forEach { block(it) }
                if (shown.more.isNotEmpty()) More(shown.moreLabel, shown.more)
                if (standing.scrolls(Part.TOOLS)) Tools(shown, doer, width, low = false)
            }
        }
    }
}

/**
 * A picture and what stands under it: it has what is left over from that, and a good part of the height is its own, as far
 * as what [must] be in sight leaves it.
 */
@Composable
private fun BelowPicture(picture: ShownPicture?, height: Dp, must: Dp, view: @Composable (ShownPicture) -> Unit, rest: @Composable () -> Unit) {
    if (picture == null) return rest()
    Layout({
        view(picture)
        rest()
    }) { (above, below), constraints ->
        val width = constraints.maxWidth
        val placedBelow = below.measure(constraints.copy(minHeight = 0, maxHeight = Constraints.Infinity))
        val whole = (width * picture.drawing.height / picture.drawing.width).toInt()
        val own = minOf(height - must, height * if (must > 0.dp) PICTURE_SHARE else PICTURE_ALONE).roundToPx()
        val high = maxOf(height.roundToPx() - placedBelow.height, own).coerceIn(0, whole).let { if (it < LeastPicture.roundToPx()) 0 else it }
        val placedAbove = above.measure(Constraints.fixed(width, high))
        layout(width, high + placedBelow.height) {
            placedAbove.place(0, 0)
            placedBelow.place(0, high)
        }
    }
}

@Composable
private fun Block(block: ShownBlock, packing: Packing, doer: Doer, width: Dp, at: ScrollState, leftHanded: Boolean) = when (block) {
    is ShownBlock.Question -> Asked(block, packing, doer, width - Edge * 2, at)
    is ShownBlock.Ways -> Ways(block, doer)
    is ShownBlock.Photos -> Photos(block.photos, doer, width)
    is ShownBlock.Picture -> PictureView(
        block.picture, doer, leftHanded,
        Modifier.fillMaxWidth().padding(horizontal = Edge / 2).height((width - Edge) * (block.picture.drawing.height / block.picture.drawing.width).toFloat()),
    )
    is ShownBlock.Text -> Words(block.text)
    is ShownBlock.Lines -> Lines(block.section)
    is ShownBlock.Typing -> Typing(block, doer)
}

/** A question with its answers; it stays in sight for as long as anything is that answers it. */
@Composable
private fun Asked(asked: ShownBlock.Question, packing: Packing, doer: Doer, width: Dp, at: ScrollState) {
    val letters = letters()
    val grid = remember(asked, width, packing, letters) { letters.grid(asked.answers, asked.columns.toInt(), width, packing) }
    var top by remember { mutableStateOf(0f) }
    var high by remember { mutableStateOf(0) }
    Column(
        Modifier.fillMaxWidth().padding(horizontal = Edge).onPlaced { top = it.positionInParent().y; high = it.size.height },
        Arrangement.spacedBy(packing.around),
    ) {
        if (asked.text.isNotEmpty()) Text(
            asked.text,
            Modifier.fillMaxWidth().zIndex(1f).graphicsLayer { translationY = (at.value - top - Above.toPx()).coerceIn(0f, maxOf(0f, high - size.height)) }
                .background(MaterialTheme.colorScheme.background).pointerInput(Unit) {} // What it hides is not to be tapped through it.
                .padding(top = packing.around).semantics { heading() },
            style = letters.question(packing), color = MaterialTheme.colorScheme.onBackground,
        )
        Tiles(asked.answers, grid, doer)
    }
}

/** Shows where more lies above or below of what scrolls. */
@Composable
internal fun Modifier.goesOn(at: ScrollState): Modifier {
    val (ground, ink) = MaterialTheme.colorScheme.background to MaterialTheme.colorScheme.onBackground
    return drawWithContent {
        drawContent()
        val (high, side) = 20.dp.toPx() to 5.dp.toPx()
        fun edge(from: Float, to: Float, down: Float) {
            drawRect(Brush.verticalGradient(listOf(ground.copy(alpha = 0f), ground), from, to), Offset(0f, minOf(from, to)), Size(size.width, high))
            val (x, y) = size.width / 2 to to - down * side * 0.8f
            drawLine(ink, Offset(x - side * 2, y - down * side), Offset(x, y), 2.dp.toPx(), StrokeCap.Round)
            drawLine(ink, Offset(x, y), Offset(x + side * 2, y - down * side), 2.dp.toPx(), StrokeCap.Round)
        }
        if (at.canScrollForward) edge(size.height - high, size.height, 1f)
        if (at.canScrollBackward) edge(high, 0f, -1f)
    }
}
