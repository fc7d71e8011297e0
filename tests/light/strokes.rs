//! Figures finer than the cells in which a raster is followed: their light is theirs, wherever among the cells they lie.

use crate::lab::{DARK, Lab, close};
use gauzelight::{
    frames::{Frame, Shelf},
    judge::{StationReading, read_station, sight::Question},
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
fn thrown(law: impl Fn(u32, u32) -> bool) -> StationReading {
    shaded(|x, y| if law(x, y) { 1.0 } else { 0.0 })
}

/// The same by its light, 0 to 1.
fn shaded(law: impl Fn(u32, u32) -> f32) -> StationReading {
    Scene::default().read(law)
}

/// What differs from one to the next.
struct Scene {
    /// Where the eye stands, m.
    eye: [f64; 2],
    lumens: f64,
    /// White over black.
    contrast: f64,
    /// Width of the wall, m.
    wide: f64,
    /// How far up the lens looks, corrected by as much keystone, degrees.
    up: f64,
    /// Another wall.
    more: &'static str,
}

impl Default for Scene {
    fn default() -> Self {
        Self { eye: [0.0, EYE], lumens: LUMENS, contrast: 1e7, wide: 8.0, up: 0.0, more: "" }
    }
}

impl Scene {
    fn read(&self, law: impl Fn(u32, u32) -> f32) -> StationReading {
        let Self { eye: [x, z], lumens, contrast, wide, up, more } = *self;
        let low = 10.0 - AWAY * up.to_radians().tan();
        let light = (0..SIZE.0 * SIZE.1).map(|i| Vec3::splat(law(i % SIZE.0, i / SIZE.0)));
        let frame = Frame::from_linear(SIZE.0, SIZE.1, light.collect()).expect("the size fits");
        let pictures = Shelf::from(BTreeMap::from([("drawn".to_owned(), Arc::new(frame))]));
        let text = format!(
            r#"Yard(name: "strokes", {DARK} surfaces: [(name: "pale", reflectance: {PALE}, doubt: 0), (name: "black", reflectance: 0)],
        walls: [(name: "wall", at: (0, 0, 0), width: {wide}, height: 20, surface: "pale"){more}],
        spots: [(name: "before", at: ({x}, 8.4, {z}), look: (0, 10, 0))],
        projectors: [(name: "even", claimed: {lumens}, lumens: {lumens}, pixels: {SIZE:?}, throw_ratio: {RATIO}, nearest: 0.01,
            aperture: 0.000001, on_off_contrast: {contrast}, checker_contrast: {contrast}, corner: 1, left_after_1000_h: 1)],
        stations: [(name: "station", projector: "even", content: (picture: "drawn"), at: (0, {low}, {AWAY}), aim: (0, 10, 0),
            target: "wall", keystone: (vertical_deg: {up}))])"#
        );
        let catalogue = Catalogue::builtin();
        let yard = Yard::parse(&text, "strokes.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
        let night = Night::build(&yard, &catalogue, &pictures).expect("the yard can be lit");
        read_station(&night, &yard, &catalogue, 0).expect("there is a station")
    }
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
        close(spot.sight.as_ref().expect("it is in sight").figure_lx.typical, at_eye, 0.02);
    }
}

/// Strokes of two lights within a cell are seen as bright as they are on average.
#[test]
fn a_bar_of_two_lights_has_their_mean() {
    for (white, dim) in [(3, 3), (1, 4), (4, 2)] {
        for start in [376, 380, 383, 394] {
            let light = |x: u32| match x.checked_sub(start) {
                Some(at) if at < white => 1.0,
                Some(at) if at < white + dim => 0.5,
                _ => 0.0,
            };
            let reading = shaded(|x, y| if (125..325).contains(&y) { light(x) } else { 0.0 });
            let mean = (f64::from(white) + 0.5 * f64::from(dim)) / f64::from(white + dim);
            close(reading.spots[0].mean.typical, mean * white_lx() * PALE / PI, 0.02);
            close(reading.figure_lx.typical, mean * white_lx(), 0.02);
        }
    }
}

