//! A driver that changes good files at random, each change drawn from its number alone, so that a mutant that fails can be made again.
//!
//! A few thousand where nothing is said; `GAUZELIGHT_TEST_MUTANTS=1000000` makes a million, `GAUZELIGHT_TEST_MUTANT=NUMBER` that one.
//! `GAUZELIGHT_TEST_SEEDS=FOLDER` keeps the good files for other fuzzers.

use super::{GOOD, RICH, survives};
use image::{DynamicImage, ImageFormat, RgbImage};
use rayon::prelude::*;
use std::{
    fs,
    io::Cursor,
    panic::catch_unwind,
    path::Path,
    sync::atomic::{AtomicUsize, Ordering},
};

/// How many, and which one alone.
const COUNT: (&str, usize) = ("GAUZELIGHT_TEST_MUTANTS", 4000);
const ONE: &str = "GAUZELIGHT_TEST_MUTANT";
/// Where the good files are kept.
const SEEDS: &str = "GAUZELIGHT_TEST_SEEDS";

/// What may be put anywhere: words, numbers and marks that mean something to one of the readers, or nothing to any.
const PIECES: &[&str] = &[
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "\"",
    "\\",
    "'",
    ",",
    ":",
    "=",
    ";",
    "//",
    "/*",
    "*/",
    "#![",
    "r#\"",
    "\"#",
    "None",
    "Some(",
    "true",
    "NaN",
    "inf",
    "-",
    "0",
    "1e300",
    "-1e300",
    "1e-320",
    "99999999999999999999",
    "0x7f",
    "1_0",
    "360",
    "\"6ft 3in\"",
    "\"1e9 m\"",
    "name: \"a\"",
    "name: \"\u{200b}\"",
    "format: 9",
    "at: (0, 0, 0)",
    "\u{feff}",
    "\u{202e}",
    "\u{1b}[2J",
    "\0",
    "\r",
    "\n",
    "\t",
    "é",
    "🦉",
    "TILT=NONE",
    "TILT=INCLUDE",
    "[",
    "180",
    "90",
    "\u{0}\u{0}\u{ff}",
    "\u{2028}",
];

/// A row of numbers that looks random (Steele, Lea, Flood 2014: splitmix).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 to below `sides`; 0 of none.
    fn roll(&mut self, sides: usize) -> usize {
        (self.next() % sides.max(1) as u64) as usize
    }
}

/// A kind of file: good ones, what must survive, and how many of a hundred mutants are of it.
struct Kind {
    name: &'static str,
    seeds: Vec<Vec<u8>>,
    survives: fn(&[u8]),
    share: usize,
}

fn kinds() -> [Kind; 4] {
    let bytes = |texts: &[&str]| texts.iter().map(|text| text.as_bytes().to_vec()).collect();
    let lamps = [
        include_str!("seeds/lamp/round.ies"),
        include_str!("seeds/lamp/tilted.ies"),
        include_str!("../light/data/lamp_c_symmetric.ies"),
    ];
    [
        Kind {
            name: "yard",
            seeds: bytes(&[GOOD, RICH, GOOD, include_str!("seeds/yard/little.ron")]),
            survives: survives::yard,
            share: 60,
        },
        Kind {
            name: "own catalogue",
            seeds: bytes(&[include_str!("seeds/own/own.ron")]),
            survives: survives::own,
            share: 18,
        },
        Kind { name: "lamp file", seeds: bytes(&lamps), survives: survives::lamp, share: 18 },
        Kind { name: "picture", seeds: pictures(), survives: survives::picture, share: 4 },
    ]
}

/// A small picture of each kind that is read.
fn pictures() -> Vec<Vec<u8>> {
    let picture = RgbImage::from_fn(17, 9, |x, y| image::Rgb([(x * 15) as u8, (y * 28) as u8, 90]));
    let picture = DynamicImage::from(picture);
    let kinds = [ImageFormat::Png, ImageFormat::Jpeg, ImageFormat::Gif, ImageFormat::WebP, ImageFormat::OpenExr];
    let encoded = kinds.map(|format| {
        let mut bytes = Cursor::new(Vec::new());
        let picture = if format == ImageFormat::OpenExr { picture.to_rgb32f().into() } else { picture.clone() };
        picture.write_to(&mut bytes, format).unwrap();
        bytes.into_inner()
    });
    encoded.to_vec()
}

