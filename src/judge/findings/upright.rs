//! A tall figure in a wide raster: on its side the projector would put more light on it.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::{Landings, StationReading},
    light::Beam,
    scene::{Aim, Item, Point, Pose, ProjectorClass, Stance, Station, Targets, Uv, limits},
    units::two_digits,
};

/// Share of the raster that a figure is made to fill, so that an aim may stray a little.
const FILL: f64 = 0.95;

/// How a station on its side would do.
struct Turned {
    /// Light on the figure over what the nearest wide raster gives it.
    times: f64,
    /// From the lens to the target along its axis now, m.
    depth: f64,
    /// The same on its side.
    turned: f64,
    /// The figure's box inside the raster: left upper and right lower corner.
    figure: [[f64; 2]; 2],
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::UPRIGHT);
    let mut list = Vec::new();
    for (index, station, reading) in case.lit() {
        let Some(turned) = turned(case, index, station, reading).filter(|turned| turned.times > bound.value) else {
            continue;
        };
        let says = format!(
            "The figure of “{}” is tall and its picture wide: on its side it would get {} times the light",
            reading.station,
            two_digits(turned.times)
        );
        let finding = Finding::new(Matter::Upright, Level::Check, &reading.station, None);
        list.push(finding.against(turned.times, &bound, says));
    }
    list
}

fn turned(case: &Case, index: usize, station: &Station, reading: &StationReading) -> Option<Turned> {
    if station.pose != Pose::Table || station.content.stance != Stance::Wide || !station.mirrors.is_empty() {
        return None;
    }
    let (beam, class) = (case.beam(index)?, case.yard.projector(case.catalogue, &station.projector.0)?);
    let figure = figure_box(case.landings(index))?;
    let depth = reading.depth_m?;
    let (wide, high) = (f64::from(beam.lens.w1), f64::from(beam.lens.h1));
    let size = [(figure[1][0] - figure[0][0]) * wide * depth, (figure[1][1] - figure[0][1]) * high * depth];
    // The nearest that each fits from, and no nearer than it can be sharp.
    let fits = |wide: f64, high: f64| (size[0] / wide).max(size[1] / high) / FILL;
    let sharp = |fits: f64, class: &ProjectorClass| fits.max(class.nearest.0.m);
    let flat = sharp(fits(wide, high), class).min(depth);
    let turned = sharp(fits(high, wide), class);
    Some(Turned { times: (flat / turned).powi(2), depth, turned, figure })
}

/// The box of a figure inside its raster; half a step is added at each edge.
fn figure_box(landings: &Landings) -> Option<[[f64; 2]; 2]> {
    let mut span: Option<[[f64; 2]; 2]> = None;
    let half = [0.5 / crate::judge::RASTER.0 as f64, 0.5 / crate::judge::RASTER.1 as f64];
    for landing in landings.cells.iter().filter(|landing| !landing.is_ground()) {
        let at = landing.uv.map(f64::from);
        let (low, high) = ([at[0] - half[0], at[1] - half[1]], [at[0] + half[0], at[1] + half[1]]);
        span = Some(span.map_or([low, high], |[a, b]| {
            [[a[0].min(low[0]), a[1].min(low[1])], [b[0].max(high[0]), b[1].max(high[1])]]
        }));
    }
    span
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((index, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let on_its_side = || {
        let turned = turned(case, index, station, reading)?;
        let (depth, lens) = on_side(case, case.beam(index)?, station, &turned, reading.figure_at?)?;
        Some(Proposal {
            says: format!(
                "Lay “{}” on its side and set it {} nearer, its picture standing upright in it",
                station.name.0,
                moves::length(case, turned.depth - depth)
            ),
            edit: Edit::Change(Item::Station(lens)),
        })
    };
    on_its_side().into_iter().collect()
}

/// The station on its side and nearer, its figure where and as large as it was, with the depth that it then has. `None` where its
/// picture would have to be cut for that: the box of a picture stays inside the raster.
fn on_side(
    case: &Case,
    beam: &Beam,
    station: &Station,
    turned: &Turned,
    figure_at: [f64; 3],
) -> Option<(f64, Station)> {
    let (wide, high) = (f64::from(beam.lens.w1), f64::from(beam.lens.h1));
    let now = [wide * turned.depth, high * turned.depth];
    let [from, to] = [station.content.from.0, station.content.to.0];
    let size = [0, 1].map(|i| (to[i] - from[i]) * now[i]);
    let depth = turned.turned.max(size[0] / high).max(size[1] / wide);
    if depth > 0.95 * turned.depth {
        return None;
    }
    let then = [high * depth, wide * depth];
    let share = [0, 1].map(|i| size[i] / then[i]);
    let start = [0, 1].map(|i| {
        let middle = 0.5 * (turned.figure[0][i] + turned.figure[1][i]);
        (0.5 + (from[i] - middle) * now[i] / then[i]).clamp(0.0, (1.0 - share[i]).max(0.0))
    });
    let fine = |at: f64| ((at * 1000.0).round() / 1000.0).clamp(0.0, 1.0);
    let mut content = station.content.clone();
    content.from = Uv(start.map(fine));
    content.to = Uv([0, 1].map(|i| fine(start[i] + share[i])));
    content.stance = Stance::Upright;
    let to_cm = |m: f64| (m * 100.0).round() / 100.0;
    let aim = Point::metres(to_cm(figure_at[0]), to_cm(figure_at[1]), to_cm(figure_at[2]));
    let way = (case.night.aim(&station.aim)? - station.at.vec3()).as_dvec3();
    let near = 1.0 - depth / turned.depth;
    let Edit::Change(Item::Station(moved)) = moves::moved(station, [way.x * near, 0.0, way.z * near])? else {
        return None;
    };
    let target = target(case, station);
    Some((depth, Station { pose: Pose::Upright, content, aim: Aim::At(aim), target, ..moved }))
}

/// What it lights stays what it is meant to light, now that it is aimed at a point.
fn target(case: &Case, station: &Station) -> Targets {
    let found = || case.lit_by(&station.name.0).map(|(_, _, reading)| Targets::one(&reading.target));
    match station.lit() {
        [] => found().unwrap_or_default(),
        lit => Targets(lit.to_vec()),
    }
}
