//! A length that remembers how it was written.

use super::{length_format, length_parse, number};
use std::fmt;
use std::str::FromStr;

/// No length of a yard comes near it, m.
const BEYOND: f64 = 1e6;

/// The notation a length was written in; kept so that a saved yard looks as its owner wrote it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Style {
    /// A bare number of metres: `1.9`.
    #[default]
    Bare,
    /// `"1.9 m"`.
    Metres,
    /// `"190 cm"`.
    Centimetres,
    /// `"1900 mm"`.
    Millimetres,
    /// `"6.25 ft"`.
    Feet,
    /// `"75 in"` or `"40 1/2 in"`.
    Inches,
    /// `"6ft 3.5in"` or `6' 3 1/2"`.
    FeetInches,
}

impl Style {
    /// Metres in so many of its units; feet with inches count inches. Divides by 100 and 1000, which no float holds
    /// the inverse of, so that `190 cm` is exactly `1.9 m`.
    pub fn metres(self, count: f64) -> f64 {
        match self {
            Self::Bare | Self::Metres => count,
            Self::Centimetres => count / 100.0,
            Self::Millimetres => count / 1000.0,
            Self::Feet => count * 0.3048,
            Self::Inches | Self::FeetInches => count * 0.0254,
        }
    }

    /// Whether it is one of feet and inches.
    pub fn is_feet(self) -> bool {
        matches!(self, Self::Feet | Self::Inches | Self::FeetInches)
    }

    /// How many of its units are in so many metres.
    pub fn count(self, m: f64) -> f64 {
        match self {
            Self::Bare | Self::Metres => m,
            Self::Centimetres => m * 100.0,
            Self::Millimetres => m * 1000.0,
            Self::Feet => m / 0.3048,
            Self::Inches | Self::FeetInches => m / 0.0254,
        }
    }
}

/// A length in metres, with the text it was read from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Length {
    /// The value in metres.
    pub m: f64,
    /// The notation to write a changed value in.
    pub style: Style,
    /// The text as read; empty for a bare number or a computed value.
    pub text: String,
}

/// Why a text is not a length.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("“{text}” is not a length; {remedy}")]
pub struct LengthError {
    /// What stood there.
    pub text: String,
    /// What would be taken.
    pub remedy: String,
}

impl Length {
    /// A length of `m` metres written as a bare number.
    pub const fn metres(m: f64) -> Self {
        Self { m, style: Style::Bare, text: String::new() }
    }

    /// Reads any of the notations of [`Style`]; spaces are optional, `′ ″ ½ ¼ ¾` are taken too.
    pub fn parse(text: &str) -> Result<Self, LengthError> {
        let (m, style) = length_parse::parse(text)
            .map_err(|remedy| LengthError { text: text.trim().chars().take(40).collect(), remedy })?;
        Ok(Self { m, style, text: text.trim().to_owned() })
    }

    /// The same notation with another value, rounded as a person would read it off a tape: to whole millimetres, to
    /// hundredths of a foot or to sixteenths of an inch. The value is what the text says, so that saving loses nothing.
    pub fn changed(&self, m: f64) -> Self {
        if self.style == Style::Bare {
            return Self::metres(length_format::to_millimetre(m));
        }
        let letters = self.text.contains(['f', 'F']);
        let text = length_format::format(m, self.style, letters);
        let m = length_parse::parse(&text).map_or(m, |(m, _)| m);
        Self { m, style: self.style, text }
    }

    /// The value in another notation, rounded as in [`Length::changed`]. Less than a foot is shown in inches alone, which
    /// a text to save is not: it keeps its feet, and so its notation.
    pub fn show(&self, style: Style) -> String {
        length_format::shown(self.m, style)
    }

