//! What must hold of any bytes at all: they are read or refused, and either way can be told. Fuzzers call these too.

use gauzelight::{
    frames::{Frame, Response},
    optics::LampFile,
    scene::{Catalogue, Faults, OwnCatalogue, Yard},
};
use std::sync::LazyLock;

static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(Catalogue::builtin);

/// Faults can be told in both ways: shortly, and with nothing in it that a terminal would obey.
pub fn told(faults: &Faults) {
    let (plain, pretty) = (faults.plain(), faults.pretty(false, 100));
    for text in [&plain, &pretty] {
        assert!(!text.chars().any(|letter| letter.is_control() && letter != '\n'), "{text:?}");
        assert!(text.len() < 400_000, "{} bytes of report", text.len());
    }
    assert!((faults.len()..=faults.len() + 1).contains(&plain.lines().count()), "{plain}");
    assert_eq!(faults.is_empty(), plain.is_empty() && pretty.is_empty());
}

/// Bytes as a yard: what could be read is the same once it is saved and read again.
pub fn yard(bytes: &[u8]) {
    match Yard::parse(&String::from_utf8_lossy(bytes), "yard.ron", &CATALOGUE) {
        Ok(loaded) => {
            told(&loaded.warnings);
            let saved = loaded.yard.to_text();
            let again = Yard::parse(&saved, "saved.ron", &CATALOGUE);
            let again = again.unwrap_or_else(|faults| panic!("what was saved cannot be read:\n{faults}\n{saved}"));
            assert_eq!(again.yard, loaded.yard);
        }
        Err(faults) => {
            assert!(faults.has_errors());
            told(&faults);
        }
    }
}

/// Bytes as an owner's catalogue.
pub fn own(bytes: &[u8]) {
    match OwnCatalogue::parse(&String::from_utf8_lossy(bytes), "own.ron") {
        Ok(own) => {
            let saved = own.to_text();
            let again = OwnCatalogue::parse(&saved, "saved.ron");
            let again = again.unwrap_or_else(|faults| panic!("what was saved cannot be read:\n{faults}\n{saved}"));
            assert_eq!(again, own);
        }
        Err(faults) => {
            assert!(faults.has_errors());
            told(&faults);
        }
    }
}

/// Bytes as a lamp file: its light is finite.
pub fn lamp(bytes: &[u8]) {
    match LampFile::read(bytes) {
        Ok(file) => {
            let _ = file.light();
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
}

/// Bytes as a picture: what could be decoded is light.
pub fn picture(bytes: &[u8]) {
    match Frame::decode(bytes, Response::USUAL) {
        Ok(frame) => assert!(frame.mean.is_finite() && frame.peak.is_finite()),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}
