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

        private fun at(place: Int) = each {
            val (_, does) = screen().tappable[place]
            tap((does as ShownDoes.Act).act)
        }

        private fun tap(what: String, found: (Pair<String, ShownDoes>) -> Boolean) {
            val place = here.tappable.indexOfLast { it.second is ShownDoes.Act && found(it) }
            check(place >= 0) { "no $what on ${here.title}; there is ${here.tappable}" }
            at(place)
        }

        private fun tap(words: String) = tap(words) { (label, _) -> label.startsWith(words) }

        private fun acts(part: String) = tap(part) { (_, does) -> part in (does as ShownDoes.Act).act }

        private fun to(place: String) = tap(place) { (_, does) ->
            does != here.back?.does && (does as ShownDoes.Act).act.let { "{\"go\":{\"$place\"" in it || "{\"go\":\"$place\"" in it }
        }

        private fun back(times: Int = 1) = repeat(times) { each { back() } }

        private fun home() {
            while (english.back() != null) Unit
            while (german.back() != null) Unit
            each { go("\"fields\"") }
        }

        private val been = mutableSetOf<String>()

        /**
         * Every place that leads from here and was not seen yet, few of a name, and [deep] further from there. Back from a question
         * of several leads past the others: then one goes the way again that led [here][by].
         */
        private fun around(deep: Int, by: List<String>? = null) {
            val start = here
            start.tappable.forEachIndexed { place, (_, does) ->
                val act = (does as? ShownDoes.Act)?.act.orEmpty().replace(Id, "#")
                if (!act.startsWith("{\"go\"") || does == start.back?.does || been.count { it.name() == act.name() } >= FEW || !been.add(act)) return@forEachIndexed
                val acts = listOf(english, german).map { (it.screen().tappable[place].second as ShownDoes.Act).act }
                at(place)
                if (deep > 1) around(deep - 1, acts)
                back()
                fun isThere() = here.tappable.map { it.first } == start.tappable.map { it.first }
                if (!isThere() && by != null) each { tap(by[if (this === english) 0 else 1]) }
                check(isThere()) { "back from $act leads to ${here.title}, not to ${start.title}: ${here.tappable}" }
            }
        }

        fun everywhere() {
            each { screen() }
            each { tap((screen().buttons.first { it.label == if (this === german) "Deutsch" else "English" }.does as ShownDoes.Act).act) }
            around(2)
            File(System.getProperty("demo.dir")).listFiles()!!.sorted().filter { it.name.endsWith(".notes.json") }.forEach { file ->
                each { importFile(file.path) }
                each { tap("\"take_in\"") }
                around(1)
                home()
            }
            withANeighbour()
            tap("Lapwing Ground")
            been.clear()
            around(4)
            aPit()
        }

        /** Somebody goes on with what was handed over, while it is changed here, and hands it back. */
        private fun withANeighbour() {
            tap("Lapwing Ground")
            to("start_pit")
            tap("Headland")
            val neighbours = listOf(english, german).associateWith { session ->
                Neighbour("Nora").apply { session.exported { takesIn(it) } }
            }
            tap("Undo")
            home()
            each { goesOn(neighbours.getValue(this)) }
            to("partners")
            tap("Nora")
            tap("The same: accept Nora")
            tap("Deleted by one")
            back()
            tap("Nora")
            back()
            tap("Lapwing Ground: one value")
            home()
            neighbours.values.forEach(AutoCloseable::close)
        }

        /** The field in which a pit was dug and taken back here is changed on both phones. */
        private fun Session.goesOn(neighbour: Neighbour): ShownScreen {
            val field = neighbour.session.go("\"fields\"").rows.first { it.title == "Lapwing Ground" }.let { row ->
                Regex("\"field\":\"([^\"]+)\"").find((row.does as ShownDoes.Act).act)!!.groupValues[1]
            }
            neighbour.sets(field, "texture", "Heavy")
            neighbour.session.go("{\"pits\":{\"field\":\"$field\"}}")
            val pit = Regex("\"pit\":\"([^\"]+)\"").findAll(neighbour.session.screen().rows.toString()).map { it.groupValues[1] }.last()
            neighbour.session.go("{\"start_pit\":{\"field\":\"$field\",\"pit\":\"$pit\"}}")
            neighbour.session.tapOn("Wheeling")
            val offered = go("{\"detail\":{\"field\":\"$field\",\"detail\":\"texture\"}}").tappable
            val light = offered.firstOrNull { (_, does) -> "{\"answer\":1}" in does.toString() } ?: throw AssertionError("$offered")
            tap((light.second as ShownDoes.Act).act)
            importFile(neighbour.handsOver().path)
            return go("\"fields\"")
        }

        private fun Session.exported(use: (File) -> Unit) {
            val folder = Files.createTempDirectory("handed").toFile()
            use(File(exportBundle(null, true, folder.path).path!!))
            folder.deleteRecursively()
        }

        private fun aPit() {
            to("start_pit")
            tap("Wheeling")
            each { positionRefused() }
            to("on_plan")
            back()
            listOf("Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above").forEach(::tap)
            repeat(2) { if (here.kind == ScreenKind.KNIFE_WALK) tap("Bottom of hole") }
            around(2, lookingOn())
            repeat(2) { if (here.kind == ScreenKind.NEXT_LOOK) answered() }
            while (here.kind == ScreenKind.NEXT_LOOK) skipped()
            while (here.kind == ScreenKind.ROLL) answered()
            check(here.kind == ScreenKind.CALL) { "${here.kind} after the last roll" }
            to("photos")
            photo()
            around(1)
            back()
            around(1)
        }

        /** What leads to the looks at the pit shown, in either language. */
        private fun lookingOn() = listOf(english, german).map { session ->
            val (field, pit) = Regex("\"field\":\"([^\"]+)\",\"pit\":\"([^\"]+)\"").find(session.screen().tappable.toString())!!.destructured
            "{\"go\":{\"next_look\":{\"field\":\"$field\",\"pit\":\"$pit\"}}}"
        }

        private fun answered() = here.questions.last().answers.first().does.let { first -> tap("an answer") { it.second == first } }

        private fun skipped() = here.tools.last().does.let { last -> tap("the way past") { it.second == last } }

        private fun photo() = each {
            val wanted = screen().tappable.firstNotNullOf { it.second as? ShownDoes.TakePhoto }
            val picture = File.createTempFile("tour", ".jpg").apply { writeBytes(jpeg(64)) }
            photoTaken(wanted.field, wanted.pit, 200u, picture.path, "image/jpeg").also { picture.delete() }
        }
    }

    /** The name of a place that an act leads to. */
    private fun String.name() = removePrefix("{\"go\":").trim('{', '"').substringBefore('"')

    /** Places of a name that are gone to. */
    private const val FEW = 8

    private val Id = Regex("[0-9a-f]{8}-[0-9a-f-]{27}|[0-9a-f]{32,}")
}
