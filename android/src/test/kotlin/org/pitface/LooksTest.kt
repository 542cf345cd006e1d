package org.pitface

import androidx.compose.material3.ColorScheme
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.pitface.screens.EarthByDay
import org.pitface.screens.EarthInTheDark
import org.pitface.state.Phrase
import org.w3c.dom.Element
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory

class LooksTest {
    private fun ColorScheme.texts() = mapOf(
        "screen, answer not given, way" to (onBackground to background), "what was told" to (onSurface to surfaceVariant),
        "off" to (tertiary to background), "next step" to (onPrimary to primary), "answer given" to (onSecondaryContainer to secondaryContainer),
    )

    private fun ColorScheme.marks() = mapOf(
        "edge of an answer" to (outline to background), "edge of a row" to (outlineVariant to background), "edge of the answer given" to (onBackground to background),
        "tick" to (onSecondaryContainer to secondaryContainer),
    )

    /** WCAG 2.2, success criterion 1.4.11. */
    @Test fun everyMarkStandsAtThreeToOne() {
        for ((name, scheme) in mapOf("day" to EarthByDay, "dark" to EarthInTheDark)) scheme.marks().forEach { (what, pair) ->
            val found = contrast(pair.first, pair.second)
            assertTrue("$name, $what: $found", found >= 3f)
        }
    }

    /** WCAG 2.2, success criterion 1.4.6. */
    @Test fun everyTextStandsAtSevenToOne() {
        for ((name, scheme) in mapOf("day" to EarthByDay, "dark" to EarthInTheDark)) scheme.texts().forEach { (what, pair) ->
            val found = contrast(pair.first, pair.second)
            assertTrue("$name, $what: $found", found >= 7f)
        }
    }

    @Test fun everyPhraseIsThereInEveryLanguageAndNoOther() {
        val wanted = Phrase.entries.map { it.key }.toSet()
        for (folder in listOf("values", "values-de")) assertEquals(folder, wanted, strings(File("src/main/res/$folder/strings.xml")).keys - "app_name")
    }

    private fun strings(file: File): Map<String, String> {
        val found = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).getElementsByTagName("string")
        return (0 until found.length).map { found.item(it) as Element }.associate { it.getAttribute("name") to it.textContent }
    }

    /** The window asks the core and decides nothing: what soil, places, time and records mean has no name in it. */
    @Test fun screensAndStateKnowNothingOfThePhone() {
        for (folder in listOf("screens", "state")) File("src/main/kotlin/org/pitface/$folder").walk().filter { it.extension == "kt" }.forEach { file ->
            val alien = file.readLines().filter { line ->
                line.startsWith("import ") && listOf("android.", "androidx.activity", "androidx.core", "androidx.lifecycle", "org.pitface.app", "org.pitface.platform").any { line.startsWith("import $it") }
            }
            assertEquals(file.path, emptyList<String>(), alien)
        }
    }
}
