package org.pitface.platform

import android.net.Uri
import android.os.Bundle
import androidx.core.content.FileProvider
import org.pitface.core.ShownDoes
import org.pitface.state.Phrase
import java.io.File

/** The phone's own camera program; what the picture is of is kept while it is open, also where that ends the app. */
internal class Camera(private val window: MainActivity) {
    private class Pending(val path: String, val field: String, val pit: String, val depthMm: Int?)

    private var pending: Pending? = null
    private val process get() = window.application as Pitface

    fun take(wanted: ShownDoes.TakePhoto, launch: (Uri) -> Unit) {
        val file = File.createTempFile("pit", ".jpg", process.taken)
        pending = Pending(file.path, wanted.field, wanted.pit, wanted.depthMm?.toInt())
        val opened = window.launching(Phrase.NO_CAMERA) { launch(FileProvider.getUriForFile(window, window.packageName + ".files", file)) }
        if (!opened) returned(done = false)
    }

    fun returned(done: Boolean) {
        val taken = pending ?: return
        pending = null
        val file = File(taken.path)
        if (done && file.length() > 0) {
            process.app.photoTaken(taken.field, taken.pit, taken.depthMm?.toUInt(), taken.path, "image/jpeg")
        }
        process.offTheScreen { file.delete() }
    }

    /** Removes pictures that the camera left where the app was ended before it had them. */
    fun tidy() {
        val kept = pending?.path
        process.offTheScreen { process.taken.listFiles { file -> file.path != kept }?.forEach(File::delete) }
    }

    fun save(state: Bundle) = pending?.run {
        state.putBundle(KEY, Bundle().apply {
            putString("path", path)
            putString("field", field)
            putString("pit", pit)
            depthMm?.let { putInt("depth", it) }
        })
    }.let {}

    fun restore(state: Bundle?) {
        val kept = state?.getBundle(KEY) ?: return
        pending = Pending(
            kept.getString("path") ?: return, kept.getString("field") ?: return, kept.getString("pit") ?: return,
            if (kept.containsKey("depth")) kept.getInt("depth") else null,
        )
    }

    private companion object {
        const val KEY = "photo"
    }
}
