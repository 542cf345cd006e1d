package org.pitface.platform

import org.pitface.app.R
import org.pitface.state.Phrase

internal fun Phrase.resource(): Int = when (this) {
    Phrase.OPENING -> R.string.opening
    Phrase.NOT_THERE -> R.string.not_there
    Phrase.OPEN_ELSEWHERE -> R.string.open_elsewhere
    Phrase.DISK_FULL -> R.string.disk_full
    Phrase.NEWER_VERSION -> R.string.newer_version
    Phrase.STORAGE_FAULT -> R.string.storage_fault
    Phrase.FAULT -> R.string.fault
    Phrase.NO_CAMERA -> R.string.no_camera
    Phrase.NO_PROGRAM -> R.string.no_program
    Phrase.CANNOT_READ_FILE -> R.string.cannot_read_file
    Phrase.NO_RECEIVER -> R.string.no_receiver
    Phrase.POSITION_REFUSED -> R.string.position_refused
    Phrase.SETTINGS -> R.string.settings
    Phrase.MENU -> R.string.menu
    Phrase.LARGER -> R.string.larger
    Phrase.SMALLER -> R.string.smaller
}
