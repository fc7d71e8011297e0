//! What the window of a box takes of the light, and how large it must be.

use crate::{
    optics::{fresnel, glazing},
    scene::{BoxWindow, PaneKind, Pose, ProjectorClass, Station},
    units::border,
};
use glam::DVec3;
use serde::Serialize;

/// Refractive index of clear acrylic, and what 3 mm of it pass between their surfaces: from memory of data sheets, which give 92 %
/// through both surfaces.
const ACRYLIC: (f64, f64) = (1.49, 0.997);
/// What internal transmittances are given for, m.
const GIVEN_FOR: f64 = 0.003;
/// Points across a raster at which the loss is looked at.
const ACROSS: u32 = 9;
/// Between lens and pane, m: invented, typical.
pub const BEHIND_PANE: f64 = 0.05;

/// The window of a box as the light meets it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct WindowLoss {
    /// Share of all light that clean glass lets through.
    #[serde(serialize_with = "border::light")]
    pub passes: f64,
    /// The least that it lets through, at an edge or corner of the picture.
    #[serde(serialize_with = "border::light")]
    pub least: f64,
    /// What the station counts, its `box_window`.
    #[serde(serialize_with = "border::light")]
    pub reckoned: f64,
    /// Width that the picture needs of a pane 5 cm before the lens, m.
    #[serde(serialize_with = "border::lengths")]
    pub needs_width_m: f64,
    /// Height that it needs along the pane, m: more where that leans.
    #[serde(serialize_with = "border::lengths")]
    pub needs_height_m: f64,
}

impl WindowLoss {
    /// Share of the light that clean glass takes and the station does not count.
    pub fn not_reckoned(&self) -> f64 {
        (self.reckoned - self.passes).max(0.0)
    }
}

/// Share of light that a clean pane lets through at an angle of incidence with this cosine, unpolarised; by Fresnel's formulas with all
/// reflections inside.
pub fn passes(window: &BoxWindow, cos: f64) -> f64 {
    let (index, internal) = match window.pane {
        PaneKind::Glass => (f64::from(glazing::FLOAT_INDEX), f64::from(glazing::FLOAT_INTERNAL)),
        PaneKind::Acrylic => ACRYLIC,
        PaneKind::Open => return 1.0,
    };
    let internal = internal.powf(window.thickness.0.m / GIVEN_FOR);
    let [across, along] = fresnel::plate(cos.clamp(0.0, 1.0), index, internal);
    0.5 * (across.through[0] + along.through[0])
}

/// What the window of a station's box takes of its picture, whose light spreads over the angles of its raster.
pub fn loss(station: &Station, class: &ProjectorClass, window: &BoxWindow) -> WindowLoss {
    let wide = 1.0 / station.throw_ratio.unwrap_or(class.throw_ratio).0;
    let high = wide * f64::from(class.pixels.1.max(1)) / f64::from(class.pixels.0.max(1));
    let [sx, sy] = station.shift.unwrap_or(class.shift).0;
    // In the axes of the raster: x right, y up, looking along -z; the box stands upright whichever way the projector lies.
    let up = match station.pose {
        Pose::Table => DVec3::Y,
        Pose::Ceiling => DVec3::NEG_Y,
        Pose::Upright => DVec3::NEG_X,
    };
    let tilt = window.tilt_deg.0.to_radians();
    let normal = tilt.cos() * DVec3::NEG_Z - tilt.sin() * up;
    let (mut sum, mut least) = (0.0, f64::MAX);
    for row in 0..ACROSS {
        for column in 0..ACROSS {
            let [u, v] = [column, row].map(|i| (f64::from(i) + 0.5) / f64::from(ACROSS) - 0.5);
            let ray = DVec3::new((u + sx) * wide, (v + sy) * high, -1.0).normalize_or_zero();
            let share = passes(window, ray.dot(normal));
            sum += share;
            least = share.min(least);
        }
    }
    let aperture = class.aperture.0.m;
    // Light of the whole lens opening spreads from there.
    let needs = [wide * BEHIND_PANE + aperture, high * BEHIND_PANE + aperture];
    let [needs_width_m, square_m] = if station.pose == Pose::Upright { [needs[1], needs[0]] } else { needs };
    // A pane that leans is met over more of its height.
    let needs_height_m = square_m / tilt.cos().max(0.1);
    WindowLoss {
        passes: sum / f64::from(ACROSS * ACROSS),
        least,
        reckoned: station.box_window.0,
        needs_width_m,
        needs_height_m,
    }
}
