//! The words for seeing.

use serde::Serialize;

/// A word for seeing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Word {
    /// Nobody would notice.
    Lost,
    /// Easily passed by.
    Faint,
    /// Read at a glance.
    Clear,
    /// It draws the eye.
    Strong,
}

impl Word {
    /// Every word, worst first.
    pub const ALL: [Self; 4] = [Self::Lost, Self::Faint, Self::Clear, Self::Strong];

    /// The word itself.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Lost => "lost",
            Self::Faint => "faint",
            Self::Clear => "clear",
            Self::Strong => "strong",
        }
    }

    /// The word for a value by the steps from which it is faint, clear and strong.
    pub fn by(value: f64, steps: [f64; 3]) -> Self {
        Self::ALL[steps.iter().filter(|step| value >= **step).count()]
    }
}
