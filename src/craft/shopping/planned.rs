//! What a yard's own plan of cables and supplies adds to its list.

use super::{Asked, Need, Run, ShoppingList, What};
use crate::{
    craft::{
        money::Running,
        power::{PowerReport, area_mm2, cable_m, feeds, is_indoors, way},
    },
    scene::{Cable, Catalogue, GoodsKind, LoadFrom, LoadKind, Station, Supply, SupplyKind, Yard},
};

/// Of each fuse, one to put in and one to spare.
const FUSES: f64 = 2.0;

impl ShoppingList {
    /// Of all that is brought out in a yard, with its cables, supplies and players, for projectors that run so long.
    pub fn planned(yard: &Yard, catalogue: &Catalogue, running: Running) -> Self {
        let power = PowerReport::of(yard, catalogue, running);
        let (runs, more) = (runs(yard, &power), more(yard, catalogue, &power));
        Self::of(Asked { yard, catalogue, runs: &runs, more: &more, hours: running.all() })
    }
}

fn runs(yard: &Yard, power: &PowerReport) -> Vec<Run> {
    let shown = yard.cables.iter().filter(|cable| !yard.is_hidden(&cable.name.0));
    shown.filter_map(|cable| run(yard, power, cable)).collect()
}

fn run(yard: &Yard, power: &PowerReport, cable: &Cable) -> Option<Run> {
    let station = yard.stations.iter().find(|station| station.name.0 == cable.to.0);
    let report = power.cables.iter().find(|one| one.cable == cable.name.0);
    // Where the drawn one is too thin, it is the one to take that is bought.
    let to_take = report.and_then(|one| one.gauge_to_buy);
    let way = way(yard, cable)?;
    let (wet, end) = (way.iter().any(|at| !is_indoors(yard, *at)), *way.last()?);
    Some(Run {
        cable: cable.name.0.clone(),
        mains: feeds(yard, &cable.name.0).is_none_or(|supply| supply.kind.is_mains()),
        mm2: to_take.map_or(0.0, area_mm2).max(area_mm2(cable.gauge)),
        metres: cable_m(yard, cable)?,
        joints: cable.joints,
        plugs: plugs(yard, cable, station),
        in_the_wet: wet,
        ends_dry: is_indoors(yard, end) || station.is_some_and(|station| station.shelter.is_some()),
        of: station.map(|station| station.name.0.clone()).unwrap_or_default(),
    })
}

/// Plugs at the end of a cable: of what stands there, and of the cables that begin there.
fn plugs(yard: &Yard, cable: &Cable, station: Option<&Station>) -> u32 {
    let own = station.map_or(1, |station| {
        let beside = station.loads.iter().filter(|load| load.from == LoadFrom::Supply).count();
        let fan = station.shelter.as_ref().is_some_and(|shelter| shelter.fan.is_some());
        1 + beside as u32 + u32::from(fan)
    });
    let begins = |other: &&Cable| {
        let here = other.from.0 == cable.name.0 || station.is_some_and(|station| other.from.0 == station.name.0);
        here && !yard.is_hidden(&other.name.0)
    };
    own + yard.cables.iter().filter(begins).count() as u32
}

fn more(yard: &Yard, catalogue: &Catalogue, power: &PowerReport) -> Vec<Need> {
    let goods = |kind, of: &str| Need::new(What::Goods(kind), 1.0, of);
    let mut needs = Vec::new();
    for supply in yard.supplies.iter().filter(|supply| !yard.is_hidden(&supply.name.0)) {
        let kind = match supply.kind {
            SupplyKind::Mains(_) => continue,
            SupplyKind::TwelveVolt(_) => GoodsKind::Supply,
            SupplyKind::Battery(_) => GoodsKind::Battery,
        };
        needs.extend([kind, GoodsKind::FuseHolder].map(|kind| goods(kind, "")));
        let report = power.supplies.iter().find(|one| one.supply == supply.name.0);
        let fuse = report.and_then(|one| one.fuse_to_buy_a).or(supply.kind.fuse_a());
        needs.extend(fuse.map(|amps| Need::new(What::Fuse(amps), FUSES, "")));
    }
    let shown = || yard.stations.iter().filter(|station| !yard.is_hidden(&station.name.0));
    for station in shown() {
        let players = station.loads.iter().filter(|load| load.kind == LoadKind::Player);
        needs.extend(players.map(|_| goods(GoodsKind::Player, &station.name.0)));
    }
    needs.extend(timers(yard, catalogue, shown()).map(|_| goods(GoodsKind::Timer, "")));
    needs
}

/// The outlets, by their names, that a timer may switch: of those that feed stations all but such as feed a projector that has to
/// cool. Stations that no plan feeds share one.
fn timers<'a>(
    yard: &'a Yard,
    catalogue: &Catalogue,
    stations: impl Iterator<Item = &'a Station>,
) -> impl Iterator<Item = Option<&'a str>> {
    let mut outlets: Vec<(Option<&str>, bool)> = Vec::new();
    for station in stations {
        let at = match feeds(yard, &station.name.0) {
            Some(supply) => match outlet(yard, supply) {
                Some(outlet) => Some(outlet.name.0.as_str()),
                // A battery has no outlet.
                None => continue,
            },
            None => None,
        };
        let class = yard.projector(catalogue, &station.projector.0);
        let cools = class.is_some_and(|class| class.cools_s > 0.0 || class.lamp_hours.is_some());
        match outlets.iter_mut().find(|(known, _)| *known == at) {
            Some((_, has_to_cool)) => *has_to_cool |= cools,
            None => outlets.push((at, cools)),
        }
    }
    outlets.into_iter().filter(|(_, cools)| !cools).map(|(at, _)| at)
}

/// The outlet of the mains that a supply is, or hangs on.
fn outlet<'a>(yard: &'a Yard, supply: &'a Supply) -> Option<&'a Supply> {
    match &supply.kind {
        SupplyKind::Mains(_) => Some(supply),
        SupplyKind::TwelveVolt(one) => {
            let plugged = one.from.as_ref().and_then(|from| yard.supplies.iter().find(|other| other.name.0 == from.0));
            plugged.or_else(|| feeds(yard, &supply.name.0)).filter(|outlet| outlet.kind.is_mains())
        }
        SupplyKind::Battery(_) => None,
    }
}
