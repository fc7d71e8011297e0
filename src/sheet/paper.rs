//! Paper.

/// A paper that printers take.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4, 210 × 297 mm.
    #[default]
    A4,
    /// US Letter, 8 1/2 × 11 in.
    Letter,
}

/// Free edge on all sides, points: what most printers cannot reach, and a thumb's hold.
pub(super) const MARGIN: f64 = 30.0;

impl Paper {
    /// Width and height in points of 1/72 in.
    pub const fn points(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0],
            Self::Letter => [612.0, 792.0],
        }
    }

    /// Its name in CSS.
    pub(super) const fn css(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "letter",
        }
    }
}
