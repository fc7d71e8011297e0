//! The sky over towns.

use super::about;
use gauzelight::light::ambient::town::luminance;

/// Luminances of the sky by mag/arcsec² (Light pollution monitoring, lightpollution.pk.edu.pl), and the natural one that Bará, Aubé,
/// Barentine and Zamorano (MNRAS 493, 2020, 2429) have for 22.0: 176 to 227 µcd/m² by its spectrum.
#[test]
fn magnitudes_are_luminances() {
    for (mag, nits) in
        [(22.0, 1.71e-4), (21.0, 4.30e-4), (20.0, 1.08e-3), (19.0, 2.71e-3), (18.0, 6.81e-3), (17.0, 0.0171)]
    {
        about(luminance(mag), nits, 0.005);
    }
    assert!((176e-6 * 0.95..=227e-6).contains(&luminance(22.0)));
}
