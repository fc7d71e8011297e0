//! Pixels and light that a digital keystone takes.

use super::{
    Case, Finding, Level, Matter, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    scene::{Item, Keystone, Station, limits},
};

/// Share from which a bent picture wastes so much that it is better hung otherwise, as a multiple of the limit.
const GRAVE: f64 = 3.0;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::KEYSTONE);
    let mut list = Vec::new();
    for (_, _, reading) in case.lit() {
        let Some(lost) = reading.keystone.filter(|lost| lost.pixels > bound.value) else { continue };
        let level = if lost.pixels > GRAVE * bound.value { Level::Fix } else { Level::Check };
        let says = format!(
            "The keystone of “{}” leaves {:.0} % of its pixels black and loses {:.0} % of its light",
            reading.station,
            100.0 * lost.pixels,
            100.0 * lost.light
        );
        list.push(Finding::new(Matter::Keystone, level, &reading.station, None).against(lost.pixels, &bound, says));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let off = Station { keystone: Keystone::default(), ..station.clone() };
    let mut list = moves::lifted(case, &off, &[1.0, -0.6]);
    list.extend(moves::sideways(case, &off, &[1.0, -1.0]));
    list.push(Attempt::Once(Proposal {
        says: format!("Switch the keystone of “{}” off and draw its picture to suit", station.name.0),
        edit: Edit::Change(Item::Station(off)),
    }));
    list
}
