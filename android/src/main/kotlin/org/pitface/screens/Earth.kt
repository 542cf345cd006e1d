package org.pitface.screens

import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.material3.ColorScheme
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Typography
import androidx.compose.material3.darkColorScheme
import androidx.compose.material3.lightColorScheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.intl.LocaleList
import androidx.compose.ui.text.style.Hyphens
import androidx.compose.ui.text.style.LineBreak
import androidx.compose.ui.unit.sp
import org.pitface.core.Light

/**
 * Earth tones by day; every text stands at 7 : 1 or more on its ground and every edge at 3 : 1, which a test holds. An
 * answer given has the ground `secondaryContainer`, light by day, so that a drawing stands on it in its own colours; the
 * next step is `primary`; words of what is off are `tertiary`.
 */
val EarthByDay: ColorScheme = lightColorScheme(
    primary = Color(0xFF4A3520), onPrimary = Color(0xFFFFFBF4),
    secondaryContainer = Color(0xFFF0E3CC), onSecondaryContainer = Color(0xFF17110C), tertiary = Color(0xFF5A5046),
    background = Color(0xFFFBF8F2), onBackground = Color(0xFF17110C),
    surface = Color(0xFFFBF8F2), onSurface = Color(0xFF17110C),
    surfaceVariant = Color(0xFFECE0CE), onSurfaceVariant = Color(0xFF3B3026),
    outline = Color(0xFF6B5A48), outlineVariant = Color(0xFF948370),
    error = Color(0xFF6E1F0E), onError = Color(0xFFFFFBF4),
)

/** The same in the dark. */
val EarthInTheDark: ColorScheme = darkColorScheme(
    primary = Color(0xFFE6D2B2), onPrimary = Color(0xFF1C150D),
    secondaryContainer = Color(0xFF3E3122), onSecondaryContainer = Color(0xFFF8F3EA), tertiary = Color(0xFFA89F92),
    background = Color(0xFF100E0B), onBackground = Color(0xFFF8F3EA),
    surface = Color(0xFF100E0B), onSurface = Color(0xFFF8F3EA),
    surfaceVariant = Color(0xFF2E2721), onSurfaceVariant = Color(0xFFE4D8C6),
    outline = Color(0xFFA89883), outlineVariant = Color(0xFF74665A),
    error = Color(0xFFFFB59F), onError = Color(0xFF2A0B03),
)

private fun letters(family: FontFamily, size: Int, line: Int, weight: FontWeight = FontWeight.Normal) = TextStyle(
    fontFamily = family, fontSize = size.sp, lineHeight = line.sp, fontWeight = weight, hyphens = Hyphens.Auto, lineBreak = LineBreak.Paragraph,
)

/** All fifteen styles are named, so that none falls back to another face; the display sizes are steps for the answer. */
fun type(family: FontFamily) = Typography(
    displayLarge = letters(family, 40, 46, FontWeight.Medium), displayMedium = letters(family, 32, 38, FontWeight.Medium),
    displaySmall = letters(family, 28, 34, FontWeight.Medium),
    headlineLarge = letters(family, 28, 34), headlineMedium = letters(family, 24, 30, FontWeight.Medium), headlineSmall = letters(family, 21, 27, FontWeight.Medium),
    titleLarge = letters(family, 19, 25, FontWeight.Medium), titleMedium = letters(family, 17, 22, FontWeight.Medium),
    titleSmall = letters(family, 15, 20, FontWeight.Medium),
    bodyLarge = letters(family, 17, 23), bodyMedium = letters(family, 15, 20), bodySmall = letters(family, 14, 18),
    labelLarge = letters(family, 16, 20, FontWeight.Medium), labelMedium = letters(family, 14, 18), labelSmall = letters(family, 13, 16),
)

/** Whether screens are dark, as was chosen; as the phone is set where nothing was. */
@Composable
fun isDark(light: Light?): Boolean = when (light) {
    Light.DAY -> false
    Light.DARK -> true
    Light.PHONE, null -> isSystemInDarkTheme()
}

/** Looks of the whole app. */
@Composable
fun Earth(dark: Boolean, family: FontFamily = FontFamily.Default, content: @Composable () -> Unit) {
    MaterialTheme(colorScheme = if (dark) EarthInTheDark else EarthByDay, typography = type(family), content = content)
}

/** Letters of one language, so that words are parted, and read out, as it does. */
@Composable
fun InLanguage(tag: String, content: @Composable () -> Unit) {
    val typography = MaterialTheme.typography
    val own = remember(tag, typography) { typography.inLanguage(LocaleList(tag)) }
    MaterialTheme(typography = own, content = content)
}

private fun Typography.inLanguage(tag: LocaleList) = Typography(
    displayLarge = displayLarge.copy(localeList = tag), displayMedium = displayMedium.copy(localeList = tag), displaySmall = displaySmall.copy(localeList = tag),
    headlineLarge = headlineLarge.copy(localeList = tag), headlineMedium = headlineMedium.copy(localeList = tag), headlineSmall = headlineSmall.copy(localeList = tag),
    titleLarge = titleLarge.copy(localeList = tag), titleMedium = titleMedium.copy(localeList = tag), titleSmall = titleSmall.copy(localeList = tag),
    bodyLarge = bodyLarge.copy(localeList = tag), bodyMedium = bodyMedium.copy(localeList = tag), bodySmall = bodySmall.copy(localeList = tag),
    labelLarge = labelLarge.copy(localeList = tag), labelMedium = labelMedium.copy(localeList = tag), labelSmall = labelSmall.copy(localeList = tag),
)
