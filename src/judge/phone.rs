//! The phone check: what a meter reads that lies flat on the target at nine places of a white picture.

use super::{Banded, band::Scale, landing::touch_on, meant::Meant};
use crate::{
    light::{Beam, Night, luma},
    units::border,
};
use serde::Serialize;

/// The centres of 3 × 3 equal parts of the picture, across and down (ISO/IEC 21118).
const CENTRES: [f32; 3] = [1.0 / 6.0, 0.5, 5.0 / 6.0];

/// What a phone reads in a white picture by one station alone, so less what it reads with the lens covered: it lies flat on the target
/// at the centres of 3 × 3 equal parts of the raster, or of the picture that a keystone makes of it, where these land.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct PhoneCheck {
    /// The nine places, row by row as the raster has them.
    pub places: Vec<PhonePlace>,
    /// How many of them lie on a target.
    pub on_target: usize,
    /// Mean over those, lx.
    pub mean: Banded,
    /// White lumens of the projector for each lux of that mean, m²: the area of the picture where it lands square on, evenly and with
    /// nothing before it. `None` where no place lies on a target, or no light comes.
    #[serde(serialize_with = "border::light")]
    pub lumens_per_lx: Option<f64>,
}

/// One place of a phone check.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct PhonePlace {
    /// Where it lies, m; `None` where this part of the picture misses.
    #[serde(serialize_with = "border::lengths")]
    pub at: Option<[f64; 3]>,
    /// Illuminance there, lx.
    pub lx: Option<Banded>,
}

/// Reads the nine places. `lumens` are the projector's own, before what age and the window of its box take.
pub(super) fn check(night: &Night, beam: &Beam, targets: &[u32], flux: Scale, lumens: f64) -> PhoneCheck {
    let meant = Meant::of(night, beam, targets);
    let centres = (0..9).map(|i| [CENTRES[i % 3], CENTRES[i / 3]]);
    let places: Vec<PhonePlace> = centres
        .map(|uv| {
            let Some(touch) = touch_on(night, beam, beam.bent(uv), &meant) else { return PhonePlace::default() };
            let lx = beam.white(touch.point).map_or(0.0, |(square, toward)| {
                square * touch.normal.dot(toward).max(0.0) * luma(beam.transmittance(night, touch.point, touch.normal))
            });
            PhonePlace { at: Some(touch.point.as_dvec3().to_array()), lx: Some(Banded::of(f64::from(lx), 0.0, flux)) }
        })
        .collect();
    let read: Vec<f64> = places.iter().filter_map(|place| place.lx.map(|lx| lx.typical)).collect();
    let mean = read.iter().sum::<f64>() / read.len().max(1) as f64;
    PhoneCheck {
        on_target: read.len(),
        mean: Banded::of(mean, 0.0, flux),
        lumens_per_lx: (mean > 0.0).then(|| lumens / mean),
        places,
    }
}
