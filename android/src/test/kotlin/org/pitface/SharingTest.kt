package org.pitface

import android.content.Intent
import android.net.Uri
import androidx.compose.ui.test.junit4.createAndroidComposeRule
import androidx.core.content.FileProvider
import androidx.test.platform.app.InstrumentationRegistry
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.core.ShownRow
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.util.ReflectionHelpers
import java.io.ByteArrayInputStream
import java.io.File

/** Two walkers: bundles leave by the share sheet and come by being opened, and what differs is settled where it is. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
class SharingTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }
    private val nora by lazy { Neighbour("Nora") }

    /** The provider of files keeps the folders of the first process it saw; each test here is a process of its own. */
    @Before fun forgetFolders() = ReflectionHelpers.getStaticField<MutableMap<*, *>>(FileProvider::class.java, "sCache").clear()

    @After fun end() = nora.close()

    private var opened = 0

    /** A file tapped in another program, or come in another way. */
    private fun opens(bytes: ByteArray, how: (Uri) -> Intent = { Intent(Intent.ACTION_VIEW, it) }) {
        val uri = Uri.parse("content://elsewhere/${opened++}")
        shadowOf(rule.activity.contentResolver).registerInputStream(uri, ByteArrayInputStream(bytes))
        comes(how(uri))
    }

    private fun comes(intent: Intent) {
        rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(rule.activity, intent) }
        foreignIsRead()
        phone.settle()
    }

    /** A notes file tapped in another program; what it would add is shown, and taken in. */
    private fun opensNotes(name: String) {
        opens(demo(name).readBytes())
        phone.tap("Take it in")
        assertEquals(phone.shown.told, ScreenKind.FIELD, phone.shown.kind)
    }

    /** Hands everything over by the share sheet; what the other program gets. */
    private fun shared(): ByteArray {
        toTheFields()
        phone.to("partners")
        phone.tap("Hand over everything")
        val chooser = shadowOf(rule.activity).nextStartedActivity
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        @Suppress("DEPRECATION") val send = chooser.getParcelableExtra<Intent>(Intent.EXTRA_INTENT)!!
        @Suppress("DEPRECATION") val uri = send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM)!!
        assertTrue("$uri", uri.path!!.endsWith(".pitb"))
        assertTrue(phone.shown.told, phone.shown.told.startsWith("The file is ready"))
        return rule.activity.contentResolver.openInputStream(uri)!!.use { it.readBytes() }
    }

    private fun toTheFields() {
        while (phone.shown.kind != ScreenKind.FIELDS) phone.back()
    }

    private fun demo(name: String) = File(System.getProperty("demo.dir"), "$name.notes.json")

    private fun file(bytes: ByteArray) = File.createTempFile("shared", ".pitb").apply { writeBytes(bytes) }

    @Test fun whatAStrangerHandsOverWaitsUntilItsSignsAreCompared() {
        phone.tap("English")
        nora.session.takesInNotes(demo("long_sedge").path)
        opens(nora.handsOver().readBytes())
        assertEquals(ScreenKind.PARTNERS, phone.shown.kind)
        phone.picture("partners-stranger")
        val row = phone.shown.rowsTo("partner").single()
        assertTrue(row.title, row.title.startsWith("Nora ("))
        phone.tap(row.title)
        phone.picture("partner-stranger")
        phone.tap("The same: accept ${row.title}")
        assertTrue(phone.shown.told, phone.shown.saved)
        phone.back()
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        assertEquals(listOf("Long Sedge"), phone.shown.rowsTo("field").map { it.title })
    }

    @Test fun twoVersionsStandInTheFieldUntilOneIsTapped() {
        phone.tap("English")
        opensNotes("long_sedge")
        val field = phone.shown.field!!
        nora.takesIn(file(shared()))
        nora.sets(field, "texture", "Heavy")
        toTheFields()
        phone.tap("Long Sedge")
        phone.tap(phone.shown.buttons.first { (it.does as? ShownDoes.Act)?.act?.contains("details") == true })
        phone.tap(phone.shown.tappable.first { (_, does) -> (does as? ShownDoes.Act)?.act?.contains("\"texture\"") == true }.first)
        phone.tap("Light")
        opens(nora.handsOver().readBytes())
        phone.tap(phone.shown.rows.first { it.title.startsWith("Nora (") }.title)
        phone.tap(phone.shown.next)
        phone.picture("partners-to-settle")
        toTheFields()
        phone.tap("Long Sedge")
        phone.picture("field-versions")
        phone.tap("Long Sedge: one value in several versions")
        assertEquals(ScreenKind.VERSIONS, phone.shown.kind)
        phone.picture("versions")
        phone.tap("Light")
        assertEquals("Long Sedge, texture: light stands from now on.", phone.shown.told)
        assertEquals("light", phone.notes(field).getJSONObject("field").getString("texture"))
        nora.takesIn(file(shared()))
        assertEquals(ScreenKind.FIELD, nora.session.go("{\"field\":{\"field\":\"$field\"}}").kind)
        assertFalse(nora.session.screen().rows.any { "several versions" in it.title })
    }

    @Test fun aDamagedFileIsToldAndChangesNothing() {
        phone.tap("English")
        nora.session.takesInNotes(demo("long_sedge").path)
        val bytes = nora.handsOver().readBytes()
        bytes[bytes.size / 2] = (bytes[bytes.size / 2].toInt() xor 1).toByte()
        opens(bytes)
        assertEquals("Not taken in: the file was damaged on its way. Have it sent again.", phone.shown.told)
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        phone.to("partners")
        assertEquals("nobody came to be known", emptyList<ShownRow>(), phone.shown.rowsTo("partner"))
    }

    @Test fun nothingToHandOverOpensNoSheet() {
        phone.tap("English")
        phone.to("partners")
        phone.tap("Hand over everything")
        assertNull(shadowOf(rule.activity).nextStartedActivity)
        assertEquals("There is nothing to hand over that is not there yet.", phone.shown.told)
    }

    /** Another program that never sends a byte: taps are answered meanwhile, and after a while it is said. */
    @Test fun aStreamThatGivesNothingHoldsUpNothing() {
        phone.tap("English")
        val uri = Uri.parse("content://elsewhere/silent")
        val waits = java.util.concurrent.CountDownLatch(1)
        val silent = object : java.io.InputStream() {
            override fun read(): Int = -1.also { waits.await() }
        }
        shadowOf(rule.activity.contentResolver).registerInputStream(uri, silent)
        rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(rule.activity, Intent(Intent.ACTION_VIEW, uri)) }
        phone.to("partners")
        assertEquals("taps are answered", ScreenKind.PARTNERS, phone.shown.kind)
        shadowOf(android.os.Looper.getMainLooper()).idleFor(java.time.Duration.ofMillis(org.pitface.platform.STALLED_MS))
        phone.settle()
        assertEquals(org.pitface.state.Phrase.CANNOT_READ_FILE, phone.app.failure)
        waits.countDown()
    }

    /** Types of IANA's registry (KML, KMZ; GeoJSON: RFC 7946, 12; GeoPackage: OGC 12-128r17), GPX's from memory, and what phones give where they know none. */
    @Test fun filesOfMapProgramsAreOfferedToTheApp() {
        fun offered(action: String, type: String?) = process.packageManager.queryIntentActivities(
            Intent(action).apply { if (action == Intent.ACTION_VIEW) setDataAndType(Uri.parse("content://elsewhere/x"), type) else setType(type) }, 0,
        ).any { it.activityInfo.name == MainActivity::class.java.name }
        for (action in listOf(Intent.ACTION_VIEW, Intent.ACTION_SEND)) {
            for (type in listOf(
                "application/octet-stream", "application/json", "application/zip", "application/geo+json", "application/vnd.google-earth.kml+xml",
                "application/vnd.google-earth.kmz", "application/gpx+xml", "text/xml", "application/geopackage+sqlite3",
            )) assertTrue("$action $type", offered(action, type))
            for (type in listOf("text/plain", "image/jpeg", "application/pdf")) assertFalse("$action $type", offered(action, type))
        }
    }

    @Test fun boundariesThatAnotherProgramSendsAreShownToChooseFrom() {
        phone.tap("English")
        val kml = File(System.getProperty("demo.dir"), "../../../tests/vectors/boundary/simple.kml").readBytes()
        opens(kml) { Intent(Intent.ACTION_SEND).setType("text/xml").putExtra(Intent.EXTRA_STREAM, it) }
        assertEquals(ScreenKind.FIELDS, phone.shown.kind)
        val areas = phone.shown.rows.map { it.title }
        assertTrue("$areas", areas.any { it.endsWith("ha") })
        phone.tap(areas.first { it.endsWith("ha") })
        assertEquals("an area becomes a field", ScreenKind.FIELD to true, phone.shown.kind to phone.shown.saved)
    }

    @Test fun whatIsSentWithoutAFileIsSaidToBeUnreadable() {
        phone.tap("English")
        comes(Intent(Intent.ACTION_SEND).setType("text/xml").putExtra(Intent.EXTRA_TEXT, "words").putExtra(Intent.EXTRA_STREAM, "no address"))
        assertEquals(org.pitface.state.Phrase.CANNOT_READ_FILE, phone.app.failure)
    }

    /** A path, or this app's own provider, is no file of another program. */
    @Test fun onlyWhatAnotherProgramGivesIsOpened() {
        phone.tap("English")
        val example = phone.shown.rowsTo("field")
        for (uri in listOf(Uri.fromFile(demo("long_sedge")), Uri.parse("content://${process.packageName}.files/handed/x.pitb"))) {
            rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(rule.activity, Intent(Intent.ACTION_VIEW, uri)) }
            phone.settle()
            assertEquals("$uri", org.pitface.state.Phrase.CANNOT_READ_FILE, phone.app.failure)
            assertEquals("no field, and nothing that waits", ScreenKind.FIELDS to example, phone.shown.kind to phone.shown.rowsTo("field"))
            phone.app.positionRefused()
            phone.settle()
        }
    }

    /** What was handed out an hour ago, and what the camera left when the app was ended, is removed. */
    @Test fun whatIsNoLongerWantedIsRemoved() {
        phone.tap("English")
        val old = File(process.handed, "old.pitb").apply { writeText("x") }.apply { setLastModified(System.currentTimeMillis() - 3_700_000) }
        val new = File(process.handed, "new.pitb").apply { writeText("x") }
        val left = File(process.taken, "pit1.jpg").apply { writeText("x") }
        rule.activityRule.scenario.recreate()
        phone.settle()
        assertFalse(old.exists())
        assertTrue(new.exists())
        assertFalse(left.exists())
    }

    @Test fun theKeyIsLeftOutOfEveryBackup() {
        phone.tap("English")
        val key = File(process.noBackupFilesDir, "key/key")
        assertEquals(65, key.length())
        val notes = File(process.filesDir, "notes").walk().filter { it.isFile }.map { it.name }.toSet()
        assertFalse("$notes", "key" in notes)
    }

    /** A bit of a photo turns over between two starts: the next one says so, and the file of another phone brings it back. */
    @Test fun whatRottedIsFoundAtTheStartAndComesBack() {
        phone.tap("English")
        opensNotes("long_sedge")
        val field = phone.shown.field!!
        val pit = phone.notes(field).list("pits").first().getString("id")
        val picture = jpeg(50_000)
        phone.app.photoTaken(field, pit, null, file(picture).path, "image/jpeg")
        phone.settle()
        nora.takesIn(file(shared()))
        val photo = File(process.filesDir, "notes/photos").listFiles()!!.single()
        photo.writeBytes(picture.copyOf().apply { this[999] = (this[999].toInt() xor 8).toByte() })
        process.reopen()
        rule.activityRule.scenario.recreate()
        phone.settle()
        toTheFields()
        phone.to("partners")
        assertTrue(phone.shown.all(), "A photo on this phone is damaged." in phone.shown.all())
        phone.picture("partners-damaged")
        opens(nora.handsOver().readBytes())
        assertTrue(phone.shown.told, "Photos that came: 1." in phone.shown.told)
        assertTrue(photo.readBytes().contentEquals(picture))
        assertFalse("damaged" in phone.shown.all())
    }
}
