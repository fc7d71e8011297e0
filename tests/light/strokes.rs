//! Figures finer than the cells in which a raster is followed: their light is theirs, wherever among the cells they lie.

use crate::lab::{DARK, Lab, close};
use gauzelight::{
    frames::{Frame, Shelf},
    judge::read_station,
    light::Night,
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{collections::BTreeMap, f64::consts::PI, sync::Arc};

/// Texels of the pictures, and pixels of the projector.
const SIZE: (u32, u32) = (800, 450);
const LUMENS: f64 = 100.0;
const AWAY: f64 = 3.0;
const RATIO: f64 = 1.5;
/// Reflectance of the wall, and the eye's distance from it, m.
const PALE: f64 = 0.6;
const EYE: f64 = 10.0;

/// Square on, in the middle: `Φ TR² a / d²`.
fn white_lx() -> f64 {
    LUMENS * RATIO * RATIO * f64::from(SIZE.0) / f64::from(SIZE.1) / (AWAY * AWAY)
}

/// Area of a texel on the wall, m².
fn texel() -> f64 {
    (AWAY / RATIO / f64::from(SIZE.0)).powi(2)
}

/// A picture on a wall square to the lens, by a law of texels; all else is dark.
fn thrown(law: impl Fn(u32, u32) -> bool) -> gauzelight::judge::StationReading {
    let light = (0..SIZE.0 * SIZE.1).map(|i| if law(i % SIZE.0, i / SIZE.0) { Vec3::ONE } else { Vec3::ZERO });
    let frame = Frame::from_linear(SIZE.0, SIZE.1, light.collect()).expect("the size fits");
    let pictures = Shelf::from(BTreeMap::from([("drawn".to_owned(), Arc::new(frame))]));
    let text = format!(
        r#"Yard(name: "strokes", {DARK} surfaces: [(name: "pale", reflectance: {PALE}, doubt: 0), (name: "black", reflectance: 0)],
        walls: [(name: "wall", at: (0, 0, 0), width: 8, height: 20, surface: "pale")],
        spots: [(name: "before", at: (0, 8.4, {EYE}), look: (0, 10, 0))],
        projectors: [(name: "even", claimed: {LUMENS}, lumens: {LUMENS}, pixels: {SIZE:?}, throw_ratio: {RATIO}, nearest: 0.01,
            aperture: 0.000001, on_off_contrast: 1e7, checker_contrast: 1e7, corner: 1, left_after_1000_h: 1)],
        stations: [(name: "station", projector: "even", content: (picture: "drawn"), at: (0, 10, {AWAY}), aim: (0, 10, 0),
            target: "wall")])"#
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "strokes.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let night = Night::build(&yard, &catalogue, &pictures).expect("the yard can be lit");
    read_station(&night, &yard, &catalogue, 0).expect("there is a station")
}

/// A bar is as bright as white there, `E ρ / π`, whether it fills a cell's part or lies over two; and its light at the eye is that of
/// its area, `L A cos / r²`.
#[test]
fn a_bar_is_as_bright_wherever_it_lies() {
    for (wide, far) in
        [(1, 0), (2, 3), (3, 9), (5, 0), (5, 3), (5, 6), (5, 9), (5, 11), (20, 0), (20, 4), (20, 7), (20, 12)]
    {
        let start = 394 + far;
        let reading = thrown(|x, y| (start..start + wide).contains(&x) && (125..325).contains(&y));
        close(reading.figure_lx.typical, white_lx(), 0.006);
        let spot = &reading.spots[0];
        let luminance = white_lx() * PALE / PI;
        close(spot.mean.typical, luminance, 0.006);
        close(spot.peak.typical, luminance, 0.006);
        let at_eye = luminance * f64::from(wide * 200) * texel() / (EYE * EYE);
        close(spot.sight.as_ref().expect("it is in sight").figure_lx.typical, at_eye, 0.03);
    }
}

/// Bars along the raster, and such that fill every cell: what they leave is ground, and black.
#[test]
fn between_stripes_is_ground() {
    for across in [false, true] {
        let reading = thrown(|x, y| (if across { y } else { x }) % 6 < 2);
        close(reading.figure_lx.typical, white_lx(), 0.02);
        let spot = &reading.spots[0];
        close(spot.mean.typical, white_lx() * PALE / PI, 0.02);
        assert!(spot.ground.typical < 1e-3 * spot.mean.typical, "{:?}", spot.ground);
    }
}

/// A picture of one texel, larger than any cell, reads as white everywhere.
#[test]
fn a_picture_of_one_texel_is_white_all_over() {
    let lab = Lab::new(&format!(
        r#"{DARK} cloths: [(name: "cloth", fabric: "screen", at: (0, 12, 0), width: 4, height: 4)],
        stations: [(name: "station", projector: "16:9", content: (picture: "white"), at: (0, 10, 2), aim: (0, 10, 0), target: "cloth")],"#
    ));
    let reading = lab.reading();
    close(reading.figure_lx.typical, reading.mean_on_target_lx.typical, 1e-3);
    assert_eq!(reading.figure_misses, 0.0);
}
