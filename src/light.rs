//! The photometric core: what light arrives anywhere and what luminance comes along any ray.
//!
//! Built once from a yard into an immutable [`Night`]; everything downstream borrows it. Rays, tables and colours are
//! single precision (a yard is tens of metres, a millimetre counts, and the shader that mirrors this code has nothing
//! else); sums over a picture or a hemisphere are double.
//!
//! Colour is linear RGB with Rec. 709 primaries and every channel carries photometric units, so that
//! `Y = 0.2126 R + 0.7152 G + 0.0722 B` is the illuminance in lx or the luminance in cd/m².

pub mod ambient;
mod arrival;
mod beam;
mod bounds;
pub mod cells;
mod drawing;
pub mod eye;
mod glow;
mod keystone;
mod lamp;
mod lens;
mod look;
mod matter;
mod memory;
mod night;
mod sky;
mod sky_grid;
mod way;

pub use ambient::{Ambient, Body, Disc};
pub use arrival::{Arrival, Shares, Sides, Source, View};
pub use beam::{Beam, Relay};
pub use drawing::{Area, Drawing, Drawn, typical_place};
pub use glow::Glow;
pub use keystone::Lost;
pub use lamp::LightPoint;
pub use lens::{Lens, picture_map};
pub use look::{EyeRay, Seen};
pub use matter::{End, MatterFault, Optic, VeilLight, VeilSort};
pub use night::{
    Followed, Hit, MOST_STANDING, MOST_TRIANGLES, Names, Night, NightFault, SkyKey, SolidLight, lumens, response,
    throws_alike,
};
pub use sky::DiscLight;
pub use sky_grid::SKY_VALUES;

/// Linear RGB in photometric units.
pub use crate::optics::Rgb;

/// Offset of a shadow ray from the surface it starts on, m.
pub const SKIN: f32 = 1e-3;

/// Illuminance below which light is not traced, lx: on white 1.6e-6 cd/m², about the least ground that the law of the threshold knows
/// (Adrian 1989).
pub const LEAST_LX: f32 = 5e-6;

/// See-through surfaces that one ray is followed through.
pub const MOST_CROSSINGS: usize = 32;

/// The photometric value of a colour: lx or cd/m² (Rec. 709 luma weights).
#[inline]
pub fn luma(colour: Rgb) -> f32 {
    0.2126 * colour.x + 0.7152 * colour.y + 0.0722 * colour.z
}
