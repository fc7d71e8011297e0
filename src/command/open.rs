//! No command: the window on a yard, or files where there is no display.

use super::{Failure, demo, stage::Stage};
use std::path::Path;

/// Opens a yard, or the demo.
pub fn open(yard: Option<&Path>, out: &Path) -> Result<(), Failure> {
    let stage = match yard {
        Some(path) => Stage::open(path)?,
        None => Stage::demo()?,
    };
    #[cfg(feature = "viewer")]
    if has_display() {
        return crate::viewer::run(stage, yard.is_none()).map_err(Failure::said);
    }
    eprintln!(
        "gauzelight: no display here; writing stills from every viewing spot and the readings into {}",
        out.display()
    );
    demo::write(&stage, out)
}

/// Whether a window can be opened: always, but for Unix systems where neither a Wayland nor an X server is named.
#[cfg(feature = "viewer")]
fn has_display() -> bool {
    if cfg!(any(target_os = "macos", target_os = "windows")) {
        return true;
    }
    ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
}
