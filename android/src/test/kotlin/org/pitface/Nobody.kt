package org.pitface

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.graphics.ImageBitmap
import org.pitface.core.ShownDoes
import org.pitface.screens.Doer

/** Somebody who only looks. */
internal open class Nobody : Doer {
    override var menu by mutableStateOf(false)
    override fun does(what: ShownDoes) = Unit
    override fun touched(what: ShownDoes, x: Double, y: Double) = Unit
    override fun typed(act: String, text: String) = Unit
    override fun enter() = Unit
    override fun photo(hash: String, side: Int, shown: (ImageBitmap?) -> Unit) = shown(null)
}
