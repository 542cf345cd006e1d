package org.pitface.desk

import java.io.File
import java.nio.file.Files
import java.util.Locale

/** What was asked for on the command line; `android/desk/run` tells what there is. */
internal class Wanted(private val arguments: Array<String>) {
    /** The folder of notes files to take in first. */
    val demo: File? = after("--demo-from")?.let(::File)
    val dark = "--dark" in arguments
    val shot = after("--shot")?.let(::File)

    /** A picture of the window itself, after it has stood for [seconds]. */
    val windowShot = after("--window-shot")?.let(::File)
    val seconds = after("--seconds")?.toInt() ?: 10
    val taps = after("--taps")?.split('|').orEmpty()
    val width = after("--width")?.toInt() ?: 411
    val height = after("--height")?.toInt() ?: 891
    val font = after("--font")?.toFloat() ?: 1f
    val language: String = after("--language") ?: Locale.getDefault().toLanguageTag()
    val folder: File = after("--store")?.let { File(it).apply { mkdirs() } } ?: Files.createTempDirectory("pitface").toFile()
    val words = Words(File(System.getProperty("resources")))

    private fun after(name: String) = arguments.indexOf(name).takeIf { it >= 0 }?.let { arguments.getOrNull(it + 1) }
}
