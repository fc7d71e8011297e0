//! CIE 191:2010: values solved apart from this code, with its published constants.

use super::close;
use gauzelight::light::eye::mesopic;

#[test]
fn the_table() {
    let photopic = [0.01, 0.03, 0.1, 0.3, 1.0, 3.0];
    let table = [
        (0.65, [0.00687, 0.02393, 0.08731, 0.27639, 0.96081, 2.9666]),
        (1.5, [0.01353, 0.03742, 0.11623, 0.33099, 1.05242, 3.0452]),
        (2.0, [0.01657, 0.04400, 0.13096, 0.35953, 1.10132, 3.0878]),
        (2.5, [0.01934, 0.05005, 0.14462, 0.38618, 1.14727, 3.1280]),
    ];
    for (ratio, values) in table {
        for (luminance, wanted) in photopic.into_iter().zip(values) {
            close(mesopic(luminance, ratio), wanted, 1e-3);
        }
    }
}

#[test]
fn light_alike_by_day_and_night_stays_what_it_is() {
    for luminance in [0.0, 1e-5, 0.004, 0.1, 1.0, 4.9, 5.1, 300.0] {
        close(mesopic(luminance, 1.0), luminance, 1e-9);
    }
    // By day everything is photopic.
    close(mesopic(5.01, 2.0), 5.01, 1e-9);
}
