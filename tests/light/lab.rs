//! Small yards to measure in: ideal projectors, fabrics and surfaces, high above a small black ground.

use gauzelight::{
    frames::{Frame, Shelf, card},
    judge::{StationReading, read_station},
    light::{EyeRay, Night, Rgb, luma},
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{
    collections::BTreeMap,
    f64::consts::{FRAC_PI_2, FRAC_PI_4},
    sync::Arc,
};

/// No light but what is hung, and a black ground out of the way: things are measured around a height of 10 m.
pub const DARK: &str = r#"evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1),"#;

/// Thread over pitch of the nets, as in the published mesh values.
pub const GAMMA: f64 = 1.0 / 3.0;

/// Throw ratio of the ideal projectors.
pub const RATIO: f64 = 1.5;

const STOCK: &str = r#"
    surfaces: [
        (name: "white", reflectance: 1, doubt: 0),
        (name: "grey", reflectance: 0.5, doubt: 0.1),
        (name: "black", reflectance: 0, doubt: 0),
    ],
    fabrics: [
        (name: "net", kind: Net(thread: 0.3333333333, reflect: 0.6, diffuse: 0.3)),
        (name: "black net", kind: Net(thread: 0.3333333333, reflect: 0, diffuse: 0)),
        (name: "lossless net", kind: Net(thread: 0.3333333333, reflect: 0.7, diffuse: 0.3)),
        (name: "dense lossless net", kind: Net(thread: 0.6, reflect: 0.4, diffuse: 0.6)),
        (name: "screen", kind: Cloth(through: 0, diffuse: 0.4, reflect: 0.4)),
        (name: "film", kind: Film(gain: 0.8, half_gain_deg: 35, through: 0, reflect: 0.1)),
    ],
    lamp_kinds: [
        (name: "globe", lumens: 1000, spread: Globe, light: 1, radius: 0.001),
        (name: "hooded", lumens: 1000, spread: Hooded(half_deg: 60), light: 1, radius: 0.001),
        (name: "beam", lumens: 1000, spread: Beam(half_deg: 25), light: 1, radius: 0.001),
        (name: "window", lumens: 1000, spread: Window, light: 1),
    ],
"#;

/// Projectors without a flaw, by their pixels: even, sharp everywhere, black where nothing is sent.
fn projectors() -> String {
    let ideal = |(name, pixels): &(&str, &str)| {
        format!(
            r#"(name: "{name}", claimed: 1000, lumens: 1000, pixels: {pixels}, throw_ratio: {RATIO}, nearest: 0.01,
                aperture: 0.000001, on_off_contrast: 1e7, checker_contrast: 1e7, corner: 1, left_after_1000_h: 1),"#
        )
    };
    let kinds = [("16:9", "(1600, 900)"), ("4:3", "(1200, 900)"), ("2:1", "(1800, 900)"), ("2.35:1", "(2350, 1000)")];
    format!("projectors: [{}],", kinds.iter().map(ideal).collect::<String>())
}

