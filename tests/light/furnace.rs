//! A cloth that loses nothing in an even surround of luminance 1 must vanish, whatever the angle: the core adds no
//! factor of its own to what the tables say.

use crate::lab::{Lab, close, v};
use glam::Vec3;
use std::f64::consts::{PI, TAU};

/// Fabrics whose threads lose nothing, one and two layers.
const CLOTHS: [&str; 3] = [
    r#"fabric: "lossless net""#,
    r#"fabric: "dense lossless net""#,
    r#"fabric: "lossless net", behind: ["dense lossless net", "lossless net"]"#,
];

/// Angles of an eye from the normal, degrees.
const EYES: [f32; 5] = [0.0, 20.0, 45.0, 65.0, 80.0];

/// A level cloth at (0, 10, 0) under a dome of luminance 1, its front up or down; the ground below is black.
fn under_the_dome(fabric: &str, front_up: bool) -> Lab {
    // The top of an upright cloth leans until it lies flat: by 90° its front looks down.
    let (tilt, z) = if front_up { (-90, -0.5) } else { (90, 0.5) };
    Lab::new(&format!(
        r#"evening: (sky_lx: {PI}), ground: (surface: "black", width: 1, depth: 1),
        cloths: [(name: "cloth", {fabric}, at: (0, 10, {z}), width: 1, height: 1, tilt_deg: {tilt})],"#
    ))
}

/// The dome is half a surround. The other half is the dome again, seen from below the same cloth turned over.
#[test]
fn two_domes_make_a_furnace() {
    for fabric in CLOTHS {
        for front_up in [true, false] {
            let (above, below) = (under_the_dome(fabric, front_up), under_the_dome(fabric, !front_up));
            for angle in EYES {
                let (sin, cos) = angle.to_radians().sin_cos();
                let middle = v(0.0, 10.0, 0.0);
                let lit = above.seen(middle + v(sin, cos, 0.0), middle);
                let through = below.seen(middle + v(sin, -cos, 0.0), middle);
                close(lit + through, 1.0, 1e-4);
                assert!(lit > 0.1 && through > 0.1, "{lit} and {through}");
            }
        }
    }
}

/// Lamps spread evenly over a sphere, each standing for its share of a surround of luminance 1: `E_n = 4π / N`.
fn lamps() -> String {
    const LAMPS: u32 = 700;
    const RADIUS: f64 = 60.0;
    let lumens = 4.0 * PI * RADIUS * RADIUS * 4.0 * PI / f64::from(LAMPS);
    let lamp = |i: u32| {
        // A spiral of equal areas; the golden angle keeps its turns apart.
        let y = 1.0 - (2.0 * f64::from(i) + 1.0) / f64::from(LAMPS);
        let turn = TAU * 0.618_033_988_75 * f64::from(i);
        let flat = (1.0 - y * y).sqrt();
        let (x, y, z) = (RADIUS * flat * turn.cos(), 100.0 + RADIUS * y, RADIUS * flat * turn.sin());
        format!(r#"(name: "{i}", kind: "globe", at: ({x}, {y}, {z}), lumens: {lumens}),"#)
    };
    (0..LAMPS).map(lamp).collect()
}

/// Single lights at their own angles, both sides at once; what lies behind is left out and counted as luminance 1.
#[test]
fn a_sky_of_lamps_makes_a_furnace() {
    for fabric in CLOTHS {
        let lab = Lab::new(&format!(
            r#"evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1), lamps: [{}],
            cloths: [(name: "cloth", {fabric}, at: (0, 101, 0), width: 2, height: 2, turn_deg: 25, tilt_deg: 10)],"#,
            lamps()
        ));
        let cloth = lab.night.veils[0].clone();
        let gauzelight::geometry::Outline::Flat(quad) = cloth.outline else { panic!("a cloth is flat") };
        for side in [1.0, -1.0] {
            for angle in EYES {
                let (sin, cos) = angle.to_radians().sin_cos();
                let eye = quad.middle() + 0.5 * (side * cos * quad.normal() + sin * quad.u.normalize());
                let through = lab.night.optics[cloth.optic as usize].sheet.through.sample(cos).x;
                close(lab.seen(eye, quad.middle()) + f64::from(through), 1.0, 0.01);
            }
        }
    }
}

/// A white wall in the same surround: each side sees half of the sphere and reads 1.
#[test]
fn a_white_wall_among_lamps() {
    let lab = Lab::new(&format!(
        r#"evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1), lamps: [{}],
        walls: [(name: "wall", at: (0, 99.5, 0), width: 1, height: 1, surface: "white")],"#,
        lamps()
    ));
    close(lab.seen(v(0.3, 100.2, 1.0), v(0.1, 100.0, 0.0)), 1.0, 0.01);
    close(lab.lx(v(0.1, 100.0, 0.0), Vec3::Z), PI, 0.01);
}
