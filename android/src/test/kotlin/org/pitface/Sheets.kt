package org.pitface

import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Color
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Contact sheets for whoever judges the screens: every kind in six looks, side by side. `android/sheets` writes them; no test runs this. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w1300dp-h1300dp-mdpi")
internal class Sheets : Looking() {
    @Test fun everyKindInSixLooks() {
        show()
        val wanted = System.getProperty("kinds")?.split(',')
        val met = listOf("en", "de").associateWith { Tour.screens(it) }
        val shown = met.getValue("en").indices.groupBy { met.getValue("en")[it].kind }.filterKeys { wanted == null || it.name.lowercase() in wanted }
        shown.forEach { (kind, those) ->
            // The fullest, and the first and last where they differ: a screen begins with little.
            val chosen = listOf(those.first(), those.maxBy { met.getValue("en")[it].toString().length }, those.last()).distinct()
            chosen.forEachIndexed { number, place -> sheet("${kind.name.lowercase()}-${number + 1}") { met.getValue(it)[place] } }
        }
        println("sheets: ${shown.size} kinds of screen, each in ${Look.pictured.size} looks")
    }

    private fun sheet(name: String, screen: (String) -> org.pitface.core.ShownScreen) {
        val looks = Look.pictured
        val sheet = Bitmap.createBitmap(looks.sumOf { it.width + GAP } + GAP, looks.maxOf { it.whole } + GAP * 2, Bitmap.Config.ARGB_8888)
        val canvas = Canvas(sheet).apply { drawColor(Color.GRAY) }
        var left = GAP
        looks.forEach { look ->
            val painted = painted(screen(look.language).copy(leftHanded = look.left), look)
            canvas.save()
            canvas.clipRect(left, GAP, left + look.width, GAP + look.whole)
            canvas.drawColor(painted.getPixel(1, 1))
            canvas.restore()
            canvas.drawBitmap(painted, left.toFloat(), (GAP + Look.ABOVE).toFloat(), null)
            left += look.width + GAP
        }
        sheet.written("sheets/$name")
    }

    private companion object {
        const val GAP = 12
    }
}
