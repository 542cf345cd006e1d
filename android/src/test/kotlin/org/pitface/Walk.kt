package org.pitface

import org.pitface.core.Session
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import java.io.File
import java.nio.file.Files
import kotlin.random.Random

/** Screens met on a walk through the core over the demo estate, without a window: taps chosen by lot, from a fixed seed. */
internal object Walk {
    private const val TAPS = 700
    private val walked = HashMap<String, List<ShownScreen>>()

    fun screens(language: String): List<ShownScreen> = walked.getOrPut(language) {
        val folder = Files.createTempDirectory("walk").toFile()
        Session.open(folder.path, folder.path, language, 60).use { walk(it, language) }.also { folder.deleteRecursively() }
    }

    private fun walk(session: Session, language: String): List<ShownScreen> {
        val lot = Random(5)
        val met = mutableListOf(session.screen())
        val own = met.first().buttons.first { it.label == if (language == "de") "Deutsch" else "English" }
        met += session.tap((own.does as ShownDoes.Act).act)
        File(System.getProperty("demo.dir")).listFiles()!!.sorted().filter { it.name.endsWith(".notes.json") }.forEach {
            met += session.importFile(it.path)
            met += session.tap("\"take_in\"")
        }
        met += generateSequence { session.back() }.toList()
        repeat(TAPS) {
            val here = session.screen()
            val aside = setOfNotNull(here.undo?.does, here.back?.does)
            val acts = here.tappable.map { it.second }.filter { it !in aside }.mapNotNull { (it as? ShownDoes.Act)?.act }
            val typing = here.typings.randomOrNull(lot)
            met += when {
                typing != null && lot.nextInt(6) == 0 -> session.type(typing.act, if (lot.nextBoolean()) "Heron Close" else "33")
                acts.isEmpty() || lot.nextInt(9) == 0 -> session.back() ?: here
                lot.nextInt(20) == 0 -> (here.undo?.does as? ShownDoes.Act)?.let { session.tap(it.act) } ?: here
                else -> session.tap(acts.random(lot))
            }
        }
        println("crawl: ${met.size} screens in $language, of the kinds ${met.map { it.kind }.distinct().sorted()}")
        return met
    }
}
