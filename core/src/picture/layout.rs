//! Room for text: how wide it may run, where it breaks, and how labels beside a face keep off each other.

/// Height of a line of text as a share of its size; type stays inside it.
pub const LINE_HEIGHT: f64 = 1.25;
/// Base line of a line of text below its upper edge, as a share of its size.
pub const BASE_LINE: f64 = 0.95;

/// How wide a text may run, points, in the sans-serif faces of phones and browsers: an upper bound on whole
/// words, not a measure. Measured against Roboto, Noto Sans and Liberation Sans, which stay below it by 2 to 16
/// of 100; `DejaVu Sans`, the widest of the common ones, runs over by up to 10 of 100 when bold.
pub fn text_width(text: &str, size: f64, strong: bool) -> f64 {
    let ems: f64 = text.chars().map(width_in_ems).sum();
    ems * size * if strong { 1.08 } else { 1.0 }
}

/// Width of a character as a share of the size of its type, by groups of about the same width.
fn width_in_ems(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '’' | '|' | '!' | ' ' | '\u{a0}'
        | '\u{202f}' | '\u{2009}' => 0.30,
        'f' | 't' | 'r' | '-' | '(' | ')' | '[' | ']' | '/' | '"' | '·' | '°' => 0.42,
        'c' | 'k' | 's' | 'z' | 'v' | 'x' | 'y' | 'J' => 0.53,
        '0'..='9' | '–' => 0.64,
        'C' | 'D' | 'G' | 'H' | 'N' | 'O' | 'Q' | 'R' | 'U' | 'Ä' | 'Ö' | 'Ü' | 'w' => 0.80,
        'm' | 'M' | 'W' | '%' | '@' | '—' | '…' | '→' | '−' | '+' | '=' | '±' | '≥' | '≤' => {
            0.95
        }
        _ if letter.is_lowercase() => 0.62,
        _ if letter.is_uppercase() => 0.70,
        _ => 1.0,
    }
}

/// The words of a text as lines no wider than `width`; a word that is wider is broken where it has to be.
pub(super) fn wrap(text: &str, size: f64, strong: bool, width: f64) -> Vec<String> {
    let fits = |line: &str| text_width(line, size, strong) <= width;
    let mut lines = Vec::new();
    let mut line = String::new();
    // Not split_whitespace: a no-break space holds a number to its unit.
    for word in text.split([' ', '\n', '\t']).filter(|word| !word.is_empty()) {
        let joined = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if fits(&joined) {
            line = joined;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if !fits(&line) && line.chars().nth(1).is_some() {
                line.pop();
                lines.push(std::mem::replace(&mut line, letter.to_string()));
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// Width of the widest word of a text.
pub(super) fn widest_word(text: &str, size: f64, strong: bool) -> f64 {
    text.split([' ', '\n', '\t']).map(|word| text_width(word, size, strong)).fold(0.0, f64::max)
}

/// Upper edges for blocks of these heights, given in order, so that each lies as near its wanted middle as can
/// be (least squares), none overlaps the next, and all lie between `top` and `bottom`, as far as there is room.
pub(super) fn spread(blocks: &[(f64, f64)], top: f64, bottom: f64) -> Vec<f64> {
    // With the heights above taken off, "no overlap" becomes "not decreasing": pool neighbours that break it.
    let mut pools: Vec<(f64, usize)> = Vec::new();
    let mut above = 0.0;
    for &(middle, height) in blocks {
        let mut pool = (middle - height / 2.0 - above, 1);
        while let Some(&(upper, count)) = pools.last() {
            if upper <= pool.0 {
                break;
            }
            pools.pop();
            pool =
                ((upper * count as f64 + pool.0 * pool.1 as f64) / (count + pool.1) as f64, count + pool.1);
        }
        pools.push(pool);
        above += height;
    }
    let lowest = (bottom - above).max(top);
    let edges = pools.iter().flat_map(|&(edge, count)| std::iter::repeat_n(edge.clamp(top, lowest), count));
    let mut above = 0.0;
    edges
        .zip(blocks)
        .map(|(edge, &(_, height))| {
            let at = edge + above;
            above += height;
            at
        })
        .collect()
}

/// A box on the drawing, points.
#[derive(Debug, Clone, Copy)]
pub(super) struct Area {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Area {
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_go_to_the_next_line_and_long_ones_are_broken() {
        assert_eq!(wrap("one two", 10.0, false, 30.0), ["one", "two"]);
        assert_eq!(wrap("20\u{a0}cm", 10.0, false, 500.0), ["20\u{a0}cm"]);
        assert_eq!(wrap("nnnnn", 10.0, false, 14.0), ["nn", "nn", "n"]);
        assert_eq!(wrap("nn", 10.0, false, 1.0), ["n", "n"], "never an endless loop");
        assert!(wrap("  ", 10.0, false, 10.0).is_empty());
    }

    #[test]
    fn blocks_stay_where_they_are_wanted_if_they_can() {
        assert_eq!(spread(&[(10.0, 4.0), (30.0, 4.0)], 0.0, 100.0), [8.0, 28.0]);
    }

    #[test]
    fn blocks_wanted_at_one_place_share_the_way() {
        assert_eq!(spread(&[(50.0, 10.0), (50.0, 10.0)], 0.0, 100.0), [40.0, 50.0]);
    }

    #[test]
    fn blocks_stay_inside() {
        assert_eq!(spread(&[(1.0, 10.0), (2.0, 10.0)], 0.0, 100.0), [0.0, 10.0]);
        assert_eq!(spread(&[(99.0, 10.0), (99.0, 10.0)], 0.0, 100.0), [80.0, 90.0]);
    }
}
