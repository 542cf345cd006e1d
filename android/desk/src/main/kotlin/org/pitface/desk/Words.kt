package org.pitface.desk

import org.pitface.state.Phrase
import org.w3c.dom.Element
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory

/** The phrases of the shell from the resources of the phone's app. */
class Words(private val resources: File) {
    private val read = HashMap<String, Map<String, String>>()

    fun of(phrase: Phrase, language: String?): String {
        val folder = "values-$language".takeIf { File(resources, "$it/strings.xml").exists() } ?: "values"
        return read.getOrPut(folder) { strings(File(resources, "$folder/strings.xml")) }.getValue(phrase.key)
    }

    private fun strings(file: File): Map<String, String> {
        val found = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).getElementsByTagName("string")
        return (0 until found.length).map { found.item(it) as Element }.associate { it.getAttribute("name") to it.textContent.replace("\\'", "'") }
    }
}
