package org.pitface.screens

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import org.pitface.state.App
import org.pitface.state.Phrase

/** The app as it stands: the screen of the core, and above all what went wrong outside it. */
@Composable
fun Whole(app: App, words: (Phrase) -> String) {
    val shown = app.shown
    val said = app.failure ?: if (shown == null) Phrase.OPENING else null
    Column(Modifier.fillMaxSize()) {
        if (said != null) {
            Text(
                words(said),
                Modifier.fillMaxWidth().padding(Edge).semantics { liveRegion = LiveRegionMode.Assertive },
                style = MaterialTheme.typography.bodyLarge,
                color = MaterialTheme.colorScheme.onBackground,
            )
        }
        if (shown != null) ScreenView(shown, app, Modifier.weight(1f))
    }
}
