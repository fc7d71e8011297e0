//! A cloth takes more wind than its ties hold.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    craft::wind::{Beaufort, ClothWind, WindReport, safe_side},
    edit::Edit,
    scene::{Around, Climate, Cloth, Count, FabricKind, Item, Ref, limits},
    units,
};

/// So many times what a tie holds, it goes for sure, and with it the cloth.
const TEARS: f64 = 4.0;

/// Below that gust nobody takes a cloth down, m/s: leaves rustle in it.
const LEAST_GUST: f64 = 4.0;

fn report(case: &Case) -> WindReport {
    WindReport::of(case.yard, case.catalogue)
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::TIE_HOLDS);
    let report = report(case);
    let feet = case.yard.units.style().is_feet();
    let torn = report.cloths.iter().filter(|cloth| cloth.tie_n > bound.value);
    torn.map(|cloth| {
        let down_m_s = safe_side(cloth.down_m_s);
        let says = format!(
            "In a gust of {} “{}” pulls up to {} at the worst of its {} ties",
            units::wind(report.gust_m_s, feet),
            cloth.cloth,
            units::force(cloth.tie_n, feet),
            cloth.ties,
        );
        let does = format!("Use more ties, or take it down before {}", units::wind(down_m_s, feet));
        let level = if cloth.tie_n > TEARS * bound.value { Level::Fix } else { Level::Check };
        Finding::new(Matter::Ties, level, &cloth.cloth, None).against(cloth.tie_n, &bound, says).doing(does)
    })
    .collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cloth) = case.yard.cloths.iter().find(|cloth| cloth.name.0 == finding.of) else { return Vec::new() };
    let report = report(case);
    let Some(wind) = report.cloths.iter().find(|wind| wind.cloth == finding.of) else { return Vec::new() };
    let mut list: Vec<Proposal> = more_ties(cloth, wind).into_iter().collect();
    list.extend(nets(case, cloth));
    list.extend(taken_down(case, wind));
    list
}

fn more_ties(cloth: &Cloth, wind: &ClothWind) -> Option<Proposal> {
    let needed = wind.ties_needed?;
    let around = 2.0 * (cloth.width.0.m + cloth.height.0.m);
    // Nearer than a hand's breadth apart they tear the hem between them.
    (f64::from(needed) * 0.1 <= around).then(|| Proposal {
        says: format!("Tie “{}” in {needed} places around its edges", cloth.name.0),
        edit: Edit::Change(Item::Cloth(Cloth { ties: Count(needed), ..cloth.clone() })),
    })
}

/// A net in place of a closed cloth: the least in the wind first.
fn nets(case: &Case, cloth: &Cloth) -> Option<Proposal> {
    let is_net = |name: &Ref| {
        case.yard.fabric(case.catalogue, &name.0).is_some_and(|f| matches!(f.kind, FabricKind::Net { .. }))
    };
    if std::iter::once(&cloth.fabric).chain(&cloth.behind).all(is_net) {
        return None;
    }
    let nets = case.yard.all_fabrics(case.catalogue).filter_map(|fabric| match fabric.kind {
        FabricKind::Net { thread, reflect, .. } => Some((fabric, thread.typical, reflect.typical)),
        _ => None,
    });
    // Of the open ones the one that throws back most.
    let open = nets.filter(|(_, thread, _)| *thread < 0.2);
    let (net, ..) = open.max_by(|a, b| a.2.total_cmp(&b.2))?;
    let changed = Cloth { fabric: Ref::to(&net.name.0), behind: Vec::new(), ..cloth.clone() };
    let says = format!("Hang {} in place of what “{}” is made of", net.name.0, cloth.name.0);
    Some(Proposal { says, edit: Edit::Change(Item::Cloth(changed)) })
}

fn taken_down(case: &Case, wind: &ClothWind) -> Option<Proposal> {
    // In whole metres a second, and below what the ties hold.
    let gust_m_s = wind.down_m_s.floor();
    let feet = case.yard.units.style().is_feet();
    (gust_m_s >= LEAST_GUST).then(|| {
        let around = case.yard.around();
        let climate = Climate { gust_m_s, ..around.climate.clone() };
        let says = format!(
            "Leave nothing up in gusts of more than {} (a mean wind of Beaufort {}), and look at the forecast each day",
            units::wind(gust_m_s, feet),
            Beaufort::of_gust(gust_m_s).0
        );
        Proposal { says, edit: Edit::Around(Around { climate, ..around }) }
    })
}
