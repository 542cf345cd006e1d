package org.pitface.screens

import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.ImageBitmap
import org.pitface.core.ShownDoes
import org.pitface.state.Phrase

/** What a screen has done by others. */
interface Doer {
    /** A tap. */
    fun does(what: ShownDoes)

    /** A finger lifted at a place of a drawing, in its points. */
    fun touched(what: ShownDoes, x: Double, y: Double)

    /** What stands in a field now; it is entered later. */
    fun typed(act: String, text: String)

    /** What was typed is entered. */
    fun enter()

    /** The picture of a photo, not much larger than [side] pixels; `null` where there is none. */
    fun photo(hash: String, side: Int, shown: (ImageBitmap?) -> Unit)

    /** The menu of the screen is open. */
    var menu: Boolean
}

/** The few words that the shell says itself. */
val LocalWords = staticCompositionLocalOf<(Phrase) -> String> { { it.key } }

/** A photo once it is read, not much larger than [side] pixels. */
@Composable
internal fun photo(hash: String?, side: Int, doer: Doer): ImageBitmap? {
    var found by remember(hash, side) { mutableStateOf<ImageBitmap?>(null) }
    LaunchedEffect(hash, side) { if (hash != null) doer.photo(hash, side) { found = it } }
    return found
}
