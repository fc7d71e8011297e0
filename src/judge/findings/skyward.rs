//! Light that passes everything and goes up into the sky.

use super::{Case, Finding, Level, Matter, moves, people, remedy::Attempt};
use crate::{
    geometry::Sight,
    judge::leave,
    light::{Beam, Night, luma},
    scene::limits,
};

/// Rays across and down by which a raster is followed.
const RAYS: [u16; 2] = [24, 14];

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit_around([limits::SKY_COUNTRY, limits::SKY_SUBURB, limits::SKY_TOWN]);
    let mut list = Vec::new();
    for (_, station, beams) in people::shining(case) {
        let share = beams.last().map_or(0.0, |beam| upward(case.night, beam));
        if share <= bound.value {
            continue;
        }
        let of = &station.name.0;
        let says = format!("{:.0} % of the light of “{of}” goes up past everything into the sky", 100.0 * share);
        list.push(Finding::new(Matter::Skyward, Level::Check, of, None).against(share, &bound, says));
    }
    list
}

/// Share of the light that leaves the yard upwards: of its picture and of the grey box around that.
fn upward(night: &Night, beam: &Beam) -> f64 {
    let [columns, rows] = RAYS.map(f32::from);
    let (mut all, mut up) = (0.0, 0.0);
    // As coarse as the rays stand apart.
    let level = (beam.texels_across() / columns).max(1.0).log2();
    for i in 0..RAYS[0] * RAYS[1] {
        let uv = [(f32::from(i % RAYS[0]) + 0.5) / columns, (f32::from(i / RAYS[0]) + 0.5) / rows];
        let content = beam.black + (1.0 - beam.black) * luma(beam.picture(uv[0], uv[1], level));
        let light = beam.evenness(uv[0], uv[1]) * content;
        all += light;
        let Some((from, along)) = leave(night, beam, uv).filter(|(_, along)| along.y > 0.0) else { continue };
        up += light * night.touches(Sight::endless(from, along)).iter().map(|touch| touch.through).product::<f32>();
    }
    f64::from(up / all.max(1e-6))
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
