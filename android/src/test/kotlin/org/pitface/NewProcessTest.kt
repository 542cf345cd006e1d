package org.pitface

import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.rules.TestRule
import org.junit.runner.RunWith
import org.junit.runners.model.Statement
import org.pitface.core.ScreenKind
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File

/** One process notes half a pit and is ended without warning; this one opens what it left. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class NewProcessTest {
    @get:Rule(order = 0) val folder = TemporaryFolder()

    private lateinit var left: String

    /** Milliseconds from the last tap to the end, by test; none where all was answered before it. */
    @get:Rule(order = 1) val other = TestRule { test, description ->
        object : Statement() {
            override fun evaluate() {
                val halfway = mapOf("aTapThatWasUnderWayIsThereOrNot" to 2)[description.methodName.substringBefore('[')]
                left = Halted.run(folder.newFolder("notes"), File(folder.root, "report"), halfway)
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 2) val notes: TestRule = NotesIn { File(folder.root, "notes") }

    @get:Rule(order = 3) val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private val field get() = left.lines()[0]
    private val noted get() = left.lines()[1].toInt()
    private val stood get() = left.lines().drop(2).joinToString("\n")

    @Test fun aProcessThatWasKilledIsTakenUpWhereItStood() {
        assertEquals(ScreenKind.KNIFE_WALK, phone.shown.kind)
        assertNull(phone.app.failure)
        assertEquals("all that stood there", stood, phone.shown.all())
        assertEquals("in the same field", field, phone.shown.field)
        assertEquals("and all that was noted", noted, phone.steps())
        phone.tap("Flat plates")
        phone.bottom()
        assertEquals("the work goes on", ScreenKind.NEXT_LOOK, phone.shown.kind)
        println("restart: a new process stands where the killed one stood, with all $noted steps")
    }

    @Test fun aTapThatWasUnderWayIsThereOrNot() {
        assertEquals(ScreenKind.KNIFE_WALK, phone.shown.kind)
        assertNull(phone.app.failure)
        val found = phone.steps()
        val there = phone.shown.all() != stood
        assertTrue("$found steps after $noted", found in noted..noted + 1)
        phone.tap(if (there) "Same as above" else "Flat plates")
        assertTrue("the next tap is noted", phone.steps() >= found)
        println("restart: the tap under way when the process was killed is ${if (there) "" else "not "}there, and nothing else is lost")
    }
}
