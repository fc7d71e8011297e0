//! AVIXA V201.01 (first ANSI/INFOCOMM 3M-2011): ratios of white to black with other light included, 7 : 1 for passive viewing and
//! 15 : 1 for basic decision making (read in a secondary page).

use super::close;
use gauzelight::scene::{Catalogue, Source, limits};
use std::f64::consts::PI;

#[test]
fn the_limits_are_the_published_ones() {
    let catalogue = Catalogue::builtin();
    for (name, ratio) in [(limits::STANDS_OUT_CLEAR, 7.0), (limits::STANDS_OUT_STRONG, 15.0)] {
        let limit = catalogue.limit(name).unwrap_or_else(|| panic!("{name} is there"));
        assert_eq!((limit.value, limit.source), (ratio, Source::Published));
        // White that this asks for over a zero black, where other light makes 0.5 cd/m²: (R − 1) L.
        let white = (limit.value - 1.0) * 0.5;
        close(white, if ratio > 10.0 { 7.0 } else { 3.0 }, 1e-9);
        close((white + 0.5) / 0.5, ratio, 1e-12);
    }
    // Other light on a pale wall: full moon, and a street of class P4.
    close(0.269 * 0.8 / PI, 0.0685, 1e-3);
    close(5.0 * 0.8 / PI, 1.27, 5e-3);
}
