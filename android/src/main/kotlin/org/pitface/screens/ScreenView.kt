package org.pitface.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.key
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import org.pitface.core.ScreenKind
import org.pitface.core.ShownBlock
import org.pitface.core.ShownScreen

internal val Edge = 12.dp
internal val Gap = 8.dp

/** From this width on two parts stand side by side. */
private val Wide = 600.dp

/** Under this height what stands at the foot may stand under the answer, where what is asked needs the room. */
private val Low = 420.dp

/** Any screen of the app, from the top: where one is, what it says, what it shows and asks, what comes next. */
@Composable
fun ScreenView(shown: ShownScreen, doer: Doer, modifier: Modifier = Modifier) {
    InLanguage(shown.language) { BoxWithConstraints(modifier.fillMaxSize().background(MaterialTheme.colorScheme.background)) {
        val (width, height) = maxWidth to maxHeight
        key(shown.kind, shown.title) {
            when {
                doer.menu -> Column(Modifier.fillMaxSize()) {
                    TopLine(shown, doer)
                    Menu(shown.menu, doer, Modifier.weight(1f))
                }
                shown.kind == ScreenKind.SHOW -> ForTheFarmer(shown, doer, width)
                width >= Wide || width > height -> SideBySide(shown, doer, width, height)
                else -> OneColumn(shown, doer, width, height)
            }
        }
    } }
}

@Composable
private fun OneColumn(shown: ShownScreen, doer: Doer, width: Dp, height: Dp) {
    val letters = letters()
    val standing = remember(shown, width, height, letters) { letters.oneColumn(shown, width, height) }
    Column(Modifier.fillMaxSize()) {
        TopLine(shown, doer)
        Answer(shown, width, height * ANSWER_SHARE, standing)
        Body(shown, doer, standing, Modifier.weight(1f))
        Parts(standing.asked, shown, doer, width, standing.low)
    }
}

/** The answer stays; only where it is very high does it scroll by itself. */
@Composable
private fun Answer(shown: ShownScreen, width: Dp, most: Dp, standing: Standing) {
    val said = shown.answer ?: return
    Column(Modifier.heightIn(max = most).verticalScroll(rememberScrollState())) { Headline(said, width, standing.low, standing.lined) }
}

private const val ANSWER_SHARE = 0.6f

/** Landscape and tablets: what is said and shown beside what is asked, the latter at the side of the thumb. */
@Composable
private fun SideBySide(shown: ShownScreen, doer: Doer, width: Dp, height: Dp) {
    val letters = letters()
    val standing = remember(shown, width, height, letters) { letters.twoColumns(shown, width, height, height < Low) }
    val part = letters.saidWidth(standing, width)
    val said = @Composable {
        Column(Modifier.width(part).fillMaxHeight()) {
            TopLine(shown, doer)
            Answer(shown, part, if (standing.said.isEmpty()) height - TopLineHeight else height * ANSWER_SHARE, standing)
            val picture = shown.picture
            if (picture == null) Column(Modifier.weight(1f)) {} else PictureView(picture, doer, shown.leftHanded, Modifier.weight(1f).fillMaxWidth())
            Parts(standing.said, shown, doer, part, standing.low)
        }
    }
    val asked = @Composable {
        Column(Modifier.width(width - part).fillMaxHeight()) {
            Body(shown, doer, standing, Modifier.weight(1f), pictured = false)
            Parts(standing.asked, shown, doer, width - part, standing.low)
        }
    }
    Row(Modifier.fillMaxSize()) {
        if (shown.leftHanded) asked() else said()
        if (shown.leftHanded) said() else asked()
    }
}

/** What was told and what to heed, the next step, the tools: those of them that stand here. */
@Composable
private fun Parts(parts: Set<Part>, shown: ShownScreen, doer: Doer, width: Dp, low: Boolean) {
    Column(Modifier.fillMaxWidth()) {
        if (Part.READ in parts) Read(shown)
        if (Part.NEXT in parts) shown.next?.let { Next(it, doer, width, low) }
        if (Part.TOOLS in parts) Tools(shown, doer, width, low)
    }
}

/** For the farmer: large letters, nothing to operate; a tap anywhere goes back. */
@Composable
private fun ForTheFarmer(shown: ShownScreen, doer: Doer, width: Dp) {
    val back = shown.back
    val leave = if (back == null) Modifier else Modifier.clickable(onClickLabel = back.label) { doer.does(back.does) }
    val large = MaterialTheme.typography.headlineMedium
    BoxWithConstraints(Modifier.fillMaxSize().then(leave)) {
        val high = maxHeight
        val at = rememberScrollState()
        Column(Modifier.fillMaxSize()) {
            Column(Modifier.weight(1f).goesOn(at).verticalScroll(at), Arrangement.spacedBy(Gap)) {
                Text(
                    shown.title, Modifier.padding(horizontal = Edge).padding(top = Gap).semantics { heading() },
                    style = large, color = MaterialTheme.colorScheme.onBackground,
                )
                shown.answer?.let { Headline(it, width, large = true) }
                shown.picture?.let { PictureView(it, doer, shown.leftHanded, Modifier.fillMaxWidth().heightIn(max = high / 2)) }
                shown.blocks.forEach { block ->
                    when (block) {
                        is ShownBlock.Text -> Words(block.text, large)
                        is ShownBlock.Lines -> Lines(block.section, large)
                        is ShownBlock.Picture -> PictureView(block.picture, doer, shown.leftHanded, Modifier.fillMaxWidth().heightIn(max = high / 2))
                        is ShownBlock.Ways -> Ways(block, doer)
                        is ShownBlock.Photos -> Photos(block.photos, doer, width)
                        is ShownBlock.Question, is ShownBlock.Typing -> Unit
                    }
                }
            }
            shown.next?.let { Next(it, doer, width) }
        }
    }
}
