//! Where a station's picture lands: its raster followed, point by point, from the lens.

use super::{
    drawn::{Drawing, Drawn},
    lattice::{self, RASTER},
    meant::Meant,
};
use crate::{
    geometry::{Outline, Sight, crossing},
    light::{Beam, Night, Rgb, VeilSort, luma},
};
use glam::Vec3;
use rayon::prelude::*;

/// Of a ray of which less is left nothing more is asked.
const LEAST_THROUGH: f32 = 1e-4;

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
    /// Straight-through transmittance of the whole thing: a crown of leaves is met twice.
    pub(super) fn passes(&self, night: &Night) -> f32 {
        let is_crown = |veil: u32| night.veils[veil as usize].sort == VeilSort::Crown;
        if self.veil.is_some_and(is_crown) { self.through * self.through } else { self.through }
    }
}

/// One cell of a raster.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// Its middle in the raster.
    pub uv: [f32; 2],
    /// What is sent there, as a share of white: black level and picture.
    pub content: f32,
    /// The picture alone, 0 to 1.
    pub picture: f32,
    /// Share of the raster's light when it is all white.
    pub white: f32,
    /// What the figure has of the cell; `None` where it has nothing.
    pub figure: Option<Drawn>,
    /// Where its middle meets a target.
    pub target: Option<Touch>,
    /// What it meets first that is neither glass nor a target; behind the target where it passes that.
    pub beyond: Option<Touch>,
    /// Light that passes everything before `beyond`, of what the target was sent.
    pub left: f32,
}

impl Landing {
    /// The figure's light that is sent there, in the raster's measure.
    pub fn figure_light(&self) -> f32 {
        self.figure.map_or(0.0, |drawn| self.white * drawn.share * luma(drawn.light))
    }
}

/// Width that a point of the raster stands for at a depth, m: half of a cell, as light is read between texels of that size. Light that
/// is no figure's is read at this fineness.
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

/// Follows a station's raster. `beam` is the one that has met all of the station's mirrors.
pub fn follow(night: &Night, beam: &Beam, targets: &[u32]) -> Vec<Landing> {
    let (columns, rows) = RASTER;
    let level = beam.level(fineness(beam, 1.0), 1.0);
    let (meant, drawing) = (Meant::of(night, beam, targets), Drawing::of(beam));
    let points = (0..columns * rows).into_par_iter().map(|i| {
        let uv = lattice::middle(i);
        let picture = luma(beam.picture(uv[0], uv[1], level));
        let dark = Landing {
            uv,
            content: beam.black + (1.0 - beam.black) * picture,
            picture,
            white: beam.evenness(uv[0], uv[1]) / (columns * rows) as f32,
            figure: None,
            target: None,
            beyond: None,
            left: 0.0,
        };
        let mut landing = landed(night, beam, &meant, dark);
        let depth = landing.target.map_or(beam.focus, |touch| beam.depth(touch.point));
        landing.figure = drawing.drawn(i, beam.level(beam.blur_at(depth), depth));
        landing
    });
    points.collect()
}

/// Where a cell's light lands: as its middle does, and where the cells beside land on something else, part by part.
pub(super) fn parts(night: &Night, beam: &Beam, targets: &[u32], landings: &[Landing]) -> Vec<Landing> {
    let meant = Meant::of(night, beam, targets);
    let lands_on = |landing: &Landing| [landing.target, landing.beyond].map(|touch| touch.map(|touch| touch.owner));
    let part = |cell: usize| -> Vec<Landing> {
        let here = landings[cell];
        if lattice::beside(cell).all(|other| lands_on(&landings[other]) == lands_on(&here)) {
            return vec![here];
        }
        let dark =
            Landing { white: here.white / lattice::POINTS as f32, target: None, beyond: None, left: 0.0, ..here };
        lattice::points(cell).map(|uv| landed(night, beam, &meant, Landing { uv, ..dark })).collect()
    };
    (0..landings.len()).into_par_iter().flat_map_iter(part).collect()
}

/// The same light with where it lands.
fn landed(night: &Night, beam: &Beam, meant: &Meant, mut landing: Landing) -> Landing {
    if let Some((from, along)) = leave(night, beam, landing.uv) {
        land(night, &mut landing, Sight::endless(from, along), meant);
    }
    landing
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
    let mut through = 1.0;
    for touch in night.touches(sight) {
        let is_target = meant.takes(&touch);
        if landing.target.is_none() && is_target {
            // What stood in the way before the target let this light pass: it has not landed there.
            (landing.target, landing.beyond) = (Some(touch), None);
        } else if !is_target && touch.veil.is_none_or(|v| night.veils[v as usize].sort != VeilSort::Pane) {
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
                    list.push((
                        t,
                        Touch { owner, point, normal, along, veil: Some(id), through, reflectance, doubt: 0.0 },
                    ));
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
