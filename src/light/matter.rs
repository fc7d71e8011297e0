//! What the see-through things of a yard do with light, compiled once into tables over angle.

use super::{Rgb, SKIN};
use crate::{
    geometry::{Outline, crossing},
    optics::{self, Cloth, Curve, Film, Glazing, Net, Pane, Screen, Sheet},
    scene::{self, Band, Catalogue, Fabric, FabricKind, Yard},
};
use glam::Vec3;

/// All angular tables of one see-through material; the same rows are uploaded to the shader.
#[derive(Clone, Debug, PartialEq)]
pub struct Optic {
    /// Diffuse reflection, diffuse transmission and the way straight through.
    pub sheet: Sheet,
    /// Specular reflection of the front and the back.
    pub mirror: [Curve; 2],
    /// Rear film: what arrives at an angle, over the gain.
    pub kappa: Curve,
    /// Rear film: gain over the sine of half the bend angle; empty for anything else.
    pub gain: Vec<f32>,
    /// Hemispherical means of the diffuse transmission from the front and from the back, for light of the dome.
    pub diffuse_mean: [Rgb; 2],
    /// Whether it scatters at all; bare glass does not.
    pub scatters: bool,
    /// What its fabric may answer, square on: for the front and the back what is thrown back and what goes on scattered,
    /// each at the low end of the catalogue's bands, typical, and at the high end.
    pub answers: [[[f32; 3]; 2]; 2],
    /// Share that passes straight through square on: at the low end, typical, at the high end.
    pub straight: [f32; 3],
}

impl Optic {
    /// What it answers square on: for the front and the back what is thrown back and what goes on scattered.
    pub fn answer(&self) -> [[f32; 2]; 2] {
        let film = self.gain.first().map(|gain| gain * super::luma(self.kappa.sample(1.0)));
        [0, 1].map(|face| {
            let face = &self.sheet.faces[face];
            [super::luma(face.reflect.sample(1.0)), film.unwrap_or_else(|| super::luma(face.diffuse.sample(1.0)))]
        })
    }

    /// The same tables, told what the fabric answers at the ends of its bands.
    pub fn between(mut self, low: &Self, high: &Self) -> Self {
        let [a, b, c] = [low, &self, high].map(|optic| optic.straight[1]);
        self.straight = [a.min(b).min(c), b, a.max(b).max(c)];
        let (low, typical, high) = (low.answer(), self.answer(), high.answer());
        // More of a yarn may let less through: the ends are sorted.
        self.answers = [0, 1].map(|face| {
            [0, 1].map(|way| {
                let (a, b, c) = (low[face][way], typical[face][way], high[face][way]);
                [a.min(b).min(c), b, a.max(b).max(c)]
            })
        });
        self
    }
}

/// Why a material cannot be lit.
#[derive(Clone, Debug, thiserror::Error)]
#[error("fabric “{name}”: {reason}")]
pub struct MatterFault {
    /// Name of the fabric in the catalogue or the yard.
    pub name: String,
    /// What is wrong with its values.
    pub reason: String,
}

/// What a see-through thing is to the light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VeilSort {
    /// Scatters and lets through.
    Cloth,
    /// Scatters along the way of the light.
    Film,
    /// Lets through and mirrors.
    Pane,
    /// A shell of leaves.
    Crown,
    /// Lets nothing through; throws back on its front, black on its back.
    Mirror,
}

/// A see-through thing, or a mirror.
#[derive(Clone, Debug)]
pub struct VeilLight {
    /// Where it is.
    pub outline: Outline,
    /// What it is.
    pub sort: VeilSort,
    /// Index of its tables; for a mirror unused.
    pub optic: u32,
    /// Index of its name.
    pub owner: u32,
    /// Reflectance of a mirror.
    pub mirror: f32,
}

impl VeilLight {
    /// Where the straight way between two points meets this mirror, both on its silvered side or one seen through it:
    /// `from` must stand before it and `to`, the mirrored lens, behind.
    pub fn facing_point(&self, from: Vec3, to: Vec3) -> Option<Vec3> {
        let Outline::Flat(quad) = &self.outline else { return None };
        if (from - quad.corner).dot(quad.u.cross(quad.v)) <= 0.0 {
            return None;
        }
        let (t, _) = crossing::quad(quad, from, to - from)?;
        (t > 0.0 && t < 1.0).then(|| from + t * (to - from))
    }

