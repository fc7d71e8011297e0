//! The night on a graphics card: the core's tables, trees and lights packed into buffers, the shader that reads them, and
//! the pass that turns luminance into display values. Knows no window; the window and the commands both use it.

mod develop;
mod device;
mod exposure;
mod flight;
mod pack;
#[cfg(test)]
mod sway;

pub use develop::Developer;
pub use device::{Headless, probe};
pub use exposure::{Exposer, Order, Which};
pub use flight::hold_back;
use pack::{LightPack, ScenePack, TexelPack};
