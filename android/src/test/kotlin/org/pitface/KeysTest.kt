package org.pitface

import android.view.KeyEvent
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File

/** The keys at the side of the phone answer the knife walk where they are told to, and are left alone everywhere else. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class KeysTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }

    private fun inTheKnifeWalk() {
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "long_sedge.notes.json").path)
        phone.to("start_pit")
        phone.tap("Wheeling")
        phone.tap("Moist")
        assertEquals(ScreenKind.KNIFE_WALK, phone.shown.kind)
        phone.tap("Crumbs")
    }

    private fun steps() = phone.notes(phone.shown.field!!).list("pits").last().list("walk").size

    /** Whether the window took a key, down and up. */
    private fun press(code: Int, repeated: Int = 0): Boolean {
        var taken = false
        rule.runOnUiThread {
            taken = (0..repeated).map { rule.activity.onKeyDown(code, KeyEvent(0, 0, KeyEvent.ACTION_DOWN, code, it)) }.all { it }
            taken = rule.activity.onKeyUp(code, KeyEvent(KeyEvent.ACTION_UP, code)) && taken
        }
        phone.settle()
        return taken
    }

    @Test fun theyAreLeftAloneUntilTheyAreWanted() {
        phone.tap("English")
        inTheKnifeWalk()
        assertNull(phone.shown.keys)
        assertFalse(press(KeyEvent.KEYCODE_HEADSETHOOK))
        assertEquals(1, steps())
    }

    @Test fun theyAnswerTheKnifeWalkOnceTheyAreToldTo() {
        phone.tap("English")
        phone.to("own")
        phone.tap(phone.shown.tappable.first { (_, does) -> (does as? ShownDoes.Act)?.act?.contains("volume_keys") == true }.first)
        phone.tap(phone.shown.questions.single().answers.last())
        assertTrue(phone.shown.told, phone.shown.saved && phone.shown.told.isNotEmpty())
        phone.picture("own-keys")
        inTheKnifeWalk()
        assertNotNull(phone.shown.keys)
        phone.picture("knife-walk-keys")
        assertTrue(press(KeyEvent.KEYCODE_VOLUME_UP, repeated = 5))
        assertEquals("held down it answers once", 2, steps())
        assertTrue(phone.shown.told, phone.shown.told.contains("rumbs"))
        assertTrue(press(KeyEvent.KEYCODE_HEADSETHOOK))
        assertEquals(3, steps())
        assertTrue(press(KeyEvent.KEYCODE_VOLUME_DOWN))
        assertEquals("taken back", 2, steps())
        phone.back()
        assertNull("only there", phone.shown.keys)
        assertFalse(press(KeyEvent.KEYCODE_HEADSETHOOK))
    }
}
