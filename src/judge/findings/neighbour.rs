//! Light on a neighbour's window, by the stations alone.

use super::{
    Case, Finding, Level, Matter, dazzle,
    finding::Bound,
    moves, people,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::{MeterReading, read_meters},
    scene::{Clock, Item, Station, limits},
};

/// From when on a neighbour's night begins, until noon: 23:00 is usual; common practice, no source.
const LATE: Clock = Clock::new(23, 1);

/// The limit by what lies around, and by whether visitors come late.
fn bound(case: &Case) -> Bound {
    let late = case.yard.visitors.1.is_within(Some(LATE), None);
    case.limit_around(if late {
        [limits::LATE_COUNTRY, limits::LATE_SUBURB, limits::LATE_TOWN]
    } else {
        [limits::WINDOW_COUNTRY, limits::WINDOW_SUBURB, limits::WINDOW_TOWN]
    })
}

fn windows(case: &Case) -> Vec<MeterReading> {
    let mut list = read_meters(case.night, case.yard, case.catalogue);
    list.retain(|meter| meter.neighbour_window);
    list
}

/// The station that sends a window most.
fn most<'a>(case: &Case<'a>, meter: &MeterReading) -> Option<&'a Station> {
    let name = &meter.sources.iter().find(|share| share.is_station)?.source;
    case.yard.stations.iter().find(|station| station.name.0 == *name)
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = bound(case);
    let beyond = |meter: &MeterReading| meter.stations_lx.high > bound.value;
    let finding = |meter: MeterReading| {
        let lx = meter.stations_lx;
        let level = if lx.typical > bound.value { Level::Fix } else { Level::Check };
        let by = most(case, &meter).map_or_else(String::new, |station| format!(", most of it by “{}”", station.name.0));
        let says = format!("The show puts {} on the window at “{}”{by}", people::lux(case, lx.typical), meter.meter);
        let finding = Finding::new(Matter::Neighbour, level, &meter.meter, None).against(lx.typical, &bound, says);
        finding.unsure(lx.low <= bound.value)
    };
    windows(case).into_iter().filter(beyond).map(finding).collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let meter = windows(case).into_iter().find(|meter| meter.meter == finding.of);
    let Some(station) = meter.and_then(|meter| most(case, &meter)) else { return Vec::new() };
    let mut list = dazzle::out_of_the_beam(case, station);
    list.extend(moves::dimmer(case, station, finding.limit / finding.number.max(1e-6)));
    let off = Station { on: false, ..station.clone() };
    let says = format!("Leave “{}” off", station.name.0);
    list.push(Attempt::Once(Proposal { says, edit: Edit::Change(Item::Station(off)) }));
    list
}
