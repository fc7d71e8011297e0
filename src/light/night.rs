//! A yard at night, ready to be asked about light.

use super::{
    Beam, Glow, LightPoint, Moonlight, Optic, Relay, Rgb, Source, VeilLight, VeilSort,
    beam::evenness,
    bounds,
    lens::{Lens, Stand, mirror_point, picture_map},
    matter::{self, End, MatterFault},
    sky_grid::SkyGrid,
};
use crate::{
    frames::Frame,
    geometry::{self, Built, Chamber, Outline, Place, Quad, Sight, Tree, VeilKind, crossing},
    scene::{Aim, Band, Catalogue, GroundState, Station, Yard},
};
use glam::{Vec2, Vec3};
use rayon::prelude::*;
use std::{collections::BTreeMap, sync::Arc};

/// An opaque triangle.
#[derive(Clone, Debug)]
pub struct SolidLight {
    /// Its corners.
    pub corners: crossing::Corners,
    /// Diffuse reflectance.
    pub reflectance: Rgb,
    /// Relative doubt of it.
    pub doubt: f32,
    /// Index of its name.
    pub owner: u32,
    /// Share of the sky's light at each corner, in steps of 1/65535 so that the shader has the very same.
    pub sky: [u16; 3],
}

impl SolidLight {
    /// Share of the sky's light at a point with these weights of the corners.
    #[inline]
    pub fn sky_at(&self, weights: [f32; 3]) -> f32 {
        let share = |i: usize| f32::from(self.sky[i]) / 65535.0 * weights[i];
        share(0) + share(1) + share(2)
    }
}

/// Where a ray meets something opaque.
#[derive(Clone, Copy, Debug)]
pub struct Hit {
    /// Index of the triangle.
    pub solid: u32,
    /// Distance in units of the ray's direction.
    pub t: f32,
    /// Weights of the triangle's corners.
    pub weights: [f32; 3],
    /// Unit normal outwards.
    pub normal: Vec3,
}

/// Corners alike for the sky: within half a millimetre of each other, and of sides within 4° of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct SkyKey([i32; 3], [i8; 3]);

impl SkyKey {
    fn of(corner: Vec3, normal: Vec3) -> Self {
        Self((corner * 2048.0).round().as_ivec3().to_array(), (normal * 16.0).round().as_i8vec3().to_array())
    }
}

/// Why a yard cannot be lit.
#[derive(Clone, Debug, thiserror::Error)]
pub enum NightFault {
    /// A fabric whose values no law allows.
    #[error(transparent)]
    Matter(#[from] MatterFault),
    /// A name that nothing bears.
    #[error("{user} names “{name}”, which is in neither the yard nor the catalogue")]
    Unknown {
        /// What names it.
        user: String,
        /// The name.
        name: String,
    },
}

/// A yard at night: surfaces, ray trees, tables and lights. Immutable but for a station that is moved and the sky that
/// darkens.
#[derive(Clone)]
pub struct Night {
    /// Names of the things.
    pub names: Vec<String>,
    /// Where the named things are.
    pub places: Vec<Place>,
    /// Opaque triangles in the order of their tree.
    pub solids: Vec<SolidLight>,
    /// Tree over the opaque triangles.
    pub solid_tree: Tree,
    /// See-through things and mirrors; a yard's mirrors stand last, in their own order.
    pub veils: Vec<VeilLight>,
    /// Tree over the see-through things and mirrors.
    pub veil_tree: Tree,
    /// Angular tables that the veils share.
    pub optics: Vec<Optic>,
    /// Beams of all stations that are on.
    pub beams: Vec<Beam>,
    /// Lamps as points.
    pub lamps: Vec<LightPoint>,
    /// Lamps as bright bodies.
    pub glows: Vec<Glow>,
    /// The moon, where it is up.
    pub moon: Option<Moonlight>,
    /// Illuminance of open level ground by the sky, lx per channel.
    pub sky_lx: Rgb,
    /// Everything that sends light; the stations first, in the yard's order.
    pub sources: Vec<Source>,
    /// Index of the sky among the sources.
    pub sky_source: u32,
    first_mirror: u32,
}

/// Tint of a night sky against neutral white: a little blue. From memory of twilight spectra; luminance 1.
const SKY_TINT: Rgb = Rgb::new(0.86, 1.0, 1.414);
/// Tint of moonlight: sunlight off grey rock, neutral here.
const MOON_TINT: Rgb = Rgb::ONE;
/// Reflectance of settled snow (IES Lighting Handbook, "snow, old" 0.64, "new" 0.74; from memory).
const SNOW: f32 = 0.7;

impl Night {
    /// Builds the night of a yard. `pictures` holds the frame of every station, by the picture's name.
    pub fn build(
        yard: &Yard,
        catalogue: &Catalogue,
        pictures: &BTreeMap<String, Arc<Frame>>,
    ) -> Result<Self, NightFault> {
        let built = geometry::build(yard);
        let mut night = Self::bare(yard);
        night.raise_solids(yard, catalogue, &built)?;
        night.hang_veils(yard, catalogue, &built)?;
        (night.names, night.places) = (built.names, built.places);
        night.light_lamps(yard, catalogue, &built.chambers)?;
        night.spread_sky();
        for station in 0..yard.stations.len() {
            night.set_station(yard, catalogue, pictures, station)?;
        }
        Ok(night)
    }