/// A single texel is a figure wherever it lies.
#[test]
fn a_dot_is_seen() {
    for (x, y) in [(400, 225), (401, 230), (57, 31), (733, 402), (12, 440), (788, 9)] {
        let reading = thrown(|column, row| (column, row) == (x, y));
        close(reading.figure_lx.typical, white_lx(), 0.01);
        assert!(reading.spots[0].sight.is_some(), "{x} {y}");
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

/// Seen from 60° aside a bar is half as wide and as high as before: `2 area / outline` of what is seen, whichever way it lies.
#[test]
fn strokes_are_as_wide_as_they_look() {
    let side = AWAY / RATIO / f64::from(SIZE.0);
    for (wide, high) in [(8, 200), (200, 8), (30, 30)] {
        for degrees in [0.0_f64, 45.0, 60.0] {
            let (sin, cos) = degrees.to_radians().sin_cos();
            let scene = Scene { eye: [EYE * sin, EYE * cos], ..Scene::default() };
            let inside = |at: u32, middle: u32, long: u32| (middle - long / 2..middle + long / 2).contains(&at);
            let reading =
                scene.read(|x, y| if inside(x, SIZE.0 / 2, wide) && inside(y, SIZE.1 / 2, high) { 1.0 } else { 0.0 });
            let sight = reading.spots[0].sight.as_ref().expect("it is in sight");
            let [across, up] = [f64::from(wide) * side * cos, f64::from(high) * side].map(|m| m / EYE);
            close(sight.stroke_arcmin, (across * up / (across + up)).to_degrees() * 60.0, 0.01);
        }
    }
}

/// However dim a projector is, its ground is its black, and a dimmer one is no easier to see.
#[test]
fn the_dimmest_ground_is_still_there() {
    let mut before = f64::INFINITY;
    for lumens in [100.0, 20.0, 5.0, 2.0, 0.5] {
        let scene = Scene { lumens, contrast: 1000.0, ..Scene::default() };
        let reading = scene.read(|x, y| if (380..420).contains(&x) && (125..325).contains(&y) { 1.0 } else { 0.0 });
        let spot = &reading.spots[0];
        close(spot.ground.typical, white_lx() * lumens / LUMENS * PALE / PI / 1000.0, 0.01);
        let sight = spot.sight.as_ref().expect("it is in sight");
        close(sight.answer(Question::StandsOut).value.expect("there is a ground").typical, 1000.0, 0.01);
        let light_enough = sight.answer(Question::LightEnough).value.expect("it has a number").typical;
        assert!(light_enough < before, "{lumens} lm: {light_enough} after {before}");
        before = light_enough;
    }
}

/// What misses a narrow wall lands elsewhere, all of it: by closed form the share of an even picture beside the wall.
#[test]
fn what_misses_a_narrow_wall_lands_elsewhere() {
    for wide in [0.41, 0.77, 1.3] {
        let scene = Scene { wide, ..Scene::default() };
        let reading = scene.read(|_, _| 1.0);
        let picture = AWAY / RATIO;
        close(reading.misses, 1.0 - wide / picture, 2e-3);
        close(reading.figure_misses, 1.0 - wide / picture, 2e-3);
        close(reading.beyond.iter().map(|beyond| beyond.share).sum(), reading.misses, 2e-3);
    }
}

/// A bar at the side of a wall, thinner than the cells of the raster, lies on it or does not.
#[test]
fn a_bar_at_the_side_of_a_wall_is_on_it_or_not() {
    // Its side runs through the middle of the raster's cells.
    let scene = Scene { wide: 0.97, ..Scene::default() };
    let side = 594;
    for (start, wide, on) in
        [(side - 4, 2, 1.0), (side - 2, 2, 1.0), (side - 1, 2, 0.5), (side, 2, 0.0), (side + 2, 2, 0.0)]
    {
        let reading =
            scene.read(|x, y| if (start..start + wide).contains(&x) && (125..325).contains(&y) { 1.0 } else { 0.0 });
        close(reading.figure_misses, 1.0 - on, 1e-3);
        let seen = reading.spots[0].sight.as_ref().map_or(0.0, |sight| sight.figure_lx.typical);
        let whole = white_lx() * PALE / PI * f64::from(wide * 200) * texel() / (EYE * EYE);
        close(seen, on * whole, 0.01);
    }
}

/// A digital keystone draws strokes finer where the raster spreads more. On a wall on which it lands as a trapezoid, its edges level, a
/// row's texels are as wide as it, and as high as that squared: what is level is drawn by `y = (a + b v) / (1 + c v)`.
#[test]
fn strokes_under_a_digital_keystone_are_as_wide_as_they_land() {
    for (from, dot) in [(20, 440), (210, 225), (420, 5)] {
        let scene = Scene { up: 35.0, ..Scene::default() };
        // A dot at the other end, so that the bar is not in the middle of the figure.
        let bar = |x, y| (300..500).contains(&x) && (from..from + 12).contains(&y);
        let reading = scene.read(|x, y| if bar(x, y) || (x, y) == (400, dot) { 1.0 } else { 0.0 });
        let [left, right, low, low_right] = reading.corners.map(|corner| corner.expect("it lands"));
        let down = f64::from(from + 6) / f64::from(SIZE.1);
        let (upper, lower, tall) = (right[0] - left[0], low_right[0] - low[0], left[1] - low[1]);
        // 1 / width grows evenly with `v`.
        let width = 1.0 / ((1.0 - down) / upper + down / lower);
        let [wide, high] =
            [200.0 * width / f64::from(SIZE.0), 12.0 * tall * width * width / (upper * lower) / f64::from(SIZE.1)];
        // As seen from below or above: farther, and slanting.
        let up = left[1] - tall * down * width / lower;
        let cos = EYE / EYE.hypot(up - 10.0);
        let [across, along] = [wide * cos / EYE, high * cos * cos / EYE];
        let (of_dot, around_dot) = (across * along / (200.0 * 12.0), across / 200.0 + along / 12.0);
        let stroke = (across * along + of_dot) / (across + along + around_dot);
        let sight = reading.spots[0].sight.as_ref().expect("it is in sight");
        close(sight.stroke_arcmin, stroke.to_degrees() * 60.0, 5e-3);
    }
}

/// Many cells are looked at in some of them; the light of all is that of all, `L A cos / r²`, however regular they are.
#[test]
fn a_figure_of_many_cells_has_all_its_light() {
    for apart in [7, 8, 11] {
        let reading = thrown(|x, y| (200..600).contains(&x) && x % apart == 0 && (25..425).contains(&y));
        let count = (200..600).filter(|x| x % apart == 0).count() as f64;
        let sight = reading.spots[0].sight.as_ref().expect("it is in sight");
        let at_eye = white_lx() * PALE / PI * count * 400.0 * texel() / (EYE * EYE);
        close(sight.figure_lx.typical, at_eye, 0.02);
        let size = 2.0 * (count * 400.0 * texel() / (EYE * EYE) / PI).sqrt();
        close(sight.size_arcmin, size.to_degrees() * 60.0, 0.01);
    }
}

/// Of a mottled picture half of which is hidden, the other half is seen: `Σ L A / r²` over its texels.
#[test]
fn what_is_hidden_of_a_picture_is_not_seen() {
    let more = r#", (name: "screen", at: (-5, 0, 6), width: 10, height: 20, surface: "black")"#;
    let scene = Scene { more, ..Scene::default() };
    let mottled = |x: u32, y: u32| 0.2 + 0.8 * f64::from((x / 25 * 7919 + y / 25 * 104_729) % 101) / 100.0;
    let reading = scene.read(|x, y| mottled(x, y) as f32);
    let seen: f64 = (SIZE.0 / 2..SIZE.0).flat_map(|x| (0..SIZE.1).map(move |y| mottled(x, y))).sum();
    let sight = reading.spots[0].sight.as_ref().expect("half of it is in sight");
    let at_eye = white_lx() * PALE / PI * seen * texel() / (EYE * EYE);
    close(sight.figure_lx.typical, at_eye, 0.02);
    close(reading.spots[0].mean.typical, white_lx() * PALE / PI * seen / f64::from(SIZE.0 / 2 * SIZE.1), 0.02);
}

/// The ground next to a figure of a few texels has none of its light.
#[test]
fn the_ground_beside_a_dot_is_black() {
    for (x, y) in [(420, 215), (415, 215), (408, 230), (400, 225)] {
        let scene = Scene { contrast: 400.0, ..Scene::default() };
        let dot = |column: u32, row: u32| (x..x + 5).contains(&column) && (y..y + 5).contains(&row);
        let reading = scene.read(|column, row| if dot(column, row) { 1.0 } else { 0.0 });
        close(reading.spots[0].ground.typical, white_lx() * PALE / PI / 400.0, 0.02);
    }
}
