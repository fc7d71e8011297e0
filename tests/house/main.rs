//! The house keeps its walls: who calls whom, how long a file is, whether the shaders are sound.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

use std::{
    fs,
    path::{Path, PathBuf},
};

/// The rooms in the order in which each may call those before it.
const ROOMS: [&str; 11] =
    ["units", "optics", "scene", "edit", "frames", "geometry", "light", "craft", "judge", "picture", "sheet"];

fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut list = Vec::new();
    for entry in fs::read_dir(folder).unwrap_or_else(|e| panic!("{e}: {}", folder.display())) {
        let path = entry.unwrap().path();
        if path.is_dir() {
            list.extend(files(&path, ending));
        } else if path.extension().is_some_and(|e| e == ending) {
            list.push(path);
        }
    }
    list.sort();
    list
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The room that a file under `src` belongs to.
fn room(path: &Path) -> Option<String> {
    let inside = path.strip_prefix(root().join("src")).ok()?;
    let first = inside.components().next()?.as_os_str().to_str()?;
    Some(first.trim_end_matches(".rs").to_owned())
}

#[test]
fn rooms_call_one_way_only() {
    let mut steps_back = Vec::new();
    let mut seen = 0;
    for path in files(&root().join("src"), "rs") {
        let Some(from) = room(&path).and_then(|room| ROOMS.iter().position(|r| *r == room)) else { continue };
        let text = fs::read_to_string(&path).unwrap();
        // Inside `use crate::{ … };`, where rooms stand by their bare names.
        let mut in_list = false;
        for (number, line) in text.lines().enumerate() {
            let code = line.split("//").next().unwrap_or("");
            in_list = (in_list || code.contains("use crate::{")) && !code.contains("};");
            for (to, name) in ROOMS.iter().enumerate() {
                let bare = code.trim_start().starts_with(&format!("{name}::"));
                let named = code.contains(&format!("crate::{name}::")) || code.contains(&format!("crate::{{{name}::"));
                if named || (in_list && bare) {
                    seen += 1;
                    if to > from {
                        let (path, line) = (path.display(), number + 1);
                        steps_back.push(format!("{path}:{line}: {} calls {name}", ROOMS[from]));
                    }
                }
            }
            assert!(
                !code.contains("bevy") && !code.contains("wgpu"),
                "{}:{}: the library names the engine",
                path.display(),
                number + 1
            );
        }
    }
    assert!(seen > 50, "the test has lost sight of the calls: {seen}");
    assert!(steps_back.is_empty(), "{steps_back:#?}");
}

#[test]
fn no_file_is_long() {
    let mut all = files(&root().join("src"), "rs");
    all.extend(files(&root().join("tests"), "rs"));
    all.extend(files(&root().join("assets"), "wgsl"));
    let long: Vec<String> = all
        .iter()
        .map(|path| (path, fs::read_to_string(path).unwrap().lines().count()))
        .filter(|(_, lines)| *lines > 600)
        .map(|(path, lines)| format!("{} has {lines} lines", path.display()))
        .collect();
    assert!(long.is_empty(), "{long:#?}");
}

#[cfg(feature = "viewer")]
#[test]
fn the_shaders_are_sound() {
    let shaders = root().join("assets/shaders");
    let night: String = files(&shaders.join("night"), "wgsl").iter().map(|f| fs::read_to_string(f).unwrap()).collect();
    let develop = fs::read_to_string(shaders.join("develop.wgsl")).unwrap();
    for (name, text) in [("night", night), ("develop", develop)] {
        let module =
            wgpu::naga::front::wgsl::parse_str(&text).unwrap_or_else(|e| panic!("{name}: {}", e.emit_to_string(&text)));
        // Half floats in storage are what every graphics driver of the last decade unpacks.
        let able = wgpu::naga::valid::Capabilities::SHADER_FLOAT16_IN_FLOAT32;
        wgpu::naga::valid::Validator::new(Default::default(), able)
            .validate(&module)
            .unwrap_or_else(|e| panic!("{name}: {}", e.emit_to_string(&text)));
    }
}

#[test]
fn the_catalogue_knows_every_built_in_picture() {
    let known = gauzelight::scene::Catalogue::builtin().pictures;
    let mut drawn: Vec<String> = gauzelight::frames::builtin_names().map(str::to_owned).collect();
    let mut listed = known.clone();
    drawn.sort();
    listed.sort();
    assert_eq!(drawn, listed);
}
