package org.pitface

import android.graphics.Bitmap
import android.graphics.Color
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasText
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownBlock
import org.pitface.core.ShownRow
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import kotlin.math.abs

/** An answer not given, one given, the next step, a way, what is off: told apart where there is no colour. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w1300dp-h1300dp-mdpi")
internal class GreyTest : Looking() {
    private val words = listOf("not given", "given", "off", "a way", "next step")
    private val screen = Samples.screen(
        ScreenKind.OWN, "Own details", "Which is which?",
        listOf(
            ShownBlock.Question("", 1u, listOf(Samples.button("not given"), Samples.button("given", chosen = true), Samples.button("off", enabled = false))),
            ShownBlock.Ways("", listOf(ShownRow(null, "a way", emptyList(), Samples.act("way")))),
        ),
        next = "next step",
    )

    @Test fun fiveLooksDifferInGrey() {
        show()
        for (dark in listOf(false, true)) {
            val painted = painted(screen, Look("411x891", 411, 891, 1f, dark, german = false, left = false))
            val looks = words.associateWith { grey(painted, it) }
            val alike = words.flatMapIndexed { index, one -> words.drop(index + 1).map { one to it } }.map { (one, other) -> Triple(one, other, apart(looks.getValue(one), looks.getValue(other))) }
            println("sweep: looks in grey ${if (dark) "in the dark" else "by day"} differ in at least ${alike.minOf { it.third }} of 100 pixels without their words")
            assertTrue("$alike", alike.all { it.third >= LEAST })
        }
    }

    /** Its place in grey, brought to one size, without the middle where its words are. */
    private fun grey(painted: Bitmap, word: String): List<Int> {
        val place = rule.onNode(hasText(word) and hasClickAction() and SemanticsMatcher("any") { true }).fetchSemanticsNode().boundsInRoot.inflate(2f) // with the line between two ways
        val left = place.left.toInt().coerceAtLeast(0)
        val cut = Bitmap.createBitmap(painted, left, place.top.toInt(), place.right.toInt().coerceAtMost(painted.width) - left, place.height.toInt())
        val small = Bitmap.createScaledBitmap(cut, WIDE, HIGH, true)
        return (0 until HIGH).flatMap { y -> (0 until WIDE).filterNot { it in WIDE / 4..WIDE * 3 / 4 && y in HIGH / 5..HIGH * 4 / 5 }.map { x -> small.getPixel(x, y) } }
            .map { (Color.red(it) * 299 + Color.green(it) * 587 + Color.blue(it) * 114) / 1000 }
    }

    private fun apart(one: List<Int>, other: List<Int>) = one.zip(other).count { (a, b) -> abs(a - b) > STEP } * 100 / one.size

    private companion object {
        const val WIDE = 200
        const val HIGH = 40

        /** Levels of grey, of 256, by which a pixel is another. */
        const val STEP = 12

        /** Pixels of 100 that differ at least. Our judgement: a thin edge round a tile is six. */
        const val LEAST = 3
    }
}
