//! The moon against a general library: `data/moon.json` was made once by PyEphem 4.2, checked by Astropy 8.0; `data/moon.py` beside it made it and
//! says how.

use super::when;
use gauzelight::light::ambient::{moon, sun};
use jiff::Timestamp;
use serde::Deserialize;

#[derive(Deserialize)]
struct Data {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    place: String,
    utc: String,
    latitude: f64,
    longitude: f64,
    height: f64,
    bearing: f64,
    lit: f64,
    distance: f64,
}

/// Asked for is a fiftieth of a degree, a twenty-fifth of the moon's width; half a thousandth of its distance; and a hundredth of its lit
/// share, as the library sees that from the middle of the Earth, a degree aside from the ground.
#[test]
fn the_moon_stands_where_the_library_has_it() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/outside/data/moon.json");
    let cases = serde_json::from_str::<Data>(&std::fs::read_to_string(path).unwrap()).unwrap().cases;
    assert!(cases.len() >= 50);
    let mut worst = [0.0_f64; 3];
    for case in &cases {
        let evening = when("2026-12-21", "18:00", case.latitude, case.longitude, "UTC");
        let instant: Timestamp = format!("{}Z", case.utc).parse().unwrap();
        let moon = moon::place(&evening, instant, &sun::place(&evening, instant));
        let turned = (moon.bearing_deg - case.bearing + 180.0).rem_euclid(360.0) - 180.0;
        let apart = (moon.height_deg - case.height).hypot(turned * case.height.to_radians().cos());
        let (lit, far) = ((moon.lit() - case.lit).abs(), (moon.distance_km / case.distance - 1.0).abs());
        assert!(apart < 0.02 && lit < 0.01 && far < 5e-4, "{} {}: {moon:?}, {apart}° off", case.place, case.utc);
        worst = [worst[0].max(apart), worst[1].max(lit), worst[2].max(far)];
    }
    println!("at worst {:.4}°, {:.4} of the lit share, {:.6} of the distance", worst[0], worst[1], worst[2]);
}
