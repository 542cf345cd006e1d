package org.pitface

import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TestRule
import org.junit.runner.JUnitCore
import org.junit.runner.RunWith
import org.junit.runners.model.Statement
import org.pitface.core.ShownScreen
import org.pitface.platform.MainActivity
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.File
import java.nio.file.Files
import java.util.concurrent.TimeUnit
import kotlin.system.exitProcess

/** All that stands on a screen, to be compared across processes. */
internal fun ShownScreen.all() = listOf(kind, title, answer, picture, blocks, caution, next?.label, tools.map { it.label }, more, back?.label).joinToString("\n")

/** Steps of the last pit of the field shown, as they are in the store. */
internal fun Phone.steps() = notes(shown.field!!).list("pits").last().list("walk").size

/** Puts the notes of the app into a folder that outlives the process. */
internal class NotesIn(private val folder: () -> File) : TestRule {
    override fun apply(test: Statement, description: org.junit.runner.Description) = object : Statement() {
        override fun evaluate() {
            Files.createSymbolicLink(File(process.filesDir, "notes").toPath(), folder().toPath())
            test.evaluate()
        }
    }
}

/** Run by [NewProcessTest] in a process of its own, which it ends without any warning; never by itself. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "en-rGB-w411dp-h891dp-port-notnight-xhdpi")
internal class Halted {
    @get:Rule(order = 0) val notes: TestRule = NotesIn { File(System.getProperty(FOLDER)) }

    @get:Rule(order = 1) val rule = createAndroidComposeRule<MainActivity>()

    private val phone by lazy { Phone(rule) }

    @Test fun walksAndIsHalted() {
        phone.tap("English")
        phone.app.takesInNotes(File(System.getProperty("demo.dir"), "lapwing_ground.notes.json").path)
        phone.to("start_pit")
        listOf("Wheeling", "Moist", "Slips in", "Crumbs", "Same as above", "Hard push").forEach(phone::tap)
        val report = File(System.getProperty(REPORT))
        report.writeText(listOf(phone.shown.field, phone.steps(), phone.shown.all()).joinToString("\n"))
        if (System.getProperty(HALFWAY) != null) {
            val next = phone.shown.buttons.first { it.label.startsWith("Flat plates") }
            rule.runOnUiThread { phone.app.does(next.does) } // the core is at it, and nobody waits for it
            Thread.sleep(System.getProperty(HALFWAY).toLong())
        }
        Runtime.getRuntime().halt(KILLED)
    }

    companion object {
        const val FOLDER = "halted.folder"
        const val REPORT = "halted.report"

        /** Milliseconds after a tap that is not waited for. */
        const val HALFWAY = "halted.halfway"
        const val KILLED = 137

        private val Passed = listOf("robolectric.offline", "robolectric.dependency.dir", "robolectric.logging", "demo.dir", "shots.dir", "jna.library.path")

        /** Starts it in another Java, and waits until that is gone; what it said of itself is given. */
        fun run(folder: File, report: File, halfway: Int?): String {
            val java = File(System.getProperty("java.home"), "bin/java").path
            val classes = System.getProperty("surefire.test.class.path") ?: System.getProperty("java.class.path")
            val own = mapOf(FOLDER to folder.path, REPORT to report.path) + (if (halfway == null) emptyMap() else mapOf(HALFWAY to halfway.toString())) +
                Passed.associateWith { System.getProperty(it) }
            val opened = listOf("io", "lang", "util", "nio", "net").map { "--add-opens=java.base/java.$it=ALL-UNNAMED" }
            val log = File(report.path + ".log")
            val child = ProcessBuilder(listOf(java, "-Xmx1g", "-Djna.encoding=UTF-8") + opened + own.map { (key, value) -> "-D$key=$value" } + listOf("-cp", classes, "org.pitface.HaltedKt"))
                .redirectErrorStream(true).redirectOutput(log).start()
            if (!child.waitFor(10, TimeUnit.MINUTES)) child.destroyForcibly()
            check(child.waitFor() == KILLED) { "it ended by itself: ${child.exitValue()}\n${log.readText().takeLast(4000)}" }
            return report.readText()
        }
    }
}

fun main() {
    val result = JUnitCore.runClasses(Halted::class.java)
    result.failures.forEach { println(it.trace) }
    exitProcess(1) // it was to be halted long before
}
