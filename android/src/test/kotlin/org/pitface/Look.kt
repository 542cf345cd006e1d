package org.pitface

/** One way of looking at a screen, in dp: the whole glass, of which the system's bars take [ABOVE] and [BELOW]. */
internal data class Look(
    val device: String, val width: Int, val whole: Int, val font: Float, val dark: Boolean, val german: Boolean, val left: Boolean,
) {
    val language get() = if (german) "de" else "en"

    /** What is left to the app. */
    val height get() = whole - ABOVE - BELOW

    /** A phone with letters no larger than these: everything of rank is in sight. */
    val sees get() = font <= 1.3f

    override fun toString() = listOf(device, language, if (dark) "dark" else "light", font, if (left) "left" else "right").joinToString(" ")

    companion object {
        const val ABOVE = 24
        const val BELOW = 48

        private val Phones = listOf("360x640" to (360 to 640), "360x780" to (360 to 780), "393x852" to (393 to 852), "411x891" to (411 to 891), "430x932" to (430 to 932), "land" to (640 to 360))
        private val Tablet = "tablet" to (800 to 1280)
        private val Both = listOf(false, true)
        private val Sizes = listOf(1f, 1.15f, 1.3f, 2f)

        /** Every phone at every size of letters, day and dark in turn. */
        val layouts = Phones.flatMapIndexed { place, (name, size) ->
            Sizes.mapIndexed { index, letters -> Look(name, size.first, size.second, letters, dark = (place + index) % 2 == 1, german = false, left = false) }
        } + Look(Tablet.first, Tablet.second.first, Tablet.second.second, 1f, dark = true, german = false, left = false)

        /** In both languages, for either hand: 100. */
        val all = Both.flatMap { german -> layouts.flatMap { look -> Both.map { left -> look.copy(german = german, left = left, dark = look.dark != left) } } }

        /** A dozen of them, others at each turn, so that over a few screens every pair of properties is met. */
        fun inTurn(turn: Int) = (0 until 12).map { all[(turn * 7 + it * 17) % all.size] }

        /** Those of the contact sheets, in their order. */
        val pictured = listOf(
            Look("360x640", 360, 640, 1.3f, dark = false, german = false, left = false), Look("360x640", 360, 640, 1.3f, dark = false, german = true, left = false),
            Look("411x891", 411, 891, 1f, dark = false, german = false, left = false), Look("411x891", 411, 891, 1f, dark = true, german = false, left = false),
            Look("393x852", 393, 852, 1.15f, dark = false, german = false, left = true), Look("360x780", 360, 780, 2f, dark = false, german = true, left = false),
        )
    }
}
