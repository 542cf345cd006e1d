package org.pitface.state

import org.pitface.core.PitfaceException

/**
 * The few things only a shell can say: what went wrong outside the core, and the names of its own signs. Each is named as in
 * `strings.xml`, which a test holds for every language.
 */
enum class Phrase {
    OPENING, NOT_THERE, OPEN_ELSEWHERE, DISK_FULL, NEWER_VERSION, STORAGE_FAULT, FAULT, NO_CAMERA, NO_PROGRAM, CANNOT_READ_FILE,
    NO_RECEIVER, POSITION_REFUSED, SETTINGS, MENU, LARGER, SMALLER;

    /** Its name in the resources. */
    val key: String get() = name.lowercase()

    /** It can be put right in the phone's settings of the app. */
    val leadsToSettings: Boolean get() = this == POSITION_REFUSED

    companion object {
        /** What to say about a call that failed. */
        fun of(fault: Throwable): Phrase = when (fault) {
            is PitfaceException.NotFound -> NOT_THERE
            is PitfaceException.Conflict -> OPEN_ELSEWHERE
            is PitfaceException.DiskFull -> DISK_FULL
            is PitfaceException.NewerVersion -> NEWER_VERSION
            is PitfaceException.Storage -> STORAGE_FAULT
            else -> FAULT
        }
    }
}
