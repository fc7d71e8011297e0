//! Lamps as points of light.

use super::{Glow, Night, NightFault, Rgb, Source, luma};
use crate::{
    frames::Shelf,
    geometry::{Outline, Quad},
    optics::{self, Spread},
    scene::{self, Catalogue, Opening, SpreadKind, Yard},
};
use glam::Vec3;
use std::sync::Arc;

/// A point that gives light.
#[derive(Clone, Debug)]
pub struct LightPoint {
    /// Where it is.
    pub at: Vec3,
    /// Unit vector along the axis of its distribution.
    pub axis: Vec3,
    /// What it gives, lm per channel.
    pub lumens: Rgb,
    /// Unit vector square to the axis, from which azimuths of the distribution count.
    pub side: Vec3,
    /// Candela per lumen over the direction.
    pub spread: Arc<Spread>,
    /// Index among the night's sources.
    pub source: u32,
    /// Index of the name of the window or door that it stands behind: a room's lamp.
    pub behind: Option<u32>,
}

impl LightPoint {
    /// Illuminance at `point` of a plane square to the light there, lx, were nothing in the way, and the direction to the
    /// lamp: `E = I / d²`.
    #[inline]
    pub fn square(&self, point: Vec3) -> (Rgb, Vec3) {
        let way = self.at - point;
        let squared = way.length_squared().max(1e-6);
        let toward = way / squared.sqrt();
        (self.lumens * (self.spread.toward(-toward, self.axis, self.side) / squared), toward)
    }
}

/// So many points of light are asked one by one; more stand in a tree. A string of lights has six, a lit window four.
const MANY: usize = 64;

/// Of so many none is asked where it gives less than this, lx: a quarter of starlight, less than an eye can tell on white (threshold
/// 0.0003 cd/m² for a degree against 0.001 cd/m²; Adrian 1989).
const LEAST_OF_MANY: f32 = 5e-4;

/// Boxes out of which a point of light gives less than [`LEAST_OF_MANY`]: `d² = I / E` for its greatest intensity. None where few are
/// asked one by one.
pub(super) fn reaches(lamps: &[LightPoint]) -> Option<Vec<(Vec3, Vec3)>> {
    let reach = |lamp: &LightPoint| {
        let peak = lamp.spread.table.iter().copied().fold(0.0, f32::max);
        let reach = (luma(lamp.lumens) * peak / LEAST_OF_MANY).max(0.0).sqrt();
        (lamp.at - reach, lamp.at + reach)
    };
    (lamps.len() > MANY).then(|| lamps.iter().map(reach).collect())
}

/// Points that a string of lights is lit by, however many bulbs an eye sees.
const STRING_POINTS: u32 = 6;