    fn bare(yard: &Yard) -> Self {
        let stations =
            yard.stations.iter().enumerate().map(|(i, s)| Source::Station(i as u32, s.name.0.clone())).collect();
        Self {
            names: Vec::new(),
            places: Vec::new(),
            solids: Vec::new(),
            solid_tree: Tree::over(&[]),
            veils: Vec::new(),
            veil_tree: Tree::over(&[]),
            optics: Vec::new(),
            beams: Vec::new(),
            lamps: Vec::new(),
            glows: Vec::new(),
            moon: None,
            sky_lx: sky(yard.evening.sky_lx as f32),
            sources: stations,
            sky_source: 0,
            first_mirror: 0,
        }
    }

    fn raise_solids(&mut self, yard: &Yard, catalogue: &Catalogue, built: &Built) -> Result<(), NightFault> {
        for solid in &built.solids {
            let (dry, wet, doubt) = match solid.reflectance {
                Some(value) => (Rgb::splat(value), 1.0, 0.2),
                None => {
                    let surface = yard.surface(catalogue, &solid.surface).ok_or_else(|| NightFault::Unknown {
                        user: built.names[solid.owner as usize].clone(),
                        name: solid.surface.clone(),
                    })?;
                    (surface.reflectance.rgb(), surface.wet as f32, surface.doubt as f32)
                }
            };
            for triangle in &solid.mesh.triangles {
                let corners = triangle.map(|i| solid.mesh.points[i as usize]);
                let level = bounds::normal(&corners).y > 0.7 && !solid.indoors;
                let reflectance = match yard.evening.ground {
                    GroundState::Wet if level => wet * dry,
                    GroundState::Snow if level => Rgb::splat(SNOW),
                    _ => dry,
                };
                self.solids.push(SolidLight { corners, reflectance, doubt, owner: solid.owner, sky: [0; 3] });
            }
        }
        let tree = Tree::over(&self.solids.iter().map(|s| bounds::of(&s.corners)).collect::<Vec<_>>());
        self.solids = tree.order().iter().map(|&i| self.solids[i as usize].clone()).collect();
        self.solid_tree = tree.reordered();
        Ok(())
    }

