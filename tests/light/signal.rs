//! From a picture's codes to light: the projector's curve, its colour light output, and the black that a bright picture lifts.

use super::lab::{DARK, Lab, close, square_lx, station, v};
use gauzelight::{
    frames::{Picture, Shelf},
    light::{Night, luma},
    scene::{Catalogue, Yard},
};
use image::{ExtendedColorType, ImageEncoder, codecs::png::PngEncoder};
use std::{collections::BTreeMap, sync::Arc};

/// A picture of one colour.
fn plain(code: [u8; 3]) -> Picture {
    let mut bytes = Vec::new();
    PngEncoder::new(&mut bytes).write_image(&code, 1, 1, ExtendedColorType::Rgb8).expect("a picture is written");
    Picture::decode(bytes).expect("it is a picture")
}

/// Illuminance per channel in the middle of a wall 3 m off that a projector of 1000 lm lights; `class` and `own` say what else
/// it has.
fn lit(code: [u8; 3], class: &str, own: &str) -> glam::Vec3 {
    let text = format!(
        r#"Yard(name: "signal", evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1),
        surfaces: [(name: "black", reflectance: 0)],
        walls: [(name: "wall", at: (0, 8, 0), width: 6, height: 4, surface: "black")],
        projectors: [(name: "16:9", claimed: 1000, lumens: 1000, pixels: (1600, 900), throw_ratio: 1.5, nearest: 0.01,
            aperture: 0.000001, corner: 1, left_after_1000_h: 1, {class})],
        stations: [(name: "station", projector: "16:9", at: (0, 10, 3), aim: (0, 10, 0), content: (picture: "plain"), {own})])"#
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "signal.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let mut shelf = Shelf::from(BTreeMap::new());
    shelf.pictures.insert("plain".to_owned(), Arc::new(plain(code)));
    let night = Night::build(&yard, &catalogue, &shelf).expect("it can be lit");
    night.illuminance(v(0.0, 10.0, 0.0), v(0.0, 0.0, 1.0)).total()
}

const BLACK: &str = "on_off_contrast: 1e7, checker_contrast: 1e7";

fn grey(code: u8, class: &str, own: &str) -> f64 {
    f64::from(luma(lit([code; 3], class, own))) / square_lx(16.0 / 9.0, 3.0)
}

/// (128/255)^2.2 = 0.219520, ^2.4 = 0.191253, ^1.8 = 0.289205; sRGB gives 0.215861 (IEC 61966-2-1).
#[test]
fn a_grey_is_as_bright_as_the_projector_s_curve_makes_it() {
    let class = |gamma: &str| format!("{BLACK}, gamma: {gamma}");
    close(grey(128, BLACK, ""), 0.219_520, 1e-3);
    close(grey(128, &class("2.4"), ""), 0.191_253, 1e-3);
    close(grey(128, &class("(low: 1.6, typical: 1.8, high: 2)"), ""), 0.289_205, 1e-3);
    close(grey(128, &class("Srgb"), ""), 0.215_861, 1e-3);
    // A station's own word goes before its class's.
    close(grey(128, &class("1.8"), "gamma: 2.4"), 0.191_253, 1e-3);
    close(grey(255, &class("2.4"), ""), 1.0, 1e-3);
}

/// On off 200 : 1 and checkerboard 50 : 1: k = 0.005, g = 2 (0.02 − 0.005) = 0.03, and a grey of light f over all the raster
/// gives k + g f + (1 − k − g f) f.
#[test]
fn the_mean_that_lifts_black_follows_the_curve() {
    for (gamma, f) in [("2.4", 0.191_253), ("1.8", 0.289_205)] {
        let black = 0.005 + 0.03 * f;
        let class = format!("on_off_contrast: 200, checker_contrast: 50, gamma: {gamma}");
        close(grey(128, &class, ""), black + (1.0 - black) * f, 1e-3);
    }
}

/// `c rgb + (1 − c) min(r, g, b)`: full red gives c of what it gave; white and greys what they gave.
#[test]
fn saturated_colours_are_dimmer_where_white_has_a_light_of_its_own() {
    let boosted = format!("{BLACK}, colour_light: 0.4");
    let white = f64::from(luma(lit([255; 3], BLACK, "")));
    let sum: f64 =
        [[255, 0, 0], [0, 255, 0], [0, 0, 255]].map(|code| f64::from(luma(lit(code, &boosted, "")))).iter().sum();
    close(sum, 0.4 * white, 1e-3);
    close(grey(128, &boosted, ""), grey(128, BLACK, ""), 1e-5);
    // Orange (255, 128, 64): green 0.219520, of which blue's (64/255)^2.2 = 0.047776 is white.
    let orange = lit([255, 128, 64], &boosted, "") / white as f32;
    assert!(orange.abs_diff_eq(v(0.428_666, 0.116_473, 0.047_776), 5e-4), "{orange}");
}

