//! Lamps as measured: photometric files by IES LM-63, of its editions from 1986 to 2019.
//!
//! Such a file lists candela over two angles of a goniometer. With x to the lamp's right as seen by who stands before it, y
//! up and z to its front, a direction is (from memory of IES LM-75, which LM-63 follows):
//!
//! ```text
//! type C   ( sin v sin l,  −cos v,        sin v cos l )    v from straight down, l around the vertical from the front
//! type B   ( sin l,         cos l sin v,  cos l cos v )    v up, l aside from the upright plane
//! type A   ( cos v sin l,   sin v,        cos v cos l )    v up, l around the vertical
//! ```
//!
//! `l` counts to the lamp's right: counter-clockwise from above. Between the angles of a file candela run straight.

mod angles;
mod fault;
mod head;
mod numbers;

pub use fault::LampFileFault;

use super::Spread;
use angles::{Law, between, weights};
use glam::DVec3;
use std::{f64::consts::TAU, sync::Arc};

/// Planes of a [`Spread`] where the file's own are not equally spaced, or stand around another axis.
const MOST_PLANES: usize = 144;

/// The axes that a file's angles turn about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goniometer {
    /// Down and around: most lamps.
    C,
    /// Aside from an upright plane: floodlights.
    B,
    /// Around the vertical, and up: vehicles' lamps.
    A,
}

/// What a photometric file says of a lamp.
#[derive(Clone, Debug, PartialEq)]
pub struct LampFile {
    /// The axes that the angles turn about.
    pub goniometer: Goniometer,
    /// Vertical angles, degrees.
    pub vertical_deg: Vec<f64>,
    /// Lateral angles, degrees: one for a lamp alike all around, a quarter or a half for one with mirror planes.
    pub lateral_deg: Vec<f64>,
    /// Candela with all factors of the file, for each lateral angle over the vertical ones.
    pub candela: Vec<Vec<f64>>,
    /// Width, length and height of the opening that shines, m, as the file signs them (a negative one is round).
    pub opening_m: [f64; 3],
    /// Lumens of all lamp bulbs together; `None` where the file is of the whole lamp alone (absolute photometry).
    pub bulbs_lm: Option<f64>,
}

/// A lamp of a file, ready to be lit.
#[derive(Clone, Debug, PartialEq)]
pub struct FileLight {
    /// What the lamp gives, lm: the integral of its candela.
    pub lumens: f64,
    /// Whether the axis of its distribution is straight down with its side to the front; else the axis is its front, with
    /// its side up.
    pub hangs: bool,
    /// Its distribution.
    pub spread: Arc<Spread>,
}

impl LampFile {
    /// No file is larger, bytes.
    pub const MOST_BYTES: u64 = 8 << 20;

    /// Reads the bytes of a file; its words may be in any encoding, its numbers are ASCII.
    pub fn read(bytes: &[u8]) -> Result<Self, LampFileFault> {
        let text = String::from_utf8_lossy(bytes).replace("\r\n", "\n").replace('\r', "\n");
        let lines: Vec<&str> = text.split('\n').collect();
        head::read(&lines)
    }

    /// Candela along a unit vector to the lamp's right, up and front.
    pub fn candela(&self, toward: DVec3) -> f64 {
        let [vertical, lateral] = self.angles(toward);
        let across = match self.lateral_deg.as_slice() {
            [_] => Some((0, 0.0)),
            list => between(list, lateral),
        };
        let (Some((i, s)), Some((j, t))) = (across, between(&self.vertical_deg, vertical)) else { return 0.0 };
        let over = |row: &[f64]| row[j] + (row[j + 1] - row[j]) * t;
        let first = over(&self.candela[i]);
        self.candela.get(i + 1).map_or(first, |row| first + (over(row) - first) * s)
    }

    /// The file's two angles of a direction, degrees, vertical and lateral; the latter within what the file lists.
    fn angles(&self, toward: DVec3) -> [f64; 2] {
        let DVec3 { x, y, z } = toward;
        let [vertical, lateral] = match self.goniometer {
            Goniometer::C => [(-y).clamp(-1.0, 1.0).acos(), x.atan2(z)],
            Goniometer::B => [y.atan2(z), x.clamp(-1.0, 1.0).asin()],
            Goniometer::A => [y.clamp(-1.0, 1.0).asin(), x.atan2(z)],
        }
        .map(f64::to_degrees);
        let ends = (self.lateral_deg[0], self.lateral_deg[self.lateral_deg.len() - 1]);
        [vertical, angles::folded(lateral, self.goniometer == Goniometer::C, ends)]
    }

    /// What the lamp gives, lm: `∫ I dΩ`, exact for candela that run straight between the file's angles.
    pub fn lumens(&self) -> f64 {
        let (over_vertical, over_lateral) = match self.goniometer {
            Goniometer::C => (Law::Sine, Law::One),
            Goniometer::B => (Law::One, Law::Cosine),
            Goniometer::A => (Law::Cosine, Law::One),
        };
        let vertical = weights(&self.vertical_deg, over_vertical);
        let lateral = match self.lateral_deg.as_slice() {
            [_] => vec![TAU],
            list => weights(list, over_lateral),
        };
        let span = self.lateral_deg[self.lateral_deg.len() - 1] - self.lateral_deg[0];
        let whole = if self.goniometer == Goniometer::C { 360.0 } else { 180.0 };
        let mirrored = if span > 0.0 { (whole / span).round() } else { 1.0 };
        let row = |row: &Vec<f64>| row.iter().zip(&vertical).map(|(cd, weight)| cd * weight).sum::<f64>();
        mirrored * self.candela.iter().zip(&lateral).map(|(list, weight)| row(list) * weight).sum::<f64>()
    }

    /// The lamp as it is lit.
    pub fn light(&self) -> FileLight {
        let hangs = self.goniometer == Goniometer::C;
        let [axis, side] = if hangs { [DVec3::NEG_Y, DVec3::Z] } else { [DVec3::Z, DVec3::Y] };
        let third = side.cross(axis);
        let law = |cos: f64, azimuth: f64| {
            let sin = (1.0 - cos * cos).max(0.0).sqrt();
            self.candela(cos * axis + sin * (azimuth.cos() * side + azimuth.sin() * third))
        };
        FileLight { lumens: self.lumens(), hangs, spread: Arc::new(Spread::around(self.planes(), law)) }
    }

    /// The fewest equally spaced planes among which all of the file's stand.
    fn planes(&self) -> usize {
        let stand = |count: usize| {
            let off = |deg: f64| (deg * count as f64 / 360.0 - (deg * count as f64 / 360.0).round()).abs();
            self.lateral_deg.iter().all(|deg| off(*deg) < 1e-6)
        };
        match (self.goniometer, self.lateral_deg.len()) {
            (Goniometer::C, 1) => 1,
            (Goniometer::C, _) => (4..MOST_PLANES).step_by(4).find(|count| stand(*count)).unwrap_or(MOST_PLANES),
            _ => MOST_PLANES,
        }
    }
}
