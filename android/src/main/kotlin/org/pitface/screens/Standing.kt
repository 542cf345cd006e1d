package org.pitface.screens

import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownBlock
import org.pitface.core.ShownScreen
import org.pitface.core.Stand

/**
 * What of a screen stands where. What is of rank is in sight: where there is no room for all of it, what is only read goes
 * along with what scrolls, then the answer takes smaller letters; with very large letters the tools go along as well.
 *
 * @property aside the foot stands under the answer, not under what is asked
 */
internal class Standing(val foot: Foot, val lowAnswer: Boolean, val aside: Boolean = false) {
    /** @property read what was told and what to heed stands at the foot. @property tools the tools do. @property low it is as low as it can be. */
    class Foot(val read: Boolean, val tools: Boolean, val low: Boolean)
}

/** Letters up to this scale leave every answer and all tools in sight. */
private const val SEES = 1.3f

/** What scrolls is seen through no less than this. */
private val LeastSeen = 88.dp
internal val TopLineHeight = 48.dp

/** Drawings on answers shrink to this before words that are only read give way. */
private const val STILL_DRAWN = 0.6f

private fun Letters.ways(low: Boolean): List<Standing> {
    val whole = listOf(
        Standing(Standing.Foot(read = true, tools = true, low), lowAnswer = low),
        Standing(Standing.Foot(read = false, tools = true, low), lowAnswer = low),
        Standing(Standing.Foot(read = false, tools = true, low = true), lowAnswer = true),
    )
    return if (scale <= SEES) whole else whole + Standing(Standing.Foot(read = false, tools = false, low = true), lowAnswer = true)
}

/** How the parts stand under each other. */
internal fun Letters.oneColumn(shown: ShownScreen, width: Dp, height: Dp): Standing {
    val ways = ways(low = false)
    return ways.firstOrNull { way -> fits(shown, width, height - TopLineHeight - answerHeight(shown, width, way.lowAnswer) - footHeight(shown, width, way.foot), way.foot, pictured = true) } ?: ways.last()
}

/** How they stand side by side, each side with its width. */
internal fun Letters.twoColumns(shown: ShownScreen, width: Dp, height: Dp, low: Boolean, said: (Boolean) -> Dp): Standing {
    val ways = ways(low).flatMap { way -> listOf(way) + if (low) listOf(Standing(way.foot, way.lowAnswer, aside = true)) else emptyList() }
    return ways.firstOrNull { way ->
        val wide = said(way.aside)
        val foot = footHeight(shown, if (way.aside) wide else width - wide, way.foot)
        val (above, below) = if (way.aside) foot to 0.dp else 0.dp to foot
        TopLineHeight + answerHeight(shown, wide, way.lowAnswer) + above <= height && fits(shown, width - wide, height - below, way.foot, pictured = false)
    } ?: ways.last()
}

private fun Letters.fits(shown: ShownScreen, width: Dp, room: Dp, foot: Standing.Foot, pictured: Boolean): Boolean {
    val wide = if (pictured && shown.picture?.stand == Stand.STRIP) width * (1 - STRIP_SHARE) - Edge / 2 else width
    val least = if (shown.blocks.isEmpty() && shown.more.isEmpty() && foot.read && foot.tools) 0.dp else LeastSeen
    if (scale > SEES) {
        val asked = shown.blocks.filterIsInstance<ShownBlock.Question>().firstOrNull()?.text.orEmpty()
        return room >= least + if (asked.isEmpty()) 0.dp else height(asked, type.titleMedium, wide - Edge * 2)
    }
    return room >= least && sees(shown.blocks, wide, room, if (foot.read) STILL_DRAWN else 0f)
}

private fun Letters.answerHeight(shown: ShownScreen, width: Dp, low: Boolean) = shown.answer?.let { headlineHeight(it, width, low) } ?: 0.dp

private fun Letters.footHeight(shown: ShownScreen, width: Dp, foot: Standing.Foot): Dp =
    (if (foot.read) readHeight(shown, width) else 0.dp) + (shown.next?.let { nextHeight(it, width) } ?: 0.dp) +
        if (foot.tools && shown.tools.isNotEmpty()) shelf(shown.tools, width, foot.low).height else 0.dp
