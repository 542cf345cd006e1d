package org.pitface

import org.json.JSONArray
import org.json.JSONObject
import org.pitface.core.SessionInterface
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.robolectric.util.ReflectionHelpers
import java.io.File
import java.nio.file.Files

/** Acts are opaque to the app; a test may look into them for the field they are of. */
internal val ShownScreen.field: String?
    get() = tappable.firstNotNullOfOrNull { (_, does) -> if (does is ShownDoes.ShareField) does.field else (does as? ShownDoes.Act)?.let { IdOfField.find(it.act)?.groupValues?.get(1) } }

private val IdOfField = Regex("\"field\":\"([^\"]+)\"")

/** What the store holds of a field, as it would be handed over now. */
internal fun Phone.notes(field: String) = JSONObject(written { exportField(field, it) }.decodeToString())

/** The sheet of a field as the core writes it. */
internal fun Phone.sheet(field: String) = written { exportPage(field, false, it) }

/** What the core writes into a folder. */
private fun Phone.written(write: SessionInterface.(String) -> String): ByteArray {
    settle()
    val folder = Files.createTempDirectory("held").toFile()
    return try {
        File(ReflectionHelpers.getField<SessionInterface>(app, "session").write(folder.path)).readBytes()
    } finally {
        folder.deleteRecursively()
    }
}

internal fun JSONObject.list(key: String): List<JSONObject> = optJSONArray(key).orEmpty()

private fun JSONArray?.orEmpty(): List<JSONObject> = if (this == null) emptyList() else (0 until length()).map(::getJSONObject)

internal fun JSONArray.numbers(): List<Int> = (0 until length()).map(::getInt)
