package org.pitface.platform

import android.Manifest.permission.ACCESS_COARSE_LOCATION
import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.content.Context
import android.content.pm.PackageManager.PERMISSION_GRANTED
import android.location.Location
import android.location.LocationListener
import android.location.LocationManager
import android.os.Bundle
import android.os.Looper
import org.pitface.state.Phrase

/** The satellite receiver: on while a screen wants positions and is in sight, and off otherwise. */
internal class Position(
    private val context: Context,
    private val fix: (Double, Double, Double, Long) -> Unit,
    private val refused: (Phrase?) -> Unit,
) : LocationListener {
    private val manager = context.getSystemService(Context.LOCATION_SERVICE) as LocationManager?
    private var running = false

    var wanted = false
        set(value) {
            field = value
            turn()
        }

    var inSight = false
        set(value) {
            field = value
            turn()
        }

    private val allowed get() = context.checkSelfPermission(ACCESS_FINE_LOCATION) == PERMISSION_GRANTED

    /** Asks for the permission; where it was given already, there is nothing to ask. */
    fun ask(launch: (Array<String>) -> Unit) = if (allowed) turn() else launch(arrayOf(ACCESS_FINE_LOCATION, ACCESS_COARSE_LOCATION))

    /** Where the phone [asksAgain], the screen's own button does; otherwise only the phone's settings can allow it. */
    fun answered(asksAgain: Boolean) = if (allowed) turn() else refused(if (asksAgain) null else Phrase.POSITION_REFUSED)

    private fun turn() {
        if (wanted && inSight && !allowed) refused(null) // the screen then says why it is of use, and has a button to allow it
        val on = wanted && inSight && allowed
        if (on == running || manager == null) return
        running = on
        if (!on) return manager.removeUpdates(this)
        try {
            manager.requestLocationUpdates(LocationManager.GPS_PROVIDER, EVERY_MS, 0f, this, Looper.getMainLooper())
        } catch (_: SecurityException) {
            notToBeHad()
        } catch (_: IllegalArgumentException) { // there is no receiver in this device
            notToBeHad()
        }
    }

    private fun notToBeHad() {
        running = false
        refused(Phrase.NO_RECEIVER)
    }

    override fun onLocationChanged(location: Location) {
        if (location.hasAccuracy()) fix(location.longitude, location.latitude, location.accuracy.toDouble(), location.time)
    }

    override fun onProviderDisabled(provider: String) = refused(null)

    override fun onProviderEnabled(provider: String) = Unit

    @Deprecated("Called by Android 9 and older, where it is not given a body")
    override fun onStatusChanged(provider: String?, status: Int, extras: Bundle?) = Unit

    private companion object {
        const val EVERY_MS = 1000L
    }
}
