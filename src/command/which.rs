//! A yard on the command line that is not there, and what may be meant by it.

use super::{Failure, stage};
use gauzelight::scene::Fault;
use std::{ffi::OsStr, path::Path};

/// Whether a yard lies at a path, or the program carries one of that name; if not, it says which is most like it. `commands`
/// are those that could stand in its place.
pub fn there(path: &Path, commands: &[&str]) -> Result<(), Failure> {
    let carried: Vec<&str> = stage::carried().collect();
    if path.exists() || carried.iter().any(|name| Path::new(name) == path) {
        return Ok(());
    }
    // Without their ending, which all yards have in common.
    let stem = |name: &OsStr| Path::new(name).file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let stems: Vec<String> = carried.iter().map(|name| stem(OsStr::new(name))).collect();
    let known = commands.iter().copied().chain(stems.iter().map(String::as_str));
    let near = Fault::default().nearest_of(&stem(path.as_os_str()), known).nearest;
    let hint = match near {
        Some(name) => match stems.iter().position(|stem| *stem == name) {
            Some(index) => format!("did you mean the built-in yard “{}”?", carried[index]),
            None => format!("did you mean the command “{name}”?"),
        },
        None if commands.is_empty() => format!("built-in yards: {}", carried.join(", ")),
        None => format!("commands: {}; built-in yards: {}", commands.join(", "), carried.join(", ")),
    };
    let what = if commands.is_empty() { "no file" } else { "no file and no command" };
    Err(Failure::options(format!("{what} of this name: {}; {hint}", path.display())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_yard_that_is_not_there_is_said_with_what_is_like_it() {
        let said = |name: &str, commands: &[&str]| there(Path::new(name), commands).unwrap_err().to_string();
        let commands = ["ask", "still", "readings", "validate"];
        for (name, hint) in [
            ("frobnicate", "no file and no command of this name: frobnicate; commands: ask, still"),
            ("stil", "did you mean the command “still”?"),
            ("owl", "did you mean the built-in yard “owl_night.ron”?"),
            ("owl_night", "did you mean the built-in yard “owl_night.ron”?"),
            ("window", "did you mean the built-in yard “one_window.ron”?"),
        ] {
            assert!(said(name, &commands).contains(hint), "{}", said(name, &commands));
        }
        let said = said("no/such/yard.ron", &[]);
        assert!(said.starts_with("no file of this name: no/such/yard.ron; built-in yards: owl_night.ron, "), "{said}");
        assert!(there(Path::new("owl_night.ron"), &commands).is_ok());
    }
}
