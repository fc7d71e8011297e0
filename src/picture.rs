//! Luminance to pixels: exposure, false colour with its legend; PNG and EXR; plots.

mod adapted;
mod camera;
mod develop;
mod file;
mod palette;
pub mod plot;
mod still;

pub use adapted::{Adapted, DISPLAY_WHITE, Impression, adapted};
pub use camera::Camera;
pub use develop::Develop;
pub use file::{PictureError, can_write, encoded, write, write_codes};
pub use palette::{PALETTE_STEPS, legend, palette, palette_table};
pub use still::{Still, expose};
