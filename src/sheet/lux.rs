//! What a meter should read in a white picture, as somebody sees the nine places who stands at the projector.

use super::pose::level;
use crate::{
    judge::{Banded, lux_to_expect},
    light::{Beam, Night},
    scene::{Catalogue, Yard},
};

/// Lux to expect of a station alone.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Lux {
    /// Mean on the target, lx.
    pub on_target: Banded,
    /// What a meter reads that lies flat on the target at nine places of a white picture, lx, row by row as they land, upper left
    /// first; `None` where one misses.
    pub places: [Option<f64>; 9],
    /// Mean of those that lie on the target, lx.
    pub mean: Banded,
}

/// The lux of the station at an index of the yard's list; `None` where none of the nine lands on a target.
pub(super) fn lux(yard: &Yard, catalogue: &Catalogue, night: &Night, index: usize) -> Option<Lux> {
    let beam = night.beams.iter().rfind(|beam| beam.station as usize == index)?;
    let (on_target, phone) = lux_to_expect(night, yard, catalogue, index)?;
    let places = order(beam).map(|i| phone.places.get(i).and_then(|place| place.lx.as_ref()).map(|lx| lx.typical));
    (phone.on_target > 0).then_some(Lux { on_target, places, mean: phone.mean })
}

/// The places of a raster, which lies on its side or upside down, as they land.
fn order(beam: &Beam) -> [usize; 9] {
    let (right, up) = level(beam.lens.forward);
    let across = [beam.lens.right.dot(right), -beam.lens.up.dot(right)];
    let down = [-beam.lens.right.dot(up), beam.lens.up.dot(up)];
    // The nearer axis of the raster runs across, the other down.
    let wide = across[0].abs() >= across[1].abs();
    let (to_right, to_foot) = if wide { (across[0], down[1]) } else { (across[1], down[0]) };
    let turned = |step: usize, way: f32| if way >= 0.0 { step } else { 2 - step };
    std::array::from_fn(|i| {
        let (column, row) = (turned(i % 3, to_right), turned(i / 3, to_foot));
        if wide { 3 * row + column } else { 3 * column + row }
    })
}
