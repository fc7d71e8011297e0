//! What fabric, film, glass and lamps do to light, each law written as a table over angle.
//!
//! A law is computed once, in `f64`, and kept as a [`Curve`] (or a [`film`] gain table, or a lamp [`Spread`]) of `f32`
//! samples. Readings and the live picture look up the very same samples, so that both interpolate alike and no formula
//! stands twice.
//!
//! Every fabric becomes a [`Sheet`], whose luminance along a ray that meets it at the angle `θo` is
//!
//! ```text
//! L = [ reflect_shape(θo) Σ_near reflect(θi) Ei + exit_shape(θo) Σ_far diffuse(θi) Ei ] / π + through(θo) L_behind
//! ```
//!
//! with the near face's shapes, and each light `i` (illuminance `Ei` in lx) weighed by the face that it meets. The
//! form is reciprocal, and a fabric that loses nothing reads exactly 1 in a surround of luminance 1, at every angle
//! and from both sides.
//!
//! Nothing here knows of scenes: numbers go in, tables come out.

pub mod blind;
pub mod cloth;
pub mod curve;
pub mod energy;
pub mod film;
pub mod fresnel;
pub mod glazing;
pub mod lamp;
pub mod lamp_file;
pub mod layers;
pub mod net;
pub mod pane;
pub mod pile;
pub mod pleats;
pub mod sheet;
mod solve;

pub use blind::Blind;
pub use cloth::Cloth;
pub use curve::{Curve, Rgb, STEPS};
pub use energy::EnergyError;
pub use film::{Film, FilmError, sample_gain};
pub use glazing::{Glazing, Screen};
pub use lamp::{Lamp, Over, Spread};
pub use lamp_file::{FileLight, Goniometer, LampFile, LampFileFault};
pub use layers::stack;
pub use net::Net;
pub use pane::Pane;
pub use pleats::gathered;
pub use sheet::{Excess, Face, Sheet};
