//! The light that arrives at a point, by who sent it.

use super::{LEAST_LX, LightPoint, Night, Rgb, SKIN, luma};
use crate::geometry::Sight;
use glam::Vec3;

/// Who sends light.
#[derive(Clone, Debug, PartialEq)]
pub enum Source {
    /// A station, by its index in the yard and its name.
    Station(u32, String),
    /// A lamp of the yard, by its name.
    Lamp(String),
    /// The lamp of the room behind an opening.
    Room {
        /// Name of the opening.
        opening: String,
        /// What to call the lamp.
        name: String,
    },
    /// The sun.
    Sun,
    /// The moon.
    Moon,
    /// The sky.
    Sky,
}

impl Source {
    /// What to call it.
    pub fn name(&self) -> &str {
        match self {
            Self::Station(_, name) | Self::Lamp(name) | Self::Room { name, .. } => name,
            Self::Sun => "sun",
            Self::Moon => "moon",
            Self::Sky => "sky",
        }
    }
}

/// Light that arrives from one direction.
#[derive(Clone, Copy, Debug)]
pub struct Arrival {
    /// Index among the night's sources.
    pub source: u32,
    /// Unit vector from the point to where the light comes from.
    pub toward: Vec3,
    /// Illuminance of a plane square to it, lx.
    pub square: Rgb,
}

/// Which sides of a surface light is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sides {
    /// Only the side that the normal points to.
    Near,
    /// Both.
    Both,
}

/// How light is asked for.
#[derive(Clone, Copy, Debug, Default)]
pub struct View {
    /// Width, m, that the eye's pixel covers at the point: finer detail of a picture is averaged.
    pub footprint: f32,
    /// The one source whose light counts; all light where there is none.
    pub only: Option<u32>,
}

impl View {
    /// Whether the light of a source counts.
    #[inline]
    pub fn counts(&self, source: u32) -> bool {
        self.only.is_none_or(|only| only == source)
    }
}

/// Illuminance by source, lx.
#[derive(Clone, Debug, PartialEq)]
pub struct Shares {
    /// One for each of the night's sources.
    pub lx: Vec<Rgb>,
}

impl Shares {
    /// All of it.
    pub fn total(&self) -> Rgb {
        self.lx.iter().copied().sum()
    }
}

impl Night {
    /// Calls `take` for the light of every station, lamp and the disc of sun or moon that reaches a point of a surface, with everything on
    /// the way taken off; the sky is not a direction and is asked for apart.
    #[inline]
    pub fn arrivals(&self, point: Vec3, normal: Vec3, sides: Sides, view: View, mut take: impl FnMut(Arrival)) {
        for beam in &self.beams {
            if !view.counts(beam.station) {
                continue;
            }
            let Some((square, toward)) = beam.square(point, view.footprint) else { continue };
            let cos = normal.dot(toward);
            if (sides == Sides::Near && cos <= 0.0) || luma(square) < LEAST_LX {
                continue;
            }
            let left = beam.transmittance(self, point, normal * cos.signum());
            if left != Rgb::ZERO {
                take(Arrival { source: beam.station, toward, square: left * square });
            }
        }
        let mut lamp = |lamp: &LightPoint| {
            if !view.counts(lamp.source) {
                return;
            }
            let (square, toward) = lamp.square(point);
            let cos = normal.dot(toward);
            if (sides == Sides::Near && cos <= 0.0) || luma(square) < LEAST_LX {
                return;
            }
            let left = self.way(point + SKIN * normal * cos.signum(), lamp.at, [u32::MAX; 2]);
            if left != Rgb::ZERO {
                take(Arrival { source: lamp.source, toward, square: left * square });
            }
        };
        match &self.lamp_tree {
            None => self.lamps.iter().for_each(lamp),
            Some(tree) => {
                let mut near = Vec::new();
                tree.around(point, |lamp| near.push(lamp));
                // Sums keep one order, whatever the shape of the tree.
                near.sort_unstable();
                near.into_iter().for_each(|index| lamp(&self.lamps[index as usize]));
            }
        }
        if let Some(disc) = self.disc.as_ref().filter(|disc| view.counts(disc.source)) {
            let cos = normal.dot(disc.toward);
            if sides == Sides::Both || cos > 0.0 {
                let sight = Sight::endless(point + SKIN * normal * cos.signum(), disc.toward);
                let left = self.through(sight, [u32::MAX; 2]);
                if left != Rgb::ZERO && !self.blocked(sight) {
                    take(Arrival { source: disc.source, toward: disc.toward, square: left * disc.square });
                }
            }
        }
    }

    /// Illuminance of one side of a surface at a point, by source; the sky by rays cast here and now.
    pub fn illuminance(&self, point: Vec3, normal: Vec3) -> Shares {
        let mut lx = vec![Rgb::ZERO; self.sources.len()];
        self.arrivals(point, normal, Sides::Near, View::default(), |a| {
            lx[a.source as usize] += a.square * normal.dot(a.toward)
        });
        lx[self.sky_source as usize] = self.sky_lx * self.sky_share(point, normal);
        Shares { lx }
    }
}
