//! Lumens by nine places of a white picture (ISO/IEC 21118: mean of nine illuminances × picture area, square to the light).

use gauzelight::{
    frames::{Frame, Shelf},
    judge::{StationReading, read_station},
    light::Night,
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{collections::BTreeMap, sync::Arc};

/// Lumens, throw ratio, distance of the lens from the wall, m, and pixels of an even projector.
const LUMENS: f64 = 100.0;
const RATIO: f64 = 1.4;
const AWAY: f64 = 2.8;
const PIXELS: (f64, f64) = (854.0, 480.0);

/// The reading of a white picture on a wall, square on; `corner` is the light in a corner over that in the middle.
fn on_a_wall(corner: f64) -> StationReading {
    let text = format!(
        r#"Yard(name: "hall", evening: (sky_lx: 0),
            walls: [(name: "wall", at: (0, 0, 0), width: 60, height: 40)],
            projectors: [(name: "even", claimed: 1000, lumens: {LUMENS}, pixels: ({}, {}), throw_ratio: {RATIO}, nearest: 0.01,
                aperture: 0.000001, on_off_contrast: 1e7, checker_contrast: 1e7, corner: {corner}, left_after_1000_h: 1)],
            stations: [(name: "one", projector: "even", at: (0, 20, {AWAY}), aim: (0, 20, 0), target: "wall", shift: (0, 0),
                content: (picture: "white"))])"#,
        PIXELS.0, PIXELS.1
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "hall.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let white = Frame::from_linear(1, 1, vec![Vec3::ONE]).expect("one texel");
    let shelf = Shelf::from(BTreeMap::from([("white".to_owned(), Arc::new(white))]));
    let night = Night::build(&yard, &catalogue, &shelf).expect("it can be lit");
    read_station(&night, &yard, &catalogue, 0).expect("there is a station")
}

/// The standard's own case: the mean of nine times the area is the lumens, even for a picture that falls off.
#[test]
fn square_on_nine_places_times_the_area_are_the_lumens() {
    for corner in [1.0, 0.6] {
        let reading = on_a_wall(corner);
        let area = reading.picture.width_m * reading.picture.height_m;
        assert!((reading.phone_check.mean.typical * area / LUMENS - 1.0).abs() < 1e-3, "{corner}");
        let told = reading.phone_check.lumens_per_lx.expect("it is lit");
        assert!((told / area - 1.0).abs() < 1e-3, "{told} for {area} m²");
    }
}
