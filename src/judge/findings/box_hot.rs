//! A box in which it gets too warm for its projector.

use super::{Case, Finding, Level, Matter, boxes, finding::Bound, remedy::Proposal};
use crate::{
    craft::shelter::{self, Span},
    scene::{BoxColour, Fan, Positive, Shelter, Units, limits},
    units::{air_flow, temperature},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let room = case.limit(limits::BOX_ROOM);
    let sunny = boxes::runs_in_the_sun(case);
    let feet = case.yard.units == Units::Feet;
    let mut list = Vec::new();
    for (station, shelter, report) in boxes::boxed(case) {
        let Span { low, typical, high } = if sunny { report.sunny_c } else { report.warmest_c };
        let (_, bears) = report.runs_c;
        let bound = Bound { value: bears - room.value, unit: "°C".to_owned(), why: room.why.clone() };
        if high <= bears && typical <= bound.value {
            continue;
        }
        let level = if typical > bears { Level::Fix } else { Level::Check };
        let says = format!(
            "The box of “{}” gets to about {} ({} to {}) at the warmest hour{}, {}; “{}” may run up to {}",
            station.name.0,
            temperature(typical, feet),
            temperature(low, feet),
            temperature(high, feet),
            if sunny { " in the sun" } else { "" },
            match &shelter.fan {
                Some(_) => format!("with {} of air through it", air_flow(report.flow_m3_h.typical)),
                None => "without a fan".to_owned(),
            },
            station.projector.0,
            temperature(bears, feet)
        );
        let unsure = low < bears && bears < high;
        list.push(
            Finding::new(Matter::BoxHot, level, &station.name.0, None).against(typical, &bound, says).unsure(unsure),
        );
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((station, now, report)) = boxes::boxed_by(case, &finding.of) else { return Vec::new() };
    let of = &station.name.0;
    let mut list = Vec::new();
    if now.colour != BoxColour::White && boxes::runs_in_the_sun(case) {
        let white = Shelter { colour: BoxColour::White, ..now.clone() };
        list.push(boxes::in_box(station, white, format!("Paint the box of “{of}” white")));
    }
    let wide = Shelter {
        inlet_cm2: (2.0 * now.inlet_cm2).max(120.0),
        outlet_cm2: (2.0 * now.outlet_cm2).max(120.0),
        ..now.clone()
    };
    let openings = format!("openings of {:.0} cm² in and {:.0} cm² out", wide.inlet_cm2, wide.outlet_cm2);
    list.push(boxes::in_box(station, wide.clone(), format!("Give the box of “{of}” {openings}")));
    let rated = |times: f64| {
        let needed = report.wanted.rating_m3_h.unwrap_or(2.0 * report.wanted.flow_m3_h);
        let had = now.fan.as_ref().map_or(0.0, |fan| fan.flow_m3_h.0);
        let flow_m3_h = Positive((times * needed.max(had) / 5.0).ceil() * 5.0);
        match &now.fan {
            Some(fan) => Fan { flow_m3_h, ..fan.clone() },
            None => Fan { flow_m3_h, ..shelter::small_fan() },
        }
    };
    for times in [1.2, 2.0] {
        let fan = rated(times);
        let says = format!("Give the box of “{of}” a fan rated {}", air_flow(fan.flow_m3_h.0));
        list.push(boxes::in_box(station, Shelter { fan: Some(fan), ..now.clone() }, says));
    }
    let fan = rated(1.2);
    let says = format!("Give the box of “{of}” a fan rated {} and {openings}", air_flow(fan.flow_m3_h.0));
    list.push(boxes::in_box(station, Shelter { fan: Some(fan), ..wide }, says));
    list
}
