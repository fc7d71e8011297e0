//! W. Adrian, Lighting Research & Technology 21, 1989, 181, against Blackwell's measurements of 1946.

use gauzelight::light::eye::{Task, threshold};

/// H. R. Blackwell, "Contrast thresholds of the human eye", 1946, as R. Clark tabulates it for the night sky (attribution from
/// memory): log threshold contrast over the diameter, by sky brightness in magnitudes to the square second. Two bodies of data
/// agree within a factor of 1.6, seen one time in two.
#[test]
fn blackwell() {
    let sizes = [3.60, 9.68, 18.2, 55.2];
    let table = [
        (4.0, [0.01562, 0.004605, 0.003467, 0.002839]),
        (10.0, [0.03424, 0.006825, 0.004204, 0.003128]),
        (12.0, [0.05948, 0.01078, 0.006361, 0.004334]),
        (13.0, [0.08564, 0.01518, 0.008849, 0.005695]),
        (14.0, [0.1306, 0.02349, 0.01336, 0.007963]),
        (15.0, [0.2144, 0.04011, 0.02182, 0.01179]),
        (16.0, [0.4025, 0.07475, 0.03823, 0.01862]),
        (18.0, [2.217, 0.3218, 0.1393, 0.05419]),
        (20.0, [12.25, 1.607, 0.4775, 0.1318]),
        (22.0, [24.1, 3.43, 1.078, 0.2751]),
    ];
    for (magnitude, contrasts) in table {
        let ground = 10.8e4 * 10_f64.powf(-0.4 * magnitude);
        for (arcmin, contrast) in sizes.into_iter().zip(contrasts) {
            let ratio = threshold(ground, Task { sureness: 1.0, ..Task::bright(arcmin) }) / (contrast * ground);
            assert!((0.65..1.6).contains(&ratio), "{ratio} at {magnitude} and {arcmin}′");
        }
    }
}
