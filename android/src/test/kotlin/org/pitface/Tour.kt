package org.pitface

import org.pitface.core.ScreenKind
import org.pitface.core.Session
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import java.io.File
import java.nio.file.Files

/**
 * Every place of the app over the demo estate, without a window, in two languages at once: the way is told in the words
 * of the one, and what stands at the same place on the screen is tapped in the other.
 */
internal object Tour {
    /** Screens of the tour, by language, in the same order. */
    fun screens(language: String): List<ShownScreen> = toured.getValue(language)

    private val toured by lazy {
        val folders = List(2) { Files.createTempDirectory("tour").toFile() }
        val (english, german) = listOf("en", "de").zip(folders).map { (language, folder) -> Session.open(folder.path, folder.path, language, 60) }
        english.use { german.use { Both(english, german).apply { everywhere() } } }
            .let { mapOf("en" to it.met.map { both -> both.first }, "de" to it.met.map { both -> both.second }) }
            .also { folders.forEach(File::deleteRecursively) }
    }

    private class Both(private val english: Session, private val german: Session) {
        val met = mutableListOf<Pair<ShownScreen, ShownScreen>>()
        private val here get() = met.last().first

        private fun each(what: Session.() -> ShownScreen?) {
            val (one, other) = english.what() to german.what()
            if (one == null || other == null) return check(one == other) { "in one language only: ${(one ?: other)?.title}" }
            check(one.kind == other.kind) { "${one.title} is not ${other.title}" }
            met += one to other
        }

        private fun tap(what: String, found: (Pair<String, ShownDoes>) -> Boolean) {
            val place = here.tappable.indexOfLast { it.second is ShownDoes.Act && found(it) }
            check(place >= 0) { "no $what on ${here.title}; there is ${here.tappable}" }
            each {
                val (_, does) = screen().tappable[place]
                tap((does as ShownDoes.Act).act)
            }
        }

        private fun tap(words: String) = tap(words) { (label, _) -> label.startsWith(words) }

        private fun acts(part: String) = tap(part) { (_, does) -> part in (does as ShownDoes.Act).act }

        private fun to(place: String) = tap(place) { (_, does) ->
            does != here.back?.does && (does as ShownDoes.Act).act.let { "{\"go\":{\"$place\"" in it || "{\"go\":\"$place\"" in it }
        }

        private fun back(times: Int = 1) = repeat(times) { each { back() } }

        private fun thereAndBack(place: String) {
            to(place)
            back()
        }

        fun everywhere() {
            each { screen() }
            each { tap((screen().buttons.first { it.label == if (this === german) "Deutsch" else "English" }.does as ShownDoes.Act).act) }
            thereAndBack("start_field")
            thereAndBack("own")
            File(System.getProperty("demo.dir")).listFiles()!!.sorted().filter { it.name.endsWith(".notes.json") }.forEach { file ->
                each { importFile(file.path) }
                each { tap("\"take_in\"") }
                listOf("outline", "hand_over", "show").forEach(::thereAndBack)
                back()
            }
            withANeighbour()
            tap("Lapwing Ground")
            machines()
            behindTheMachine()
            aPit()
        }

        /** Somebody goes on with what was handed over, while it is changed here, and hands it back. */
        private fun withANeighbour() {
            thereAndBack("partners")
            tap("Lapwing Ground")
            tap("Dig a pit")
            tap("Headland")
            val neighbours = listOf(english, german).associateWith { session ->
                Neighbour("Nora").apply { session.exported { takesIn(it) } }
            }
            tap("Undo")
            back()
            each { goesOn(neighbours.getValue(this)) }
            to("partners")
            tap("Nora")
            tap("The same: accept Nora")
            tap("Deleted by one")
            back()
            tap("Nora")
            back()
            tap("Lapwing Ground: one value")
            back(2)
            neighbours.values.forEach(AutoCloseable::close)
        }

        /** The field in which a pit was dug and taken back here is changed on both phones. */
        private fun Session.goesOn(neighbour: Neighbour): ShownScreen {
            val field = neighbour.session.go("\"fields\"").rows.first { it.title == "Lapwing Ground" }.let { row ->
                Regex("\"field\":\"([^\"]+)\"").find((row.does as ShownDoes.Act).act)!!.groupValues[1]
            }
            neighbour.sets(field, "texture", "Heavy")
            val pit = neighbour.session.go("{\"field\":{\"field\":\"$field\"}}").rows.last()
            neighbour.session.tap((pit.does as ShownDoes.Act).act)
            neighbour.session.tapOn("Wheeling")
            val light = go("{\"detail\":{\"field\":\"$field\",\"detail\":\"texture\"}}").buttons[2]
            tap((light.does as ShownDoes.Act).act)
            importFile(neighbour.handsOver().path)
            return go("\"fields\"")
        }

        private fun Session.exported(use: (File) -> Unit) {
            val folder = Files.createTempDirectory("handed").toFile()
            use(File(exportBundle(null, true, folder.path).path!!))
            folder.deleteRecursively()
        }

        private fun machines() {
            to("machine")
            to("machine")
            thereAndBack("measures")
            back()
            to("new_machine")
            acts("\"legs\":3")
            back(2)
        }

        private fun behindTheMachine() {
            to("pass")
            to("pass")
            tap("Dig behind it")
            acts("\"read\"")
            back(3)
        }

        private fun aPit() {
            tap("Dig a pit")
            tap("Wheeling")
            each { positionRefused() }
            thereAndBack("on_plan")
            tap("The hole is dug")
            listOf("Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above").forEach(::tap)
            tap("Bottom of the hole")
            to("layers")
            acts("\"layer\":1")
            acts("\"clue\":\"")
            back(3)
            while (here.kind == ScreenKind.NEXT_LOOK) tap("Not looked")
            tap("Cracks into short lengths")
            tap("Crumbles")
            to("photos")
            photo()
            back()
            thereAndBack("show")
        }

        private fun photo() = each {
            val wanted = screen().buttons.firstNotNullOf { it.does as? ShownDoes.TakePhoto }
            val picture = File.createTempFile("tour", ".jpg").apply { writeBytes(jpeg(64)) }
            photoTaken(wanted.field, wanted.pit, 200u, picture.path, "image/jpeg").also { picture.delete() }
        }
    }
}
