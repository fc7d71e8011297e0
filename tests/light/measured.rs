//! Lamps by a photometric file: lumens, and which way they face.

use crate::lab::{DARK, Lab, close, v};
use gauzelight::{light::Night, optics::LampFile};
use glam::Vec3;
use std::sync::Arc;

/// A lamp that hangs 10 m high, of a file of this type with these angles and candela.
fn lab(file: &str, place: &str) -> Lab {
    let light = LampFile::read(file.as_bytes()).unwrap_or_else(|fault| panic!("{fault}")).light();
    let kind = r#"lamp_kinds: [(name: "measured", spread: File(path: "lamp.ies"), light: 1, radius: 0.001)]"#;
    let text = format!(
        r#"Yard(name: "lab", {DARK} surfaces: [(name: "black", reflectance: 0, doubt: 0)], {kind},
        lamps: [(name: "lamp", kind: "measured", at: (0, 10, 0), {place})])"#
    );
    let mut lab = Lab::of(&text, |_| ());
    assert!(lab.night.lamps.is_empty(), "dark while its file is not there");
    lab.pictures.lamps.insert("lamp.ies".to_owned(), Arc::new(light));
    lab.night = Night::build(&lab.yard, &lab.catalogue, &lab.pictures).expect("it can be lit");
    lab
}

/// Candela towards a direction, read 3 m away.
fn candela(lab: &Lab, toward: Vec3) -> f64 {
    let toward = toward.normalize();
    9.0 * lab.lx(v(0.0, 10.0, 0.0) + 3.0 * toward, -toward)
}

/// Type C: 100 cd everywhere but 300 towards l = 90 at the height of the lamp; 50 straight up.
const HANGS: &str = "TILT=NONE\n1 -1 1 3 5 1 2 0 0 0\n1 1 9\n0 90 180\n0 90 180 270 360\n
    100 100 50  100 300 50  100 100 50  100 100 50  100 100 50";
/// Type B: 100 cd to the front, 40 up, 20 to the right.
const FRONT: &str = "TILT=NONE\n1 -1 1 3 3 2 2 0 0 0\n1 1 9\n-90 0 90\n-90 0 90\n0 0 0  0 100 40  20 20 20";

#[test]
fn a_hanging_lamp_turns_counter_clockwise_and_tilts_forwards() {
    let straight = lab(HANGS, "turn_deg: 0");
    for (toward, wanted) in
        [(Vec3::X, 300.0), (Vec3::Z, 100.0), (-Vec3::X, 100.0), (Vec3::NEG_Y, 100.0), (Vec3::Y, 50.0)]
    {
        close(candela(&straight, toward), wanted, 0.02);
    }
    // The front looks along x, so that its right is away from the street.
    close(candela(&lab(HANGS, "turn_deg: 90"), Vec3::NEG_Z), 300.0, 0.02);
    // The front looks down by 90°, so that the top looks to the street; the right stays.
    let tilted = lab(HANGS, "tilt_deg: 90");
    close(candela(&tilted, Vec3::Z), 50.0, 0.02);
    close(candela(&tilted, Vec3::X), 300.0, 0.02);
}

#[test]
fn a_floodlight_looks_to_its_front() {
    let straight = lab(FRONT, "turn_deg: 0");
    close(candela(&straight, Vec3::Z), 100.0, 0.02);
    close(candela(&straight, v(0.0, 1.0, 1.0)), 70.0, 0.02);
    close(candela(&straight, v(0.0, -1.0, 1.0)), 50.0, 0.02);
    close(candela(&straight, v(1.0, 0.0, 1.0)), 60.0, 0.02);
    close(candela(&straight, v(-1.0, 0.0, 1.0)), 50.0, 0.02);
    assert_eq!(candela(&straight, Vec3::NEG_Z), 0.0);
    close(candela(&lab(FRONT, "turn_deg: 90, tilt_deg: 90"), Vec3::NEG_Y), 100.0, 0.02);
}

#[test]
fn the_yard_may_say_other_lumens() {
    let own = candela(&lab(HANGS, "turn_deg: 0"), Vec3::Z);
    let lumens = LampFile::read(HANGS.as_bytes()).unwrap_or_else(|fault| panic!("{fault}")).lumens();
    let halved = candela(&lab(HANGS, &format!("lumens: {}", 0.5 * lumens)), Vec3::Z);
    close(halved, 0.5 * own, 1e-4);
}
