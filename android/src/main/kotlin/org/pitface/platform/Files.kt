package org.pitface.platform

import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Handler
import android.os.Looper
import androidx.core.content.FileProvider
import org.pitface.state.Phrase
import java.io.File
import java.io.IOException
import java.io.InputStream

/** A season's photos come near this; what is larger was chosen by mistake, and is not to fill the phone. */
private const val LARGEST_BYTES = 4L * 1024 * 1024 * 1024

/** A chooser of programs and people to hand a file to. */
internal fun Context.handOver(file: File): Intent {
    val uri = FileProvider.getUriForFile(this, "$packageName.files", file)
    val send = Intent(Intent.ACTION_SEND).setType("application/octet-stream").putExtra(Intent.EXTRA_STREAM, uri)
        .putExtra(Intent.EXTRA_SUBJECT, file.name).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
    send.clipData = android.content.ClipData.newRawUri(file.name, uri)
    return Intent.createChooser(send, null)
}

/** Copies a file of another program and gives it to the core. */
internal fun Pitface.takeIn(uri: Uri) = offTheScreen {
    val copy = File.createTempFile("taken_in", ".part", handed)
    try {
        val from = contentResolver.openInputStream(uri) ?: throw IOException("no stream")
        from.use { it.copyUpTo(LARGEST_BYTES, copy) }
        onTheScreen {
            app.importFile(copy.path)
            offTheScreen { copy.delete() }
        }
    } catch (_: Exception) { // the other program's own faults arrive here too, of any kind
        copy.delete()
        onTheScreen { app.say(Phrase.CANNOT_READ_FILE) }
    }
}

private fun onTheScreen(task: () -> Unit) {
    Handler(Looper.getMainLooper()).post(task)
}

private fun InputStream.copyUpTo(bytes: Long, file: File) = file.outputStream().use { out ->
    val buffer = ByteArray(64 * 1024)
    var left = bytes
    while (true) {
        val read = read(buffer)
        if (read < 0) break
        left -= read
        if (left < 0) throw IOException("too large")
        out.write(buffer, 0, read)
    }
}
