//! The house keeps its walls: who calls whom, how long a file is, whether the shaders are sound.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

use std::{
    fs,
    path::{Path, PathBuf},
};

/// The rooms in the order in which each may call those before it.
const ROOMS: [&str; 12] =
    ["units", "files", "optics", "scene", "edit", "frames", "geometry", "light", "craft", "judge", "picture", "sheet"];

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

/// Texts that people give or read: what they say decides nothing. Names of fields of a document are no such texts.
const TEXTS: [&str; 14] = [
    "says",
    "name",
    "name()",
    "text()",
    "name.0",
    "note",
    "note.0",
    "reason",
    "thing",
    "kind",
    "sort",
    "surface.0",
    "message",
    "sentence",
];

/// Whether a line of code looks into such a text, or holds it against one that is written there.
fn hangs_on_words(code: &str) -> bool {
    let looks = ["starts_with(", "ends_with(", "contains(", "strip_prefix(", "strip_suffix(", "find(\""];
    TEXTS.iter().any(|text| {
        let parts = code.match_indices(text).filter(|(at, _)| {
            let before = code[..*at].chars().next_back();
            before.is_none_or(|letter| !letter.is_alphanumeric() && letter != '_')
        });
        parts.map(|(at, _)| &code[at + text.len()..]).any(|rest| {
            let compared = rest.starts_with(" == \"") || rest.starts_with(" != \"");
            let looked_into =
                rest.strip_prefix('.').is_some_and(|rest| looks.iter().any(|look| rest.starts_with(look)));
            compared || looked_into
        })
    }) || code.contains("contains(&format!(")
}

#[test]
fn nothing_hangs_on_words() {
    for caught in [
        "if finding.says.starts_with(x) {",
        "area.surface.0.starts_with(\"asphalt\")",
        "words.iter().any(|word| name.contains(word))",
        "let sky = first.thing == \"sky\";",
        "let name = name.strip_prefix(\"room behind \")?;",
        "text.contains(&format!(\"{name:?}\"))",
        "spot.name.ends_with(\"figure\")",
        "supply.kind == \"mains\"",
        "if caution.text().starts_with(&name) {",
        "form.name() == \"gourd\"",
    ] {
        assert!(hangs_on_words(caught), "{caught}");
    }
    for free in ["if station.name == other.name {", "names.contains(&x)", "finding.says.len() > 20", "rename == \"x\""]
    {
        assert!(!hangs_on_words(free), "{free}");
    }
    // Where notation is read and where somebody types, texts are taken apart; cards name the fields of a noun by their names in
    // the code.
    let readers = [
        "src/units",
        "src/scene",
        "src/optics/lamp_file",
        "src/judge/ask/choice.rs",
        "src/viewer/cards/asking.rs",
        "src/viewer/cards/fields",
        "src/viewer/cards/fields.rs",
    ];
    let mut found = Vec::new();
    for path in files(&root().join("src"), "rs") {
        let inside = path.strip_prefix(root()).unwrap().to_owned();
        if readers.iter().any(|reader| inside.starts_with(reader)) {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let code = text.split("#[cfg(test)]").next().unwrap_or("");
        let lines = code.lines().enumerate().filter(|(_, line)| hangs_on_words(line.split("//").next().unwrap_or("")));
        found.extend(lines.map(|(number, line)| format!("{}:{}: {}", inside.display(), number + 1, line.trim())));
    }
    assert!(found.is_empty(), "{found:#?}");
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
