//! Glass.

use gauzelight::optics::Glazing;

use super::{at, near};

/// NFRC glazing 102, measured 3 mm clear float: Tvis 0.8993, Rvis 0.0826 (spectral data in LBNL Windows-CalcEngine).
#[test]
fn real_float_glass() {
    let pane = Glazing::clear_float(1).pane().unwrap();
    near(at(&pane.sheet.through, 0.0) / 0.8993, 1.0, 0.005);
    near(at(&pane.mirror[0], 0.0), 0.0826, 0.003);
}
