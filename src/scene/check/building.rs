//! Houses, free-standing walls and their roofs.

use super::known::Known;
use super::opening;
use super::range::{unless, within};
use crate::scene::{Faults, House, Opening, Roof, Side, Wall};
use crate::units::number;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("houses", &known.yard.houses, |faults, noun| house(known, noun, faults));
    faults.in_each("walls", &known.yard.walls, |faults, noun| wall(known, noun, faults));
}

fn house(known: &Known<'_>, house: &House, faults: &mut Faults) {
    known.surface("surface", &house.surface, faults);
    let narrowest = house.width.0.m.min(house.depth.0.m);
    let what = format!("two walls of {} leave no room in a house of {} m", house.wall.0, number(narrowest));
    unless(2.0 * house.wall.0.m < narrowest, faults, "wall", what, "make the walls thinner or the house larger");
    faults.in_field("roof", |faults| roof(known, &house.roof, faults));
    let openings = &house.openings;
    each_opening(known, openings, faults);
    opening::fit(openings, house.height.0.m, faults, |opening| {
        let side = match opening {
            Opening::Window(window) => window.side,
            Opening::Door(door) => door.side,
        };
        let width = match side {
            Side::Front | Side::Back => house.width.0.m,
            Side::Left | Side::Right => house.depth.0.m,
        };
        (side, width)
    });
}

fn wall(known: &Known<'_>, wall: &Wall, faults: &mut Faults) {
    known.surface("surface", &wall.surface, faults);
    each_opening(known, &wall.openings, faults);
    opening::fit(&wall.openings, wall.height.0.m, faults, |_| (Side::Front, wall.width.0.m));
}

fn each_opening(known: &Known<'_>, openings: &[Opening], faults: &mut Faults) {
    faults.in_each("openings", openings, |faults, opening| opening::check(known, opening, faults));
}

fn roof(known: &Known<'_>, roof: &Roof, faults: &mut Faults) {
    if let Some(surface) = roof.surface() {
        known.surface("surface", surface, faults);
    }
    let allowed = "from 1 to 75 degrees";
    match roof {
        Roof::Open | Roof::Flat(_) => {}
        Roof::Gable(roof) => within(faults, "pitch_deg", roof.pitch_deg.0, 1.0..=75.0, allowed),
        Roof::Hip(roof) => within(faults, "pitch_deg", roof.pitch_deg.0, 1.0..=75.0, allowed),
        Roof::Shed(roof) => within(faults, "pitch_deg", roof.pitch_deg.0, 1.0..=75.0, allowed),
    }
}
