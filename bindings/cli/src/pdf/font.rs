//! The type: `DejaVu` Sans Condensed, upright and bold, whose signs are measured here and embedded by the writer.

use krilla::text::{Font, GlyphId, KrillaGlyph};
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::GlyphMetrics;
use skrifa::{FontRef, MetadataProvider};

/// Stands for a sign that the type does not have.
const MISSING: char = '\u{25a1}';

/// Both cuts.
pub struct Fonts {
    upright: Cut,
    bold: Cut,
}

/// A cut with what measures it.
struct Cut {
    font: Font,
    signs: Charmap<'static>,
    widths: GlyphMetrics<'static>,
}

impl Fonts {
    /// Both cuts; `None` where they cannot be read.
    pub fn new() -> Option<Self> {
        Some(Self {
            upright: Cut::new(dejavu::sans_condensed::regular())?,
            bold: Cut::new(dejavu::sans_condensed::bold())?,
        })
    }

    /// The cut as the writer takes it.
    pub fn font(&self, strong: bool) -> Font {
        self.cut(strong).font.clone()
    }

    /// Width of a line, points.
    pub fn width(&self, text: &str, size: f32, strong: bool) -> f32 {
        let cut = self.cut(strong);
        text.chars().map(|sign| cut.sign(sign).1 * size).sum()
    }

    /// A line as it can be shown, and its signs.
    pub fn glyphs(&self, text: &str, strong: bool) -> (String, Vec<KrillaGlyph>) {
        let cut = self.cut(strong);
        let shown: String =
            text.chars().map(|sign| if cut.signs.map(sign).is_some() { sign } else { MISSING }).collect();
        let glyph = |(at, sign): (usize, char)| {
            let (glyph_id, x_advance) = cut.sign(sign);
            let text_range = at..at + sign.len_utf8();
            let (x_offset, y_offset, y_advance, location) = (0.0, 0.0, 0.0, None);
            KrillaGlyph { glyph_id, text_range, x_advance, x_offset, y_offset, y_advance, location }
        };
        let glyphs = shown.char_indices().map(glyph).collect();
        (shown, glyphs)
    }

    /// Returns whether a line has signs that the type does not have.
    pub fn lacks(&self, text: &str, strong: bool) -> bool {
        text.chars().any(|sign| self.cut(strong).signs.map(sign).is_none())
    }

    /// A text as lines no wider than `width`: broken at spaces, which end their line, and within a word that is wider.
    pub fn wrapped(&self, text: &str, size: f32, strong: bool, width: f32) -> Vec<String> {
        let fits = |line: &str| self.width(line.trim_end_matches(' '), size, strong) <= width;
        let mut lines = vec![String::new()];
        // Not at every white space: a no-break space holds a number to its unit.
        for word in text.split_inclusive([' ', '\n', '\t']) {
            let word = word.replace(['\n', '\t'], " ");
            let line = lines.last_mut().map(std::mem::take).unwrap_or_default();
            lines.pop();
            let joined = format!("{line}{word}");
            if fits(&joined) {
                lines.push(joined);
                continue;
            }
            lines.extend((!line.is_empty()).then_some(line));
            lines.push(String::new());
            for sign in word.chars() {
                let full = |line: &String| !line.is_empty() && !fits(&format!("{line}{sign}"));
                if lines.last().is_some_and(full) {
                    lines.push(String::new());
                }
                if let Some(line) = lines.last_mut() {
                    line.push(sign);
                }
            }
        }
        lines
    }

    /// Width of the widest word, points.
    pub fn widest_word(&self, text: &str, size: f32, strong: bool) -> f32 {
        text.split([' ', '\n', '\t']).map(|word| self.width(word, size, strong)).fold(0.0, f32::max)
    }

    const fn cut(&self, strong: bool) -> &Cut {
        if strong { &self.bold } else { &self.upright }
    }
}

impl Cut {
    fn new(bytes: &'static [u8]) -> Option<Self> {
        let read = FontRef::new(bytes).ok()?;
        Some(Self {
            font: Font::new(bytes.into(), 0)?,
            signs: read.charmap(),
            widths: read.glyph_metrics(Size::new(1.0), LocationRef::default()),
        })
    }

    /// The glyph of a sign and its width as a share of the size of the type.
    fn sign(&self, sign: char) -> (GlyphId, f32) {
        let glyph = self.signs.map(sign).or_else(|| self.signs.map(MISSING)).unwrap_or_default();
        (GlyphId::new(glyph.to_u32()), self.widths.advance_width(glyph).unwrap_or(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::Fonts;

    #[test]
    fn lines_keep_to_the_width_and_lose_nothing() {
        let fonts = Fonts::new().expect("fonts");
        let text =
            "Loosen the headland to 38\u{a0}cm, once it is dry enough; Donaudampfschifffahrtsgesellschaft";
        let lines = fonts.wrapped(text, 8.0, false, 90.0);
        assert_eq!(lines.concat(), text);
        assert!(lines.len() > 3);
        for line in &lines {
            assert!(fonts.width(line.trim_end(), 8.0, false) <= 90.0, "{line}");
        }
        assert!(lines.iter().any(|line| line.contains("38\u{a0}cm")));
    }
}
