package org.pitface.screens

import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.max
import org.pitface.core.ShownBlock
import org.pitface.core.ShownScreen
import org.pitface.core.Stand

/** The parts of a screen that stay where they are. */
internal enum class Part { READ, NEXT, TOOLS }

/**
 * What of a screen stands where. What is of rank is in sight: where there is no room for all of it, what is only read goes
 * along with what scrolls, then the answer takes smaller letters and gives up its line; with very large letters the tools go
 * along as well.
 *
 * @property said the parts that stand under the answer, on a screen with two columns
 * @property asked those that stand under what is asked; what stands nowhere goes along with what scrolls
 * @property low all of them are as low as they can be
 * @property lined the line under the answer stands there
 */
internal class Standing(val said: Set<Part>, val asked: Set<Part>, val low: Boolean, val lined: Boolean = true) {
    fun scrolls(part: Part) = part !in said && part !in asked
}

/** Letters up to this scale leave every answer and all tools in sight. */
private const val SEES = 1.3f

/** What scrolls is seen through no less than this. */
private val LeastSeen = 88.dp
internal val TopLineHeight = 48.dp

/** Drawings on answers shrink to this before words that are only read give way. */
private const val STILL_DRAWN = 0.6f

private val All = Part.entries.toSet()
private val Unread = All - Part.READ

/** How the parts stand under each other. */
internal fun Letters.oneColumn(shown: ShownScreen, width: Dp, height: Dp): Standing {
    val ways = listOf(
        Standing(emptySet(), All, low = false), Standing(emptySet(), Unread, low = false),
        Standing(emptySet(), Unread, low = true), Standing(emptySet(), Unread, low = true, lined = false),
    ) + scrolledTools()
    return ways.firstOrNull { way ->
        fits(shown, width, height - TopLineHeight - answerHeight(shown, width, way) - way.asked.height(shown, width, way.low, this), way, pictured = true)
    } ?: ways.last()
}

/** How they stand side by side, the widths being reckoned from what stands under the answer. */
internal fun Letters.twoColumns(shown: ShownScreen, width: Dp, height: Dp, low: Boolean): Standing {
    val aside = listOf(emptySet(), All, setOf(Part.TOOLS), setOf(Part.NEXT))
    val ways = listOf(All to true, Unread to true, Unread to false).flatMap { (parts, lined) ->
        (if (low) aside else aside.take(1)).map { Standing(it intersect parts, parts - it, low, lined) }
    } + scrolledTools()
    return ways.firstOrNull { way ->
        val wide = saidWidth(way, width)
        val above = TopLineHeight + answerHeight(shown, wide, way) + way.said.height(shown, wide, way.low, this)
        above <= height && fits(shown, width - wide, height - way.asked.height(shown, width - wide, way.low, this), way, pictured = false)
    } ?: ways.last()
}

/** What is asked has more of the width where it needs it all. */
internal fun Letters.saidWidth(standing: Standing, width: Dp) = whole(width * if (Part.NEXT in standing.said) 0.4f else 0.5f)

private fun Letters.scrolledTools() = if (scale <= SEES) emptyList() else listOf(Standing(emptySet(), setOf(Part.NEXT), low = true, lined = false))

private fun Letters.fits(shown: ShownScreen, width: Dp, room: Dp, way: Standing, pictured: Boolean): Boolean {
    val wide = if (pictured && shown.picture?.stand == Stand.STRIP) width * (1 - STRIP_SHARE) - Edge / 2 else width
    val least = if (shown.blocks.isEmpty() && shown.more.isEmpty() && Part.entries.none(way::scrolls)) 0.dp else LeastSeen
    if (scale > SEES) {
        val asked = shown.blocks.filterIsInstance<ShownBlock.Question>().firstOrNull()?.text.orEmpty()
        return room >= if (asked.isEmpty()) least else max(least, height(asked, type.titleMedium, wide - Edge * 2) + Edge)
    }
    return room >= least && sees(shown.blocks, wide, room, if (way.scrolls(Part.READ)) 0f else STILL_DRAWN)
}

private fun Letters.answerHeight(shown: ShownScreen, width: Dp, way: Standing) = shown.answer?.let { headlineHeight(it, width, way.low, way.lined) } ?: 0.dp

private fun Set<Part>.height(shown: ShownScreen, width: Dp, low: Boolean, letters: Letters): Dp = fold(0.dp) { sum, part ->
    sum + when (part) {
        Part.READ -> letters.readHeight(shown, width)
        Part.NEXT -> shown.next?.let { letters.nextHeight(it, width, low) } ?: 0.dp
        Part.TOOLS -> if (shown.tools.isEmpty()) 0.dp else letters.shelf(shown.tools, width, low).height
    }
}
