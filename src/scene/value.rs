//! The small values that nouns are made of, each with the range it may have.

use crate::units::Length;

/// Where in a yard file something stands; carried along for messages and never compared.
#[derive(Clone, Copy, Debug, Default)]
pub struct Place {
    /// Byte offset in the file that was read; 0 for things made by the program.
    pub offset: usize,
    /// Length in bytes.
    pub len: usize,
}

impl Place {
    /// Whether it was read from a file.
    pub fn is_known(self) -> bool {
        self.offset > 0 || self.len > 0
    }
}

impl PartialEq for Place {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

/// The name of a thing, unique in its yard, 1 to 60 characters.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Name(pub String, pub Place);

/// The name of another thing or of a catalogue entry.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ref(pub String, pub Place);

/// Things by their names; written `"gourd"`, or `["left gourd", "right gourd"]` where there are several.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Targets(pub Vec<Ref>);

impl Targets {
    /// One thing.
    pub fn one(name: &str) -> Self {
        Self(vec![Ref::to(name)])
    }
}

impl Ref {
    /// A reference made by the program, with no place in a file.
    pub fn to(name: &str) -> Self {
        Self(name.to_owned(), Place::default())
    }
}

impl Name {
    /// A name made by the program, with no place in a file.
    pub fn of(name: &str) -> Self {
        Self(name.to_owned(), Place::default())
    }
}

/// A size: a length greater than 0 and at most 500 m.
#[derive(Clone, Debug, PartialEq)]
pub struct Size(pub Length);

impl Size {
    /// A size of `m` metres.
    pub const fn metres(m: f64) -> Self {
        Self(Length::metres(m))
    }

    /// The size in metres, single precision.
    pub fn f32(&self) -> f32 {
        self.0.m as f32
    }
}

/// How far from the middle of a yard anything may be along each axis, m.
pub const FARTHEST_M: f64 = 500.0;

/// A position in metres, each coordinate within ±500 m: `(x, y, z)`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Point(pub [Length; 3]);

impl Point {
    /// A position in metres.
    pub const fn metres(x: f64, y: f64, z: f64) -> Self {
        Self([Length::metres(x), Length::metres(y), Length::metres(z)])
    }

    /// The position in metres, single precision.
    pub fn vec3(&self) -> glam::Vec3 {
        glam::Vec3::new(self.0[0].f32(), self.0[1].f32(), self.0[2].f32())
    }
}

/// An angle in degrees, within ±360.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Angle(pub f64);

impl Angle {
    /// The angle in radians, single precision.
    pub fn radians(self) -> f32 {
        self.0.to_radians() as f32
    }
}

/// Geographic latitude in degrees, north positive, within ±90.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Latitude(pub f64);

impl Latitude {
    /// The poles, degrees.
    pub(super) const MOST: f64 = 90.0;
    /// What may be written.
    pub(super) const ALLOWED: &str = "degrees from -90 to 90, north positive";
}

/// Geographic longitude in degrees, east positive, within ±180.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Longitude(pub f64);

impl Longitude {
    /// Half way round the world, degrees.
    pub(super) const MOST: f64 = 180.0;
    /// What may be written.
    pub(super) const ALLOWED: &str = "degrees from -180 to 180, east positive";
}

/// A share, 0 to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Fraction(pub f64);

/// A number greater than 0 and at most 10 million.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Positive(pub f64);

/// A whole number, 1 to 10 000.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Count(pub u32);

/// Width of the flat cloth over width as hung, 1 (flat) to 4.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fullness(pub f64);

/// A typical value with the range it may have; written `0.6` or `(low: 0.5, typical: 0.6, high: 0.7)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The least to expect.
    pub low: f64,
    /// The typical value.
    pub typical: f64,
    /// The most to expect.
    pub high: f64,
}

impl Band {
    /// A value known exactly.
    pub const fn exact(value: f64) -> Self {
        Self { low: value, typical: value, high: value }
    }
}

/// Linear Rec. 709 colour, each channel 0 to 1; written `(0.8, 0.8, 0.7)` or one number for a grey.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Colour(pub [f64; 3]);

impl Colour {
    /// A grey of this value.
    pub const fn grey(value: f64) -> Self {
        Self([value; 3])
    }

    /// The three channels, single precision.
    pub fn rgb(self) -> glam::Vec3 {
        glam::DVec3::from(self.0).as_vec3()
    }
}

/// A pair in units of the picture: u to the right and v down, 0 to 1 inside; written `(u, v)`, each within ±4.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uv(pub [f64; 2]);

/// One point of a turned profile: radius and height above the foot; written `("0.2 m", "0.5 m")`.
#[derive(Clone, Debug, PartialEq)]
pub struct TurnedPoint {
    /// Distance from the axis; 0 closes the profile.
    pub radius: Length,
    /// Height above the foot.
    pub height: Length,
}
