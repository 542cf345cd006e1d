package org.pitface.screens

import androidx.compose.foundation.BorderStroke
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.foundation.verticalScroll
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import org.pitface.state.App
import org.pitface.state.Phrase

/** The app as it stands: the screen of the core, and above all what went wrong outside it. */
@Composable
fun Whole(app: App, words: (Phrase) -> String) {
    val shown = app.shown
    val said = app.failure ?: if (shown == null) Phrase.OPENING else null
    val way = if (said?.leadsToSettings == true) words(Phrase.SETTINGS) else null
    val scale = LocalDensity.current.fontScale
    LaunchedEffect(app, scale, shown == null) { if (shown != null) app.letters(scale) }
    CompositionLocalProvider(LocalWords provides words) {
        Above(said?.let(words), way, { app.platform?.openSettings() }) { if (shown != null) ScreenView(shown, app, it) }
    }
}

/** What the shell says above a screen, on no more than a part of the height. */
@Composable
internal fun Above(said: String?, way: String?, goes: () -> Unit, screen: @Composable (Modifier) -> Unit) = BoxWithConstraints(Modifier.fillMaxSize()) {
    val beside = maxWidth > maxHeight
    val most = maxHeight * if (beside) 0.33f else 0.4f
    Column(Modifier.fillMaxSize()) {
        if (said != null) Said(said, way, goes, beside, Modifier.heightIn(max = most).verticalScroll(rememberScrollState()))
        screen(Modifier.weight(1f))
    }
}

/** A sentence, and the way to put it right where there is one: under it, or [beside] it where the screen is low. */
@Composable
private fun Said(sentence: String, way: String?, goes: () -> Unit, beside: Boolean, modifier: Modifier) {
    val words = @Composable { room: Modifier ->
        Text(
            sentence, room.semantics { liveRegion = LiveRegionMode.Assertive },
            style = MaterialTheme.typography.bodyLarge, color = MaterialTheme.colorScheme.onBackground,
        )
    }
    val outer = modifier.fillMaxWidth().padding(Edge)
    if (way != null && beside) {
        Row(outer, Arrangement.spacedBy(Gap), Alignment.CenterVertically) {
            words(Modifier.weight(1f))
            Way(way, goes, Modifier)
        }
    } else {
        Column(outer, Arrangement.spacedBy(Gap)) {
            words(Modifier)
            if (way != null) Way(way, goes, Modifier.fillMaxWidth())
        }
    }
}

@Composable
private fun Way(label: String, goes: () -> Unit, modifier: Modifier) {
    val scheme = MaterialTheme.colorScheme
    Surface(
        goes, modifier.heightIn(min = 64.dp).semantics { role = Role.Button },
        shape = RoundedCornerShape(10.dp), color = scheme.background, contentColor = scheme.onBackground, border = BorderStroke(1.dp, scheme.outline),
    ) {
        Text(label, Modifier.padding(horizontal = Edge, vertical = 16.dp), style = MaterialTheme.typography.titleMedium, textAlign = TextAlign.Center)
    }
}
