//! Where the light of a place of a station's raster lands: followed from the lens.

use super::{RASTER, meant::Meant};
use crate::{
    geometry::{Outline, Sight, crossing},
    light::{Beam, Night, Rgb, VeilSort, luma},
};
use glam::Vec3;

/// Of a ray of which less is left nothing more is asked.
pub(super) const LEAST_THROUGH: f32 = 1e-4;

/// Where a ray of a station meets something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// Index of the thing's name.
    pub owner: u32,
    /// Where.
    pub point: Vec3,
    /// Unit normal towards the light.
    pub normal: Vec3,
    /// Unit vector along the light.
    pub along: Vec3,
    /// Whether it is see-through, and then its index among the veils.
    pub veil: Option<u32>,
    /// Straight-through transmittance of it at this angle.
    pub through: f32,
    /// Reflectance, where it is opaque.
    pub reflectance: Rgb,
    /// Relative doubt of that.
    pub doubt: f32,
}

impl Touch {
    /// Whether it is glass.
    pub(super) fn is_pane(&self, night: &Night) -> bool {
        self.veil.is_some_and(|veil| night.veils[veil as usize].sort == VeilSort::Pane)
    }

    /// Straight-through transmittance of the whole thing: a crown of leaves is met twice.
    pub(super) fn passes(&self, night: &Night) -> f32 {
        let is_crown = |veil: u32| night.veils[veil as usize].sort == VeilSort::Crown;
        if self.veil.is_some_and(is_crown) { self.through * self.through } else { self.through }
    }
}

/// Some of the light of a cell of the raster, and where it lands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// The place in the raster that it leaves by.
    pub uv: [f32; 2],
    /// Index of its cell.
    pub cell: u32,
    /// Whether an edge or a bend of the targets may run through that cell, as one beside it lands otherwise.
    pub edge: bool,
    /// Whether it does not get by way of all its mirrors.
    pub astray: bool,
    /// The picture alone, over the cell, 0 to 1.
    pub picture: f32,
    /// Share of the cell that is figure.
    pub figure: f32,
    /// Share of the raster's light when it is all white.
    pub white: f32,
    /// Where it meets a target.
    pub target: Option<Touch>,
    /// What it meets first that is neither glass nor a target; behind the target where it passes that.
    pub beyond: Option<Touch>,
    /// Light that passes everything before `beyond`, of what the target was sent.
    pub left: f32,
    /// The same of what passes leaves and cloths before the target, or before what ends it; glass counts as clear.
    pub arrives: f32,
}

impl Landing {
    /// Whether none of the figure is in its cell.
    pub fn is_ground(&self) -> bool {
        self.figure == 0.0
    }

    /// Whether its whole cell is black and lands alike.
    pub(super) fn is_plain(&self) -> bool {
        !self.edge && self.is_ground() && self.picture == 0.0
    }

    /// Whether it lands on the same target as another, where that is turned no farther than by this cosine; or both on none.
    pub(super) fn lands_with(&self, other: &Self, turned: f32) -> bool {
        match (self.target, other.target) {
            (Some(one), Some(other)) => one.owner == other.owner && one.normal.dot(other.normal) >= turned,
            (one, other) => one.is_none() && other.is_none(),
        }
    }

    /// Whether it meets the same thing beyond as another.
    pub(super) fn ends_with(&self, other: &Self) -> bool {
        let beyond = |landing: &Self| landing.beyond.map(|touch| touch.owner);
        beyond(self) == beyond(other)
    }
}

/// Width that a point of the raster stands for at a depth, m: half of a cell, as light is read between texels of that size. What lies
/// beside or behind a figure is read at this fineness.
pub fn fineness(beam: &Beam, depth: f32) -> f32 {
    0.5 * beam.lens.w1 * depth / RASTER.0 as f32
}

/// Solid angle that a cell of the raster has for an eye where it lands, sr.
pub(super) fn open(beam: &Beam, eye: Vec3, touch: &Touch) -> f64 {
    let way = touch.point - eye;
    let area = beam.patch(touch.point, touch.normal, RASTER.0 * RASTER.1);
    let squared = way.length_squared().max(1e-4);
    f64::from(area * touch.normal.dot(way.normalize_or_zero()).abs() / squared)
}

/// The same light with where it lands. What misses a mirror of its way lands on no target.
pub(super) fn landed(night: &Night, beam: &Beam, meant: &Meant, mut landing: Landing) -> Landing {
    (landing.target, landing.beyond, landing.left, landing.arrives) = (None, None, 0.0, 1.0);
    let thrown = thrown_by(night, beam, landing.uv);
    landing.astray = thrown.relays.len() < beam.relays.len();
    let meant = if landing.astray { &Meant::nothing() } else { meant };
    if let Some((from, along)) = leave(night, thrown, landing.uv) {
        land(night, &mut landing, Sight::endless(from, along), meant);
    }
    landing
}