    fn hang_veils(&mut self, yard: &Yard, catalogue: &Catalogue, built: &Built) -> Result<(), NightFault> {
        let mut known: Vec<(VeilKind, u32)> = Vec::new();
        for veil in &built.veils {
            let sort = match veil.kind {
                VeilKind::Cloth(_) => VeilSort::Cloth,
                VeilKind::Film(_) => VeilSort::Film,
                VeilKind::Pane(..) => VeilSort::Pane,
                VeilKind::Crown { .. } => VeilSort::Crown,
            };
            let optic = match known.iter().find(|(kind, _)| *kind == veil.kind) {
                Some((_, optic)) => *optic,
                None => {
                    let [low, typical, high] =
                        [End::Low, End::Typical, End::High].map(|end| self.optic(yard, catalogue, &veil.kind, end));
                    self.optics.push(typical?.between(&low?, &high?));
                    known.push((veil.kind.clone(), self.optics.len() as u32 - 1));
                    self.optics.len() as u32 - 1
                }
            };
            self.veils.push(VeilLight {
                outline: veil.outline,
                sort,
                optic,
                owner: veil.owner,
                mirror: 0.0,
                sky: SkyGrid::Open,
            });
        }
        self.first_mirror = self.veils.len() as u32;
        for (mirror, (owner, quad)) in yard.mirrors.iter().zip(&built.mirrors) {
            self.veils.push(VeilLight {
                outline: Outline::Flat(*quad),
                sort: VeilSort::Mirror,
                optic: 0,
                owner: *owner,
                mirror: mirror.reflectance.0 as f32,
                sky: SkyGrid::Open,
            });
        }
        // A mirror names table 0 without reading it; the shader wants one to be there.
        if self.optics.is_empty() {
            self.optics.push(matter::crown(1.0, Rgb::ZERO));
        }
        self.veil_tree = Tree::over(&self.veils.iter().map(|v| crossing::outline_box(&v.outline)).collect::<Vec<_>>());
        Ok(())
    }

    /// The tables of a see-through thing at one end of its fabric's bands.
    fn optic(&self, yard: &Yard, catalogue: &Catalogue, kind: &VeilKind, end: End) -> Result<Optic, NightFault> {
        Ok(match kind {
            VeilKind::Cloth(i) => matter::cloth(yard, catalogue, &yard.cloths[*i], end)?,
            VeilKind::Film(i) => {
                let name = &yard.films[*i].fabric.0;
                let entry = yard
                    .fabric(catalogue, name)
                    .ok_or_else(|| NightFault::Unknown { user: yard.films[*i].name.0.clone(), name: name.clone() })?;
                matter::fabric(entry, end)?
            }
            VeilKind::Pane(glazing, screen) => matter::pane(yard, catalogue, *glazing, screen.as_deref())?,
            VeilKind::Crown { gap, surface } => {
                let leaves = yard
                    .surface(catalogue, surface)
                    .ok_or_else(|| NightFault::Unknown { user: "a plant".to_owned(), name: surface.clone() })?;
                matter::crown(*gap, leaves.reflectance.rgb())
            }
        })
    }

    fn light_lamps(&mut self, yard: &Yard, catalogue: &Catalogue, chambers: &[Chamber]) -> Result<(), NightFault> {
        super::lamp::light(self, yard, catalogue, chambers)?;
        if let Some(moon) = &yard.evening.moon {
            let (bearing, height) = (moon.bearing_deg.radians(), moon.height_deg.radians());
            let toward = Vec3::new(bearing.sin() * height.cos(), height.sin(), bearing.cos() * height.cos());
            self.moon = Some(Moonlight {
                toward,
                square: (moon.lx as f32 / height.sin()) * MOON_TINT,
                source: self.sources.len() as u32,
            });
            self.sources.push(Source::Moon);
        }
        self.sky_source = self.sources.len() as u32;
        self.sources.push(Source::Sky);
        Ok(())
    }

