//! A length that remembers how it was written.

use std::fmt;

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

/// A length in metres, with the text it was read from.
#[derive(Clone, Debug, Default)]
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
impl PartialEq for Length {
    fn eq(&self, other: &Self) -> bool {
        self.m == other.m && self.style == other.style && self.text == other.text
    }
}
impl Length {
    /// A length of `m` metres written as a bare number.
    pub const fn metres(m: f64) -> Self {
        Self { m, style: Style::Bare, text: String::new() }
    }
    /// The value in metres, single precision, as the light core takes it.
    pub fn f32(&self) -> f32 {
        self.m as f32
    }
}
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} m", self.m)
    }
}
