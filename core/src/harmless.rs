//! Text that somebody else wrote, made harmless where it is shown. What is kept and handed on stays as it was written; but a name must not be able to
//! forge a line, turn the rest of one round, hide in it, or push it off the screen.

use std::borrow::Cow;
use std::fmt::Write as _;

/// Most letters that a name has where it is made, and that are shown of one that came. Our judgement: the longest farm and field names
/// on maps have some forty.
pub const LONGEST_NAME: usize = 80;

/// Marks set above and below one letter that are shown; no orthography uses more. Our judgement.
const MOST_MARKS: usize = 4;

/// A text as one line: breaks become spaces; what controls a terminal, turns the direction of writing or takes no room falls away.
pub fn line(text: &str) -> Cow<'_, str> {
    cleaned(text, false)
}

/// A text of several lines, which stay; else as [`line()`].
pub fn lines(text: &str) -> Cow<'_, str> {
    cleaned(text, true)
}

/// A name as one line, no longer than [`LONGEST_NAME`]; of a longer one the beginning and `…`.
pub fn name(text: &str) -> Cow<'_, str> {
    let name = line(text);
    match name.char_indices().nth(LONGEST_NAME) {
        None => name,
        Some(_) => Cow::Owned(name.chars().take(LONGEST_NAME - 1).chain(['…']).collect()),
    }
}

/// Returns what somebody typed as a name, as it may be kept: clean, without blanks around it, no longer than [`LONGEST_NAME`].
pub fn typed_name(text: &str) -> String {
    let kept: String = line(text).trim().chars().take(LONGEST_NAME).collect();
    kept.trim_end().to_owned()
}

/// Returns what is wrong with a name that is to be kept; nothing if [`typed_name`] would leave it as it is but for blanks around it.
pub fn wrong_with_name(text: &str) -> Option<String> {
    let letters = text.trim().chars().count();
    if letters > LONGEST_NAME {
        return Some(format!("it has {letters} letters, a name has at most {LONGEST_NAME}"));
    }
    (line(text) != text).then(|| "it has a line break or signs that nobody sees".to_owned())
}

/// JSON with the same meaning in which no dangerous sign stands as it is: inside texts, where alone they can be, they are written out.
pub fn json(text: &str) -> Cow<'_, str> {
    if !text.chars().any(|sign| sign != '\n' && is_dangerous(sign)) {
        return Cow::Borrowed(text);
    }
    let mut written = String::with_capacity(text.len() + 16);
    for sign in text.chars() {
        if sign == '\n' || !is_dangerous(sign) {
            written.push(sign);
        } else {
            for unit in sign.encode_utf16(&mut [0; 2]) {
                let _ = write!(written, "\\u{unit:04x}");
            }
        }
    }
    Cow::Owned(written)
}

fn is_dangerous(sign: char) -> bool {
    is_break(sign) || sign.is_control() || is_unseen(sign)
}

fn cleaned(text: &str, keeps_breaks: bool) -> Cow<'_, str> {
    let mut marks = 0;
    let is_harmless = |sign: char| {
        marks = if is_mark(sign) { marks + 1 } else { 0 };
        marks <= MOST_MARKS && (!is_dangerous(sign) || keeps_breaks && sign == '\n')
    };
    if text.chars().all(is_harmless) {
        return Cow::Borrowed(text);
    }
    let (mut clean, mut marks) = (String::with_capacity(text.len()), 0);
    let mut rest = text.chars().peekable();
    while let Some(sign) = rest.next() {
        marks = if is_mark(sign) { marks + 1 } else { 0 };
        match sign {
            '\n' if keeps_breaks => clean.push(sign),
            _ if is_break(sign) => clean.push(' '),
            // Between letters of scripts that are spelled with them, and in pictures put together of several.
            JOINER | NON_JOINER => {
                let joins =
                    |sign: Option<char>| sign.is_some_and(|sign| !sign.is_ascii() && !is_dangerous(sign));
                if joins(clean.chars().next_back()) && joins(rest.peek().copied()) {
                    clean.push(sign);
                }
            }
            _ if marks > MOST_MARKS || sign.is_control() || is_unseen(sign) => {}
            _ => clean.push(sign),
        }
    }
    Cow::Owned(clean)
}

