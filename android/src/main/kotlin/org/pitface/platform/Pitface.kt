package org.pitface.platform

import android.app.Application
import android.os.Handler
import android.os.Looper
import org.pitface.core.Session
import org.pitface.state.App
import java.io.File
import java.util.Locale
import java.util.TimeZone
import java.util.concurrent.Executor
import java.util.concurrent.Executors

/** Minutes that the clock of this phone is ahead of universal time now. */
internal fun offsetMinutes(): Int = TimeZone.getDefault().getOffset(System.currentTimeMillis()) / 60_000

/** The process: one session over the app's own folder, spoken to on one thread. */
class Pitface : Application() {
    private val work = Executors.newSingleThreadExecutor { Thread(it, "core") }
    private val aside = Executors.newSingleThreadExecutor { Thread(it, "check").apply { priority = Thread.MIN_PRIORITY } }
    private val pictures = Executors.newSingleThreadExecutor { Thread(it, "pictures").apply { priority = Thread.MIN_PRIORITY } }
    private val handler = Handler(Looper.getMainLooper())

    /** Where pictures lie until the core has taken them in. */
    val taken: File get() = File(filesDir, "taken").apply { mkdirs() }

    /** Where files lie that are handed to other programs or came from them. */
    val handed: File get() = File(cacheDir, "handed").apply { mkdirs() }

    private var held: App? = null

    /** The app; it outlives its window. */
    val app: App get() = held ?: opened().also { held = it }

    private fun opened(): App {
        val notes = File(filesDir, "notes").apply { mkdirs() }
        // Left out of every backup by the system itself.
        val key = File(noBackupFilesDir, "key").apply { mkdirs() }
        return App(handed.path, work, Executor { handler.post(it) }, aside, pictures, ::decoded) {
            Session.open(notes.path, key.path, Locale.getDefault().toLanguageTag(), offsetMinutes())
        }
    }

    /** Lets go of the notes, and opens them anew when they are next wanted. */
    fun reopen() {
        held?.close()
        held = null
    }

    /** For work on files that the core is then told of, in order with what it is asked. */
    internal fun offTheScreen(task: () -> Unit) = work.execute(task)
}
