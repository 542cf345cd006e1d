package org.pitface

import android.content.ComponentName
import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import androidx.activity.ComponentActivity
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.requiredSize
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.asImageBitmap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.LocalView
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createComposeRule
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTouchInput
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TestRule
import org.junit.runner.RunWith
import org.junit.runners.model.Statement
import org.pitface.core.Drawing
import org.pitface.core.ShownDoes
import org.pitface.core.ShownPicture
import org.pitface.core.ShownTouch
import org.pitface.screens.Earth
import org.pitface.screens.PICTURE
import org.pitface.screens.PictureView
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What a finger on a picture does: a picture of 200 by 100 points stands on 400 by 200 dp, so a point is two. */
@RunWith(RobolectricTestRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w800dp-h800dp-mdpi")
class PictureTest {
    @get:Rule(order = 0) val window = TestRule { test, _ ->
        object : Statement() {
            override fun evaluate() {
                shadowOf(process.packageManager).addActivityIfNotPresent(ComponentName(process, ComponentActivity::class.java))
                test.evaluate()
            }
        }
    }

    @get:Rule(order = 1) val rule = createComposeRule()

    private val touched = mutableListOf<Triple<String, Double, Double>>()
    private lateinit var view: View

    private inner class Finger(val photo: ImageBitmap? = null) : Nobody() {
        override fun touched(what: ShownDoes, x: Double, y: Double) {
            touched += Triple((what as ShownDoes.Act).act, x, y)
        }

        override fun photo(hash: String, side: Int, shown: (ImageBitmap?) -> Unit) = shown(photo)
    }

    private fun touch(name: String, left: Double, top: Double, width: Double, height: Double, drags: Boolean = false) =
        ShownTouch(left, top, width, height, name, ShownDoes.Act(name), drags)

    private fun show(picture: ShownPicture, doer: Finger = Finger()) {
        rule.setContent {
            view = LocalView.current
            CompositionLocalProvider(LocalDensity provides Density(1f, 1f)) {
                Earth(false) { Box(Modifier.requiredSize(400.dp, 200.dp)) { PictureView(picture, doer, false) } }
            }
        }
    }

    private fun picture(vararg touches: ShownTouch, anywhere: String? = null, zooms: Boolean = false) = Samples.picture(width = 200.0, height = 100.0, touches = touches.toList(), anywhere = anywhere, zooms = zooms)

    private fun tap(x: Float, y: Float) {
        rule.onNode(hasTestTag(PICTURE)).performTouchInput {
            down(Offset(x, y))
            up()
        }
        rule.waitForIdle()
    }

    @Test fun aTapGoesToTheUppermostPlaceWithItsPointOfTheDrawing() {
        show(picture(touch("below", 0.0, 0.0, 200.0, 100.0), touch("above", 50.0, 20.0, 100.0, 60.0)))
        tap(200f, 100f)
        tap(20f, 10f)
        assertEquals(listOf(Triple("above", 100.0, 50.0), Triple("below", 10.0, 5.0)), touched)
    }

    /** Ten points are 20 dp: a thumb beside it still means it, one further off does not. */
    @Test fun aSmallPlaceIsMetByAThumbBesideIt() {
        show(picture(touch("pit", 95.0, 45.0, 10.0, 10.0), anywhere = "here"))
        tap(200f, 122f)
        tap(200f, 140f)
        assertEquals(listOf(Triple("pit", 100.0, 61.0), Triple("here", 100.0, 70.0)), touched)
    }

    @Test fun nothingIsDoneWhereNothingIs() {
        show(picture(touch("left", 0.0, 0.0, 40.0, 100.0)))
        tap(300f, 100f)
        assertTrue("$touched", touched.isEmpty())
    }

    @Test fun aLineIsDrawnAlongAndDoesWhatItDoesWhenLetGo() {
        show(picture(touch("tip", 0.0, 48.0, 200.0, 4.0, drags = true)))
        val before = painted()
        rule.onNode(hasTestTag(PICTURE)).performTouchInput {
            down(Offset(200f, 104f))
            moveTo(Offset(200f, 130f))
            moveTo(Offset(200f, 160f))
        }
        rule.waitForIdle()
        assertTrue("nothing is done yet", touched.isEmpty())
        assertTrue("a line goes along", before.getPixel(300, 160) != painted().getPixel(300, 160))
        rule.onNode(hasTestTag(PICTURE)).performTouchInput { up() }
        rule.waitForIdle()
        assertEquals(listOf(Triple("tip", 100.0, 80.0)), touched)
        assertEquals("the line is gone", before.getPixel(300, 160), painted().getPixel(300, 160))
    }

    /** By the button, with one hand: the middle stays, and a point is found where it is now. */
    @Test fun whatIsMadeLargerIsStillMetAtItsPoint() {
        show(picture(anywhere = "here", zooms = true))
        rule.onNode(hasContentDescription("larger")).performClick()
        rule.waitForIdle()
        tap(200f, 100f)
        tap(50f, 100f)
        assertEquals(listOf(Triple("here", 100.0, 50.0), Triple("here", 50.0, 50.0)), touched)
        rule.onNode(hasContentDescription("smaller")).performClick()
        rule.waitForIdle()
        tap(50f, 100f)
        assertEquals(Triple("here", 25.0, 50.0), touched.last())
    }

    @Test fun twoFingersMakeItLargerAndOneMovesIt() {
        show(picture(anywhere = "here", zooms = true))
        rule.onNode(hasTestTag(PICTURE)).performTouchInput {
            down(0, Offset(150f, 100f))
            down(1, Offset(250f, 100f))
            moveTo(0, Offset(100f, 100f))
            moveTo(1, Offset(300f, 100f))
            up(0)
            up(1)
        }
        rule.waitForIdle()
        assertTrue("two fingers are no tap", touched.isEmpty())
        tap(20f, 100f)
        val x = touched.single().second
        assertTrue("larger: $x", x > 30)
    }

    /** Whoever does not see the picture finds each place by its name. */
    @Test fun everyPlaceIsThereForAScreenReader() {
        show(picture(touch("Tight layer", 0.0, 40.0, 200.0, 20.0)))
        rule.onNode(hasContentDescription("Face. Four layers")).fetchSemanticsNode()
        rule.onNode(hasContentDescription("Tight layer")).performSemanticsAction(SemanticsActions.OnClick)
        rule.waitForIdle()
        assertEquals(listOf(Triple("Tight layer", 100.0, 50.0)), touched)
    }

    @Test fun aPhotoLiesUnderTheDrawing() {
        val blue = Bitmap.createBitmap(20, 10, Bitmap.Config.ARGB_8888).apply { eraseColor(android.graphics.Color.BLUE) }
        show(picture().copy(photo = "0".repeat(64), drawing = Drawing(200.0, 100.0, emptyList())), Finger(blue.asImageBitmap()))
        rule.waitForIdle()
        assertEquals(android.graphics.Color.BLUE, painted().getPixel(30, 30))
    }

    @Test fun aPhotoThatIsElsewhereLeavesItsName() {
        show(picture().copy(photo = "0".repeat(64), title = "North wall"))
        rule.onNodeWithText("North wall").fetchSemanticsNode()
    }

    private fun painted(): Bitmap {
        val painted = Bitmap.createBitmap(800, 800, Bitmap.Config.ARGB_8888)
        rule.runOnUiThread { view.draw(Canvas(painted)) }
        return painted
    }
}
