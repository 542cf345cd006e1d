package org.pitface

import android.content.ComponentName
import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import androidx.activity.ComponentActivity
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.material3.MaterialTheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.LocalView
import androidx.compose.ui.test.junit4.v2.createComposeRule
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import org.junit.Rule
import org.junit.rules.TestRule
import org.junit.runners.model.Statement
import org.pitface.core.ShownScreen
import org.pitface.screens.Above
import org.pitface.screens.Earth
import org.pitface.screens.ScreenView
import org.robolectric.Shadows.shadowOf
import java.io.File

/** Screens looked at in one way after the other, and painted: a pixel is a dp. */
internal abstract class Looking {
    /** A window for nothing but what is looked at; the app's own manifest has none. */
    @get:Rule(order = 0) val window = TestRule { test, _ ->
        object : Statement() {
            override fun evaluate() {
                val name = ComponentName(process, ComponentActivity::class.java)
                shadowOf(process.packageManager).addActivityIfNotPresent(name)
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 1) val rule = createComposeRule()

    private var at: Pair<Look, ShownScreen>? by mutableStateOf(null)

    /** What the shell says above it, and the way to put that right. */
    protected var said: Pair<String, String?>? by mutableStateOf(null)
    private lateinit var view: View

    protected fun show(content: @Composable (ShownScreen) -> Unit = { screen -> Above(said?.first, said?.second, {}) { ScreenView(screen, Nobody(), it) } }) = rule.setContent {
        view = LocalView.current
        val (look, screen) = at ?: return@setContent
        CompositionLocalProvider(LocalDensity provides Density(1f, look.font)) {
            Box(contentAlignment = Alignment.TopStart) {
                key(look, screen) {
                    Earth(look.dark) {
                        Box(Modifier.requiredSize(look.width.dp, look.height.dp).background(MaterialTheme.colorScheme.background)) { content(screen) }
                    }
                }
            }
        }
    }

    /** The screen in that look, as it was painted. */
    protected fun painted(screen: ShownScreen, look: Look): Bitmap {
        at = look to screen
        rule.waitForIdle()
        val painted = Bitmap.createBitmap(look.width, look.height, Bitmap.Config.ARGB_8888)
        rule.runOnUiThread { view.draw(Canvas(painted)) }
        return painted
    }

    /** The fullest of each kind, as both the tour and the walk met it. */
    protected fun fullest(language: String) = (Tour.screens(language) + Walk.screens(language)).groupBy { it.kind }
        .mapValues { (_, those) -> those.maxBy { it.toString().length } }
}

internal fun Bitmap.written(name: String) {
    val file = File(System.getProperty("shots.dir"), "$name.png").apply { parentFile!!.mkdirs() }
    file.outputStream().use { compress(Bitmap.CompressFormat.PNG, 100, it) }
}
