package org.pitface.state

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.graphics.ImageBitmap
import org.pitface.core.SessionInterface
import org.pitface.core.ShownBlock
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.pitface.screens.Doer
import java.util.concurrent.Executor
import java.util.concurrent.atomic.AtomicInteger

/** What only the platform can do; all of it is called on the thread of the screen. */
interface Platform {
    fun takePhoto(wanted: ShownDoes.TakePhoto)
    fun share(path: String)
    fun chooseFile()
    fun allowPosition()
    fun openSettings()
    fun saved()
    fun leave()
}

/**
 * The app without its window: the screen shown now, and a core that is spoken to on [work], in order, but for its look
 * at the files, which takes its time [aside], and photos, which [decode] reads among the [pictures]. [screen] runs what changes
 * the window.
 */
class App(
    private val handed: String,
    private val work: Executor,
    private val screen: Executor,
    private val aside: Executor,
    private val pictures: Executor,
    private val decode: (path: String, side: Int) -> ImageBitmap?,
    open: () -> SessionInterface,
) : Doer {
    /** What is shown; `null` until the store is open. */
    var shown: ShownScreen? by mutableStateOf(null)
        private set

    /** What went wrong outside the core, to be said until the next screen. */
    var failure: Phrase? by mutableStateOf(null)
        private set

    override var menu: Boolean by mutableStateOf(false)

    /** The window there is now, if any. */
    var platform: Platform? = null

    /** Nothing is being done by the core. */
    val idle: Boolean get() = waiting.get() == 0

    private val waiting = AtomicInteger()
    private var pendingTap = false
    private var typed: Pair<String, String>? = null
    private lateinit var session: SessionInterface

    init {
        offTheScreen({ open().also { session = it }.screen() }) {
            show(it)
            check()
        }
    }

    /** What it finds is shown in order with the taps that came meanwhile. */
    private fun check() = run(aside, { session.check() }) { found -> if (found != null) ask { it.screen() } }

    /** How much larger than usual the reader wants letters: drawings heed it. */
    fun letters(scale: Float) = ask { it.letters(scale.toDouble()) }

    /** The latest few, so that coming back to a screen shows its photos at once. */
    private val read = object : LinkedHashMap<Pair<String, Int>, ImageBitmap>(16, 0.75f, true) {
        override fun removeEldestEntry(eldest: Map.Entry<Pair<String, Int>, ImageBitmap>) = size > KEPT
    }

    override fun photo(hash: String, side: Int, shown: (ImageBitmap?) -> Unit) {
        read[hash to side]?.let { return shown(it) }
        run(pictures, { session.photoPath(hash)?.let { decode(it, side) } }) { picture ->
            if (picture != null) read[hash to side] = picture
            shown(picture)
        }
    }

    /** One tap is answered before the next is taken: a second one meanwhile was meant for a screen that is gone. */
    override fun does(what: ShownDoes) {
        if (pendingTap) return
        when (what) {
            is ShownDoes.Act -> {
                val line = shown?.blocks?.filterIsInstance<ShownBlock.Typing>()?.firstOrNull { it.act == what.act }
                val text = line?.let { typed?.takeIf { (act, _) -> act == what.act }?.second ?: it.value }
                if (text == null) tapped { it.tap(what.act) } else {
                    typed = typed?.takeIf { (act, _) -> act != what.act }
                    tapped { it.type(what.act, text) } // a button with the act of a line enters what stands there
                }
            }
            is ShownDoes.ShareField -> {
                enter()
                offTheScreen({ session.exportField(what.field, handed) }) { platform?.share(it) }
            }
            is ShownDoes.SharePage -> {
                enter()
                offTheScreen({ session.exportPage(what.field, what.card, handed) }) { platform?.share(it) }
            }
            is ShownDoes.ShareBundle -> {
                enter()
                pendingTap = true
                offTheScreen({ session.exportBundle(what.to, what.withPhotos, handed) }, { pendingTap = false }) {
                    show(it.screen)
                    it.path?.let { path -> platform?.share(path) }
                }
            }
            is ShownDoes.TakePhoto -> platform?.takePhoto(what)
            is ShownDoes.OpenFile -> platform?.chooseFile()
            is ShownDoes.AllowPosition -> platform?.allowPosition()
        }
    }

    override fun touched(what: ShownDoes, x: Double, y: Double) {
        if (what !is ShownDoes.Act) return does(what)
        if (!pendingTap) tapped { it.touch(what.act, x, y) }
    }

    /** What was typed is entered before the tap is answered; where that leads elsewhere, the tap was for a screen that is gone. */
    private fun tapped(question: (SessionInterface) -> ShownScreen) {
        pendingTap = true
        val entering = taken()
        val before = shown?.kind
        ask(tapped = true) { core ->
            val entered = entering?.let { (act, text) -> core.type(act, text) }
            if (entered == null || entered.kind == before) question(core) else entered
        }
    }

    override fun typed(act: String, text: String) {
        typed = act to text
    }

    override fun enter() {
        taken()?.let { (act, text) -> ask { it.type(act, text) } }
    }

    /** Where one came from, or out of the app. */
    fun back() {
        if (menu) {
            menu = false
            return
        }
        if (pendingTap) return
        pendingTap = true
        val entering = taken()
        offTheScreen({
            entering?.let { (act, text) -> session.type(act, text) }
            session.back()
        }, { pendingTap = false }) { if (it == null) platform?.leave() else show(it) }
    }

    fun fix(longitudeDeg: Double, latitudeDeg: Double, accuracyM: Double, satelliteTimeMs: Long) =
        ask { it.fix(longitudeDeg, latitudeDeg, accuracyM, satelliteTimeMs) }

    /** There are no positions; [said] is what the platform adds to that. */
    fun positionRefused(said: Phrase? = null) = offTheScreen({ session.positionRefused() }) {
        show(it)
        if (said != null) failure = said
    }

    fun photoTaken(field: String, pit: String, depthMm: UInt?, path: String, mediaType: String) =
        ask { it.photoTaken(field, pit, depthMm, path, mediaType) }

    fun importFile(path: String) = ask { it.importFile(path) }

    /** Minutes that the clock here is ahead of universal time. */
    fun setOffset(minutes: Int) = offTheScreen({ session.setOffset(minutes) }) {}

    /** Says what the platform could not do. */
    fun say(phrase: Phrase) {
        failure = phrase
    }

    /** Lets go of the notes, once all that was asked is answered. */
    fun close() = offTheScreen({ (session as? AutoCloseable)?.close() }) {}

    private fun failed(fault: Throwable) {
        failure = Phrase.of(fault)
        if (failure == Phrase.FAULT) fault.printStackTrace() // for whoever is to mend it
    }

    private fun taken() = typed.also { typed = null }

    private fun ask(tapped: Boolean = false, question: (SessionInterface) -> ShownScreen?) =
        offTheScreen({ question(session) }, { if (tapped) pendingTap = false }) { it?.let(::show) }

    private fun show(next: ShownScreen) {
        if (next.kind != shown?.kind) menu = false
        shown = next
        failure = null
        if (next.saved) platform?.saved()
    }

    private fun <T> offTheScreen(question: () -> T, ended: () -> Unit = {}, answered: (T) -> Unit) = run(work, question, ended, answered)

    private fun <T> run(on: Executor, question: () -> T, ended: () -> Unit = {}, answered: (T) -> Unit) {
        waiting.incrementAndGet()
        on.execute {
            val answer = runCatching(question)
            screen.execute {
                ended()
                answer.onSuccess(answered).onFailure(::failed)
                waiting.decrementAndGet()
            }
        }
    }

    private companion object {
        /** Photos kept in memory. */
        const val KEPT = 16
    }
}