    /// Asks for every corner and every side how much sky it sees. Corners that share a place and a side share the answer.
    fn spread_sky(&mut self) {
        let night = &*self;
        let mut corners: Vec<(SkyKey, u32)> = (0..night.solids.len() as u32 * 3)
            .into_par_iter()
            .map(|i| {
                let corners = &night.solids[i as usize / 3].corners;
                (SkyKey::of(corners[i as usize % 3], bounds::normal(corners)), i)
            })
            .collect();
        corners.par_sort_unstable();
        let groups: Vec<&[(SkyKey, u32)]> = corners.chunk_by(|a, b| a.0 == b.0).collect();
        let answers: Vec<u16> = groups
            .par_iter()
            .map(|group| {
                let first = group[0].1 as usize;
                let corners = &night.solids[first / 3].corners;
                // A little inwards: a corner itself lies on the edge of its neighbours.
                let middle = (corners[0] + corners[1] + corners[2]) / 3.0;
                let point = corners[first % 3].lerp(middle, 0.02);
                let share = super::luma(night.sky_share(point, bounds::normal(corners)));
                (share.clamp(0.0, 1.0) * 65535.0).round() as u16
            })
            .collect();
        let grids: Vec<SkyGrid> = self.veils.par_iter().map(|veil| SkyGrid::of(night, &veil.outline)).collect();
        for (group, answer) in groups.iter().zip(answers) {
            for (_, corner) in *group {
                self.solids[*corner as usize / 3].sky[*corner as usize % 3] = answer;
            }
        }
        for (veil, grid) in self.veils.iter_mut().zip(grids) {
            veil.sky = grid;
        }
    }

    /// Places one station anew, as the yard now says; nothing else changes.
    pub fn set_station(
        &mut self,
        yard: &Yard,
        catalogue: &Catalogue,
        pictures: &BTreeMap<String, Arc<Frame>>,
        index: usize,
    ) -> Result<(), NightFault> {
        self.beams.retain(|beam| beam.station != index as u32);
        let station = &yard.stations[index];
        if station.on {
            let beams = self.station_beams(yard, catalogue, pictures, index as u32, station)?;
            self.beams.extend(beams);
            // Sums keep one order whatever was moved last.
            self.beams.sort_by_key(|beam| (beam.station, beam.relays.len()));
        }
        Ok(())
    }

    fn station_beams(
        &self,
        yard: &Yard,
        catalogue: &Catalogue,
        pictures: &BTreeMap<String, Arc<Frame>>,
        index: u32,
        station: &Station,
    ) -> Result<Vec<Beam>, NightFault> {
        let unknown = |name: &str| NightFault::Unknown { user: station.name.0.clone(), name: name.to_owned() };
        let class = yard.projector(catalogue, &station.projector.0).ok_or_else(|| unknown(&station.projector.0))?;
        let aspect = class.pixels.0 as f32 / class.pixels.1.max(1) as f32;
        let w1 = 1.0 / station.throw_ratio.unwrap_or(class.throw_ratio).0 as f32;
        let h1 = w1 / aspect;
        let shift = station.shift.unwrap_or(class.shift).0;
        let mirrors = station
            .mirrors
            .iter()
            .take(2)
            .map(|name| {
                let at = yard.mirrors.iter().position(|m| m.name.0 == name.0).ok_or_else(|| unknown(&name.0))?;
                let veil = self.first_mirror + at as u32;
                let Outline::Flat(quad) = self.veils[veil as usize].outline else { return Err(unknown(&name.0)) };
                Ok((veil, quad))
            })
            .collect::<Result<Vec<(u32, Quad)>, _>>()?;
        let mut aim = self.aim(&station.aim).ok_or_else(|| unknown(&station.name.0))?;
        for (_, quad) in mirrors.iter().rev() {
            aim = mirror_point(aim, quad.corner, quad.normal());
        }
        let stand = Stand { at: station.at.vec3(), aim, pose: station.pose, roll: station.roll_deg.radians() };
        let lens = Lens::aimed(stand, w1, h1, Vec2::new(shift[0] as f32, shift[1] as f32));
        let depth = (aim - lens.at).dot(lens.forward).max(0.05);
        let frame = pictures.get(&station.content.picture).ok_or_else(|| unknown(&station.content.picture))?;
        let [from, to] = [station.content.from.0, station.content.to.0];
        let covered = |i: usize| (to[i].min(1.0) - from[i].max(0.0)).max(0.0) as f32 / (to[i] - from[i]) as f32;
        let box_share = ((to[0] - from[0]) * (to[1] - from[1])) as f32 * covered(0) * covered(1);
        let black = black_level(class.on_off_contrast.0, class.checker_contrast.0, frame.mean * box_share);
        let (even, droop) = evenness(class.corner.typical as f32);
        let map = picture_map(station.pose, &station.content);
        let mut direct = Beam {
            station: index,
            lens,
            relays: Vec::new(),
            power: lumens(yard, catalogue, station).map_or(0.0, |band| band.typical) as f32 / (w1 * h1),
            black,
            even,
            droop,
            aperture: class.aperture.f32(),
            focus: station.focus.as_ref().map_or(depth, |f| f.f32()).max(class.nearest.f32()),
            grain: 1.0,
            frame: Arc::clone(frame),
            map,
        };
        direct.grain = (direct.texels_across() / class.pixels.0 as f32).max(1.0);
        let mut beams = vec![direct];
        for (veil, quad) in mirrors {
            let mut next = beams[beams.len() - 1].clone();
            next.relays.insert(0, Relay { veil, lens: next.lens.at });
            next.lens = next.lens.mirrored(quad.corner, quad.normal());
            next.power *= self.veils[veil as usize].mirror;
            beams.push(next);
        }
        Ok(beams)
    }

