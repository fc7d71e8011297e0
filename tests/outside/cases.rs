//! Cases for programs that reckon light, after the method of CIE 171:2006: what is asked is from memory, what is answered follows from
//! the formula named beside each.

use gauzelight::{
    frames::Shelf,
    light::{Night, luma},
    optics::fresnel::{plate, reflectance},
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{f64::consts::PI, path::Path};

const LAMPS: &str = r#"lamp_kinds: [
    (name: "globe", lumens: 1000, spread: Globe, light: 1, radius: 0.001),
    (name: "window", lumens: 1000, spread: Window, light: 1),
],"#;

fn night(fields: &str) -> Night {
    let text = format!(r#"(name: "case", evening: (sky_lx: 0), ground: (width: 1, depth: 1), {LAMPS} {fields})"#);
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "case", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    Night::build(&yard, &catalogue, &Shelf::beside(Path::new(""))).expect("it can be lit")
}

fn lx(night: &Night, point: Vec3, normal: Vec3) -> f64 {
    f64::from(luma(night.illuminance(point, normal).total()))
}

/// 5.3, an area source: a Lambertian rectangle of luminance L over a point that faces it under its corner has
/// `(L/2) (a/√(1+a²) atan(b/√(1+a²)) + b/√(1+b²) atan(a/√(1+b²)))`, a and b its sides over the distance. A lit window shines from
/// four points: from its own width away on that is within 2.1 %, which is the model's error and its limit.
#[test]
fn an_area_source_over_a_point_under_its_corner() {
    under_a_corner(&[(1.2, 0.021), (2.4, 0.021), (3.6, 0.021), (7.2, 0.021)]);
}

/// Four points come ever closer to the area, as close as they did when this was written.
#[test]
fn regression_an_area_source_farther_away() {
    under_a_corner(&[(2.4, 0.016), (3.6, 0.01), (7.2, 0.004)]);
}

/// A window of 1.2 m by 1 m at distances, m, each with the share by which its light may be off the formula's.
fn under_a_corner(cases: &[(f64, f64)]) {
    let (wide, high) = (1.2, 1.0);
    let night = night(r#"lamps: [(name: "lamp", kind: "window", at: (0, 20, 0), size: (1.2, 1.0))],"#);
    let luminance = 1000.0 / (PI * wide * high);
    for &(away, share) in cases {
        let (a, b): (f64, f64) = (wide / away, high / away);
        let half = |a: f64, b: f64| a / (1.0 + a * a).sqrt() * (b / (1.0 + a * a).sqrt()).atan();
        let wanted = 0.5 * luminance * (half(a, b) + half(b, a));
        for corner in [[-0.6, 19.5], [0.6, 20.5]] {
            let found = lx(&night, Vec3::new(corner[0], corner[1], away as f32), Vec3::NEG_Z);
            assert!((found / wanted - 1.0).abs() < share, "{away} m: {found} lx, by the formula {wanted}");
        }
    }
}

/// 5.4, conservation: what a globe sends into an opening, its intensity times `4 asin(p q / √((p² + d²)(q² + d²)))` for half sides p
/// and q at a distance d, lands on a wall behind.
#[test]
fn what_enters_an_opening_lands_behind_it() {
    let night = night(
        r#"lamps: [(name: "lamp", kind: "globe", at: (0, 20, 2))],
        things: [
            Block(name: "left", at: (-3.6, 17, 0), width: 6, height: 6, depth: 0.002),
            Block(name: "right", at: (3.6, 17, 0), width: 6, height: 6, depth: 0.002),
            Block(name: "below", at: (0, 15.5, 0), width: 1.2, height: 4, depth: 0.002),
            Block(name: "above", at: (0, 20.5, 0), width: 1.2, height: 4, depth: 0.002),
        ],"#,
    );
    let (p, q, d) = (0.6_f64, 0.5_f64, 2.0_f64);
    let enters = 1000.0 / (4.0 * PI) * 4.0 * (p * q / ((p * p + d * d) * (q * q + d * d)).sqrt()).asin();
    for behind in [0.5_f32, 3.0] {
        let side = 2.0 * 0.7 * (2.0 + behind) / 2.0;
        let cells = 400_u32;
        let cell = side / cells as f32;
        let along = |k: u32| (k as f32 + 0.5) * cell - 0.5 * side;
        let lands: f64 = (0..cells * cells)
            .map(|k| {
                let point = Vec3::new(along(k % cells), 20.0 + along(k / cells), -behind);
                lx(&night, point, Vec3::Z) * f64::from(cell * cell)
            })
            .sum();
        assert!((lands / enters - 1.0).abs() < 0.005, "{behind} m behind: {lands} lm of {enters}");
    }
}

/// 5.5, clear glass 6 mm thick: Fresnel's two surfaces and what the glass keeps, 2 % in 3 mm; it passes nearly the same up to 50° and
/// half of that between 75° and 80°. What is lost on the way in is what is thrown back and what is kept.
#[test]
fn clear_glass_by_angle() {
    let internal = 0.98_f64 * 0.98;
    let through = |degrees: f64| {
        let slabs = plate(degrees.to_radians().cos(), 1.52, internal);
        0.5 * (slabs[0].through[0] + slabs[1].through[0])
    };
    let straight = through(0.0);
    // Square on: 4 % off each surface, `τ (1 − r)² / (1 − r² τ²)`.
    let r = (0.52_f64 / 2.52).powi(2);
    assert!((straight - internal * (1.0 - r).powi(2) / (1.0 - (r * internal).powi(2))).abs() < 1e-12);
    assert!(through(50.0) / straight > 0.94, "{}", through(50.0) / straight);
    assert!(through(75.0) / straight > 0.5 && through(80.0) / straight < 0.5);
    let mut before = straight;
    for degrees in 1..90 {
        let now = through(f64::from(degrees));
        assert!(now < before, "{degrees}°: {now} after {before}");
        before = now;
    }
    // Grazing, all is thrown back.
    let grazing = reflectance(1e-6, 1.52);
    assert!(through(89.99) < 0.002 && grazing.iter().all(|share| *share > 0.999));
}
