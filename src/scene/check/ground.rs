//! The ground, the areas on it, and the evening.

use super::known::Known;
use super::range::{unless, within};
use crate::scene::Faults;
use crate::units::Length;

/// Open level ground under an overcast noon sky, lx; no evening is brighter.
const BRIGHTEST_SKY: f64 = 120_000.0;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_field("ground", |faults| known.surface("surface", &known.yard.ground.surface, faults));
    faults.in_each("areas", &known.yard.areas, |faults, area| {
        known.surface("surface", &area.surface, faults);
        ordered("x", &area.x, faults);
        ordered("z", &area.z, faults);
    });
    faults.in_field("evening", |faults| evening(known, faults));
}

fn ordered(field: &str, (least, greatest): &(Length, Length), faults: &mut Faults) {
    let what = format!("an area from {least} to {greatest} has no extent");
    unless(least.m < greatest.m, faults, field, what, "write the lesser first, then the greater");
    let far = least.m.abs().max(greatest.m.abs());
    unless(far <= 500.0, faults, field, "this area reaches too far", "from -500 to 500 m");
}

fn evening(known: &Known<'_>, faults: &mut Faults) {
    let evening = &known.yard.evening;
    let allowed = "from 0 (no light at all) to 120000 lx (open shade by day)";
    within(faults, "sky_lx", evening.sky_lx, 0.0..=BRIGHTEST_SKY, allowed);
    if let Some(moon) = &evening.moon {
        faults.in_field("moon", |faults| {
            within(faults, "lx", moon.lx, 0.0..=1.0, "from 0 to 1 lx; a high full moon gives 0.3");
            let allowed = "from 2 to 90 degrees above the horizon; leave the moon out when it is down";
            within(faults, "height_deg", moon.height_deg.0, 2.0..=90.0, allowed);
        });
    }
}