/// A wall that the lens looks up at by 20°: the corrected picture lands on it as an upright rectangle of the raster's aspect, its
/// middle at the aim, and beside it there is black alone.
#[test]
fn a_corrected_picture_lands_as_a_rectangle_and_loses_what_is_beside_it() {
    let lab = |keystone: &str| {
        let place = format!("at: (0, 10, 3), aim: (0, 11.09191, 0){keystone}");
        Lab::new(&format!(
            r#"{DARK} walls: [(name: "wall", at: (0, 7, 0), width: 9, height: 9, surface: "white")], {}"#,
            station("16:9", "white", &place)
        ))
    };
    let bent = lab(", keystone: (vertical_deg: 20)");
    let reading = bent.reading();
    let [a, b, c, d] = reading.corners.map(|corner| glam::DVec3::from(corner.unwrap()));
    close(a.y, b.y, 1e-4);
    close(c.y, d.y, 1e-4);
    // The axis points lower than the middle of a picture that is larger above; the keystone is set for the axis.
    let (wide, high) = ((b - a).length(), (a - c).length());
    close((d - c).length(), wide, 0.02);
    close(wide / high, 16.0 / 9.0, 0.03);
    close((0.25 * (a + b + c + d)).y, 11.09191, 2e-3);
    let lost = reading.keystone.unwrap();
    // Even light: as much of it as of the pixels.
    close(lost.light, lost.pixels, 1e-4);
    assert!(lost.pixels > 0.12 && lost.pixels < 0.2, "{lost:?}");
    // White inside, nothing just outside, where the whole raster would still reach.
    let inside = v(a.x as f32 + 0.03, a.y as f32 - 0.03, 0.0);
    let outside = v(a.x as f32 - 0.03, a.y as f32 - 0.03, 0.0);
    let at = |lab: &Lab, point| lab.lx(point, v(0.0, 0.0, 1.0));
    assert!(at(&bent, inside) > 100.0 && at(&bent, outside) < 0.01, "{} {}", at(&bent, inside), at(&bent, outside));
    assert!(at(&lab(""), outside) > 100.0);
    assert!(lab("").reading().keystone.is_none());
}

/// Panned by `H`, then tilted by `V`, with a shifted lens: the corrected picture is an upright rectangle all the same.
#[test]
fn a_keystone_with_both_angles_is_not_crooked() {
    for (vertical, horizontal, shift) in
        [(12.0, 15.0, "(0, 0.5)"), (-10.0, 20.0, "(0.2, 0.4)"), (20.0, -12.0, "(0, 0)")]
    {
        let lab = |aim: glam::Vec3| {
            let place = format!(
                "at: (0, 10, 3), aim: ({}, {}, {}), shift: {shift}, keystone: (vertical_deg: {vertical}, horizontal_deg: {horizontal})",
                aim.x, aim.y, aim.z
            );
            Lab::new(&format!(
                r#"{DARK} walls: [(name: "wall", at: (0, 4, 0), width: 16, height: 12, surface: "white")], {}"#,
                station("16:9", "white", &place)
            ))
        };
        // Where the middle lands when the axis points `H` to the right and `V` above.
        let straight = lab(v(0.0, 10.0, 0.0));
        let beam = &straight.night.beams[0];
        let [s, t] = beam.bent([0.5, 0.5]);
        let (across, up) = ((s - 0.5 + beam.lens.shift.x) * beam.lens.w1, (0.5 - t + beam.lens.shift.y) * beam.lens.h1);
        let ((sh, ch), (sv, cv)) = (f32::to_radians(horizontal).sin_cos(), f32::to_radians(vertical).sin_cos());
        let way = across * v(ch, 0.0, sh) + up * v(-sh * sv, cv, ch * sv) + v(sh * cv, sv, -ch * cv);
        let lab = lab(v(0.0, 10.0, 3.0) - 3.0 / way.z * way);
        let forward = lab.night.beams[0].lens.forward;
        assert!(forward.abs_diff_eq(v(sh * cv, sv, -ch * cv), 1e-4), "{forward}");
        let [a, b, c, d] = lab.reading().corners.map(|corner| glam::DVec3::from(corner.unwrap()));
        let (wide, high) = (b.x - a.x, a.y - c.y);
        for off in [a.y - b.y, c.y - d.y, a.x - c.x, b.x - d.x] {
            assert!(off.abs() < 1e-3 * wide, "{vertical} {horizontal}: {a} {b} {c} {d}");
        }
        close(wide / high, 16.0 / 9.0, 2e-3);
    }
}
