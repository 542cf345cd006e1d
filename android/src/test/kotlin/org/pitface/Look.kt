package org.pitface

/** One way of looking at a screen, in dp. */
internal data class Look(
    val device: String, val width: Int, val height: Int, val font: Float, val dark: Boolean, val german: Boolean, val left: Boolean,
) {
    val language get() = if (german) "de" else "en"

    override fun toString() = listOf(device, language, if (dark) "dark" else "light", font, if (left) "left" else "right").joinToString(" ")

    companion object {
        private val Devices = listOf("small" to (360 to 640), "phone" to (411 to 891), "tablet" to (800 to 1280), "land" to (891 to 411))
        private val Both = listOf(false, true)

        /** Every device at every size of letters. */
        val layouts = Devices.flatMap { (name, size) -> listOf(1f, 1.5f, 2f).map { Look(name, size.first, size.second, it, dark = false, german = false, left = false) } }

        /** All there are: 96. */
        val all = Both.flatMap { german -> layouts.flatMap { look -> Both.flatMap { dark -> Both.map { left -> look.copy(dark = dark, german = german, left = left) } } } }

        /** Every layout once, the rest in turn, so that over a few screens every pair of properties is met. */
        fun inTurn(turn: Int) = layouts.mapIndexed { index, look ->
            val bits = (turn + index) % 8
            look.copy(dark = bits and 1 != 0, german = bits and 2 != 0, left = bits and 4 != 0)
        }

        /** Those whose pictures are written. */
        val pictured = listOf(
            Look("phone", 411, 891, 1f, dark = false, german = false, left = false), Look("small", 360, 640, 2f, dark = true, german = true, left = false),
            Look("land", 891, 411, 1f, dark = false, german = false, left = true), Look("tablet", 800, 1280, 1f, dark = true, german = false, left = false),
        )
    }
}