    /// The text to save: as it was read where it still says the value, else the value in its notation to the last digit.
    /// A bare number comes out without a unit.
    pub fn to_text(&self) -> String {
        let says_value =
            |text: &str| length_parse::parse(text).is_ok_and(|(m, style)| m == self.m && style == self.style);
        if !self.text.is_empty() && says_value(&self.text) {
            return self.text.clone();
        }
        let short = length_format::format(self.m, self.style, false);
        if says_value(&short) { short } else { length_format::exact(self.m, self.style) }
    }

    /// The value in metres, single precision, as the light core takes it.
    pub fn f32(&self) -> f32 {
        self.m as f32
    }
}

impl FromStr for Length {
    type Err = LengthError;

    fn from_str(text: &str) -> Result<Self, LengthError> {
        Self::parse(text)
    }
}

impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Beyond the world its own notation would be a row of digits.
        if self.m.abs() >= BEYOND {
            return write!(f, "{} m", number(self.m));
        }
        let style = if self.style == Style::Bare { Style::Metres } else { self.style };
        f.write_str(&self.show(style))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn m(text: &str) -> f64 {
        Length::parse(text).unwrap().m
    }

    #[test]
    fn every_notation_is_read() {
        let table = [
            ("1.9", 1.9, Style::Bare),
            ("1.9 m", 1.9, Style::Metres),
            ("1.9m", 1.9, Style::Metres),
            ("190 cm", 1.9, Style::Centimetres),
            ("1900 mm", 1.9, Style::Millimetres),
            ("6.25 ft", 1.905, Style::Feet),
            ("6'", 1.8288, Style::Feet),
            ("40 in", 1.016, Style::Inches),
            ("40\"", 1.016, Style::Inches),
            ("40 1/2 in", 1.0287, Style::Inches),
            ("40½ in", 1.0287, Style::Inches),
            ("½ in", 0.0127, Style::Inches),
            ("3/4\"", 0.01905, Style::Inches),
            ("6ft 3.5in", 1.9177, Style::FeetInches),
            ("6' 3 1/2\"", 1.9177, Style::FeetInches),
            ("6'3½\"", 1.9177, Style::FeetInches),
            ("6′ 3″", 1.905, Style::FeetInches),
            ("6' 3''", 1.905, Style::FeetInches),
            ("6 feet 3 inches", 1.905, Style::FeetInches),
            ("-1' 6\"", -0.4572, Style::FeetInches),
            ("−25 cm", -0.25, Style::Centimetres),
            ("+.5 m", 0.5, Style::Metres),
            ("  2 metres ", 2.0, Style::Metres),
        ];
        for (text, metres, style) in table {
            let length = Length::parse(text).unwrap();
            assert!((length.m - metres).abs() < 1e-12, "{text} gave {}", length.m);
            assert_eq!(length.style, style, "{text}");
            assert_eq!(length.text, text.trim());
        }
    }

    #[test]
    fn a_refused_length_says_what_would_be_taken() {
        let table = [
            ("", "write a number"),
            ("   ", "write a number"),
            ("tall", "start with a number"),
            ("1,9 m", "1.9"),
            ("1.9 km", "“km”"),
            ("1.9 yards", "“yards”"),
            ("6' 3 m", "after feet only inches"),
            ("6ft 3in 2", "nothing after the inches"),
            ("1 m 90 cm", "one unit"),
            ("NaN", "a number"),
            ("inf m", "a number"),
            ("1e3 m", "“e” is not a unit"),
            ("1/0 in", "divide by 0"),
            ("--1 m", "number"),
            ("1.2.3 m", "“1.2.3”"),
        ];
        for (text, hint) in table {
            let error = Length::parse(text).unwrap_err().to_string();
            assert!(error.contains(hint), "{text:?} said: {error}");
        }
    }

    #[test]
    fn a_changed_length_keeps_its_notation_and_says_its_value() {
        let table = [
            ("1.9 m", 2.34567, "2.346 m"),
            ("190 cm", 2.0, "200 cm"),
            ("190 cm", 1.2346, "123.5 cm"),
            ("1900 mm", 1.2346, "1235 mm"),
            ("6.25 ft", 3.048, "10 ft"),
            ("40 in", 1.0287, "40 1/2 in"),
            ("40 in", 0.0127, "1/2 in"),
            ("40 in", 0.0, "0 in"),
            ("6' 3 1/2\"", 1.905, "6' 3\""),
            ("6ft 3.5in", 1.9177, "6ft 3 1/2in"),
            ("6' 3\"", 1.8287, "6' 0\""),
            ("6' 3\"", -0.4572, "-1' 6\""),
        ];
        for (from, to, text) in table {
            let changed = Length::parse(from).unwrap().changed(to);
            assert_eq!(changed.text, text);
            assert!((changed.m - to).abs() < 0.0016, "{text} is {}", changed.m);
            assert_eq!(Length::parse(&changed.text).unwrap(), changed);
        }
        assert_eq!(Length::metres(1.0).changed(1.23456), Length::metres(1.235));
        assert_eq!((m("190 cm"), m("1900 mm")), (1.9, 1.9));
        assert!(Length::parse(&"9".repeat(400)).unwrap_err().remedy.contains("too large"));
    }

    #[test]
    fn less_than_a_foot_is_shown_in_inches_and_saved_with_its_feet() {
        for (m, shown, saved) in [
            (-0.06985, "-2 3/4\"", "-0' 2 3/4\""),
            (0.06985, "2 3/4\"", "0' 2 3/4\""),
            (0.0, "0\"", "0' 0\""),
            (0.3048, "1' 0\"", "1' 0\""),
            (0.3047, "1' 0\"", "1' 0\""),
        ] {
            let length = Length::parse("6' 3\"").unwrap().changed(m);
            assert_eq!((length.show(Style::FeetInches).as_str(), length.to_string().as_str()), (shown, shown));
            assert_eq!(length.to_text(), saved);
            assert_eq!(Length::parse(&length.to_text()).unwrap(), length);
            assert!((Length::parse(shown).unwrap().m - length.m).abs() < 1e-12);
        }
    }

    fn any_style() -> impl Strategy<Value = Style> {
        prop::sample::select(vec![
            Style::Metres,
            Style::Centimetres,
            Style::Millimetres,
            Style::Feet,
            Style::Inches,
            Style::FeetInches,
        ])
    }

    proptest! {
        #[test]
        fn what_is_shown_reads_back(metres in -500.0..500.0f64, style in any_style()) {
            let shown = Length::metres(metres).show(style);
            let back = Length::parse(&shown).unwrap();
            let whole_style = style != Style::FeetInches || back.m.abs() >= 0.3048 - 1e-9;
            prop_assert_eq!(back.style, if whole_style { style } else { Style::Inches });
            let half_a_step = match style { Style::Feet => 0.00153, Style::Inches | Style::FeetInches => 0.0008, _ => 0.00051 };
            prop_assert!((back.m - metres).abs() <= half_a_step, "{} for {}", shown, metres);
        }

        #[test]
        fn what_is_saved_reads_back_to_the_last_digit(metres in -500.0..500.0f64, style in any_style()) {
            let computed = Length { m: metres, style, text: String::new() };
            let back = Length::parse(&computed.to_text()).unwrap();
            prop_assert!((back.m - metres).abs() <= 1e-12 * metres.abs().max(1.0));
            prop_assert_eq!(back.style, style);
            prop_assert_eq!(back.to_text(), computed.to_text());
        }

        #[test]
        fn no_text_breaks_the_parser(text in "\\PC{0,30}") {
            if let Ok(length) = Length::parse(&text) {
                prop_assert!(length.m.is_finite());
            }
        }

        #[test]
        fn near_lengths_break_nothing(text in "[-−+0-9./½¼¾ '\"′″mcftin,e]{0,14}") {
            if let Ok(length) = Length::parse(&text) {
                prop_assert!(length.m.is_finite());
                prop_assert_eq!(Length::parse(&length.to_text()).unwrap(), length);
            }
        }
    }
}