    /// Sets the illuminance of open level ground by the sky, lx.
    pub fn set_sky(&mut self, lx: f32) {
        self.sky_lx = sky(lx);
    }

    /// Where an aim points.
    pub fn aim(&self, aim: &Aim) -> Option<Vec3> {
        match aim {
            Aim::At(point) => Some(point.vec3()),
            Aim::Thing(name) => self.place(&name.0).map(|place| place.middle),
        }
    }

    /// The place of a named thing.
    pub fn place(&self, name: &str) -> Option<Place> {
        self.names.iter().position(|n| n == name).map(|i| self.places[i])
    }

    /// The nearest opaque thing on a ray.
    #[inline]
    pub fn nearest_solid(&self, sight: Sight) -> Option<Hit> {
        let shear = crossing::Shear::of(sight.origin, sight.direction);
        let meet = |id: u32| shear.triangle(&self.solids[id as usize].corners);
        let (solid, _) = self.solid_tree.nearest(sight, |id| meet(id).map_or(f32::INFINITY, |(t, _)| t))?;
        let (t, weights) = meet(solid)?;
        Some(Hit { solid, t, weights, normal: bounds::normal(&self.solids[solid as usize].corners) })
    }
}

fn sky(lx: f32) -> Rgb {
    lx * SKY_TINT / super::luma(SKY_TINT)
}

/// What a black pixel gives over white: `k + g m` with `k = 1 / on-off contrast` and `g = 2 (1 / checkerboard − k)`, as
/// half of a checkerboard is white and stray light grows with the mean `m` of the picture.
fn black_level(on_off: f64, checker: f64, mean: f32) -> f32 {
    let k = 1.0 / on_off;
    let g = (2.0 * (1.0 / checker - k)).max(0.0);
    (k + g * f64::from(mean)).clamp(0.0, 1.0) as f32
}

/// Real white lumens that leave a station's box, with their band: by its class or its own word, less what age and the
/// window of the box take.
pub fn lumens(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<Band> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let new = station.lumens.unwrap_or(class.lumens);
    let aged = |left: f64| left.powf(station.hours / 1000.0) * station.box_window.0;
    let left = class.left_after_1000_h;
    Some(Band {
        low: new.low * aged(left.low),
        typical: new.typical * aged(left.typical),
        high: new.high * aged(left.high),
    })
}
