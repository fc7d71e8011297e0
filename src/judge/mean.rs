//! Illuminance over an area: the light that lands there over the area on which it lands, never the mean over cells of a raster.

use super::{Banded, Landings, RASTER, Touch, band::Scale, landings::Part, piece::Piece};
use crate::light::{
    Beam, Night,
    cells::{GOLDEN, POINTS},
    luma,
};
use rayon::prelude::*;

/// Every point of a figure asks for the whole sky: so many are enough for the light of all that is not the station.
const OTHERS: usize = 200;

/// Mean illuminance of what is lit when a station throws white, by it alone: lumens that land over the area where they land, lx.
pub(super) fn white<'a>(beam: &Beam, pieces: impl Iterator<Item = &'a Piece>, flux: Scale) -> Banded {
    let sum = |sum: (f64, f64), piece: &Piece| (sum.0 + piece.lands(), sum.1 + f64::from(piece.area));
    let (landed, area) = pieces.filter(|piece| beam.uses(piece.uv)).fold((0.0, 0.0), sum);
    // All that the raster sends, less what mirrors take of it.
    let sent = f64::from(beam.power * beam.lens.w1 * beam.lens.h1);
    Banded::of(if area > 0.0 { sent * landed / area } else { 0.0 }, 0.0, flux)
}

/// Mean illuminance of a target over the figure by everything as it is, lx. `pieces` are of the white light there.
pub(super) fn over_figure(
    night: &Night,
    beam: &Beam,
    (landings, pieces): (&Landings, &[Piece]),
    flux: Scale,
) -> Banded {
    let cells = RASTER.0 * RASTER.1;
    // Area on the target, and share of the cell that lands there.
    let mut landed = vec![(0.0, 0.0); cells];
    for piece in pieces {
        let (area, share) = &mut landed[piece.cell];
        *area += f64::from(piece.area);
        *share += if piece.whole { 1.0 } else { 1.0 / POINTS as f64 };
    }
    let place = |part: &Part| {
        let (touch, cell) = (part.landing.target?, part.landing.cell as usize);
        let patch = f64::from(part.share * beam.patch(touch.point, touch.normal, cells));
        // A cell that bends away spreads over more than its place tells.
        let (area, share) = landed[cell];
        let area = if share > 0.0 { f64::from(part.share) * area / share } else { patch };
        Some((touch, *part, patch, area))
    };
    let figure: Vec<(Touch, Part, f64, f64)> = landings.figure.iter().filter_map(place).collect();
    // Its light is that of the place.
    let own =
        |(touch, part, patch, area): &(Touch, Part, f64, f64)| (patch * by_station(night, beam, touch, part), *area);
    let own: Vec<(f64, f64)> = figure.par_iter().map(own).collect();
    let count = figure.len().min(OTHERS);
    let place = |i: usize| match figure.len() {
        many if many > OTHERS => (((i as f64 + 0.5) * GOLDEN).fract() * many as f64) as usize,
        _ => i,
    };
    let others: Vec<(f64, f64)> = (0..count)
        .into_par_iter()
        .filter_map(|i| figure.get(place(i)))
        .map(|(touch, _, _, area)| {
            let shares = night.illuminance(touch.point, touch.normal);
            let own = shares.lx.get(beam.station as usize).map_or(0.0, |lx| luma(*lx));
            (area * f64::from((luma(shares.total()) - own).max(0.0)), *area)
        })
        .collect();
    Banded::of(mean(&own), mean(&others), flux)
}

/// Of pairs of a value times its weight, and the weight.
fn mean(list: &[(f64, f64)]) -> f64 {
    let (sum, weight) = list.iter().fold((0.0, 0.0), |(sum, weight), one| (sum + one.0, weight + one.1));
    if weight > 0.0 { sum / weight } else { 0.0 }
}

/// Illuminance by a part of the figure, lx.
fn by_station(night: &Night, beam: &Beam, touch: &Touch, part: &Part) -> f64 {
    let Some((white, toward)) = beam.white(touch.point) else { return 0.0 };
    let left = beam.transmittance(night, touch.point, touch.normal);
    f64::from(luma(left * white * part.light) * touch.normal.dot(toward).max(0.0))
}
