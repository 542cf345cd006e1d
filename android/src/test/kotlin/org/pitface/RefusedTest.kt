package org.pitface

import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.app.Activity
import android.content.pm.PackageManager.PERMISSION_DENIED
import android.provider.Settings
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.json.JSONObject
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TestRule
import org.junit.runner.RunWith
import org.junit.runners.model.Statement
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.platform.MainActivity
import org.pitface.state.Phrase
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File

/** Whatever the phone does not give, the work goes on. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class RefusedTest {
    /** The reader of manifests that these tests have is older than the word for it, so what it says is done by hand. */
    @get:Rule(order = 0) val manifest = TestRule { test, _ ->
        object : Statement() {
            override fun evaluate() {
                val says = File("target/res/AndroidManifest.xml").readText().contains("android:enableOnBackInvokedCallback=\"true\"")
                listOf(process.applicationInfo, shadowOf(process.packageManager).getInternalMutablePackageInfo(process.packageName).applicationInfo)
                    .forEach { it!!.setEnableOnBackInvokedCallback(says) }
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 1) val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private val window get() = shadowOf(rule.activity)

    private fun inTheField(language: String = "English") {
        phone.tap(language)
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "long_sedge.notes.json").path)
        assertEquals(ScreenKind.FIELD, phone.shown.kind)
    }

    private inline fun <reified D : ShownDoes> asking() = phone.shown.tappable.first { it.second is D }.first

    private fun refuse() {
        val asked = window.lastRequestedPermission
        assertTrue(ACCESS_FINE_LOCATION in asked.requestedPermissions)
        val denied = IntArray(asked.requestedPermissions.size) { PERMISSION_DENIED }
        rule.runOnUiThread { @Suppress("DEPRECATION") rule.activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, denied) }
        phone.settle()
    }

    /** Whether the phone would show its question again; false once it was refused for good. */
    private fun asksAgain(asks: Boolean) =
        shadowOf(rule.activity.packageManager).setShouldShowRequestPermissionRationale(ACCESS_FINE_LOCATION, asks)

    private fun pit(): JSONObject = phone.notes(phone.shown.field!!).list("pits").last()

    @Test fun refusingEverythingStillGivesACall() {
        inTheField()
        phone.to("start_pit")
        phone.tap("Wheeling")
        asksAgain(true)
        phone.tap(asking<ShownDoes.AllowPosition>())
        refuse()
        assertNull("it is not said twice", phone.app.failure)
        phone.picture("refused-start-pit")
        byHand()
        listOf("Moist", "Slips in", "Crumbs", "Same as above", "Same as above", "Same as above", "Hard push", "Flat plates", "Same as above", "Firm push", "Rounded lumps")
            .forEach(phone::tap)
        phone.bottom()
        phone.passesOverTheRest()
        assertEquals(ScreenKind.CALL, phone.shown.kind)
        noPhoto()
        val call = phone.shown.answer!!.text
        assertTrue(call, call.isNotBlank())
        assertTrue("the position is neither asked for again nor read", shadowOf(rule.activity.getSystemService(android.location.LocationManager::class.java)).getLocationRequests("gps").isEmpty())
        assertEquals("no photo is noted", 0, pit().list("photos").size)
        phone.picture("refused-call")
        println("refused: position and camera, and the call is \"$call\"")
    }

    private fun byHand() {
        assertFalse("not placed yet", pit().has("at"))
        phone.to("on_plan")
        assertEquals(ScreenKind.ON_PLAN, phone.shown.kind)
        phone.tap("North")
        val moved = pit().get("at").toString()
        phone.tap(phone.shown.next)
        assertEquals(ScreenKind.START_PIT, phone.shown.kind)
        assertEquals("placed by hand", moved, pit().get("at").toString())
    }

    /** First there is no camera; then there is one, and it gives nothing. */
    private fun noPhoto() {
        phone.to("photos")
        shadowOf(rule.activity.application).checkActivities(true) // no program of the phone answers
        phone.tap(asking<ShownDoes.TakePhoto>())
        assertEquals(Phrase.NO_CAMERA, phone.app.failure)
        rule.onNode(hasText("no camera", substring = true)).assertIsDisplayed()
        shadowOf(rule.activity.application).checkActivities(false)
        phone.tap(asking<ShownDoes.TakePhoto>())
        val taking = window.nextStartedActivityForResult
        rule.runOnUiThread { window.receiveResult(taking.intent, Activity.RESULT_CANCELED, null) }
        phone.settle()
        assertEquals("nothing is left behind", 0, process.taken.list()!!.size)
        phone.back()
        assertEquals(ScreenKind.CALL, phone.shown.kind)
    }

    @Test fun whatIsRefusedForGoodCanBeAllowedInTheSettings() {
        inTheField("Deutsch")
        phone.to("start_pit")
        phone.tap(phone.shown.questions.first().answers.first())
        asksAgain(false)
        phone.tap(asking<ShownDoes.AllowPosition>())
        refuse()
        assertEquals(Phrase.POSITION_REFUSED, phone.app.failure)
        rule.onNode(hasText("gesperrt", substring = true)).assertIsDisplayed()
        phone.picture("refused-for-good-de")
        phone.tap("Einstellungen öffnen")
        val opened = window.nextStartedActivity
        assertEquals(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, opened.action)
        assertEquals("package:org.pitface.app", opened.dataString)
        shadowOf(rule.activity.application).grantPermissions(ACCESS_FINE_LOCATION)
        rule.activityRule.scenario.moveToState(androidx.lifecycle.Lifecycle.State.CREATED)
        rule.activityRule.scenario.moveToState(androidx.lifecycle.Lifecycle.State.RESUMED)
        phone.settle()
        assertEquals("it listens once it is allowed", 1, shadowOf(rule.activity.getSystemService(android.location.LocationManager::class.java)).getLocationRequests("gps").size)
    }

    /** Newer phones call a listener where older ones sent a key. */
    @Test fun goingBackInTheWayOfNewerPhones() {
        assertTrue("the manifest says so", rule.activity.applicationInfo.isOnBackInvokedCallbackEnabled)
        inTheField()
        invokeBack()
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        assertFalse(rule.activity.isFinishing)
        invokeBack()
        assertTrue("back from the topmost screen leaves", rule.activity.isFinishing)
    }

    private fun invokeBack() {
        rule.runOnUiThread {
            val dispatcher = rule.activity.window.decorView.findOnBackInvokedDispatcher() ?: rule.activity.onBackInvokedDispatcher
            val top = (dispatcher as android.window.WindowOnBackInvokedDispatcher).topCallback
            assertNotNull("somebody listens for back", top)
            top!!.onBackInvoked()
        }
        phone.settle()
    }
}
