//! The commands as a person at a terminal meets them: what is said, where, and how they end.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod compare;
mod deaf;
mod lamps;
mod list;
mod much;
mod opening;
mod options;
mod pictures;
#[cfg(target_os = "linux")]
mod sky;
mod writing;

use std::{
    path::Path,
    process::{Command, Output, Stdio},
};

/// The program, told to run in a folder.
fn program(folder: &Path, options: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_gauzelight"));
    command.args(options).current_dir(folder).env("LC_ALL", "C").env("XDG_CACHE_HOME", folder).stdin(Stdio::null());
    command
}

fn run(folder: &Path, options: &[&str]) -> Output {
    program(folder, options).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A yard of one wall and one station that throws this picture.
fn yard(picture: &str) -> String {
    format!(
        r#"Yard(format: 1, name: "yard", walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)],
    spots: [(name: "gate", at: (0, 0, 6))],
    stations: [(name: "owl", projector: "mini LED", at: (0, 1, 4), aim: "wall", content: (picture: "{picture}"))])"#
    )
}
