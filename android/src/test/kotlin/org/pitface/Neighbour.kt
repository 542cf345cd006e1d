package org.pitface

import org.pitface.core.Session
import org.pitface.core.SessionInterface
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import java.io.File
import java.nio.file.Files

/** The act of what leads somewhere; acts are opaque to the app, a test may make one. */
internal fun SessionInterface.go(place: String): ShownScreen = tap("{\"go\":$place}")

/** Taps the last thing whose words begin like this, a row or a button. */
internal fun SessionInterface.tapOn(words: String): ShownScreen {
    val (_, does) = screen().tappable.last { (label, does) -> label.startsWith(words) && does is ShownDoes.Act }
    return tap((does as ShownDoes.Act).act)
}

/** Somebody else's phone, without a window: takes in what is handed over, goes on with it, and hands it back. */
internal class Neighbour(private val name: String) : AutoCloseable {
    private val folder = Files.createTempDirectory("neighbour").toFile()
    val session: Session = Session.open(folder.path, folder.path, "en", 60)

    init {
        session.tapOn("English")
        session.go("{\"setting\":{\"setting\":\"name\"}}").also { session.type(it.typings.single().act, name) }
    }

    /** Believes whoever handed this over. */
    fun takesIn(file: File) {
        session.importFile(file.path)
        while (true) {
            val waiting = session.go("\"partners\"").rows.firstOrNull { row -> row.lines.any { it.startsWith("waits") } } ?: return
            session.tapOn(waiting.title)
            session.tapOn("The same")
        }
    }

    fun handsOver(): File = File(session.exportBundle(null, true, folder.path).path!!)

    /** A detail of a field, by the label of its answer. */
    fun sets(field: String, detail: String, label: String) {
        session.go("{\"detail\":{\"field\":\"$field\",\"detail\":\"$detail\"}}")
        session.tapOn(label)
    }

    override fun close() {
        session.close()
        folder.deleteRecursively()
    }
}