    /// Whether a point lies behind this mirror's silvered side.
    pub fn behind(&self, point: Vec3) -> bool {
        match &self.outline {
            Outline::Flat(quad) => (point - quad.corner).dot(quad.u.cross(quad.v)) <= SKIN * quad.area(),
            _ => true,
        }
    }
}

/// A value of the catalogue, which is photometric, in the colour of its tint.
fn tinted(value: f64, tint: Rgb) -> Rgb {
    value as f32 * tint / super::luma(tint).max(1e-6)
}

/// Which end of their bands the values are taken from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum End {
    /// Least light.
    Low,
    /// Typical.
    #[default]
    Typical,
    /// Most light.
    High,
}

impl End {
    /// The value of a band at this end.
    pub fn of(self, band: &Band) -> f64 {
        match self {
            Self::Low => band.low,
            Self::Typical => band.typical,
            Self::High => band.high,
        }
    }
}

fn plain(sheet: Sheet) -> Optic {
    let none = Curve::constant(Rgb::ZERO);
    let diffuse_mean = [sheet.faces[0].diffuse.mean(), sheet.faces[1].diffuse.mean()];
    let scatters = sheet.faces.iter().any(|face| face.reflect != none || face.diffuse != none);
    let straight = [super::luma(sheet.through.sample(1.0)); 3];
    Optic {
        sheet,
        mirror: [none.clone(), none.clone()],
        kappa: none,
        gain: Vec::new(),
        diffuse_mean,
        scatters,
        answers: [[[1.0; 3]; 2]; 2],
        straight,
    }
}

/// The tables of nothing at all.
pub fn clear() -> Optic {
    plain(Sheet::clear())
}

/// The tables of one fabric of the catalogue.
pub fn fabric(entry: &Fabric, end: End) -> Result<Optic, MatterFault> {
    let fault = |reason: String| MatterFault { name: entry.name.0.clone(), reason };
    let tint = entry.tint.rgb();
    Ok(match &entry.kind {
        FabricKind::Net { thread, reflect, diffuse } => plain(
            Net {
                ratio: end.of(thread) as f32,
                reflect: tinted(end.of(reflect), tint),
                transmit: tinted(end.of(diffuse), tint),
            }
            .sheet()
            .map_err(|e| fault(e.to_string()))?,
        ),
        FabricKind::Cloth { through, diffuse, reflect } => plain(
            Cloth {
                through: Rgb::splat(end.of(through) as f32),
                diffuse: tinted(end.of(diffuse), tint),
                reflect: tinted(end.of(reflect), tint),
            }
            .sheet()
            .map_err(|e| fault(e.to_string()))?,
        ),
        FabricKind::Film { gain, half_gain_deg, through, reflect } => {
            let film = Film::from_gain(
                end.of(gain) as f32,
                half_gain_deg.0 as f32,
                tinted(end.of(reflect), tint),
                Rgb::splat(end.of(through) as f32),
            )
            .map_err(|e| fault(e.to_string()))?;
            Optic { kappa: film.kappa, gain: film.gain, ..plain(film.sheet) }
        }
    })
}

/// What a soaked fabric still scatters back, over what it does dry. Water fills the gaps between fibres, so that less light turns back at
/// them; wet cotton and wet stone look about so much darker. From memory, no source.
const SOAKED_BACK: f32 = 0.6;

/// How much of the rest goes straight on; what is left of it stays in the water film or the yarn. Invented: only that wet cloth shows what is
/// behind it is common knowledge.
const SOAKED_ON: f32 = 0.6;

/// A fabric soaked with water. Straight on goes a part of what is no longer thrown back, of the face that throws back less, so that both ways
/// through stay alike and no more light leaves than came.
fn soaked(dry: &Sheet) -> Sheet {
    let dimmed = |curve: &Curve| Curve { at: curve.at.iter().map(|share| SOAKED_BACK * share).collect() };
    let [front, back] = &dry.faces;
    let gained = |step: usize| SOAKED_ON * (1.0 - SOAKED_BACK) * front.reflect.at[step].min(back.reflect.at[step]);
    let through = dry.through.at.iter().enumerate().map(|(step, share)| share + gained(step)).collect();
    Sheet {
        scaled: dry.scaled,
        ..Sheet::new(
            dimmed(&front.reflect),
            dimmed(&back.reflect),
            front.diffuse.clone(),
            back.diffuse.clone(),
            Curve { at: through },
        )
    }
}

