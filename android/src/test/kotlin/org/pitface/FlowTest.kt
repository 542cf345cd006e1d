package org.pitface

import android.Manifest.permission.ACCESS_COARSE_LOCATION
import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.app.Activity
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager.PERMISSION_DENIED
import android.content.pm.PackageManager.PERMISSION_GRANTED
import android.location.Location
import android.location.LocationManager
import android.net.Uri
import android.os.SystemClock
import android.provider.MediaStore
import android.view.HapticFeedbackConstants
import android.view.WindowManager
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.core.content.FileProvider
import androidx.test.platform.app.InstrumentationRegistry
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.util.ReflectionHelpers
import java.io.ByteArrayInputStream
import java.io.File
import kotlin.random.Random

/** The app as a whole: window, core and store, driven by what stands on the screen. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class FlowTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private val window get() = shadowOf(rule.activity)

    /** The provider of files keeps the folders of the first process it saw; each test here is a process of its own. */
    @Before fun forgetFolders() = ReflectionHelpers.getStaticField<MutableMap<*, *>>(FileProvider::class.java, "sCache").clear()

    private fun started(language: String = "English"): Phone = phone.apply {
        assertEquals(ScreenKind.WELCOME, shown.kind)
        tap(language)
        assertEquals(ScreenKind.FIELDS, shown.kind)
    }

    /** With a field of the demo taken in, as if it had been opened in another program. */
    private fun inAField(): Phone = started().apply {
        opens(Uri.parse("content://elsewhere/notes/1"), demo("long_sedge").readBytes())
        tap("Take it in")
        assertEquals(shown.told, ScreenKind.FIELD, shown.kind)
    }

    private fun demo(name: String) = File(System.getProperty("demo.dir"), "$name.notes.json")

    private fun opens(uri: Uri, bytes: ByteArray) {
        shadowOf(rule.activity.contentResolver).registerInputStream(uri, ByteArrayInputStream(bytes))
        view(uri)
    }

    private fun view(uri: Uri) {
        rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(rule.activity, Intent(Intent.ACTION_VIEW, uri)) }
        foreignIsRead()
        phone.settle()
    }

    /** What asks the phone for something, by its words. */
    private inline fun <reified D : ShownDoes> ShownScreen.asking() = tappable.first { it.second is D }.first

    @Test fun theFirstStartAsksForTheLanguageAndNothingElse() {
        phone.picture("welcome")
        started("Deutsch")
        assertEquals("de", phone.shown.language)
        phone.picture("fields-empty-de")
        assertNull("nothing is asked", window.lastRequestedPermission)
        phone.back()
        assertTrue("back from the topmost screen leaves", rule.activity.isFinishing)
    }

    @Test fun turningThePhoneChangesNothing() {
        inAField()
        val before = phone.shown.copy(saved = false)
        RuntimeEnvironment.setQualifiers("+land")
        phone.settle()
        assertEquals(before, phone.shown.copy(saved = false))
        phone.picture("field-land")
        rule.activityRule.scenario.recreate()
        assertEquals(before, phone.shown.copy(saved = false))
    }

    @Test fun backGoesUpOnePlaceAtATime() {
        inAField()
        phone.back()
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        assertFalse(rule.activity.isFinishing)
        phone.picture("fields")
        phone.tap("Long Sedge")
        assertEquals(ScreenKind.FIELD, phone.shown.kind)
        phone.picture("field")
    }

    @Test fun aNotesFileIsShownBeforeAnythingOfItIsTakenIn() {
        started()
        opens(Uri.parse("content://elsewhere/notes/3"), demo("long_sedge").readBytes())
        phone.picture("notes-file")
        assertTrue("the field is named", "Long Sedge" in phone.shown.all())
        phone.back()
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        assertFalse("nothing of it was taken in", "Long Sedge" in phone.shown.all())
    }

    @Test fun aFileThatIsNoneIsToldAndChangesNothing() {
        started()
        opens(Uri.parse("content://elsewhere/notes/2"), "nothing of the kind".toByteArray())
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        assertNotEquals("", phone.shown.told)
    }

    @Test fun aFileThatCannotBeReadIsSaid() {
        started()
        view(Uri.parse("content://nobody/1"))
        assertNotNull(phone.app.failure)
        rule.onNode(hasText("cannot be read", substring = true)).assertIsDisplayed()
    }

    @Test fun aProcessThatWasEndedComesBackToTheSamePlace() {
        inAField()
        phone.to("start_pit")
        val before = phone.shown
        process.reopen()
        rule.activityRule.scenario.recreate()
        phone.settle()
        assertEquals(before.kind, phone.shown.kind)
        assertEquals(before.title, phone.shown.title)
    }

    @Test fun thePositionIsAskedForOnlyWhenAllowed() {
        inAField()
        phone.to("start_pit")
        assertTrue(phone.shown.wantsPosition)
        assertNull("not asked without being told why", window.lastRequestedPermission)
        begin()
        phone.tap(phone.shown.asking<ShownDoes.AllowPosition>())
        assertTrue(ACCESS_FINE_LOCATION in window.lastRequestedPermission.requestedPermissions)
        answer(PERMISSION_DENIED)
        val without = phone.shown
        assertEquals("the work goes on", ScreenKind.START_PIT, without.kind)
        phone.picture("start-pit-refused")
    }

    @Test fun aFixShowsOnceThePositionIsAllowed() {
        inAField()
        phone.to("start_pit")
        begin()
        val without = phone.shown
        phone.tap(phone.shown.asking<ShownDoes.AllowPosition>())
        shadowOf(manager).setProviderEnabled(LocationManager.GPS_PROVIDER, true)
        shadowOf(rule.activity.application).grantPermissions(ACCESS_FINE_LOCATION, ACCESS_COARSE_LOCATION)
        answer(PERMISSION_GRANTED)
        fix()
        assertNotEquals("a fix shows", without.all(), phone.shown.all())
        phone.picture("start-pit-fix")
    }

    /** The kind of place is answered; then the hole is to be dug. */
    private fun begin() = phone.tap(phone.shown.questions.first().answers.first())

    private fun answer(result: Int) {
        val asked = window.lastRequestedPermission
        rule.runOnUiThread { @Suppress("DEPRECATION") rule.activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, IntArray(asked.requestedPermissions.size) { result }) }
        phone.settle()
    }

    private val manager get() = rule.activity.getSystemService(Context.LOCATION_SERVICE) as LocationManager

    private fun fix() {
        assertEquals("listening", 1, shadowOf(manager).getLocationRequests(LocationManager.GPS_PROVIDER).size)
        repeat(3) { second ->
            rule.runOnUiThread {
                shadowOf(manager).simulateLocation(Location(LocationManager.GPS_PROVIDER).apply {
                    latitude = 54.0; longitude = 3.0; accuracy = 4f; time = 1_760_000_000_000 + second * 1000; elapsedRealtimeNanos = SystemClock.elapsedRealtimeNanos()
                })
            }
            phone.settle()
        }
    }

    @Test fun aPhotoComesBackAlsoWhereTheCameraEndedTheApp() {
        inAField()
        phone.to("start_pit")
        begin()
        toAPhoto()
        phone.tap(phone.shown.asking<ShownDoes.TakePhoto>())
        val taking = window.nextStartedActivityForResult
        assertEquals(MediaStore.ACTION_IMAGE_CAPTURE, taking.intent.action)
        @Suppress("DEPRECATION") val uri = taking.intent.getParcelableExtra<Uri>(MediaStore.EXTRA_OUTPUT)!!
        rule.activity.contentResolver.openOutputStream(uri)!!.use { it.write(Jpeg) }
        process.reopen()
        rule.activityRule.scenario.recreate()
        phone.settle()
        rule.runOnUiThread { window.receiveResult(taking.intent, Activity.RESULT_OK, null) }
        phone.settle()
        assertTrue(phone.shown.told, phone.shown.saved)
        assertEquals("the picture is the core's now", 0, process.taken.list()!!.size)
        phone.picture("photo-taken")
    }

    /** Before the knife spoils the face. */
    private fun toAPhoto() {
        phone.tap("Moist")
        assertEquals(ScreenKind.KNIFE_WALK, phone.shown.kind)
    }

    @Test fun aFieldIsHandedToAnotherProgram() {
        inAField()
        phone.to("hand_over")
        phone.tap(phone.shown.asking<ShownDoes.ShareField>())
        val chooser = window.nextStartedActivity
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        @Suppress("DEPRECATION") val send = chooser.getParcelableExtra<Intent>(Intent.EXTRA_INTENT)!!
        assertEquals(Intent.ACTION_SEND, send.action)
        @Suppress("DEPRECATION") val uri = send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM)!!
        val bytes = rule.activity.contentResolver.openInputStream(uri)!!.use { it.readBytes() }
        assertTrue(bytes.decodeToString().contains("Long Sedge"))
        assertNotEquals(0, send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION)
    }

    @Test fun theSheetLeavesAsTheCoreWritesIt() {
        val field = inAField().shown.field!!
        phone.to("hand_over")
        phone.tap(phone.shown.asking<ShownDoes.SharePage>())
        @Suppress("DEPRECATION") val send = window.nextStartedActivity.getParcelableExtra<Intent>(Intent.EXTRA_INTENT)!!
        @Suppress("DEPRECATION") val uri = send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM)!!
        assertTrue("$uri", uri.path!!.endsWith("Long_Sedge.html"))
        assertEquals("text/html", send.type)
        val handed = rule.activity.contentResolver.openInputStream(uri)!!.use { it.readBytes() }
        assertArrayEquals(phone.sheet(field), handed)
        assertTrue(handed.decodeToString().contains("<h1>Long Sedge</h1>"))
    }

    /** By lot, from a fixed seed, through whatever there is to be tapped. */
    @Test fun aWalkThroughTheWindowNeverEndsNowhere() {
        inAField()
        val lot = Random(11)
        val met = mutableSetOf<ScreenKind>()
        repeat(60) {
            val here = phone.shown
            met += here.kind
            val buttons = here.buttons.filter { it.enabled && it.does is ShownDoes.Act && it != here.undo && it.label.isNotEmpty() }
            val words = (buttons.map { it.label } + here.rows.filter { it.does is ShownDoes.Act }.map { it.title }).randomOrNull(lot)
            if (here.kind == ScreenKind.SHOW || words == null) phone.back() else phone.tap(words)
            assertNull("$words on ${here.kind}", phone.app.failure)
            if (rule.activity.isFinishing) return@repeat
        }
        println("crawl: 60 taps in the window, through $met")
        assertTrue("$met", met.size >= 5)
    }

    @Test fun whatIsSavedIsFeltAndTheFaceKeepsTheScreenAwake() {
        inAField()
        phone.to("start_pit")
        begin()
        assertTrue(phone.shown.saved)
        assertEquals(HapticFeedbackConstants.CONFIRM, shadowOf(rule.activity.window.decorView).lastHapticFeedbackPerformed())
        phone.tap("Moist")
        assertEquals(ScreenKind.KNIFE_WALK, phone.shown.kind)
        assertTrue(phone.shown.awake)
        assertNotEquals(0, rule.activity.window.attributes.flags and WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        phone.picture("knife-walk")
    }

    @Test fun theNetworkIsOutOfReach() {
        val info = rule.activity.packageManager.getPackageInfo("org.pitface.app", android.content.pm.PackageManager.GET_PERMISSIONS)
        assertEquals(
            setOf(ACCESS_FINE_LOCATION, ACCESS_COARSE_LOCATION, "org.pitface.app.DYNAMIC_RECEIVER_NOT_EXPORTED_PERMISSION"),
            info.requestedPermissions!!.toSet(),
        )
    }

    private companion object {
        val Jpeg = byteArrayOf(0xFF.toByte(), 0xD8.toByte(), 0xFF.toByte(), 0xE0.toByte(), 0, 16, 'J'.code.toByte(), 'F'.code.toByte(), 'I'.code.toByte(), 'F'.code.toByte(), 0, 1, 0xFF.toByte(), 0xD9.toByte())
    }
}
