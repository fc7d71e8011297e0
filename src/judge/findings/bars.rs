//! Glazing bars cut the figure.

use super::{Case, Finding, Level, Matter, moves, rear, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{Count, Item, Opening, Window, limits},
    units::two_digits,
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::BAR_STROKES);
    let mut list: Vec<Finding> = Vec::new();
    let rears = rear::each(case);
    let mut seen: Vec<(&str, &str)> = Vec::new();
    for rear in &rears {
        let station = &rear.station.name.0;
        let film = rear::film(case, rear.target).and_then(|film| film.window.as_ref());
        let Some((_, window)) = film.and_then(|name| rear::window(case, &name.0)) else { continue };
        // Whoever looks.
        if seen.contains(&(station.as_str(), rear.target)) || (window.bars.0.0 < 2 && window.bars.1.0 < 2) {
            continue;
        }
        seen.push((station, rear.target));
        // How far the figure reaches along the edges of the film.
        let landings = rear.landings(case);
        let points = landings.figure_on_target().filter_map(|part| part.landing.target);
        let mut reach = [[f32::MAX, f32::MIN]; 2];
        for touch in points {
            let away = touch.point - rear.quad.corner;
            for (span, edge) in reach.iter_mut().zip([rear.quad.u, rear.quad.v]) {
                let at = away.dot(edge) / edge.length_squared();
                *span = [span[0].min(at), span[1].max(at)];
            }
        }
        let crossing = |panes: u32, [low, high]: [f32; 2]| {
            (1..panes).map(|i| i as f32 / panes as f32).filter(|at| low < *at && *at < high).count()
        };
        let count = crossing(window.bars.0.0, reach[0]) + crossing(window.bars.1.0, reach[1]);
        let stroke = f64::from(rear.beam.stroke() * rear.beam.lens.w1) * rear.reading.depth_m.unwrap_or(0.0);
        if count == 0 || stroke <= 0.0 {
            continue;
        }
        let number = window.bar.0.m / stroke;
        if number > bound.value {
            let level = if number > 2.0 * bound.value { Level::Fix } else { Level::Check };
            let bars = if count == 1 { "A glazing bar cuts".to_owned() } else { format!("{count} glazing bars cut") };
            let says = format!(
                "{bars} the figure of “{station}”: each {} wide, {} times as wide as its lines are",
                moves::length(case, window.bar.0.m),
                two_digits(number)
            );
            list.push(Finding::new(Matter::Bars, level, station, None).against(number, &bound, says));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let bare = |host: &str, window: &Window| {
        let bare = Window { bars: (Count(1), Count(1)), ..window.clone() };
        Edit::Change(Item::Opening(host.to_owned(), Opening::Window(bare)))
    };
    let windows: Vec<(&str, &Window)> = rear::windows(case, &finding.of);
    let barred: Vec<_> = windows.into_iter().filter(|(_, w)| w.bars.0.0 > 1 || w.bars.1.0 > 1).collect();
    let names: Vec<&str> = barred.iter().map(|(_, window)| window.name.0.as_str()).collect();
    let says = format!("Take the glazing bars out of “{}”, if they are only clipped in", names.join("” and “"));
    rear::together(says, barred.iter().map(|(host, window)| bare(host, window)).collect())
}
