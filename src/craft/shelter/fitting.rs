//! A box for a station that has none.

use super::{Outdoors, air, draught, ease::Ease, limit, rise};
use crate::scene::{
    BoxWindow, Catalogue, Fan, PaneKind, Pose, Positive, ProjectorClass, Shelter, Size, Station, Yard, limits,
};

/// Pressure that a small fan holds with its way shut, Pa; invented, typical of one 8 to 12 cm across.
pub(super) const PRESSURE: f64 = 25.0;
/// Room left on every side of a projector, m: common practice, no source.
const ROOM: f64 = 0.08;
/// Openings as large as such a fan, cm².
const OPENING_CM2: f64 = 110.0;
/// A fan is chosen for so many times the air that is needed: dust and heat wear it.
const SPARE: f64 = 1.3;

/// A plastic box around a station's projector, with openings, a pane that its picture passes and, where that is not
/// enough, a fan for the rise that the limits name. `None` where its class is not known.
pub fn fitting(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<Shelter> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let [wide, high, deep] = body(station, class);
    let size = |m: f64| Size::metres((m * 20.0).ceil() / 20.0);
    let mut shelter = Shelter {
        width: size(wide + 2.0 * ROOM),
        height: size(high + 2.0 * ROOM),
        depth: size(deep + 2.0 * ROOM),
        inlet_cm2: OPENING_CM2,
        outlet_cm2: OPENING_CM2,
        ..Shelter::default()
    };
    let needs = super::pane::loss(station, class, &shelter.window);
    let pane = |m: f64, most: &Size| Size::metres((((m + 0.03) * 50.0).ceil() / 50.0).min(most.0.m));
    shelter.window = BoxWindow {
        pane: PaneKind::Glass,
        width: pane(needs.needs_width_m, &shelter.width),
        height: pane(needs.needs_height_m, &shelter.height),
        ..BoxWindow::default()
    };
    if !stays_cool(yard, catalogue, class, &shelter) {
        let rise = limit(yard, catalogue, limits::BOX_RISE);
        let density = air::standard_density(yard.climate.above_sea.m);
        let flow = SPARE * air::flow(class.watts.0, rise, density);
        let resistance = draught::resistance(&shelter, true, Ease::Typical);
        let rating = draught::rating(flow, PRESSURE, resistance, density).unwrap_or(3.0 * flow);
        let flow_m3_h = Positive((air::per_hour(rating) / 5.0).ceil() * 5.0);
        shelter.fan = Some(Fan { flow_m3_h, ..small_fan() });
    }
    Some(shelter)
}

/// Width, height and depth of a projector's body as its station lays it, m.
pub(super) fn body(station: &Station, class: &ProjectorClass) -> [f64; 3] {
    let [wide, high, deep] = [&class.body.width, &class.body.height, &class.body.depth].map(|size| size.0.m);
    if station.pose == Pose::Upright { [high, wide, deep] } else { [wide, high, deep] }
}

/// Whether it needs no fan: even where all that is not known turns out badly, it stays cool enough at the warmest hour.
fn stays_cool(yard: &Yard, catalogue: &Catalogue, class: &ProjectorClass, shelter: &Shelter) -> bool {
    let celsius = yard.climate.warmest_c;
    let outdoors = Outdoors { celsius, pressure: air::pressure(yard.climate.above_sea.m) };
    let inside = celsius + rise(shelter, class.watts.0, false, outdoors, Ease::Hard);
    inside <= class.runs_c.1 - limit(yard, catalogue, limits::BOX_ROOM)
}

/// A small fan as it is sold, 8 to 12 cm across; invented, typical.
pub fn small_fan() -> Fan {
    Fan { flow_m3_h: Positive(40.0), pressure_pa: Positive(PRESSURE), watts: Positive(2.0) }
}
