//! A box in which it stays too cold for its projector on the coldest night, even as it runs.

use super::{Case, Finding, Level, Matter, boxes, finding::Bound, remedy::Proposal};
use crate::{
    scene::{BoxWall, Fan, Positive, Shelter, Size, Units},
    units::{air_flow, temperature},
};

/// Thickness of the plywood that is tried, m.
const PLYWOOD_M: f64 = 0.018;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let feet = case.yard.units == Units::Feet;
    let mut list = Vec::new();
    for (station, _, report) in boxes::boxed(case) {
        let (bears, span) = (report.runs_c.0, report.coldest_c);
        if span.typical >= bears {
            continue;
        }
        let why = format!("The coldest air that a “{}” may run in, by its class", station.projector.0);
        let bound = Bound { value: bears, unit: "°C".to_owned(), why };
        let says = format!(
            "On the coldest night, {}, the box of “{}” gets no warmer than about {} ({} to {}); “{}” may run from {} on",
            temperature(report.outdoors_c.0, feet),
            station.name.0,
            temperature(span.typical, feet),
            temperature(span.low, feet),
            temperature(span.high, feet),
            station.projector.0,
            temperature(bears, feet)
        );
        let finding = Finding::new(Matter::BoxCold, Level::Check, &station.name.0, None);
        list.push(finding.against(span.typical, &bound, says).unsure(span.high > bears));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((station, now, _)) = boxes::boxed_by(case, &finding.of) else { return Vec::new() };
    let of = &station.name.0;
    let mut list = Vec::new();
    let mut warmer = vec![(now.clone(), String::new())];
    if let Some(fan) = &now.fan {
        let slow = Fan { flow_m3_h: Positive((fan.flow_m3_h.0 * 0.4).max(1.0)), ..fan.clone() };
        let says = format!("Slow the fan of “{of}” to {}", air_flow(slow.flow_m3_h.0));
        warmer.push((Shelter { fan: Some(slow), ..now.clone() }, says));
        warmer.push((Shelter { fan: None, ..now.clone() }, format!("Leave the fan of “{of}” off on cold nights")));
    }
    let close = |shelter: &Shelter| Shelter {
        inlet_cm2: 0.3 * shelter.inlet_cm2,
        outlet_cm2: 0.3 * shelter.outlet_cm2,
        ..shelter.clone()
    };
    warmer.push((close(now), format!("Close most of the openings of “{of}” on cold nights")));
    if now.fan.is_some() {
        let still = Shelter { fan: None, ..close(now) };
        warmer.push((still, format!("Leave the fan of “{of}” off and close most of its openings on cold nights")));
    }
    for (shelter, says) in &warmer[1..] {
        list.push(boxes::in_box(station, shelter.clone(), says.clone()));
    }
    for (shelter, says) in &warmer {
        let thick = Shelter { wall: BoxWall::Plywood, thickness: Size::metres(PLYWOOD_M), ..shelter.clone() };
        let first = format!("Build the box of “{of}” from 18 mm plywood");
        let says = if says.is_empty() { first } else { format!("{first}. {says}") };
        list.push(boxes::in_box(station, thick, says));
    }
    list
}
