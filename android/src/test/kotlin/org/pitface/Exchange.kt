package org.pitface

import org.pitface.core.ShownDoes
import java.io.File

/**
 * The other side of `ios/test`, which starts this on a plain Java beside its tests: a phone over Kotlin's session that hands a field over, goes on with it, takes
 * in what a phone over Swift's session made of it, settles what differs and hands over once more. Files in the folder it is given are all that goes between
 * them. What it holds in the end lies beside them, for the other side to compare.
 */
fun main(arguments: Array<String>) {
    val (notes, folder) = arguments.map(::File)
    Neighbour("Kit").use { phone ->
        val field = phone.session.takesInNotes(notes.path).field!!
        phone.gives(File(folder, "kotlin-1.pitb"))
        phone.sets(field, "texture", "Light")
        phone.session.go("{\"field\":{\"field\":\"$field\"}}")
        phone.session.tap((phone.session.screen().tappable.first { (_, does) -> "{\"go\":{\"start_pit\"" in does.toString() }.second as ShownDoes.Act).act)
        listOf("Headland", "Moist").forEach(phone.session::tapOn)
        val wanted = phone.session.screen().tappable.firstNotNullOf { it.second as? ShownDoes.TakePhoto }
        val picture = File(folder, "photo.jpg").apply { writeBytes(jpeg(50_000)) }
        phone.session.photoTaken(wanted.field, wanted.pit, wanted.depthMm, picture.path, "image/jpeg")
        phone.takesIn(arrived(File(folder, "swift.pitb")))
        phone.session.go("{\"field\":{\"field\":\"$field\"}}")
        phone.session.tapOn("Long Sedge: one value in several versions")
        phone.session.tapOn("Light")
        File(phone.session.exportField(field, folder.path)).renameTo(File(folder, "kotlin.notes.json"))
        phone.gives(File(folder, "kotlin-2.pitb"))
    }
}

/** Under its name once it is whole. */
private fun Neighbour.gives(file: File) = check(handsOver().copyTo(File(file.path + ".part")).renameTo(file))

private fun arrived(file: File): File {
    repeat(6_000) { if (file.exists()) return file else Thread.sleep(100) }
    error("$file never came")
}
