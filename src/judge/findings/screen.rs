//! An insect screen before a film takes light.

use super::{Case, Finding, Level, Matter, rear, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{FabricKind, Item, Opening, Window, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::SCREEN_TAKES);
    let mut list: Vec<Finding> = Vec::new();
    for rear in rear::each(case) {
        let station = &rear.station.name.0;
        let film = rear::film(case, &rear.reading.target).and_then(|film| film.window.as_ref());
        let window = film.and_then(|name| rear::window(case, &name.0)).map(|(_, window)| window);
        let Some(screen) = window.and_then(|window| window.screen.as_ref()) else { continue };
        if list.iter().any(|one| one.of == *station) {
            continue;
        }
        let Some(fabric) = case.yard.fabric(case.catalogue, &screen.0) else { continue };
        let (most, through) = match &fabric.kind {
            FabricKind::Net { thread, .. } => {
                // Square on, `(1 − γ)²`; aslant it takes more.
                let open = |ratio: f64| (1.0 - ratio).max(0.0).powi(2);
                (open(thread.low), open(thread.typical))
            }
            FabricKind::Cloth { through, .. } | FabricKind::Film { through, .. } => (through.high, through.typical),
        };
        let number = 1.0 - through;
        if number > bound.value {
            let share = 100.0 * number;
            let says =
                format!("The “{}” takes {share:.0} % of the light of “{station}” before anybody sees it", screen.0);
            let finding = Finding::new(Matter::Screen, Level::Check, station, None).against(number, &bound, says);
            list.push(finding.unsure(1.0 - most <= bound.value));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(rear) = rear::of(case, &finding.of, None) else { return Vec::new() };
    let film = rear::film(case, &rear.reading.target).and_then(|film| film.window.as_ref());
    let Some((host, window)) = film.and_then(|name| rear::window(case, &name.0)) else { return Vec::new() };
    let open = Window { screen: None, ..window.clone() };
    vec![Proposal {
        says: format!("Take the insect screen out of “{}” for the season", window.name.0),
        edit: Edit::Change(Item::Opening(host.to_owned(), Opening::Window(open))),
    }]
}
