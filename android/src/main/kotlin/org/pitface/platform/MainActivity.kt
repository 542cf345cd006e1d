package org.pitface.platform

import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.content.Context
import android.content.Intent
import android.content.res.Configuration
import android.graphics.Color
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.provider.Settings
import android.view.HapticFeedbackConstants
import android.view.KeyEvent
import android.view.WindowManager
import androidx.activity.ComponentActivity
import androidx.activity.SystemBarStyle
import androidx.activity.compose.BackHandler
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.activity.result.contract.ActivityResultContracts.OpenDocument
import androidx.activity.result.contract.ActivityResultContracts.RequestMultiplePermissions
import androidx.activity.result.contract.ActivityResultContracts.TakePicture
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.material3.MaterialTheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.ui.Modifier
import org.pitface.core.ShownDoes
import org.pitface.screens.Earth
import org.pitface.screens.Whole
import org.pitface.screens.isDark
import org.pitface.state.Phrase
import org.pitface.state.Platform
import java.io.File
import java.util.Locale

/** The window. It shows what the core says and does what only the phone can. */
class MainActivity : ComponentActivity(), Platform {
    private val process get() = application as Pitface
    private val app get() = process.app
    private val camera = Camera(this)
    private lateinit var position: Position

    private val taking = registerForActivityResult(TakePicture()) { done -> camera.returned(done) }
    private val choosing = registerForActivityResult(OpenDocument()) { uri -> uri?.let(::takeIn) }
    private val allowing = registerForActivityResult(RequestMultiplePermissions()) { position.answered(shouldShowRequestPermissionRationale(ACCESS_FINE_LOCATION)) }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        enableEdgeToEdge()
        if (app.shown == null && app.failure != null) process.reopen()
        position = Position(this, app::fix, app::positionRefused)
        camera.restore(state)
        camera.tidy()
        app.platform = this
        if (state == null) opened(intent)
        setContent {
            val dark = isDark(app.shown?.light)
            LaunchedEffect(dark) { SystemBarStyle.auto(Color.TRANSPARENT, Color.TRANSPARENT) { dark }.let { enableEdgeToEdge(it, it) } }
            Earth(dark) {
                Box(Modifier.fillMaxSize().background(MaterialTheme.colorScheme.background).safeDrawingPadding()) {
                    Whole(app, ::words)
                }
            }
            BackHandler { app.back() }
            Awake(app.shown?.awake == true)
            val wanted = app.shown?.wantsPosition == true
            LaunchedEffect(wanted) { position.wanted = wanted }
        }
    }

    @Composable
    private fun Awake(awake: Boolean) = LaunchedEffect(awake) {
        if (awake) window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        else window.clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
    }

    override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        opened(intent)
    }

    override fun onStart() {
        super.onStart()
        app.platform = this
        process.tidy()
        app.setOffset(offsetMinutes())
        position.inSight = true
    }

    override fun onStop() {
        position.inSight = false
        app.enter()
        super.onStop()
    }

    override fun onDestroy() {
        if (app.platform === this) app.platform = null
        super.onDestroy()
    }

    /** The keys at the side of the phone, where the core has something for them to do; held down they do it once. */
    override fun onKeyDown(code: Int, event: KeyEvent): Boolean {
        val act = actOf(code) ?: return super.onKeyDown(code, event)
        if (event.repeatCount == 0) app.does(ShownDoes.Act(act))
        return true
    }

    override fun onKeyUp(code: Int, event: KeyEvent) = actOf(code) != null || super.onKeyUp(code, event)

    private fun actOf(code: Int): String? = when (code) {
        KeyEvent.KEYCODE_VOLUME_UP, KeyEvent.KEYCODE_HEADSETHOOK -> app.shown?.keys?.up
        KeyEvent.KEYCODE_VOLUME_DOWN -> app.shown?.keys?.down
        else -> null
    }

    override fun onSaveInstanceState(state: Bundle) {
        super.onSaveInstanceState(state)
        camera.save(state)
    }

    /** A file tapped in another program, or sent by it; sent words without a file are said to be unreadable. */
    private fun opened(intent: Intent) {
        when (intent.action) {
            Intent.ACTION_VIEW -> intent.data?.let(::takeIn)
            Intent.ACTION_SEND -> intent.sent()?.let(::takeIn) ?: app.say(Phrase.CANNOT_READ_FILE)
        }
    }

    private fun takeIn(uri: Uri) = process.takeIn(uri)

    override fun takePhoto(wanted: ShownDoes.TakePhoto) = camera.take(wanted, taking::launch)

    override fun chooseFile() {
        launching(Phrase.NO_PROGRAM) { choosing.launch(arrayOf("*/*")) }
    }

    override fun share(path: String) {
        launching(Phrase.NO_PROGRAM) { startActivity(handOver(File(path))) }
    }

    override fun allowPosition() = position.ask(allowing::launch)

    override fun openSettings() {
        launching(Phrase.NO_PROGRAM) { startActivity(Intent(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, Uri.fromParts("package", packageName, null))) }
    }

    override fun saved() {
        val kind = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) HapticFeedbackConstants.CONFIRM else HapticFeedbackConstants.VIRTUAL_KEY
        window.decorView.performHapticFeedback(kind)
    }

    override fun leave() = finish()

    /** What the shell says itself, in the language of the core rather than of the phone. */
    private fun words(phrase: Phrase): String = inLanguage(app.shown?.language).getString(phrase.resource())

    private fun inLanguage(tag: String?): Context = if (tag == null) this else
        createConfigurationContext(Configuration(resources.configuration).apply { setLocale(Locale.forLanguageTag(tag)) })

    /** Whether there is a program for it; said where there is none. */
    internal fun launching(otherwise: Phrase, launch: () -> Unit): Boolean = try {
        launch()
        true
    } catch (_: android.content.ActivityNotFoundException) {
        app.say(otherwise)
        false
    }
}
