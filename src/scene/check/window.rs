//! Windows that a station is aimed at, and whether anything in them takes its light.

use super::known::Known;
use crate::scene::{Aim, Angle, Fault, Faults, Glazing, House, Opening, Point, Side, Station, Wall, Window};
use glam::{DVec3, dvec3};

/// Warns of a station that is meant to light a glazed window in which nothing takes its light: neither film nor cloth nor
/// insect screen.
pub(super) fn takes_light(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    let Aim::Thing(aim) = &station.aim else { return };
    // What lights something else by way of a window is no concern here.
    if !station.lit().contains(aim) {
        return;
    }
    let Some((window, middle)) = find(known, &aim.0) else { return };
    let bare = window.glazing != Glazing::Unglazed && window.screen.is_none();
    if bare && !known.yard.films.iter().any(|film| film.window.as_ref() == Some(aim)) && !hung(known, window, middle) {
        let fault = Fault::warning("nothing in this window takes light");
        faults.push_in("aim", fault.remedy("hang a film in it, or aim at a cloth"));
    }
}

/// Whether a cloth or a film with a place of its own hangs in a window: no further off than the window is large.
fn hung(known: &Known<'_>, window: &Window, middle: DVec3) -> bool {
    let reach = window.width.0.m.max(window.height.0.m);
    let down = |top: &Point, height: f64| metres(top) - 0.5 * height * DVec3::Y;
    let cloths = known.yard.cloths.iter().map(|cloth| down(&cloth.at, cloth.height.0.m));
    let films = known.yard.films.iter().filter_map(|film| Some(down(film.at.as_ref()?, film.size.as_ref()?.1.0.m)));
    cloths.chain(films).any(|at| (at - middle).length() <= reach)
}

/// The window of this name, and its middle, m.
fn find<'a>(known: &Known<'a>, name: &str) -> Option<(&'a Window, DVec3)> {
    let named = |openings: &'a [Opening]| {
        openings.iter().find_map(|opening| match opening {
            Opening::Window(window) if window.name.0 == name => Some(window),
            _ => None,
        })
    };
    let of_house = |house: &'a House| {
        let window = named(&house.openings)?;
        let (x, z) = (0.5 * house.width.0.m, -house.depth.0.m);
        let (foot, along) = match window.side {
            Side::Front => (dvec3(-x, 0.0, 0.0), DVec3::X),
            Side::Back => (dvec3(x, 0.0, z), DVec3::NEG_X),
            Side::Left => (dvec3(-x, 0.0, z), DVec3::Z),
            Side::Right => (dvec3(x, 0.0, 0.0), DVec3::NEG_Z),
        };
        Some((window, stands(&house.at, house.turn_deg, in_wall(window, foot, along))))
    };
    let of_wall = |wall: &'a Wall| {
        let window = named(&wall.openings)?;
        let foot = dvec3(-0.5 * wall.width.0.m, 0.0, 0.0);
        Some((window, stands(&wall.at, wall.turn_deg, in_wall(window, foot, DVec3::X))))
    };
    known.yard.houses.iter().find_map(of_house).or_else(|| known.yard.walls.iter().find_map(of_wall))
}

/// The middle of a window in a wall whose left end stands at `foot`.
fn in_wall(window: &Window, foot: DVec3, along: DVec3) -> DVec3 {
    let up = window.sill.m + 0.5 * window.height.0.m;
    foot + (window.left.m + 0.5 * window.width.0.m) * along + up * DVec3::Y
}

/// A point of a house or wall in the yard.
fn stands(at: &Point, turn: Angle, point: DVec3) -> DVec3 {
    metres(at) + glam::DQuat::from_rotation_y(turn.0.to_radians()) * point
}

fn metres(point: &Point) -> DVec3 {
    DVec3::from_array([0, 1, 2].map(|axis: usize| point.0[axis].m))
}
