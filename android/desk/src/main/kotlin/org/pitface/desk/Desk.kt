package org.pitface.desk

import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.toComposeImageBitmap
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.input.key.KeyEventType
import androidx.compose.ui.input.key.key
import androidx.compose.ui.input.key.type
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.Window
import androidx.compose.ui.window.application
import androidx.compose.ui.window.rememberWindowState
import kotlinx.coroutines.delay
import org.jetbrains.skia.EncodedImageFormat
import org.jetbrains.skia.Image
import org.pitface.core.Session
import org.pitface.core.ShownBlock
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen
import org.pitface.screens.Earth
import org.pitface.screens.Whole
import org.pitface.screens.isDark
import org.pitface.state.App
import org.pitface.state.Phrase
import org.pitface.state.Platform
import java.awt.EventQueue
import java.awt.FileDialog
import java.awt.Frame
import java.awt.Robot
import java.io.File
import java.util.TimeZone
import java.util.concurrent.Executor
import java.util.concurrent.Executors
import javax.imageio.ImageIO
import kotlin.math.roundToInt
import kotlin.system.exitProcess

private val Handed = File(System.getProperty("java.io.tmpdir"), "pitface-handed").apply { mkdirs() }

fun main(arguments: Array<String>) {
    val wanted = Wanted(arguments)
    if (wanted.shot == null) inAWindow(wanted) else asAPicture(wanted, wanted.shot)
}

private fun open(wanted: Wanted): Session {
    val session = Session.open(wanted.folder.path, File(wanted.folder, "key").apply { mkdirs() }.path, wanted.language, TimeZone.getDefault().getOffset(System.currentTimeMillis()) / 60_000)
    wanted.demo?.listFiles { file -> file.name.endsWith(".notes.json") }?.sorted()?.forEach {
        session.importFile(it.path)
        session.tap("\"take_in\"")
    }
    while (wanted.demo != null && session.back() != null) Unit
    return session
}

private fun inAWindow(wanted: Wanted) {
    val work = Executors.newSingleThreadExecutor { Thread(it, "core").apply { isDaemon = true } }
    val aside = Executors.newSingleThreadExecutor { Thread(it, "check").apply { isDaemon = true } }
    val app = App(Handed.path, work, Executor(EventQueue::invokeLater), aside, aside, ::decoded) { open(wanted) }
    application {
        app.platform = Desk(app, ::exitApplication)
        Window(
            onCloseRequest = ::exitApplication,
            state = rememberWindowState(size = DpSize(wanted.width.dp, wanted.height.dp)),
            title = "Pitface",
            onKeyEvent = { (it.key == Key.Escape && it.type == KeyEventType.KeyUp).also { back -> if (back) app.back() } },
        ) {
            Shown(app, wanted)
            wanted.windowShot?.let { file ->
                LaunchedEffect(file) {
                    delay(wanted.seconds * 1000L)
                    asItStands(window, file)
                    println("$file: ${app.shown?.title}, in a window for ${wanted.seconds} s")
                    exitApplication()
                }
            }
        }
    }
}

/** What the screen of this machine shows where the window is. */
private fun asItStands(window: java.awt.Window, file: File) {
    file.absoluteFile.parentFile.mkdirs()
    ImageIO.write(Robot().createScreenCapture(window.bounds), "png", file)
}

