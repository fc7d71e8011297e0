//! Glass as light meets it, alone or with what hangs on it.

use super::{Curve, Rgb, Sheet};

/// A sheet that may also reflect like a mirror.
#[derive(Clone, Debug, PartialEq)]
pub struct Pane {
    /// What goes straight through and what is scattered; for bare glass nothing is.
    pub sheet: Sheet,
    /// Share reflected like a mirror, unpolarised light arriving on the front, on the back.
    pub mirror: [Curve; 2],
}

impl From<&Sheet> for Pane {
    fn from(sheet: &Sheet) -> Self {
        let none = Curve::constant(Rgb::ZERO);
        Self { sheet: sheet.clone(), mirror: [none.clone(), none] }
    }
}
