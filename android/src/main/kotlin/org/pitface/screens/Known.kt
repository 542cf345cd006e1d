package org.pitface.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.HorizontalDivider
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownKnown
import org.pitface.core.ShownRow

/** The upper part of a screen; [large] where letters are for somebody standing beside. */
@Composable
fun Known(blocks: List<ShownKnown>, doer: Doer, width: Dp, large: Boolean = false) {
    val type = MaterialTheme.typography
    val strong = if (large) type.displaySmall else type.titleLarge
    val plain = if (large) type.headlineMedium else type.bodyLarge
    Column(Modifier.fillMaxWidth(), verticalArrangement = Arrangement.spacedBy(6.dp)) {
        blocks.forEach { block ->
            when (block) {
                is ShownKnown.Sentence -> Words(block.text, strong)
                is ShownKnown.Line -> Words(block.text, plain)
                is ShownKnown.Section -> Section(block, plain)
                is ShownKnown.Rows -> Rows(block.rows, doer)
                is ShownKnown.Picture -> Painted(
                    block.drawing,
                    width.value,
                    Modifier.semantics {
                        role = Role.Image
                        contentDescription = listOf(block.title, block.description).filter { it.isNotEmpty() }.joinToString(". ")
                    },
                )
            }
        }
    }
}

@Composable
private fun Words(text: String, style: TextStyle, modifier: Modifier = Modifier) {
    Text(text, modifier.padding(horizontal = Edge, vertical = 2.dp), style = style, color = MaterialTheme.colorScheme.onBackground)
}

@Composable
private fun Section(section: ShownKnown.Section, plain: TextStyle) {
    Column(Modifier.fillMaxWidth(), verticalArrangement = Arrangement.spacedBy(2.dp)) {
        if (section.heading.isNotEmpty()) {
            Words(section.heading, plain.copy(fontWeight = FontWeight.Bold), Modifier.padding(top = 6.dp).semantics { heading() })
        }
        section.lines.forEach { Words(it, plain) }
    }
}

@Composable
private fun Rows(rows: List<ShownRow>, doer: Doer) {
    Column(Modifier.fillMaxWidth()) {
        rows.forEach { row ->
            HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
            Surface(
                onClick = { doer.does(row.does) },
                modifier = Modifier.fillMaxWidth().heightIn(min = 64.dp).semantics { role = Role.Button },
                color = MaterialTheme.colorScheme.background,
                contentColor = MaterialTheme.colorScheme.onBackground,
            ) {
                Row(Modifier.padding(horizontal = Edge, vertical = 8.dp), verticalAlignment = Alignment.CenterVertically) {
                    Column(Modifier.weight(1f), verticalArrangement = Arrangement.spacedBy(1.dp)) {
                        Text(row.title, style = MaterialTheme.typography.titleMedium)
                        row.lines.forEach { Text(it, style = MaterialTheme.typography.bodyMedium) }
                    }
                }
            }
        }
        HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
    }
}
