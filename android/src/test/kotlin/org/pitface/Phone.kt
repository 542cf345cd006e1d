package org.pitface

import android.graphics.Bitmap
import android.os.Looper
import androidx.compose.ui.graphics.asAndroidBitmap
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasSetTextAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.AndroidComposeTestRule
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performImeAction
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextReplacement
import androidx.test.core.app.ApplicationProvider
import androidx.test.ext.junit.rules.ActivityScenarioRule
import org.pitface.core.ScreenKind
import org.pitface.core.Session
import org.pitface.core.ShownBlock
import org.pitface.core.ShownButton
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.pitface.platform.MainActivity
import org.pitface.platform.Pitface
import org.pitface.state.App
import org.robolectric.Shadows.shadowOf
import java.io.File

internal val process: Pitface get() = ApplicationProvider.getApplicationContext()

/** Waits until the core has answered and the screen has it. */
internal fun App.settle() {
    val until = System.currentTimeMillis() + 60_000
    do {
        shadowOf(Looper.getMainLooper()).idle()
        if (idle) return
        Thread.sleep(1)
    } while (System.currentTimeMillis() < until)
    throw AssertionError("the core does not answer")
}

/** Waits until what another program gives is copied; the core is asked after that. */
internal fun foreignIsRead() = Thread.getAllStackTraces().keys.filter { it.name == "foreign" }.forEach(Thread::join)

/** Opens a notes file and takes it in. */
internal fun App.takesInNotes(path: String) {
    importFile(path)
    settle()
    does(ShownDoes.Act("\"take_in\""))
}

internal fun Session.takesInNotes(path: String): ShownScreen = importFile(path).let { tap("\"take_in\"") }

/** A JPEG with nothing in it but data: start, start of the scan, what is scanned, end. */
internal fun jpeg(bytes: Int): ByteArray = bytesOf(0xff, 0xd8, 0xff, 0xda, 0, 2) + ByteArray(bytes) { (it * 7 and 127).toByte() } + bytesOf(0xff, 0xd9)

private fun bytesOf(vararg bytes: Int) = bytes.map(Int::toByte).toByteArray()

internal val ShownScreen.questions get() = blocks.filterIsInstance<ShownBlock.Question>()

internal val ShownScreen.buttons: List<ShownButton>
    get() = menu + questions.flatMap { it.answers } + listOfNotNull(back, next) + tools

internal val ShownScreen.rows get() = blocks.filterIsInstance<ShownBlock.Ways>().flatMap { it.rows }

/** The rows that lead to a place; acts are opaque to the app, a test may look into them. */
internal fun ShownScreen.rowsTo(place: String) = rows.filter { (it.does as? ShownDoes.Act)?.act.orEmpty().startsWith("{\"go\":{\"$place\":") }

internal val ShownScreen.typings get() = blocks.filterIsInstance<ShownBlock.Typing>()

internal val ShownScreen.pictures get() = listOfNotNull(picture) + blocks.filterIsInstance<ShownBlock.Picture>().map { it.picture }

/** The tool that takes back the last thing; acts are opaque to the app, a test may look into them. */
internal val ShownScreen.undo get() = tools.firstOrNull { (it.does as? ShownDoes.Act)?.act == "\"undo\"" }

/** All that can be tapped. */
internal val ShownScreen.tappable: List<Pair<String, ShownDoes>>
    get() = buttons.filter { it.enabled }.map { it.label to it.does } + rows.map { it.title to it.does }

/** The app as a thumb meets it: by what stands on the screen. */
internal class Phone(private val rule: AndroidComposeTestRule<ActivityScenarioRule<MainActivity>, MainActivity>) {
    val app get() = process.app
    val shown: ShownScreen get() = settle().let { app.shown ?: throw AssertionError("nothing is shown: ${app.failure}") }

    /** A screen that was drawn may have had the phone tell the core something: that is answered too. */
    fun settle() {
        do {
            app.settle()
            rule.waitForIdle()
        } while (!app.idle)
    }

    /** Taps the first thing with these words on it; what stands in the menu after opening it. */
    fun tap(words: String) {
        settle()
        val said = (hasText(words) or hasContentDescription(words)) and hasClickAction()
        if (rule.onAllNodes(said).fetchSemanticsNodes().isEmpty() && shown.menu.any { it.label == words }) {
            app.menu = true
            rule.waitForIdle()
        }
        val node = rule.onAllNodes(said)[0]
        runCatching { node.performScrollTo() }
        node.performClick()
        settle()
    }

    /** Taps what leads from here to a place, by a button or else a row; acts are opaque to the app, a test may look into them. */
    fun to(place: String) {
        val here = shown
        val there = here.tappable.filter { (_, does) -> does != here.back?.does && (does as? ShownDoes.Act)?.act.orEmpty().let { "{\"go\":{\"$place\"" in it || "{\"go\":\"$place\"" in it } }
        tap((there.firstOrNull() ?: throw AssertionError("nothing leads to $place from ${here.kind}: ${here.tappable}")).first)
    }

    fun tap(button: ShownButton?) = tap(button?.label ?: throw AssertionError("no such button on ${shown.kind}"))

    fun type(text: String) {
        settle()
        rule.onAllNodes(hasSetTextAction())[0].performScrollTo().performTextReplacement(text)
    }

    fun enter() {
        rule.onAllNodes(hasSetTextAction())[0].performImeAction()
        settle()
    }

    fun back() {
        rule.runOnUiThread { rule.activity.onBackPressedDispatcher.onBackPressed() }
        settle()
    }

    fun picture(name: String) {
        val file = File(System.getProperty("shots.dir"), "$name.png").apply { parentFile!!.mkdirs() }
        file.outputStream().use { rule.onRoot().captureToImage().asAndroidBitmap().compress(Bitmap.CompressFormat.PNG, 100, it) }
    }

    /** The bottom of the hole; a second time where it lies higher than was wanted. */
    fun bottom() {
        tap("Bottom of hole")
        if (shown.kind == ScreenKind.KNIFE_WALK) tap("Bottom of hole")
    }

    /** Looks and rolls that are still asked for are not done. */
    fun passesOverTheRest() {
        while (shown.kind == ScreenKind.NEXT_LOOK || shown.kind == ScreenKind.ROLL) tap(shown.tools.last())
    }
}
