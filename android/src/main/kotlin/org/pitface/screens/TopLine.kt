package org.pitface.screens

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.material3.HorizontalDivider
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextOverflow
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownButton
import org.pitface.core.ShownScreen
import org.pitface.state.Phrase

/** Where one is, on one line always: the way back, the title, the menu of rare things. */
@Composable
internal fun TopLine(shown: ShownScreen, doer: Doer) {
    val ink = MaterialTheme.colorScheme.onBackground
    Row(Modifier.fillMaxWidth().heightIn(min = TopLineHeight), verticalAlignment = Alignment.CenterVertically) {
        val back = shown.back
        if (back == null) Spacer(Modifier.width(Edge))
        else Sign(back.label, { if (doer.menu) doer.menu = false else doer.does(back.does) }) {
            val (x, y, side) = Triple(size.width * 0.58f, size.height / 2, 8.dp.toPx())
            drawLine(ink, Offset(x, y - side), Offset(x - side, y), 2.5.dp.toPx(), StrokeCap.Round)
            drawLine(ink, Offset(x - side, y), Offset(x, y + side), 2.5.dp.toPx(), StrokeCap.Round)
        }
        Text(
            shown.title, Modifier.weight(1f).testTag(TITLE).semantics { heading() },
            style = MaterialTheme.typography.titleSmall, color = ink, maxLines = 1, overflow = TextOverflow.Ellipsis,
        )
        if (shown.menu.isNotEmpty()) Sign(LocalWords.current(Phrase.MENU), { doer.menu = !doer.menu }) {
            for (dot in -1..1) drawCircle(ink, 2.5.dp.toPx(), Offset(size.width / 2, size.height / 2 + dot * 7.dp.toPx()))
        } else Spacer(Modifier.width(Edge))
    }
}

/** What the title is found by in tests: the one text that may be cut. */
internal const val TITLE = "title"

/** A button that is only a sign, with its name for whoever hears it. */
@Composable
internal fun Sign(name: String, does: () -> Unit, modifier: Modifier = Modifier, sign: DrawScope.() -> Unit) = Box(
    modifier.size(48.dp).clickable(role = Role.Button, onClick = does).semantics { contentDescription = name },
    contentAlignment = Alignment.Center,
) { Canvas(Modifier.size(48.dp), sign) }

/** Rare things, in place of the screen while the menu is open. */
@Composable
internal fun Menu(entries: List<ShownButton>, doer: Doer, modifier: Modifier) {
    Column(modifier.fillMaxWidth().verticalScroll(rememberScrollState())) {
        entries.forEach { entry ->
            HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
            WayRow(entry.drawing, entry.label, listOf(entry.note).filter { it.isNotEmpty() }, entry.spoken, entry.enabled, Chevron.NONE) {
                doer.menu = false
                doer.does(entry.does)
            }
        }
        HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
    }
}