/// The tables of a hanging cloth with its layers and fullness.
pub fn cloth(yard: &Yard, catalogue: &Catalogue, cloth: &scene::Cloth, end: End) -> Result<Optic, MatterFault> {
    let mut layers = Vec::new();
    for name in std::iter::once(&cloth.fabric).chain(&cloth.behind) {
        let entry = yard.fabric(catalogue, &name.0).ok_or_else(|| unknown(&name.0))?;
        let sheet = fabric(entry, end)?.sheet;
        layers.push(if yard.evening.soaked { soaked(&sheet) } else { sheet });
    }
    let stacked = match layers.as_slice() {
        [single] => single.clone(),
        several => optics::stack(&several.iter().collect::<Vec<_>>()),
    };
    let fullness = cloth.fullness.0 as f32;
    Ok(plain(if fullness > 1.0 { optics::gathered(&stacked, fullness) } else { stacked }))
}

/// The tables of a glazing unit, with an insect screen from the catalogue where it has one.
pub fn pane(
    yard: &Yard,
    catalogue: &Catalogue,
    glazing: scene::Glazing,
    screen: Option<&str>,
) -> Result<Optic, MatterFault> {
    let screen = match screen {
        None => None,
        Some(name) => {
            let entry = yard.fabric(catalogue, name).ok_or_else(|| unknown(name))?;
            let FabricKind::Net { thread, reflect, .. } = &entry.kind else {
                return Err(MatterFault { name: name.to_owned(), reason: "an insect screen must be a Net".to_owned() });
            };
            Some(Screen { ratio: thread.typical as f32, reflect: tinted(reflect.typical, entry.tint.rgb()) })
        }
    };
    let panes = match glazing {
        scene::Glazing::Unglazed => 0,
        scene::Glazing::Single => 1,
        scene::Glazing::Double => 2,
    };
    let Pane { sheet, mirror } = Glazing { screen, ..Glazing::clear_float(panes) }
        .pane()
        .map_err(|e| MatterFault { name: "glazing".to_owned(), reason: e.to_string() })?;
    Ok(Optic { mirror, ..plain(sheet) })
}

/// The tables of one shell of a crown: √gap straight through, the rest thrown back by the leaves or lost in them.
pub fn crown(gap: f32, leaves: Rgb) -> Optic {
    let through = gap.sqrt();
    let back = Curve::constant((1.0 - through) * leaves);
    let none = Curve::constant(Rgb::ZERO);
    plain(Sheet::new(back.clone(), back, none.clone(), none, Curve::constant(Rgb::splat(through))))
}

fn unknown(name: &str) -> MatterFault {
    MatterFault { name: name.to_owned(), reason: "is in neither the yard nor the catalogue".to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn soaked_cloth_throws_back_less_lets_more_straight_on_and_makes_no_light() {
        let catalogue = Catalogue::builtin();
        let mut tried = 0;
        for entry in catalogue.fabrics.iter().filter(|entry| !matches!(entry.kind, FabricKind::Film { .. })) {
            for end in [End::Low, End::Typical, End::High] {
                let Ok(Optic { sheet: dry, .. }) = fabric(entry, end) else { continue };
                let wet = soaked(&dry);
                assert!(wet.energy() <= dry.energy().min(1.0) + 1e-6, "{}", entry.name.0);
                let square = |curve: &Curve| crate::light::luma(curve.sample(1.0));
                for (wet, dry) in wet.faces.iter().zip(&dry.faces) {
                    assert!(square(&wet.reflect) < square(&dry.reflect) && wet.diffuse == dry.diffuse);
                }
                assert!(square(&wet.through) > square(&dry.through));
                tried += 1;
            }
        }
        assert!(tried >= 20, "{tried}");
    }

    #[test]
    fn a_tint_colours_a_value_and_leaves_it_as_bright() {
        let tint = Rgb::new(1.0, 0.93, 0.78);
        let value = tinted(0.4, tint);
        assert!((crate::light::luma(value) - 0.4).abs() < 1e-6);
        assert!((value.x / value.z - tint.x / tint.z).abs() < 1e-5);
        assert!((value.x / value.y - tint.x / tint.y).abs() < 1e-5);
    }
}