/** Taps what was asked for, by its words, and writes what is then shown; all on one thread, without a window. */
private fun asAPicture(wanted: Wanted, file: File) {
    val app = App(Handed.path, Runnable::run, Runnable::run, Runnable::run, Runnable::run, ::decoded) { open(wanted) }
    app.platform = Desk(app) {}
    wanted.taps.forEach { words ->
        val does = app.shown?.named(words) ?: run {
            System.err.println("nothing here is called \"$words\"; there is: ${app.shown?.all()?.keys?.joinToString(" | ")}")
            exitProcess(2)
        }
        app.does(does)
    }
    app.failure?.let { System.err.println(wanted.words.of(it, wanted.language)) }
    val scale = 2f
    val (width, height) = (wanted.width * scale).roundToInt() to (wanted.height * scale).roundToInt()
    val scene = ImageComposeScene(width, height, Density(scale, wanted.font)) { Shown(app, wanted) }
    var time = 0L
    var picture = scene.render(time)
    while (scene.hasInvalidations() && time < 3_000_000_000L) {
        time += 16_000_000L
        picture = scene.render(time)
    }
    file.absoluteFile.parentFile.mkdirs()
    file.writeBytes(picture.encodeToData(EncodedImageFormat.PNG)!!.bytes)
    println("$file: ${app.shown?.title}, the whole screen anew in ${anew { scene.render(time + it) }} ms")
    exitProcess(0)
}

/** Milliseconds that one painting of many takes, the middle one; most of it is filling pixels without a graphics card. */
private fun anew(paints: (Int) -> Unit): Double {
    val took = (1..PAINTINGS).map { round -> System.nanoTime().also { paints(round) }.let { System.nanoTime() - it } }
    return (took.sorted()[PAINTINGS / 2] / 100_000) / 10.0
}

private const val PAINTINGS = 41

@Composable
private fun Shown(app: App, wanted: Wanted) = Earth(wanted.dark || isDark(app.shown?.light), Letters) {
    Whole(app) { wanted.words.of(it, app.shown?.language ?: wanted.language) }
}

/** A photo as the desk reads it; how the camera was held is not heeded here. */
private fun decoded(path: String, side: Int): ImageBitmap? = runCatching { Image.makeFromEncoded(File(path).readBytes()).toComposeImageBitmap() }.getOrNull()
    .also { if (it == null) System.err.println("$path is no picture to be shown at $side pixels") }

/** The face of letters of the phone, where this machine has it. */
private val Letters: FontFamily = File("/usr/share/fonts/truetype/roboto/unhinted/RobotoTTF").let { folder ->
    if (!folder.isDirectory) FontFamily.Default else FontFamily(
        Font(File(folder, "Roboto-Regular.ttf"), FontWeight.Normal), Font(File(folder, "Roboto-Medium.ttf"), FontWeight.Medium),
        Font(File(folder, "Roboto-Bold.ttf"), FontWeight.Bold),
    )
}

/** Everything on a screen that can be tapped, by its words. */
private fun ShownScreen.all(): Map<String, ShownDoes> {
    val buttons = blocks.filterIsInstance<ShownBlock.Question>().flatMap { it.answers } + listOfNotNull(back, next) + menu + tools
    val rows = blocks.filterIsInstance<ShownBlock.Ways>().flatMap { it.rows }
    return rows.associate { it.title to it.does } + buttons.associate { it.label to it.does }
}

private fun ShownScreen.named(words: String): ShownDoes? = all()[words] ?: all().entries.firstOrNull { it.key.startsWith(words) }?.value

/** What a desk can do of what a phone can. */
private class Desk(private val app: App, private val end: () -> Unit) : Platform {
    override fun takePhoto(wanted: ShownDoes.TakePhoto) {
        val file = chosen() ?: return
        app.photoTaken(wanted.field, wanted.pit, wanted.depthMm, file.path, if (file.extension.lowercase() == "png") "image/png" else "image/jpeg")
    }

    override fun share(path: String) = println(path)

    override fun chooseFile() {
        chosen()?.let { app.importFile(it.path) }
    }

    override fun allowPosition() = app.positionRefused(Phrase.NO_RECEIVER)

    override fun openSettings() = app.say(Phrase.NO_PROGRAM)

    override fun saved() = Unit

    override fun leave() = end()

    private fun chosen(): File? {
        if (System.getenv("DISPLAY") == null) return null.also { app.say(Phrase.NO_PROGRAM) }
        return FileDialog(null as Frame?).apply { isVisible = true }.run { file?.let { File(directory, it) } }
    }
}
