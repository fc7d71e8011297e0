//! Photometric files by IES LM-63: our own, written by its rules (`../data/lamp_*.ies`, each says that it is invented), and
//! ones written here from closed laws. The directions of the three goniometers are derived here once more, by turning a
//! lamp; which way a lateral angle counts is from memory.

use super::near;
use gauzelight::optics::{FileLight, Goniometer, LampFile};
use glam::{DQuat, DVec3, Vec3};
use std::f64::consts::PI;

const SYMMETRIC: &[u8] = include_bytes!("../data/lamp_c_symmetric.ies");
const MIRRORED: &[u8] = include_bytes!("../data/lamp_c_mirrored.ies");
const FLOODLIGHT: &[u8] = include_bytes!("../data/lamp_b_floodlight.ies");
const OLD: &[u8] = include_bytes!("../data/lamp_a_1986.ies");

fn read(bytes: &[u8]) -> LampFile {
    LampFile::read(bytes).unwrap_or_else(|fault| panic!("{fault}"))
}

/// Directions all over the sphere, evenly (a golden spiral).
fn sphere(count: usize) -> impl Iterator<Item = DVec3> {
    (0..count).map(move |i| {
        let y = 1.0 - (2.0 * i as f64 + 1.0) / count as f64;
        let (sin, cos) = (PI * (3.0 - 5_f64.sqrt()) * i as f64).sin_cos();
        let level = (1.0 - y * y).sqrt();
        DVec3::new(level * cos, y, level * sin)
    })
}

/// Candela of a lamp that is lit with its right, up and front along x, y and z.
fn lit(light: &FileLight, toward: DVec3) -> f64 {
    let [axis, side] = if light.hangs { [Vec3::NEG_Y, Vec3::Z] } else { [Vec3::Z, Vec3::Y] };
    light.lumens * f64::from(light.spread.toward(toward.as_vec3(), axis, side))
}

/// A file of type C from a law of both angles, degrees; each value written to nine digits.
fn written(verticals: &[f64], laterals: &[f64], law: impl Fn(f64, f64) -> f64) -> Vec<u8> {
    let list = |list: &[f64]| list.iter().map(f64::to_string).collect::<Vec<_>>().join(" ");
    let rows: Vec<String> = laterals
        .iter()
        .map(|l| verticals.iter().map(|v| format!("{:.9}", law(*v, *l))).collect::<Vec<_>>().join("\n"))
        .collect();
    let (n, m) = (verticals.len(), laterals.len());
    let head = format!("IES:LM-63-2019\nTILT=NONE\n1 -1 1 {n} {m} 1 2 0 0 0\n1 1.10000 9\n");
    format!("{head}{}\n{}\n{}\n", list(verticals), list(laterals), rows.join("\n")).into_bytes()
}

fn steps(from: f64, to: f64, step: f64) -> Vec<f64> {
    (0..=((to - from) / step).round() as usize).map(|i| from + i as f64 * step).collect()
}

#[test]
fn the_heads_of_all_editions_are_read() {
    let symmetric = read(SYMMETRIC);
    assert_eq!((symmetric.goniometer, symmetric.bulbs_lm), (Goniometer::C, Some(3500.0)));
    near(symmetric.opening_m[0], 0.5 * 0.3048, 1e-12);
    // 2000 cd in the file, a factor of 0.5.
    near(symmetric.candela[0][0], 1000.0, 1e-9);
    let mirrored = read(MIRRORED);
    assert_eq!((mirrored.vertical_deg.len(), mirrored.lateral_deg.len()), (19, 13));
    assert_eq!((mirrored.bulbs_lm, mirrored.opening_m), (Some(1200.0), [-0.12, -0.12, 0.2]));
    // 120 cd straight down, a ballast factor of 0.9.
    near(mirrored.candela[0][0], 108.0, 1e-9);
    let floodlight = read(FLOODLIGHT);
    assert_eq!((floodlight.goniometer, floodlight.bulbs_lm), (Goniometer::B, None));
    let old = read(OLD);
    assert_eq!(old.goniometer, Goniometer::A);
    // 800 cd, a factor of 2, ballast 0.8, ballast and bulb together 0.5.
    near(old.candela[0][6], 640.0, 1e-9);
}

/// `I = I₀ cos v` downwards gives π I₀; `I₀` all around gives 4π I₀; each quarter, half and whole circle the same.
#[test]
fn lumens_are_the_integral_of_the_candela() {
    near(read(SYMMETRIC).lumens() / (PI * 1000.0), 1.0, 1e-3);
    for to in [0.0, 90.0, 180.0, 360.0] {
        let laterals = if to > 0.0 { steps(0.0, to, 45.0) } else { vec![0.0] };
        near(read(&written(&[0.0, 90.0, 180.0], &laterals, |_, _| 10.0)).lumens(), 40.0 * PI, 1e-9);
    }
    near(read(&written(&[90.0, 180.0], &[90.0, 270.0], |_, _| 10.0)).lumens(), 20.0 * PI, 1e-9);
}