/// Adds every lamp of the yard that shines, and every room's, to the night: as points of light and as bright bodies.
pub(super) fn light(night: &mut Night, yard: &Yard, catalogue: &Catalogue, shelf: &Shelf) -> Result<(), NightFault> {
    let clock = yard.evening.clock();
    for lamp in yard.lamps.iter().filter(|lamp| lamp.shines(clock) && !yard.is_hidden(&lamp.name.0)) {
        let kind = yard
            .lamp_kind(catalogue, &lamp.kind.0)
            .ok_or_else(|| NightFault::Unknown { user: lamp.name.0.clone(), name: lamp.kind.0.clone() })?;
        let tint = kind.light.rgb();
        let source = night.sources.len() as u32;
        night.sources.push(Source::Lamp(lamp.name.0.clone()));
        let facing = facing(lamp);
        let full = |half_deg: f64| (2.0 * half_deg).to_radians() as f32;
        let right = right(lamp);
        let law = |law, axis| (Arc::new(Spread::new(law)), axis, right);
        let (spread, axis, side) = match &kind.spread {
            SpreadKind::Globe => law(optics::Lamp::Globe, Vec3::NEG_Y),
            SpreadKind::Hooded { half_deg } => law(optics::Lamp::Hood { beam: full(*half_deg) }, Vec3::NEG_Y),
            SpreadKind::Beam { half_deg } => law(optics::Lamp::Flood { beam: full(*half_deg) }, facing),
            SpreadKind::Window => law(optics::Lamp::Lambert, facing),
            SpreadKind::Table { cd_per_klm } => (Arc::new(Spread::table(cd_per_klm)), Vec3::NEG_Y, right),
            SpreadKind::File { path } => {
                // The shelf or the check said why there is none.
                let Some(file) = shelf.lamps.get(path) else { continue };
                let up = facing.cross(right);
                let (axis, side) = if file.hangs { (-up, facing) } else { (facing, up) };
                (Arc::clone(&file.spread), axis, side)
            }
        };
        let given = match &kind.spread {
            SpreadKind::File { path } => shelf.lamps.get(path).map(|file| file.lumens),
            _ => None,
        };
        let own = lamp.lumens.map(|own| own.0).or(kind.lumens.map(|band| band.typical)).or(given);
        let lumens = own.unwrap_or(0.0) as f32 * tint / luma(tint).max(1e-6);
        let at = lamp.at.vec3();
        let mut point = |at: Vec3, share: f32| {
            let spread = Arc::clone(&spread);
            night.lamps.push(LightPoint { at, axis, side, lumens: lumens * share, spread, source, behind: None });
        };
        match (&lamp.to, &lamp.size) {
            (Some(to), _) => {
                let (to, bulbs) = (to.vec3(), lamp.bulbs.0);
                let along = |i: u32, of: u32| at.lerp(to, (i as f32 + 0.5) / of as f32);
                let points = STRING_POINTS.min(bulbs);
                (0..points).for_each(|i| point(along(i, points), 1.0 / points as f32));
                let each = lumens / bulbs as f32;
                let glow = |i| Glow::ball(along(i, bulbs), kind.radius.f32(), each, source);
                night.glows.extend((0..bulbs).map(glow));
            }
            (None, Some((width, height))) => {
                let (width, height) = (width.f32(), height.f32());
                // The middles of its quarters: from one width away on their light is right to a fiftieth.
                for (x, y) in [(-0.25, -0.25), (0.25, -0.25), (-0.25, 0.25), (0.25, 0.25)] {
                    point(at + x * width * right + y * height * Vec3::Y + 0.005 * facing, 0.25);
                }
                let corner = at - 0.5 * (width * right + height * Vec3::Y) + 0.01 * facing;
                let quad = Quad { corner, u: width * right, v: height * Vec3::Y };
                // A Lambertian face of area A: L = Φ / (π A).
                let luminance = lumens / (std::f32::consts::PI * quad.area());
                night.glows.push(Glow { outline: Outline::Flat(quad), luminance, source });
            }
            (None, None) => {
                point(at, 1.0);
                night.glows.push(Glow::ball(at, kind.radius.f32(), lumens, source));
            }
        }
    }
    light_rooms(night, yard);
    Ok(())
}

fn light_rooms(night: &mut Night, yard: &Yard) {
    for chamber in night.chambers.clone() {
        let name = night.names[chamber.owner as usize].clone();
        let openings = yard.houses.iter().flat_map(|h| &h.openings).chain(yard.walls.iter().flat_map(|w| &w.openings));
        let room = openings.filter(|o| o.name().0 == name).map(|opening| match opening {
            Opening::Window(window) => &window.room,
            Opening::Door(door) => &door.room,
        });
        let Some(lamp) = room.filter_map(|room| room.lamp.as_ref()).find(|lamp| lamp.on) else { continue };
        let source = night.sources.len() as u32;
        let called = format!("room behind {name}");
        night.sources.push(Source::Room { opening: name, name: called });
        let at = chamber.lamp();
        let lumens = lamp.lumens.0 as f32 * WARM / luma(WARM);
        let spread = Arc::new(Spread::new(optics::Lamp::Globe));
        let behind = Some(chamber.owner);
        night.lamps.push(LightPoint { at, axis: Vec3::NEG_Y, side: Vec3::Z, lumens, spread, source, behind });
        night.glows.push(Glow::ball(at, 0.08, lumens, source));
    }
}

/// Colour of a room's lamp: warm white, near 2900 K.
const WARM: Rgb = Rgb::new(1.0, 0.72, 0.42);

/// The way a lamp faces: turned about the vertical, tilted downwards.
fn facing(lamp: &scene::Lamp) -> Vec3 {
    let (turn, tilt) = (lamp.turn_deg.radians(), lamp.tilt_deg.radians());
    Vec3::new(turn.sin() * tilt.cos(), -tilt.sin(), turn.cos() * tilt.cos())
}

/// To the right of who stands before a lamp; level, however far it is tilted.
fn right(lamp: &scene::Lamp) -> Vec3 {
    let turn = lamp.turn_deg.radians();
    Vec3::new(turn.cos(), 0.0, -turn.sin())
}
