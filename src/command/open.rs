//! No command: the window on a yard, or files where there is no display.

use super::{Failure, demo, stage::Stage, trust::Trust};
use std::path::Path;

/// Opens a yard, or the demo.
pub fn open(yard: Option<&Path>, out: &Path, trust: Trust) -> Result<(), Failure> {
    let stage = || match yard {
        Some(path) => Stage::open(path, trust),
        None => Stage::demo(),
    };
    let opened = stage()?;
    #[cfg(feature = "viewer")]
    let (opened, why) = if has_display() {
        match crate::viewer::run(opened, yard.is_none()) {
            Err(crate::viewer::NoWindow::None(why)) => (stage()?, format!("no window here ({why})")),
            ended => return ended.map_err(Failure::said),
        }
    } else {
        (opened, "no display here".to_owned())
    };
    #[cfg(not(feature = "viewer"))]
    let why = "no window in this build";
    super::aside(format_args!(
        "gauzelight: {why}; writing stills from every viewing spot and the readings into {}",
        out.display()
    ));
    demo::write(&opened, out)
}

/// Whether a window can be opened: always, but for Unix systems where neither a Wayland nor an X server answers.
#[cfg(all(feature = "viewer", not(all(unix, not(target_os = "macos")))))]
fn has_display() -> bool {
    true
}

/// Whether a window can be opened: always, but for Unix systems where neither a Wayland nor an X server answers.
#[cfg(all(feature = "viewer", unix, not(target_os = "macos")))]
fn has_display() -> bool {
    use std::{net::TcpStream, os::unix::net::UnixStream, path::PathBuf};
    let named = |name: &str| std::env::var(name).ok().filter(|value| !value.is_empty());
    let wayland = named("WAYLAND_DISPLAY").is_some_and(|socket| {
        let folder = named("XDG_RUNTIME_DIR").map(PathBuf::from).unwrap_or_default();
        UnixStream::connect(folder.join(socket)).is_ok()
    });
    // X names a display HOST:NUMBER.SCREEN; a local one listens on a socket of its number, one far off on port 6000 + number.
    let x = named("DISPLAY").is_some_and(|display| {
        let Some((host, number)) = display.rsplit_once(':') else { return false };
        let number = number.split('.').next().unwrap_or(number);
        let Ok(number) = number.parse::<u16>() else { return false };
        match host {
            "" | "unix" => UnixStream::connect(format!("/tmp/.X11-unix/X{number}")).is_ok(),
            host => TcpStream::connect((host, 6000u16.saturating_add(number))).is_ok(),
        }
    });
    named("WAYLAND_SOCKET").is_some() || wayland || x
}