const NON_JOINER: char = '\u{200c}';
const JOINER: char = '\u{200d}';

/// Returns what begins a new line or page somewhere (Unicode Standard Annex 14, classes BK, CR, LF, NL), and the tabulator.
fn is_break(sign: char) -> bool {
    matches!(sign, '\t'..='\r' | '\u{85}' | '\u{2028}' | '\u{2029}')
}

/// Combining marks of European scripts (block Combining Diacritical Marks), which may be stacked without end.
fn is_mark(sign: char) -> bool {
    matches!(sign, '\u{300}'..='\u{36f}')
}

/// Returns what takes no room, or changes the direction of what follows: the code points that the Unicode Character Database gives
/// `Default_Ignorable_Code_Point` or `Bidi_Control` (but for variation selectors, which choose between shapes), and those of
/// interlinear annotation.
fn is_unseen(sign: char) -> bool {
    matches!(
        sign,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}' | '\u{180b}'..='\u{180f}'
            | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{3164}' | '\u{feff}'
            | '\u{ffa0}' | '\u{fff0}'..='\u{fffb}' | '\u{1bca0}'..='\u{1bca3}' | '\u{1d173}'..='\u{1d17a}'
            | '\u{e0000}'..='\u{e0fff}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_people_write_stays_as_it_is() {
        for text in [
            "Long Sedge",
            "Große Breite, östl. Teil",
            "Ann (Mill Farm)",
            "چای\u{200c}خانه",
            "क्\u{200d}ष",
            "👩\u{200d}🌾 Ann",
            "20–30\u{a0}cm",
            "e\u{301}",
            "שדה",
            "-3 °C",
        ] {
            assert_eq!(name(text), text);
            assert_eq!(wrong_with_name(text), None, "{text}");
            assert_eq!(typed_name(text), text);
        }
    }

    #[test]
    fn what_forges_turns_or_hides_falls_away() {
        assert_eq!(line("Ann\r\nbe accepted\u{2028}now\u{85}\t!"), "Ann  be accepted now  !");
        assert_eq!(line("\u{1b}[31mred\u{1b}]8;;x\u{7}\u{9b}2J\u{7f}\0"), "[31mred]8;;x2J");
        assert_eq!(line("a\u{202e}b\u{2066}c\u{61c}d\u{200f}"), "abcd");
        assert_eq!(line("An\u{200b}n\u{feff}\u{2060}\u{ad}\u{e0041}\u{3164}"), "Ann");
        assert_eq!(line("A\u{200d}n\u{200c}n"), "Ann", "no joiner between Latin letters");
        assert_eq!(line(&format!("A{}", "\u{301}".repeat(50))), format!("A{}", "\u{301}".repeat(4)));
        assert_eq!(lines("one\ntwo\u{1b}\rthree"), "one\ntwo three");
        let long = name(&"x".repeat(1000)).into_owned();
        assert_eq!((long.chars().count(), long.chars().last()), (LONGEST_NAME, Some('…')));
        assert_eq!(typed_name("  Ann\u{202e}\n "), "Ann");
        assert!(wrong_with_name(&"x".repeat(81)).is_some_and(|wrong| wrong.contains("81")));
        assert!(wrong_with_name("a\nb").is_some());
    }

    #[test]
    fn json_means_the_same_and_is_harmless() {
        let told = serde_json::json!({ "name": "a\u{202e}\u{9b}\u{e0041}b\n" });
        let written = format!("{told:#}\n");
        let harmless = json(&written);
        assert!(harmless.is_ascii(), "{harmless}");
        assert_eq!(serde_json::from_str::<serde_json::Value>(&harmless).unwrap(), told);
    }
}
