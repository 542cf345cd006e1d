package org.pitface

import org.json.JSONArray
import org.json.JSONObject
import org.json.JSONTokener
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.pitface.core.PitfaceException
import org.pitface.core.checkNotes
import org.pitface.core.lookBundle
import org.pitface.core.readField
import java.io.File

/** The published cases of `tests/vectors` on this side of the border: what Rust is held to, word by word and code by code. */
class VectorsTest {
    private val folder = File("../tests/vectors")

    private fun text(name: String) = File(folder, name).readText()

    /** At, what is wrong and what to do, in order. */
    private fun faults(told: JSONArray) = (0 until told.length()).map { told.getJSONObject(it) }.map { Triple(it.getString("at"), it.getString("wrong"), it.getString("todo")) }

    @Test fun everyFaultOfEveryBadFileIsTheSameWordByWord() {
        val table = JSONObject(text("bad_inputs.json"))
        val good = written(table.getJSONObject("good"))
        assertEquals("the file that the cases break is good", "[]", checkNotes(good))
        val cases = table.list("cases")
        val differ = cases.mapNotNull { case ->
            val told = faults(JSONArray(checkNotes(broken(case, good))))
            val expected = faults(case.getJSONArray("faults"))
            "${case.getString("name")}\n  told     $told\n  expected $expected".takeIf { told != expected }
        }
        println("vectors: ${cases.size - differ.size} of ${cases.size} bad files with the same faults through Kotlin")
        assertTrue(differ.joinToString("\n"), differ.isEmpty() && cases.size >= 45)
    }

    /** The text of a case: its own, or the good file with some values set and some keys removed. */
    private fun broken(case: JSONObject, good: String): String {
        if (case.has("text")) return case.getString("text")
        val file = JSONObject(good)
        val set = case.optJSONObject("set") ?: JSONObject()
        for (pointer in set.keys()) when (val parent = file.at(pointer.substringBeforeLast('/'))) {
            is JSONArray -> parent.put(pointer.substringAfterLast('/').toInt(), set.get(pointer))
            is JSONObject -> parent.put(pointer.substringAfterLast('/'), set.get(pointer))
        }
        val removed = case.optJSONArray("remove") ?: JSONArray()
        for (index in 0 until removed.length()) {
            val pointer = removed.getString(index)
            val gone = (file.at(pointer.substringBeforeLast('/')) as JSONObject).remove(pointer.substringAfterLast('/'))
            assertTrue("$pointer is there to be removed", gone != null)
        }
        return written(file)
    }

    /** As it stands in the table: the framework's own writer makes 3 of 3.0, and the core says a number back as it was written. */
    private fun written(value: Any): String = when (value) {
        is JSONObject -> value.keys().asSequence().joinToString(",", "{", "}") { "${JSONObject.quote(it)}:${written(value.get(it))}" }
        is JSONArray -> (0 until value.length()).joinToString(",", "[", "]") { written(value.get(it)) }
        is String -> JSONObject.quote(value)
        else -> value.toString()
    }

    private fun JSONObject.at(pointer: String): Any = pointer.split('/').drop(1).fold(this as Any) { here, key ->
        if (here is JSONArray) here.get(key.toInt()) else (here as JSONObject).get(key)
    }

    /** The golden bundles of every released version, which never change, hold on this side what they hold in Rust. */
    @Test fun everyGoldenBundleHoldsTheSame() {
        val files = File(folder, "bundles").walk().filter { it.extension == "pitb" }.sorted().toList()
        val differ = files.filter { file ->
            val expected = JSONObject(File(file.path.removeSuffix("pitb") + "json").readText()).list("parts")
            val told = JSONObject(lookBundle(file.readBytes())).list("parts")
            expected.forEach { part ->
                part.remove("doubles") // bits of numbers, for readers that take values apart
                part.list("edits").forEach { edit -> edit.optJSONObject("value")?.let { edit.put("value", it.getString("head") + it.getString("repeated").repeat(it.getInt("times"))) } }
            }
            expected.map(::sorted) != told.map(::sorted)
        }
        println("vectors: ${files.size - differ.size} of ${files.size} golden bundles the same through Kotlin")
        assertTrue("$differ", differ.isEmpty() && files.size >= 9)
    }

    @Test fun aGoldenBundleWithABitTurnedOverIsRefused() {
        val bytes = File(folder, "bundles/version_1/one_device.pitb").readBytes()
        for (at in bytes.indices step 7) {
            val broken = bytes.copyOf().apply { this[at] = (this[at].toInt() xor 1).toByte() }
            assertTrue("byte $at", runCatching { lookBundle(broken) }.exceptionOrNull() is PitfaceException.Invalid)
        }
    }

    /** With keys in order, so that two texts are equal where the values are. */
    private fun sorted(value: Any?): String = when (value) {
        is JSONObject -> value.keys().asSequence().sorted().joinToString(",", "{", "}") { "$it:${sorted(value.get(it))}" }
        is JSONArray -> (0 until value.length()).joinToString(",", "[", "]") { sorted(value.get(it)) }
        else -> value.toString()
    }

    @Test fun everyDecisionIsTheSame() {
        val cases = JSONTokener(text("decisions.json")).nextValue() as JSONArray
        val differ = (0 until cases.length()).map(cases::getJSONObject).mapNotNull { case ->
            val read = JSONObject(readField(text(case.getString("file"))))
            val zone = case.getString("zone")
            val call = read.getJSONObject("zones").optJSONObject(zone) ?: read.getJSONObject("whole")
            "${case.getString("id")} $zone: $call".takeIf { !said(case, call) || !layerFound(case, read) }
        }
        println("vectors: ${cases.length() - differ.size} of ${cases.length()} decisions the same through Kotlin")
        assertTrue(differ.joinToString("\n"), differ.isEmpty() && cases.length() > 0)
    }

    /** The call of the source, tips within its range, and the caution and follow-up it asks for. */
    private fun said(case: JSONObject, call: JSONObject): Boolean {
        val within = case.optJSONArray("tip_mm")?.numbers()
        val tip = call.optJSONArray("tip_mm")?.numbers()
        val tips = if (within == null) tip == null || call.getString("call") == "wait" else tip != null && within[0] <= tip[0] && tip[1] <= within[1]
        val reasons = call.list("reasons").map { it.optString("what") }
        return call.getString("call") == case.getString("call") && tips &&
            wanted(case, "reason").all { it in reasons } &&
            wanted(case, "caution").all { it in call.getJSONArray("cautions").codes() } &&
            wanted(case, "follow_up").all { it in call.getJSONArray("follow_up").codes() }
    }

    private fun wanted(case: JSONObject, key: String) = listOfNotNull(if (case.isNull(key)) null else case.getString(key))

    private fun JSONArray.codes() = (0 until length()).map(::getString)

    /** The concern is the last pit of each file. */
    private fun layerFound(case: JSONObject, read: JSONObject): Boolean {
        val layer = case.optJSONObject("layer") ?: return true
        return read.list("pits").last().list("layers").any { found -> layer.keys().asSequence().all { layer.get(it) == found.get(it) } }
    }
}
