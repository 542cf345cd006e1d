//! What else is to be said of a field, a pit, a layer or a pass: plain words on one line or several. No rule reads them.

use super::Pit;
use crate::error::Fault;
use crate::harmless;

/// Most letters of a remark. Our judgement: a page of a notebook, and no more than a phone shows in two screens.
pub const LONGEST: usize = 1000;

/// What to do about a remark that cannot be kept.
pub const TODO: &str =
    "write it in plain words, in at most 1000 letters; what is longer goes into a file of its own";

/// Returns what is wrong with a remark that is to be kept; nothing if [`typed`] would leave it as it is.
pub fn wrong_with(text: &str) -> Option<String> {
    let letters = text.chars().count();
    if text.trim().is_empty() {
        return Some("the remark is empty".to_owned());
    }
    if letters > LONGEST {
        return Some(format!("it has {letters} letters, a remark has at most {LONGEST}"));
    }
    (harmless::lines(text) != text).then(|| "it has signs that nobody sees".to_owned())
}

/// Returns what somebody typed as a remark, as it may be kept: clean, its lines as they were; `None` where nothing is left of it.
///
/// # Errors
/// A remark that is too long, with its length: nothing of it is cut off unseen.
pub fn typed(text: &str) -> Result<Option<String>, Fault> {
    let text = text.replace("\r\n", "\n");
    let kept = harmless::lines(&text).trim().to_owned();
    if kept.is_empty() {
        return Ok(None);
    }
    match wrong_with(&kept) {
        None => Ok(Some(kept)),
        Some(wrong) => Err(Fault::new("remark", wrong, TODO)),
    }
}

/// The remarks of the layers noted in a pit whose middle lies between two depths below the surface: those of a layer as it is read.
pub fn of_layer(pit: &Pit, top_mm: u32, bottom_mm: u32) -> impl Iterator<Item = &str> {
    let within = (2 * u64::from(top_mm))..(2 * u64::from(bottom_mm));
    let middle = |layer: &super::Layer| u64::from(layer.top_mm) + u64::from(layer.bottom_mm);
    pit.layers
        .iter()
        .filter(move |layer| within.contains(&middle(layer)))
        .filter_map(|it| it.remark.as_deref())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_is_kept_with_its_lines() {
        let typed = |text: &str| typed(text).unwrap();
        assert_eq!(typed("  old gateway,\r\nmoved 1998\n"), Some("old gateway,\nmoved 1998".into()));
        assert_eq!(typed("two\u{202e} springs\u{200b}"), Some("two springs".into()));
        assert_eq!(typed(" \n\u{200b}"), None);
    }

    #[test]
    fn what_is_too_long_is_told_and_not_cut() {
        let fits = "x".repeat(LONGEST);
        assert_eq!(typed(&fits).unwrap(), Some(fits));
        let wrong = typed(&"x".repeat(LONGEST + 1)).unwrap_err().to_string();
        assert!(wrong.contains("1001 letters") && wrong.contains("at most 1000"), "{wrong}");
        assert!(TODO.contains(&LONGEST.to_string()));
    }
}
