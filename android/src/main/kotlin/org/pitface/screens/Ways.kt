package org.pitface.screens

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.Image
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.HorizontalDivider
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.rotate
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.layout.ContentScale
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import org.pitface.core.Drawing
import org.pitface.core.Section
import org.pitface.core.ShownBlock
import org.pitface.core.ShownThumbnail

/** What the sign at the end of a row says. */
internal enum class Chevron(val turn: Float) { NONE(0f), LEADS(0f), UNFOLDS(90f), FOLDS(-90f) }

/** Rows that lead somewhere. */
@Composable
internal fun Ways(ways: ShownBlock.Ways, doer: Doer) {
    Column(Modifier.fillMaxWidth()) {
        if (ways.heading.isNotEmpty()) Heading(ways.heading, MaterialTheme.typography.bodyMedium)
        ways.rows.forEach { row ->
            HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
            WayRow(row.icon, row.title, row.lines, "", true, Chevron.LEADS) { doer.does(row.does) }
        }
        HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
    }
}

/** A row: its sign, its name, what stands there now, and at the end what it does. */
@Composable
internal fun WayRow(icon: Drawing?, title: String, lines: List<String>, spoken: String, enabled: Boolean, end: Chevron, does: () -> Unit) {
    val scheme = MaterialTheme.colorScheme
    val ink = if (enabled) scheme.onBackground else scheme.tertiary
    Surface(
        onClick = does,
        modifier = Modifier.fillMaxWidth().heightIn(min = 64.dp).semantics {
            role = Role.Button
            if (spoken.isNotEmpty()) contentDescription = spoken
        },
        enabled = enabled, color = scheme.background, contentColor = ink,
    ) {
        Row(Modifier.padding(horizontal = Edge, vertical = 6.dp), Arrangement.spacedBy(12.dp), Alignment.CenterVertically) {
            icon?.let { Painted(it, 28.dp, ink = ink) }
            Column(Modifier.weight(1f), verticalArrangement = Arrangement.spacedBy(1.dp, Alignment.CenterVertically)) {
                Text(title, style = MaterialTheme.typography.titleMedium)
                lines.forEach { Text(it, style = MaterialTheme.typography.bodyMedium) }
            }
            if (end != Chevron.NONE) Canvas(Modifier.size(12.dp, 24.dp).rotate(end.turn)) {
                val (x, y, side) = Triple(size.width * 0.75f, size.height / 2, 6.dp.toPx())
                drawLine(ink, Offset(x - side, y - side), Offset(x, y), 2.dp.toPx(), StrokeCap.Round)
                drawLine(ink, Offset(x, y), Offset(x - side, y + side), 2.dp.toPx(), StrokeCap.Round)
            }
        }
    }
}

@Composable
private fun Heading(text: String, plain: TextStyle) = Text(
    text, Modifier.padding(horizontal = Edge).padding(top = 6.dp, bottom = 2.dp).semantics { heading() },
    style = plain.copy(fontWeight = FontWeight.Bold), color = MaterialTheme.colorScheme.onBackground,
)

/** A sentence of second rank. */
@Composable
internal fun Words(text: String, style: TextStyle = MaterialTheme.typography.bodyMedium) =
    Text(text, Modifier.padding(horizontal = Edge, vertical = 2.dp), style = style, color = MaterialTheme.colorScheme.onBackground)

/** Lines under a heading. */
@Composable
internal fun Lines(section: Section, plain: TextStyle = MaterialTheme.typography.bodyMedium) {
    Column(Modifier.fillMaxWidth()) {
        if (section.heading.isNotEmpty()) Heading(section.heading, plain)
        section.lines.forEach { Words(it, plain) }
    }
}

/** What is folded, behind a row that unfolds it in place. */
@Composable
internal fun More(label: String, sections: List<Section>) {
    var open by rememberSaveable { mutableStateOf(false) }
    Column(Modifier.fillMaxWidth().padding(bottom = Gap)) {
        HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
        WayRow(null, label, emptyList(), "", true, if (open) Chevron.FOLDS else Chevron.UNFOLDS) { open = !open }
        if (open) sections.forEach { Lines(it) }
    }
}

private val ThumbnailSide = 104.dp

/** Small pictures of photos, side by side. */
@Composable
internal fun Photos(photos: List<ShownThumbnail>, doer: Doer, width: Dp) {
    val abreast = maxOf(1, ((width - Edge) / (ThumbnailSide * letters().scale + Gap)).toInt())
    val each = (width - Edge * 2 - Gap * (abreast - 1)) / abreast
    Column(Modifier.padding(horizontal = Edge), Arrangement.spacedBy(Gap)) {
        photos.chunked(abreast).forEach { line -> Row(horizontalArrangement = Arrangement.spacedBy(Gap)) { line.forEach { Thumbnail(it, doer, each) } } }
    }
}

@Composable
private fun Thumbnail(shown: ShownThumbnail, doer: Doer, side: Dp) {
    val scheme = MaterialTheme.colorScheme
    Surface(
        { doer.does(shown.does) }, Modifier.width(side).semantics { role = Role.Button },
        shape = RoundedCornerShape(8.dp), color = scheme.background, contentColor = scheme.onBackground,
    ) {
        Column {
            Box(Modifier.size(side, side * 0.75f)) {
                val picture = photo(shown.photo, with(LocalDensity.current) { side.roundToPx() }, doer)
                if (picture == null) Missing("") else Image(picture, null, Modifier.fillMaxSize(), contentScale = ContentScale.Crop)
            }
            Text(shown.label, Modifier.padding(vertical = 2.dp), style = MaterialTheme.typography.labelMedium)
        }
    }
}
