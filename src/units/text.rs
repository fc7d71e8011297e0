//! Texts from strangers, for a terminal: nothing in them may move its cursor, change its colours or turn its writing round.

use std::fmt::{Display, LowerExp, Write as _};

/// A text with every character that a terminal would obey, rather than show, by its number: `\u{1b}`.
pub fn printable(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        if is_obeyed(letter) {
            // Writing to a string cannot fail.
            let _ = write!(shown, "{}", letter.escape_default());
        } else {
            shown.push(letter);
        }
    }
    shown
}

/// A [printable] text of `most` characters at most.
pub fn clipped(text: &str, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((end, _)) => printable(&text[..end]) + "…",
        None => printable(text),
    }
}

/// Whether a character shows nothing by itself: white space, a control character, or one that Unicode has programs ignore where they
/// cannot show it (Unicode 15, DerivedCoreProperties, `Default_Ignorable_Code_Point`; from memory), and the blank of Braille.
pub fn is_invisible(letter: char) -> bool {
    letter.is_whitespace()
        || letter.is_control()
        || matches!(letter,
            '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}'..='\u{1160}' | '\u{17b4}'..='\u{17b5}' | '\u{180b}'..='\u{180f}'
            | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{2800}' | '\u{3164}'
            | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{ffa0}' | '\u{fff0}'..='\u{fff8}' | '\u{1bca0}'..='\u{1bca3}'
            | '\u{1d173}'..='\u{1d17a}' | '\u{e0000}'..='\u{e0fff}')
}

/// Whether a character is obeyed rather than shown: a control character, or one that turns the writing after it round (embeddings,
/// overrides and isolates of Unicode Standard Annex 9), so that a line reads as another than it is.
pub fn is_obeyed(letter: char) -> bool {
    letter.is_control() || matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// From here on a number is a row of digits that nobody counts.
const ROW: f64 = 1e12;

/// A number to so many decimals, but with an exponent where it would be a row of digits.
pub fn decimals(value: f64, count: usize) -> String {
    if value.abs() < ROW { format!("{value:.count$}") } else { number(value) }
}

/// A number as it is written, but with an exponent where it would be a row of zeros.
pub fn number<T: Copy + Into<f64> + Display + LowerExp>(value: T) -> String {
    let size: f64 = value.into().abs();
    if size == 0.0 || (1e-6..ROW).contains(&size) { value.to_string() } else { format!("{value:e}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_terminal_is_told_nothing_but_letters() {
        assert_eq!(printable("a\u{1b}[31mb\nc\u{202e}d"), "a\\u{1b}[31mb\\nc\\u{202e}d");
        assert_eq!(printable("Käuzchen “🦉”"), "Käuzchen “🦉”");
        assert_eq!(clipped("Käuzchen", 3), "Käu…");
        assert_eq!(clipped("Käu", 3), "Käu");
    }

    #[test]
    fn numbers_are_never_rows_of_zeros() {
        let shown = [0.0, 12.5, -3.0, 1e300, -1e-300, f64::MIN_POSITIVE, 999_999_999.0].map(number);
        assert_eq!(shown, ["0", "12.5", "-3", "1e300", "-1e-300", "2.2250738585072014e-308", "999999999"]);
        // Of single precision no more digits than it has.
        assert_eq!([number(180.3_f32), number(1e38_f32)], ["180.3", "1e38"]);
        assert_eq!([decimals(1.0 / 3.0, 2), decimals(-1e300, 2)], ["0.33", "-1e300"]);
    }

    #[test]
    fn nothing_to_see_is_invisible() {
        assert!(" \u{a0}\u{200b}\u{2060}\u{3164}\u{feff}\u{e0020}".chars().all(is_invisible));
        assert!(!"aö字🦉.-".chars().any(is_invisible));
    }
}