#[test]
fn a_spread_keeps_the_lumens_and_the_candela_of_its_file() {
    for (name, bytes) in [("C", SYMMETRIC), ("C mirrored", MIRRORED), ("B", FLOODLIGHT), ("A", OLD)] {
        let file = read(bytes);
        let light = file.light();
        let count = 200_000;
        let (mut by_file, mut by_table) = (0.0, 0.0);
        for toward in sphere(count) {
            by_file += file.candela(toward);
            by_table += lit(&light, toward);
        }
        let solid = 4.0 * PI / count as f64;
        near(by_file * solid / light.lumens, 1.0, 1e-3);
        near(by_table * solid / light.lumens, 1.0, 1e-3);
        // At the file's own angles to 1 % of the peak.
        let peak = file.candela.iter().flatten().copied().fold(0.0, f64::max);
        for (lateral, row) in file.lateral_deg.iter().zip(&file.candela) {
            for (vertical, wanted) in file.vertical_deg.iter().zip(row) {
                let toward = turned(file.goniometer, *vertical, *lateral);
                // Square to the axis, where intensity may leap, rounding chooses the side.
                let leap = if light.hangs { toward.y.abs() } else { toward.z.abs() } < 1e-6;
                let found = lit(&light, toward);
                assert!(
                    leap || (found - wanted).abs() < 0.01 * peak,
                    "{name} {vertical} {lateral}: {found} of {wanted}"
                );
                near(file.candela(toward), if leap { file.candela(toward) } else { *wanted }, 1e-5 * peak);
            }
        }
    }
}

/// Where a goniometer's two angles look: the lamp's front (type A and B) or its foot (C), turned about the axis that is fixed
/// to the lamp last.
fn turned(goniometer: Goniometer, vertical: f64, lateral: f64) -> DVec3 {
    let (v, l) = (vertical.to_radians(), lateral.to_radians());
    let about = |axis: DVec3, angle: f64| DQuat::from_axis_angle(axis, angle);
    match goniometer {
        // From straight down towards the front, then around.
        Goniometer::C => about(DVec3::Y, l) * (about(DVec3::X, -v) * DVec3::NEG_Y),
        // Aside about the upright axis, then up about the level axis through the lamp.
        Goniometer::B => about(DVec3::X, -v) * (about(DVec3::Y, l) * DVec3::Z),
        // Up about the level axis, then around the lamp's upright axis.
        Goniometer::A => about(DVec3::Y, l) * (about(DVec3::X, -v) * DVec3::Z),
    }
}

#[test]
fn types_a_and_b_agree_with_c_by_direction_cosines() {
    // One law of direction, a wide beam to the front, right and up, in all three ways of measuring.
    let aim = DVec3::new(0.3, 0.2, 0.9).normalize();
    let law = |toward: DVec3| 100.0 * toward.dot(aim).max(0.0).powi(2) * toward.z.max(0.0);
    let text = |number: u32, goniometer, verticals: &[f64], laterals: &[f64]| {
        let text = String::from_utf8(written(verticals, laterals, |v, l| law(turned(goniometer, v, l)))).unwrap();
        let head = format!("{} {} 1 2", verticals.len(), laterals.len());
        read(text.replacen(&head, &head.replace(" 1 2", &format!(" {number} 2")), 1).as_bytes())
    };
    let across = steps(-90.0, 90.0, 2.5);
    let b = text(2, Goniometer::B, &across, &across);
    let a = text(3, Goniometer::A, &across, &across);
    let c = text(1, Goniometer::C, &steps(0.0, 180.0, 2.5), &steps(0.0, 360.0, 2.5));
    let lights = [&a, &b, &c].map(|file| (file, file.light()));
    for toward in sphere(5000) {
        let wanted = law(toward);
        for (file, light) in &lights {
            near(file.candela(toward), wanted, 0.2);
            near(lit(light, toward), wanted, 0.6);
        }
    }
    near(a.lumens() / c.lumens(), 1.0, 1e-3);
    near(b.lumens() / c.lumens(), 1.0, 1e-3);
}

/// Mirror planes mean what a file of the whole circle says outright.
#[test]
fn symmetry_is_the_full_file() {
    let verticals = steps(0.0, 180.0, 7.5);
    let around = |l: f64, n: f64| (n * l.to_radians()).cos();
    let quarter = |v: f64, l: f64| 50.0 + 20.0 * v.to_radians().sin() * around(l, 2.0);
    let half = |v: f64, l: f64| 50.0 + 20.0 * v.to_radians().sin() * around(l, 1.0);
    // Mirrored by the plane through 90 and 270.
    let sideways = |v: f64, l: f64| 50.0 + 20.0 * v.to_radians().sin() * l.to_radians().sin();
    let whole = steps(0.0, 360.0, 15.0);
    let pairs = [
        (written(&verticals, &steps(0.0, 90.0, 15.0), quarter), written(&verticals, &whole, quarter)),
        (written(&verticals, &steps(0.0, 180.0, 15.0), half), written(&verticals, &whole, half)),
        (written(&verticals, &steps(90.0, 270.0, 15.0), sideways), written(&verticals, &whole, sideways)),
    ];
    for (part, full) in pairs {
        let (part, full) = (read(&part), read(&full));
        near(part.lumens() / full.lumens(), 1.0, 1e-9);
        let lights = [part.light(), full.light()];
        assert_eq!(lights[0].spread.planes, 24);
        for toward in sphere(3000) {
            near(part.candela(toward), full.candela(toward), 1e-6);
            near(lit(&lights[0], toward), lit(&lights[1], toward), 1e-4);
        }
    }
}

#[test]
fn a_lamp_alike_all_around_has_one_plane() {
    let light = read(SYMMETRIC).light();
    assert_eq!((light.spread.planes, light.hangs), (1, true));
    // Nothing above the plane of the lamp, right up to it.
    near(lit(&light, DVec3::new(1.0, 1e-3, 0.0).normalize()), 0.0, 0.0);
    near(lit(&light, DVec3::NEG_Y), 1000.0, 2.0);
}
