//! Light that passes everything and goes up into the sky.

use super::{Case, Finding, Level, Matter, moves, people, remedy::Attempt};
use crate::{
    geometry::Sight,
    judge::{
        RASTER,
        landing::{leave, thrown_by},
    },
    light::{Area, Beam, Drawn, Night, cells, luma},
    scene::limits,
};
use rayon::prelude::*;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit_around([limits::SKY_COUNTRY, limits::SKY_SUBURB, limits::SKY_TOWN]);
    let mut list = Vec::new();
    for (index, station, beams) in people::shining(case) {
        let share = case.upwards(index, || beams.last().map_or(0.0, |beam| upward(case.night, beam)));
        if share <= bound.value {
            continue;
        }
        let of = &station.name.0;
        let says = format!("{:.0} % of the light of “{of}” goes up past everything into the sky", 100.0 * share);
        list.push(Finding::new(Matter::Skyward, Level::Check, of, None).against(share, &bound, says));
    }
    list
}

/// By more than this share what passes at two cells beside each other differs only where an edge runs between them; by their slants it
/// differs less.
const EDGE: f32 = 0.02;

/// Share of the light that leaves the yard upwards: of its picture and of the grey box around that.
fn upward(night: &Night, beam: &Beam) -> f64 {
    let drawn = |cell: usize| beam.drawing.drawn(cell, beam.grain.log2());
    let sent = |cell: usize, picture: f32| {
        let [u, v] = cells::middle(cell);
        f64::from(beam.evenness(u, v) * (beam.black + (1.0 - beam.black) * picture))
    };
    let light: Vec<f64> =
        (0..RASTER.0 * RASTER.1).into_par_iter().map(|cell| sent(cell, luma(drawn(cell).light()))).collect();
    let count = RASTER.0 * RASTER.1;
    let passed: Vec<f32> = (0..count).into_par_iter().map(|cell| passes(night, beam, cells::middle(cell))).collect();
    let up = |cell: usize| {
        let here = passed[cell];
        if cells::beside(cell).all(|other| (passed[other] - here).abs() <= EDGE) {
            return light[cell] * f64::from(here);
        }
        // Figure and ground each by their own places.
        let (Drawn { figure, ground }, places) = (drawn(cell), beam.drawing.places(cell));
        let of = |(area, places): (Option<Area>, &[[f32; 2]])| {
            let area = area.filter(|_| !places.is_empty())?;
            let share = places.iter().map(|uv| passes(night, beam, *uv)).sum::<f32>() / places.len() as f32;
            Some(f64::from(area.share * share) * sent(cell, luma(area.light)))
        };
        [(figure, &*places[0]), (ground, &*places[1])].into_iter().filter_map(of).sum()
    };
    let all: f64 = light.iter().sum();
    // Summed in one order, so that the same yard has the same number.
    let up: Vec<f64> = (0..count).into_par_iter().map(up).collect();
    up.iter().sum::<f64>() / all.max(1e-6)
}

/// What passes everything upwards of the light that leaves at a place of the raster.
fn passes(night: &Night, beam: &Beam, uv: [f32; 2]) -> f32 {
    let thrown = thrown_by(night, beam, uv);
    let upwards = leave(night, thrown, uv).filter(|(_, along)| along.y > 0.0);
    upwards.map_or(0.0, |(from, along)| {
        let past: f32 = night.touches(Sight::endless(from, along)).iter().map(|touch| touch.through).product();
        // What mirrors take, and what stands before them.
        let direct = night.beams.iter().find(|one| one.station == beam.station);
        let left = direct
            .filter(|_| !thrown.relays.is_empty())
            .map_or(1.0, |direct| thrown.power / direct.power * luma(thrown.transmittance(night, from, along)));
        left * past
    })
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    let mut list = moves::aimed_higher(case, station, &[-0.8]);
    list.extend(moves::along(case, station, &[1.5]));
    list.extend(moves::lifted(case, station, &[1.5]));
    list
}
