//! How kindly what is not known may turn out.

use crate::units::border;
use serde::Serialize;

/// How easily heat gets out: all that is not known taken one way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ease {
    /// It stays cold inside.
    Easy,
    /// As is to be expected.
    Typical,
    /// It gets warm inside.
    Hard,
}

impl Ease {
    /// One of three values, that of [`Ease::Easy`] first.
    pub(super) const fn of(self, values: [f64; 3]) -> f64 {
        values[self as usize]
    }
}

/// A value with the range that it may have.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Span {
    /// The least to expect.
    #[serde(serialize_with = "border::light")]
    pub low: f64,
    /// The typical value.
    #[serde(serialize_with = "border::light")]
    pub typical: f64,
    /// The most to expect.
    #[serde(serialize_with = "border::light")]
    pub high: f64,
}

impl Span {
    /// The range of something, by how easily heat gets out.
    pub(super) fn of(value: impl Fn(Ease) -> f64) -> Self {
        let [easy, typical, hard] = [Ease::Easy, Ease::Typical, Ease::Hard].map(value);
        Self { low: easy.min(hard), typical, high: easy.max(hard) }
    }
}
