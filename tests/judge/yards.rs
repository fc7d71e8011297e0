//! By subject: for every matter a yard that provokes it, and the same yard with one thing changed that does not.

mod feeding;
mod people;
mod picture;
mod weather;
mod window;

use gauzelight::judge::findings::Matter;

/// A yard's text, and what is put in the place of what so that the finding is gone.
pub struct Provoked {
    pub matter: Matter,
    pub yard: &'static str,
    pub instead: (&'static str, &'static str),
}

/// A cloth before dark boards, seen from a path that a lamp stands beside.
const HUNG: &str = r#"(
    name: "hung",
    evening: (sky_lx: 0.3),
    ground: (surface: "lawn, winter", width: "12 m", depth: "20 m"),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "3 m", surface: "painted boards, dark")],
    lamps: [(name: "lamp", kind: "porch lamp", at: (2.5, 2.3, 4.5))],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.4, 0))],
    cloths: [(name: "cloth", fabric: "white sheer", at: (0, 2.3, 1), width: 1.5, height: 1.8)],
)"#;

/// Every one.
pub fn all() -> impl Iterator<Item = &'static Provoked> {
    [picture::ROWS, window::ROWS, people::ROWS, weather::ROWS, feeding::ROWS].into_iter().flatten()
}
