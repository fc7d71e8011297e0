//! What a yard's own plan of cables and supplies adds to its list.

use super::{Asked, Need, Run, ShoppingList, What};
use crate::{
    craft::{
        money::Running,
        power::{area_mm2, cable_m},
    },
    scene::{Catalogue, GoodsKind, LoadKind, SupplyKind, Yard},
};

impl ShoppingList {
    /// Of all that is brought out in a yard, with its cables, supplies and players, for projectors that run so long.
    pub fn planned(yard: &Yard, catalogue: &Catalogue, running: Running) -> Self {
        let (runs, more) = (runs(yard), more(yard));
        Self::of(Asked { yard, catalogue, runs: &runs, more: &more, hours: running.all() })
    }
}

fn runs(yard: &Yard) -> Vec<Run> {
    let shown = yard.cables.iter().filter(|cable| !yard.is_hidden(&cable.name.0));
    let run = shown.filter_map(|cable| {
        let is_station = yard.stations.iter().any(|station| station.name.0 == cable.to.0);
        let of = if is_station { cable.to.0.clone() } else { String::new() };
        Some(Run { mm2: area_mm2(cable.gauge), metres: cable_m(yard, cable)?, of })
    });
    run.collect()
}

fn more(yard: &Yard) -> Vec<Need> {
    let goods = |kind, of: &str| Need::new(What::Goods(kind), 1.0, of);
    let mut needs = Vec::new();
    for supply in yard.supplies.iter().filter(|supply| !yard.is_hidden(&supply.name.0)) {
        match supply.kind {
            SupplyKind::Mains(_) => {}
            SupplyKind::TwelveVolt(_) => {
                needs.extend([GoodsKind::Supply, GoodsKind::FuseHolder].map(|kind| goods(kind, "")))
            }
            SupplyKind::Battery(_) => {
                needs.extend([GoodsKind::Battery, GoodsKind::FuseHolder].map(|kind| goods(kind, "")))
            }
        }
    }
    for station in yard.stations.iter().filter(|station| !yard.is_hidden(&station.name.0)) {
        let players = station.loads.iter().filter(|load| load.kind == LoadKind::Player);
        needs.extend(players.map(|_| goods(GoodsKind::Player, &station.name.0)));
    }
    needs
}
