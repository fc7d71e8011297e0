//! A sky that is kept as bytes is the one that was asked for, and is learned by a night of the very same things alone.

use super::{crowds, lab::Lab};
use gauzelight::{
    light::Night,
    picture::{Camera, expose},
};
use glam::Vec3;

/// Forms of which many stand alike behind a cloth.
fn yard() -> String {
    let cloth = "cloths: [(name: \"net\", fabric: \"white tulle\", at: (0, 2.1, 2.2), width: 2, height: 2)],";
    crowds::yard(false).replacen("things:", &format!("{cloth} things:"), 1)
}

fn lab() -> Lab {
    Lab::of(&yard(), |_| ())
}

/// The bits of a still.
fn still(night: &Night) -> Vec<[u32; 3]> {
    let camera = Camera::looking(Vec3::new(0.5, 1.6, 8.0), Vec3::new(0.0, 1.0, 0.0), 0.7);
    let still = expose(night, &camera, (120, 68), 1, |_| ());
    still.luminance.iter().map(|pixel| pixel.to_array().map(f32::to_bits)).collect()
}

#[test]
fn a_night_that_learns_its_sky_gives_the_same_still_and_asks_no_more() {
    let asked = lab().night;
    let picture = still(&asked);
    let bytes = asked.sky_bytes().unwrap();
    let night = lab().night;
    assert_eq!(night.sky_key(), asked.sky_key());
    assert_ne!(night.sky_bytes().unwrap(), bytes, "nothing was asked yet");
    assert!(night.learn_sky(&bytes));
    assert_eq!(night.sky_bytes().unwrap(), bytes, "all is known that was asked");
    assert!(still(&night) == picture);
    assert_eq!(night.sky_bytes().unwrap(), bytes, "and no more was wanted");
    night.gather();
    asked.gather();
    assert_eq!(night.sky_bytes(), asked.sky_bytes());
}

#[test]
fn what_is_damaged_or_of_other_things_is_not_learned() {
    let asked = lab().night;
    still(&asked);
    let bytes = asked.sky_bytes().unwrap();
    let night = lab().night;
    let ignorant = night.sky_bytes().unwrap();
    for at in [0, 7, 8, 20, 24, 40, bytes.len() / 2, bytes.len() - 1] {
        let mut damaged = bytes.clone();
        damaged[at] ^= 4;
        assert!(!night.learn_sky(&damaged), "a bit at {at}");
        assert!(!night.learn_sky(&bytes[..at]), "cut at {at}");
    }
    assert!(!night.learn_sky(&[bytes.as_slice(), &[0]].concat()) && !night.learn_sky(&[]));
    for (from, to) in [
        ("width: 9, height: 2.5", "width: 9, height: 2.6"),
        ("white tulle", "voile, white"),
        ("turn_deg: 51", "turn_deg: 52"),
    ] {
        let text = yard();
        assert!(text.contains(from), "{from}");
        let other = Lab::of(&text.replace(from, to), |_| ()).night;
        assert_ne!(other.sky_key(), asked.sky_key(), "{to}");
        assert!(!other.learn_sky(&bytes), "{to}");
    }
    assert_eq!(night.sky_bytes().unwrap(), ignorant);
}

#[test]
fn light_and_names_do_not_count() {
    let asked = lab().night;
    let other = yard()
        .replace("lumens: 400", "lumens: 90")
        .replace("\"wall\"", "\"fence\"")
        .replace("sky_lx: 0.5", "sky_lx: 3");
    assert_eq!(Lab::of(&other, |_| ()).night.sky_key(), asked.sky_key());
}
