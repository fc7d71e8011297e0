//! AVIXA V201.01 (first ANSI/INFOCOMM 3M-2011): ratios of white to black with other light included, 7 : 1 for passive viewing and
//! 15 : 1 for basic decision making (read in a secondary page).

use gauzelight::scene::{Catalogue, Source, limits};

#[test]
fn the_limits_are_the_published_ones() {
    let catalogue = Catalogue::builtin();
    for (name, ratio) in [(limits::STANDS_OUT_CLEAR, 7.0), (limits::STANDS_OUT_STRONG, 15.0)] {
        let limit = catalogue.limit(name).unwrap_or_else(|| panic!("{name} is there"));
        assert_eq!((limit.value, limit.source), (ratio, Source::Published));
    }
}