/// Changes a file at a few places.
fn change(bytes: &mut Vec<u8>, other: &[u8], dice: &mut Dice) {
    for _ in 0..=dice.roll(6) {
        let at = dice.roll(bytes.len() + 1);
        let end = (at + dice.roll(60)).min(bytes.len());
        match dice.roll(9) {
            0 if at < bytes.len() => bytes[at] ^= 1 << dice.roll(8),
            1 if at < bytes.len() => bytes[at] = dice.next() as u8,
            2 => drop(bytes.drain(at..end)),
            3 => {
                let piece = bytes[at..end].to_vec();
                let to = dice.roll(bytes.len() + 1);
                bytes.splice(to..to, piece);
            }
            4 => drop(bytes.splice(at..at, PIECES[dice.roll(PIECES.len())].bytes())),
            5 => drop(bytes.splice(at..end, PIECES[dice.roll(PIECES.len())].bytes())),
            6 => number(bytes, at, dice),
            7 => {
                let from = dice.roll(other.len());
                let piece = &other[from..(from + dice.roll(200)).min(other.len())];
                bytes.splice(at..end, piece.iter().copied());
            }
            _ if dice.roll(8) == 0 => bytes.truncate(at),
            _ => {}
        }
    }
}

/// Puts another number in the place of the next one.
fn number(bytes: &mut Vec<u8>, at: usize, dice: &mut Dice) {
    const NUMBERS: [&str; 10] =
        ["0", "-1", "1e300", "-1e300", "1e-300", "NaN", "500", "0.000001", "18446744073709551616", "1e7"];
    let Some(begin) = bytes[at..].iter().position(u8::is_ascii_digit).map(|ahead| at + ahead) else { return };
    let end = bytes[begin..].iter().position(|b| !b.is_ascii_digit() && *b != b'.').map_or(bytes.len(), |n| begin + n);
    bytes.splice(begin..end, NUMBERS[dice.roll(NUMBERS.len())].bytes());
}

/// The mutant of a number, and the kind that it is of.
fn mutant(kinds: &[Kind], number: usize) -> (&Kind, Vec<u8>) {
    let mut dice = Dice(number as u64);
    let mut share = dice.roll(kinds.iter().map(|kind| kind.share).sum());
    let kind = kinds.iter().find(|kind| {
        let is_it = share < kind.share;
        share = share.saturating_sub(kind.share);
        is_it
    });
    let kind = kind.unwrap();
    let mut bytes = kind.seeds[dice.roll(kind.seeds.len())].clone();
    change(&mut bytes, &kind.seeds[dice.roll(kind.seeds.len())], &mut dice);
    (kind, bytes)
}

/// Writes the good files, a folder for each kind.
fn keep(kinds: &[Kind], folder: &Path) {
    for kind in kinds {
        let folder = folder.join(kind.name);
        fs::create_dir_all(&folder).unwrap();
        for (number, seed) in kind.seeds.iter().enumerate() {
            fs::write(folder.join(number.to_string()), seed).unwrap();
        }
    }
}

#[test]
fn no_mutant_is_more_than_a_fault() {
    let kinds = kinds();
    for kind in &kinds {
        kind.seeds.iter().for_each(|seed| (kind.survives)(seed));
    }
    if let Some(folder) = std::env::var_os(SEEDS) {
        keep(&kinds, Path::new(&folder));
    }
    let said = |name: &str| std::env::var(name).ok().and_then(|count| count.parse::<usize>().ok());
    if let Some(one) = said(ONE) {
        let (kind, bytes) = mutant(&kinds, one);
        println!("{}: {}", kind.name, String::from_utf8_lossy(&bytes));
        return (kind.survives)(&bytes);
    }
    let count = said(COUNT.0).unwrap_or(COUNT.1);
    let tried = kinds.each_ref().map(|_| AtomicUsize::new(0));
    let failed: Vec<usize> = (0..count)
        .into_par_iter()
        .filter(|number| {
            let (kind, bytes) = mutant(&kinds, *number);
            if let Some(at) = kinds.iter().position(|one| one.name == kind.name) {
                tried[at].fetch_add(1, Ordering::Relaxed);
            }
            catch_unwind(|| (kind.survives)(&bytes)).is_err()
        })
        .collect();
    for (kind, tried) in kinds.iter().zip(tried) {
        println!("{}: {} mutants", kind.name, tried.into_inner());
    }
    assert!(failed.is_empty(), "{ONE} is one of {failed:?}");
}