/// A station called “station” of 1000 lm that throws a picture; `place` has its `at`, its `aim` and what else it needs.
pub fn station(projector: &str, picture: &str, place: &str) -> String {
    format!(r#"stations: [(name: "station", projector: "{projector}", content: (picture: "{picture}"), {place})],"#)
}

/// Illuminance of a plane square to the axis of an ideal projector of 1000 lm: `Φ TR² a / d²`.
pub fn square_lx(aspect: f64, distance: f64) -> f64 {
    1000.0 * RATIO * RATIO * aspect / (distance * distance)
}

/// The pictures that stations of the lab may throw.
fn pictures() -> Shelf {
    let grey = |width: u32, height: u32, law: &dyn Fn(u32, u32) -> bool| {
        let light = (0..width * height).map(|i| if law(i % width, i / width) { Vec3::ONE } else { Vec3::ZERO });
        Frame::from_linear(width, height, light.collect()).expect("the size fits")
    };
    let frames = [
        ("white", grey(1, 1, &|_, _| true)),
        ("black", grey(1, 1, &|_, _| false)),
        ("left half", grey(64, 36, &|x, _| x < 32)),
        ("checker", grey(64, 64, &|x, y| (x / 16 + y / 16) % 2 == 0)),
        ("stripes", grey(64, 36, &|x, _| x % 2 == 0)),
        // Half as wide and half as high as the raster, its edges between the points at which readings follow it.
        ("middle", grey(64, 36, &|x, y| (16..48).contains(&x) && (9..27).contains(&y))),
        ("corners", card::corners()),
    ]
    .map(|(name, frame)| (name.to_owned(), Arc::new(frame)));
    Shelf::from(BTreeMap::from(frames))
}

/// A yard with its night.
pub struct Lab {
    pub yard: Yard,
    pub catalogue: Catalogue,
    pub pictures: Shelf,
    pub night: Night,
}

impl Lab {
    /// From the fields of a yard, beside the lab's own stock.
    pub fn new(fields: &str) -> Self {
        Self::edited(fields, |_| ())
    }

    /// From the fields of a yard, changed before its night is built.
    pub fn edited(fields: &str, edit: impl FnOnce(&mut Yard)) -> Self {
        let text = format!("Yard(name: \"lab\", {fields} {STOCK} {})", projectors());
        Self::of(&text, edit)
    }

    /// From the whole text of a yard.
    pub fn of(text: &str, edit: impl FnOnce(&mut Yard)) -> Self {
        let catalogue = Catalogue::builtin();
        let mut yard = Yard::parse(text, "lab.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
        edit(&mut yard);
        let pictures = pictures();
        let night = Night::build(&yard, &catalogue, &pictures).expect("the yard can be lit");
        Self { yard, catalogue, pictures, night }
    }

    /// Illuminance at a point of a plane with this unit normal, by everything, lx.
    pub fn lx(&self, point: Vec3, normal: Vec3) -> f64 {
        f64::from(luma(self.night.illuminance(point, normal).total()))
    }

    /// Luminance that an eye sees in the direction of a point, per channel.
    pub fn colour(&self, eye: Vec3, at: Vec3) -> Rgb {
        self.night.luminance(EyeRay { from: eye, along: (at - eye).normalize(), width: 0.0 })
    }

    /// Luminance that an eye sees in the direction of a point, cd/m².
    pub fn seen(&self, eye: Vec3, at: Vec3) -> f64 {
        f64::from(luma(self.colour(eye, at)))
    }

    /// Readings of the first station.
    pub fn reading(&self) -> StationReading {
        read_station(&self.night, &self.yard, &self.catalogue, 0).expect("there is a station")
    }
}

/// A point or direction.
pub fn v(x: f32, y: f32, z: f32) -> Vec3 {
    Vec3::new(x, y, z)
}

/// Holds a value to another within a relative tolerance.
#[track_caller]
pub fn close(value: f64, wanted: f64, tolerance: f64) {
    assert!((value - wanted).abs() <= tolerance * wanted.abs(), "{value} is not {wanted} within {tolerance}");
}

/// What a square mesh lets straight through at an angle from the normal, rad, averaged over the weave's bearing:
/// `(1 − γ/cos a)(1 − γ/cos b)` with `tan a = tan θ cos φ`, `tan b = tan θ sin φ`.
pub fn mesh(gamma: f64, theta: f64) -> f64 {
    const BEARINGS: u32 = 400;
    let factor = |tan: f64| (1.0 - gamma * (1.0 + tan * tan).sqrt()).max(0.0);
    let at = |k: u32| {
        let phi = FRAC_PI_4 * (f64::from(k) + 0.5) / f64::from(BEARINGS);
        factor(theta.tan() * phi.cos()) * factor(theta.tan() * phi.sin())
    };
    (0..BEARINGS).map(at).sum::<f64>() / f64::from(BEARINGS)
}

/// The hemispherical mean `2∫ f cos θ sin θ dθ` of [`mesh`].
pub fn mesh_mean(gamma: f64) -> f64 {
    const STEPS: u32 = 600;
    let step = FRAC_PI_2 / f64::from(STEPS);
    let at = |k: u32| {
        let theta = (f64::from(k) + 0.5) * step;
        mesh(gamma, theta) * (2.0 * theta).sin() * step
    };
    (0..STEPS).map(at).sum()
}
