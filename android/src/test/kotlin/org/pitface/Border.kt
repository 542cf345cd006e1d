package org.pitface

import org.pitface.core.Session

/**
 * The other side of `tests/bench`, which starts this on a plain Java and measures it in turn with the same call in Rust: opens a session
 * on the folder it is given, does what each line of its input says (an act, or nothing for the screen again), and answers each with the
 * nanoseconds it took and whether it was saved. It decides nothing and asserts nothing.
 */
fun main(arguments: Array<String>) {
    Session.open(arguments[0], arguments[0], "en", 60).use { session ->
        while (true) {
            val act = readlnOrNull() ?: return
            val started = System.nanoTime()
            val screen = if (act.isEmpty()) session.screen() else session.tap(act)
            println("${System.nanoTime() - started} ${screen.saved}")
        }
    }
}
