package org.pitface.platform

import android.content.ContentResolver
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Handler
import android.os.Looper
import android.os.Parcelable
import android.os.SystemClock
import android.provider.OpenableColumns
import androidx.core.content.FileProvider
import org.pitface.state.Phrase
import java.io.File
import java.io.IOException
import java.io.InputStream
import java.util.UUID
import java.util.concurrent.atomic.AtomicBoolean

/** A season's photos come near this; what is larger was chosen by mistake, and is not to fill the phone. */
private const val LARGEST_BYTES = 4L * 1024 * 1024 * 1024

/** A program that sends a file gives something of it within this; one that fetches it from elsewhere first says so before. */
internal const val STALLED_MS = 30_000L

/** A file that is not here by then was chosen by mistake, or its program does not mean well. */
private const val LONGEST_MS = 600_000L

/** Other programs have read what was handed to them by then, or asked the person again. */
private const val KEPT_MS = 3_600_000L

/** Removes what was handed to other programs, or came from them, and is no longer wanted. */
internal fun Pitface.tidy() = offTheScreen {
    val until = System.currentTimeMillis() - KEPT_MS
    handed.listFiles { file -> file.lastModified() < until }?.forEach { it.deleteRecursively() }
}

/** A chooser of programs and people to hand a file to. */
internal fun Context.handOver(file: File): Intent {
    val uri = FileProvider.getUriForFile(this, "$packageName.files", file)
    val type = if (file.extension == "html") "text/html" else "application/octet-stream"
    val send = Intent(Intent.ACTION_SEND).setType(type).putExtra(Intent.EXTRA_STREAM, uri)
        .putExtra(Intent.EXTRA_SUBJECT, file.name).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
    send.clipData = android.content.ClipData.newRawUri(file.name, uri)
    return Intent.createChooser(send, null)
}

/** The file that another program sends; `null` where it sends none, or something that cannot be unpacked here. */
internal fun Intent.sent(): Uri? = runCatching { @Suppress("DEPRECATION") getParcelableExtra<Parcelable>(Intent.EXTRA_STREAM) as? Uri }.getOrNull()

/**
 * Copies a file of another program and gives it to the core. It is read on a thread of its own: another program may let one wait for ever. A stream
 * that gives nothing for [STALLED_MS], or is not at its end after [LONGEST_MS], is closed and said to be unreadable.
 */
internal fun Pitface.takeIn(uri: Uri) {
    // A path (file:) would let another program name files of this one, and so would this app's own provider.
    val foreign = uri.scheme == ContentResolver.SCHEME_CONTENT && uri.authority != "$packageName.files"
    if (!foreign) return app.say(Phrase.CANNOT_READ_FILE)
    Foreign(this, uri).start()
}

private class Foreign(private val process: Pitface, private val uri: Uri) {
    private val main = Handler(Looper.getMainLooper())
    private val folder = File(process.handed, "taken_in-${UUID.randomUUID()}")
    private val copy = File(folder, "part")
    private val over = AtomicBoolean()
    private val began = SystemClock.elapsedRealtime()
    private val reader = Thread(::readAll, "foreign").apply { isDaemon = true }

    @Volatile private var from: InputStream? = null

    @Volatile private var bytes = 0L
    private var bytesBefore = 0L

    fun start() {
        reader.start()
        main.postDelayed(::watch, STALLED_MS)
    }

    private fun watch() {
        if (over.get()) return
        val late = bytes == bytesBefore || SystemClock.elapsedRealtime() - began > LONGEST_MS
        bytesBefore = bytes
        if (!late) {
            main.postDelayed(::watch, STALLED_MS)
            return
        }
        end(null)
        reader.interrupt()
        // Closing may wait for the other program too.
        Thread({ runCatching { from?.close() } }, "foreign-close").apply { isDaemon = true }.start()
    }

    private fun readAll() {
        val whole = try {
            folder.mkdirs()
            val opened = process.contentResolver.openInputStream(uri) ?: throw IOException("no stream")
            from = opened
            opened.use(::copyFrom)
            // The core knows a file again by the name that the other program gives it.
            File(folder, name()).takeIf(copy::renameTo) ?: copy
        } catch (_: Exception) { // the other program's own faults arrive here too, of any kind
            null
        }
        main.post { end(whole) }
    }

    /** What came is given to the core once; whatever arrives after that is of nobody's concern. */
    private fun end(whole: File?) {
        if (!over.compareAndSet(false, true)) return
        if (whole != null) process.app.importFile(whole.path) else process.app.say(Phrase.CANNOT_READ_FILE)
        process.offTheScreen { folder.deleteRecursively() }
    }

    private fun name(): String {
        val columns = arrayOf(OpenableColumns.DISPLAY_NAME)
        val name = runCatching { process.contentResolver.query(uri, columns, null, null, null)?.use { if (it.moveToFirst()) it.getString(0) else null } }
        return File(name.getOrNull().orEmpty()).name.ifEmpty { uri.toString().hashCode().toUInt().toString(16) }
    }

    private fun copyFrom(stream: InputStream) = copy.outputStream().use { out ->
        val buffer = ByteArray(64 * 1024)
        while (!over.get()) {
            val count = stream.read(buffer)
            if (count < 0) break
            bytes += count
            if (bytes > LARGEST_BYTES) throw IOException("too large")
            out.write(buffer, 0, count)
        }
    }
}
