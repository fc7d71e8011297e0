//! An insect screen before a film takes light.

use super::{Case, Finding, Level, Matter, rear, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{FabricKind, Item, Opening, Window, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::SCREEN_TAKES);
    let mut list: Vec<Finding> = Vec::new();
    let mut seen: Vec<(&str, &str)> = Vec::new();
    for rear in rear::each(case) {
        let station = &rear.station.name.0;
        let film = rear::film(case, rear.target).and_then(|film| film.window.as_ref());
        let window = film.and_then(|name| rear::window(case, &name.0)).map(|(_, window)| window);
        let Some(screen) = window.and_then(|window| window.screen.as_ref()) else { continue };
        // Whoever looks.
        if seen.contains(&(station.as_str(), rear.target)) {
            continue;
        }
        seen.push((station, rear.target));
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
    let open = |host: &str, window: &Window| {
        let open = Window { screen: None, ..window.clone() };
        Edit::Change(Item::Opening(host.to_owned(), Opening::Window(open)))
    };
    let windows: Vec<(&str, &Window)> = rear::windows(case, &finding.of);
    let screened: Vec<_> = windows.into_iter().filter(|(_, window)| window.screen.is_some()).collect();
    let names: Vec<&str> = screened.iter().map(|(_, window)| window.name.0.as_str()).collect();
    let says = format!("Take the insect screen out of “{}” for the season", names.join("” and “"));
    rear::together(says, screened.iter().map(|(host, window)| open(host, window)).collect())
}