/// The beam of the same station that a ray of the raster is part of: of the longest chain of mirrors that it meets.
pub(super) fn thrown_by<'a>(night: &'a Night, beam: &'a Beam, uv: [f32; 2]) -> &'a Beam {
    if beam.relays.is_empty() || leave(night, beam, uv).is_some() {
        return beam;
    }
    // They stand in the order of their mirrors.
    let shorter = |other: &&Beam| other.station == beam.station && other.relays.len() < beam.relays.len();
    night.beams.iter().rev().filter(shorter).find(|other| leave(night, other, uv).is_some()).unwrap_or(beam)
}

impl Landing {
    /// The beam that sent it, of those of one station.
    pub(super) fn sent_by<'a>(&self, night: &'a Night, beam: &'a Beam) -> &'a Beam {
        if self.astray { thrown_by(night, beam, self.uv) } else { beam }
    }
}

/// Where a ray of the raster sets out after the last mirror, and its unit direction; `None` where it misses a mirror.
pub fn leave(night: &Night, beam: &Beam, uv: [f32; 2]) -> Option<(Vec3, Vec3)> {
    let along = beam.lens.direction(uv[0], uv[1]).normalize_or_zero();
    let Some(last) = beam.relays.first() else { return Some((beam.lens.at, along)) };
    let far = beam.lens.at + 1e3 * along;
    let mirror = &night.veils[last.veil as usize];
    let Outline::Flat(quad) = &mirror.outline else { return None };
    let (t, _) = crossing::quad(quad, beam.lens.at, far - beam.lens.at)?;
    let on = beam.lens.at + t * (far - beam.lens.at);
    let start = on + 2e-3 * along;
    // The rest of the chain is judged by the very function that lights points.
    (luma(beam.transmittance(night, start, along)) > 0.0).then_some((start, along))
}

/// Where a ray of the raster meets what is meant; `None` where it misses them, or gets no farther than something before.
pub(super) fn touch_on(night: &Night, beam: &Beam, uv: [f32; 2], meant: &Meant) -> Option<Touch> {
    let (from, along) = leave(night, beam, uv)?;
    let mut through = 1.0;
    for touch in night.touches(Sight::endless(from, along)) {
        if meant.takes(&touch) {
            return Some(touch);
        }
        through *= touch.through;
        if through < LEAST_THROUGH {
            return None;
        }
    }
    None
}

fn land(night: &Night, landing: &mut Landing, sight: Sight, meant: &Meant) {
    let (mut through, mut arrives) = (1.0, 1.0);
    for touch in night.touches(sight) {
        let is_target = meant.takes(&touch);
        if landing.target.is_none() && is_target {
            // What stood in the way before the target let this light pass: it has not landed there.
            (landing.target, landing.beyond, landing.arrives) = (Some(touch), None, arrives);
        } else if !is_target && !touch.is_pane(night) {
            arrives *= if touch.veil.is_some() { touch.through } else { 1.0 };
            if landing.beyond.is_none() {
                (landing.beyond, landing.left) = (Some(touch), through);
            }
            // Before its target a ray goes on through cloth, after it the first thing counts.
            if landing.target.is_some() || meant.is_nothing() || touch.veil.is_none() {
                break;
            }
        }
        through *= touch.through;
        if through < LEAST_THROUGH {
            break;
        }
    }
    if landing.beyond.is_none() {
        landing.left = through;
    }
    if landing.target.is_none() {
        landing.arrives = arrives;
    }
}

impl Night {
    /// Everything a ray of light meets, in order, as far as it gets: see-through things, and the opaque one that ends it.
    pub fn touches(&self, sight: Sight) -> Vec<Touch> {
        let solid = self.nearest_solid(sight);
        let reach = solid.map_or(f32::INFINITY, |hit| hit.t);
        let mut list: Vec<(f32, Touch)> = Vec::new();
        self.veil_tree.each(Sight { reach, ..sight }, |id| {
            let veil = &self.veils[id as usize];
            for t in crossing::outline(&veil.outline, sight.origin, sight.direction) {
                if t > 0.0 && t < reach {
                    let point = sight.at(t);
                    let normal = crossing::outline_normal(&veil.outline, point);
                    let steep = normal.dot(sight.direction);
                    let through = match veil.sort {
                        VeilSort::Mirror => 0.0,
                        _ => luma(self.optics[veil.optic as usize].sheet.through.sample(steep.abs())),
                    };
                    let normal = if steep > 0.0 { -normal } else { normal };
                    let along = sight.direction;
                    let (owner, reflectance) = (veil.owner, Rgb::ZERO);
                    let veil = Some(id);
                    list.push((t, Touch { owner, point, normal, along, veil, through, reflectance, doubt: 0.0 }));
                }
            }
        });
        if let Some(hit) = solid {
            let solid = self.solid(hit.solid);
            let normal = if hit.normal.dot(sight.direction) > 0.0 { -hit.normal } else { hit.normal };
            let touch = Touch {
                owner: solid.owner,
                point: sight.at(hit.t),
                normal,
                along: sight.direction,
                veil: None,
                through: 0.0,
                reflectance: solid.reflectance,
                doubt: solid.doubt,
            };
            list.push((hit.t, touch));
        }
        list.sort_by(|a, b| a.0.total_cmp(&b.0));
        list.into_iter().map(|(_, touch)| touch).collect()
    }
}
