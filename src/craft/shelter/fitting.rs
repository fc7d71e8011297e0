//! A box for a station that has none.

use super::{Outdoors, air, ease::Ease, heat, limit, rise, wanted};
use crate::scene::{
    BoxWindow, Catalogue, Fan, PaneKind, Positive, ProjectorClass, Shelter, Size, Station, Yard, limits,
};

/// Pressure that a small fan holds with its way shut, Pa; invented, typical of one 8 to 12 cm across.
pub(super) const PRESSURE: f64 = 25.0;
/// Room left on every side of a projector, m: common practice, no source.
const ROOM: f64 = 0.08;
/// Openings as large as such a fan, cm², and larger ones where those let too little through.
const OPENINGS_CM2: [f64; 3] = [110.0, 220.0, 440.0];
/// The largest fan that such a box takes, m³/h; invented, typical.
const LARGEST_M3_H: f64 = 400.0;
/// A fan is chosen for so many times the air that is needed: dust and heat wear it.
const SPARE: f64 = 1.3;

/// A plastic box around a station's projector, with openings, a pane that its picture passes and, where that is not
/// enough, a fan for the rise that the limits name. `None` where its class is not known.
pub fn fitting(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<Shelter> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let [wide, high, deep] = station.body(class);
    let size = |m: f64| Size::metres((m * 20.0).ceil() / 20.0);
    let mut shelter = Shelter {
        width: size(wide + 2.0 * ROOM),
        height: size(high + 2.0 * ROOM),
        depth: size(deep + 2.0 * ROOM),
        inlet_cm2: OPENINGS_CM2[0],
        outlet_cm2: OPENINGS_CM2[0],
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
    let celsius = yard.climate.warmest_c;
    let warm = Outdoors { celsius, pressure: air::pressure(yard.climate.above_sea.m) };
    let alone = rise(&shelter, heat(class, station, &shelter), false, warm, Ease::Hard);
    // Whether even where all that is not known turns out badly it stays cool enough at the warmest hour.
    if celsius + alone > class.runs_c.1 - limit(yard, catalogue, limits::BOX_ROOM) {
        fan(yard, catalogue, (station, class), &mut shelter, warm);
    }
    Some(shelter)
}

/// Puts the fan that a box wants into it, in openings that let it work.
fn fan(
    yard: &Yard,
    catalogue: &Catalogue,
    (station, class): (&Station, &ProjectorClass),
    shelter: &mut Shelter,
    warm: Outdoors,
) {
    shelter.fan = Some(small_fan());
    let watts = SPARE * heat(class, station, shelter);
    let mut rated = None;
    for opening in OPENINGS_CM2 {
        (shelter.inlet_cm2, shelter.outlet_cm2) = (opening, opening);
        rated = wanted(yard, catalogue, class, shelter, watts, warm).rating_m3_h.filter(|rated| *rated <= LARGEST_M3_H);
        if rated.is_some() {
            break;
        }
    }
    let flow_m3_h = Positive((rated.unwrap_or(LARGEST_M3_H) / 5.0).ceil() * 5.0);
    shelter.fan = Some(Fan { flow_m3_h, ..small_fan() });
}

/// A small fan as it is sold, 8 to 12 cm across; invented, typical.
pub fn small_fan() -> Fan {
    Fan { flow_m3_h: Positive(40.0), pressure_pa: Positive(PRESSURE), watts: Positive(2.0) }
}
