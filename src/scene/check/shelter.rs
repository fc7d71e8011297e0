//! Weather boxes: sizes that fit each other and what stands inside.

use super::known::Known;
use super::range::{unless, within};
use crate::scene::{Fault, Faults, PaneKind, Shelter, Station};
use crate::units::decimals;

/// Checks the box of a station, if it has one.
pub(super) fn check(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    let Some(shelter) = &station.shelter else { return };
    faults.in_field("shelter", |faults| {
        sizes(shelter, faults);
        air(shelter, faults);
        fits(known, station, shelter, faults);
    });
}

fn sizes(shelter: &Shelter, faults: &mut Faults) {
    for (field, size) in [("width", &shelter.width), ("height", &shelter.height), ("depth", &shelter.depth)] {
        within(faults, field, size.0.m, 0.02..=5.0, "from 2 cm to 5 m inside");
    }
    within(faults, "thickness", shelter.thickness.0.m, 1e-4..=0.2, "from 0.1 mm to 20 cm");
    within(faults, "free_faces", f64::from(shelter.free_faces.0), 1.0..=6.0, "from 1 to 6 faces");
    within(faults, "also_w", shelter.also_w, 0.0..=5000.0, "from 0 to 5000 W");
    let window = &shelter.window;
    if window.pane == PaneKind::Open {
        return;
    }
    within(faults, "window.thickness", window.thickness.0.m, 2e-4..=0.05, "from 0.2 mm to 5 cm");
    within(faults, "window.tilt_deg", window.tilt_deg.0, -75.0..=75.0, "from -75 to 75 degrees off square");
    let fits = window.width.0.m <= shelter.width.0.m;
    unless(fits, faults, "window.width", "this window is wider than its box", "at most as wide as the box");
    // A leaning pane may be longer than the box is high.
    let leans = window.tilt_deg.0.to_radians().cos().max(0.1);
    let fits = window.height.0.m * leans <= shelter.height.0.m;
    unless(fits, faults, "window.height", "this window is higher than its box", "at most as high as the box");
}

fn air(shelter: &Shelter, faults: &mut Faults) {
    within(faults, "inlet_cm2", shelter.inlet_cm2, 0.0..=50_000.0, "from 0 to 50000 cm²");
    within(faults, "outlet_cm2", shelter.outlet_cm2, 0.0..=50_000.0, "from 0 to 50000 cm²");
    if let Some(fan) = &shelter.fan {
        within(faults, "fan.flow_m3_h", fan.flow_m3_h.0, 0.1..=5000.0, "from 0.1 to 5000 m³/h");
        within(faults, "fan.pressure_pa", fan.pressure_pa.0, 0.5..=5000.0, "from 0.5 to 5000 Pa");
        within(faults, "fan.watts", fan.watts.0, 0.01..=1000.0, "from 0.01 to 1000 W");
    }
}

/// A box that is too small is one to look for, not one to refuse.
fn fits(known: &Known<'_>, station: &Station, shelter: &Shelter, faults: &mut Faults) {
    let Some(class) = known.yard.projector(known.catalogue, &station.projector.0) else { return };
    let [wide, high, deep] = station.body(class);
    let room =
        [("width", shelter.width.0.m, wide), ("height", shelter.height.0.m, high), ("depth", shelter.depth.0.m, deep)];
    for (field, has, needs) in room {
        if has < needs {
            let [needs, has] = [needs, has].map(|m| decimals(m * 100.0, 0));
            let what = format!("a {} is {needs} cm there, and this box has {has} cm", class.name.0);
            faults.push_in(field, Fault::warning(what).remedy("a larger box, or the class's `body` as it really is"));
        }
    }
}
