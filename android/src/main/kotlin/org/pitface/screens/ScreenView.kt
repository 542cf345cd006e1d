package org.pitface.screens

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.material3.HorizontalDivider
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.key
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.min
import org.pitface.core.ScreenKind
import org.pitface.core.ShownDoes
import org.pitface.core.ShownScreen

/** What can be done on a screen. */
interface Doer {
    /** Something was tapped. */
    fun does(what: ShownDoes)

    /** Something was typed and is not entered yet. */
    fun typed(act: String, text: String)

    /** What was typed is entered. */
    fun enter()
}

internal val Edge = 12.dp
private val Wide = 600.dp
private val Widest = 640.dp

/** Any screen of the app: what is known above, what the thumb does below, the bar at the very bottom. */
@Composable
fun ScreenView(shown: ShownScreen, doer: Doer, modifier: Modifier = Modifier) {
    InLanguage(shown.language) { BoxWithConstraints(modifier.fillMaxSize().background(MaterialTheme.colorScheme.background)) {
        val height = maxHeight
        val width = maxWidth
        key(shown.kind, shown.title) {
            when {
                shown.kind == ScreenKind.SHOW -> ForTheFarmer(shown, doer, width)
                width >= Wide || width > height -> SideBySide(shown, doer, width)
                else -> OneColumn(shown, doer, width)
            }
        }
    } }
}

@Composable
private fun OneColumn(shown: ShownScreen, doer: Doer, width: Dp) {
    Column(Modifier.fillMaxSize()) {
        Parts(
            Modifier.weight(1f),
            if (shown.knownFirst) DOING_SHARE_BELOW_WORDS else DOING_SHARE,
            known = {
                Title(shown)
                Known(shown.known, doer, width)
            },
            doing = { at -> Doing(shown.doing, doer, width, at) },
        )
        Foot(shown, doer, width)
    }
}

/** Landscape and tablets: what is known beside what is done, the latter at the side of the thumb. */
@Composable
private fun SideBySide(shown: ShownScreen, doer: Doer, width: Dp) {
    val half = width / 2
    val known = @Composable {
        Scrolled(Modifier.width(half).fillMaxHeight()) {
            Title(shown)
            Known(shown.known, doer, half)
        }
    }
    val doing = @Composable {
        Column(Modifier.width(half).fillMaxHeight()) {
            Parts(Modifier.weight(1f), 1f, known = {}, doing = { at -> Doing(shown.doing, doer, half, at) })
            Foot(shown, doer, half)
        }
    }
    Row(Modifier.fillMaxSize()) {
        if (shown.leftHanded) doing() else known()
        if (shown.leftHanded) known() else doing()
    }
}

@Composable
private fun Title(shown: ShownScreen) {
    Text(
        shown.title,
        Modifier.fillMaxWidth().padding(horizontal = Edge, vertical = 8.dp).semantics { heading() },
        style = MaterialTheme.typography.headlineSmall,
        color = MaterialTheme.colorScheme.onBackground,
    )
}

@Composable
private fun Foot(shown: ShownScreen, doer: Doer, width: Dp) {
    Column(Modifier.fillMaxWidth()) {
        if (shown.told.isNotEmpty()) {
            Text(
                shown.told,
                Modifier.fillMaxWidth().background(MaterialTheme.colorScheme.surfaceVariant).padding(horizontal = Edge, vertical = 8.dp)
                    .testTag("told").semantics { liveRegion = LiveRegionMode.Polite },
                style = MaterialTheme.typography.bodyMedium,
                color = MaterialTheme.colorScheme.onSurface,
            )
        }
        HorizontalDivider(color = MaterialTheme.colorScheme.outlineVariant)
        ThumbBar(shown, doer, width)
    }
}

@Composable
private fun Scrolled(modifier: Modifier, at: ScrollState = rememberScrollState(), content: @Composable () -> Unit) {
    Column(modifier.verticalScroll(at), content = { content() })
}

/**
 * Two parts one above the other, each scrolling by itself where it must: the lower one has what it needs up to
 * [share] of the height, more where the upper one leaves it free. An edge shows where one of them goes on behind it.
 */
@Composable
private fun Parts(modifier: Modifier, share: Float, known: @Composable () -> Unit, doing: @Composable (ScrollState) -> Unit) {
    val below = rememberScrollState(Int.MAX_VALUE) // the most used is last, nearest to the thumb
    Layout(modifier = modifier.fillMaxWidth(), content = {
        Scrolled(Modifier.fillMaxWidth()) { known() }
        Scrolled(Modifier.fillMaxWidth(), below) { doing(below) }
        HorizontalDivider(color = MaterialTheme.colorScheme.outline)
    }) { (upper, lower, edge), constraints ->
        val (width, height) = constraints.maxWidth to constraints.maxHeight
        val left = height - upper.maxIntrinsicHeight(width)
        val needed = lower.maxIntrinsicHeight(width)
        val wanted = needed.coerceAtMost(maxOf(left, (height * share).toInt()))
        val placedAbove = upper.measure(constraints.copy(minHeight = 0, maxHeight = height - wanted))
        val placedEdge = edge.measure(constraints.copy(minHeight = 0))
        val placedBelow = lower.measure(constraints.copy(minHeight = wanted, maxHeight = wanted))
        layout(width, height) {
            placedAbove.place(0, 0)
            placedBelow.place(0, height - wanted)
            if (left < needed) placedEdge.place(0, height - wanted)
        }
    }
}

private const val DOING_SHARE = 0.64f

/** The same where what is known comes first. */
private const val DOING_SHARE_BELOW_WORDS = 0.36f

/** For the farmer: large letters, nothing to operate; a tap anywhere goes back. */
@Composable
private fun ForTheFarmer(shown: ShownScreen, doer: Doer, width: Dp) {
    val back = shown.back
    val leave = if (back == null) Modifier else Modifier.clickable(onClickLabel = back.label) { doer.does(back.does) }
    Column(
        Modifier.fillMaxSize().then(leave).verticalScroll(rememberScrollState()),
        verticalArrangement = Arrangement.spacedBy(8.dp),
    ) {
        Text(
            shown.title,
            Modifier.padding(horizontal = Edge, vertical = 8.dp).semantics { heading() },
            style = MaterialTheme.typography.headlineLarge,
            color = MaterialTheme.colorScheme.onBackground,
        )
        Known(shown.known, doer, min(width, Widest), large = true)
    }
}
