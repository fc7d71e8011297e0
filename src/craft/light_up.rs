//! A station for a thing that is to be lit: behind the film of a window, before anything else.
//!
//! With throw ratio `R = distance / picture width` (ISO/IEC 21118) a picture as wide as `w` wants the lens `R w` away; one
//! as high as `h` with aspect `a` wants `R a h`. The lesser of the two keeps the whole picture on its target; of a window, the
//! greater fills it.

use crate::{
    edit::{Edit, copy_of, free_name},
    geometry::Place,
    light::Night,
    scene::{
        Aim, Angle, Catalogue, Content, Fraction, Item, Keystone, Mount, Name, Opening, Point, Pose, Ref, Stance,
        Station, Targets, Window, Yard,
    },
};
use glam::Vec3;

/// What a station begins with.
const CLASS: &str = "mini LED";
/// Fabric that a window's film begins as.
const FILM: &str = "rear film, grey";
/// How high a station before its target stands, m.
const LOW: f64 = 0.4;

/// The edit that lights a thing: adds a film, where it is a window without one, and a station whose picture fills it. `None`
/// for what has no place or is a station, a lamp, a viewing spot or a meter itself.
pub fn light_up(yard: &Yard, night: &Night, catalogue: &Catalogue, name: &str) -> Option<Edit> {
    let item = yard.item(name)?;
    let place = night.place(name)?;
    let mut edits = Vec::new();
    let inside = match &item {
        Item::Opening(_, Opening::Window(window)) => Some((window.clone(), name.to_owned())),
        Item::Film(film) => film.window.as_ref().and_then(|at| window_of(yard, &at.0)).map(|w| (w, name.to_owned())),
        Item::Station(_)
        | Item::Lamp(_)
        | Item::Spot(_)
        | Item::Meter(_)
        | Item::Mirror(_)
        | Item::Area(_)
        | Item::Supply(_)
        | Item::Cable(_) => return None,
        _ => None,
    };
    let mut aim = name.to_owned();
    if let (Item::Opening(..), Some((window, _))) = (&item, &inside) {
        let hung = yard.films.iter().find(|film| film.window.as_ref().is_some_and(|at| at.0 == window.name.0));
        match hung {
            Some(film) => aim = film.name.0.clone(),
            None => {
                let film = film_in(yard, window);
                aim = film.name().to_owned();
                edits.push(Edit::Add(film));
            }
        }
    }
    let station = match &inside {
        Some((window, _)) => behind(yard, catalogue, window, place, &aim)?,
        None => before(yard, catalogue, &item, place, &aim)?,
    };
    edits.push(Edit::Add(Item::Station(station)));
    Some(Edit::All(edits))
}

fn window_of(yard: &Yard, name: &str) -> Option<Window> {
    match yard.item(name)? {
        Item::Opening(_, Opening::Window(window)) => Some(window),
        _ => None,
    }
}

/// A film in a window.
fn film_in(yard: &Yard, window: &Window) -> Item {
    let film = crate::scene::RearFilm {
        name: Name::of("film"),
        note: String::new(),
        fabric: Ref::to(FILM),
        window: Some(Ref::to(&window.name.0)),
        at: None,
        size: None,
        turn_deg: Angle(0.0),
    };
    copy_of(yard, &Item::Film(film))
}

/// In the room, square to the film, so far that the picture fills the window, or as far as the room is deep.
fn behind(yard: &Yard, catalogue: &Catalogue, window: &Window, place: Place, aim: &str) -> Option<Station> {
    let (ratio, aspect) = throw(yard, catalogue)?;
    let face = place.face?;
    let (wide, high) = (window.width.0.m, window.height.0.m);
    let wanted = ratio * wide.max(aspect * high);
    let throw = wanted.min(window.room.depth.0.m - 0.3).max(0.4);
    let at = place.middle - throw as f32 * face.normal();
    let mut station = station(yard, &window.name.0, at, aim);
    (station.mount, station.content.mirrored) = (Mount::Shelf, true);
    Some(station)
}

/// Before a thing and low, so far that the picture is as high as it, or as wide where that is less.
fn before(yard: &Yard, catalogue: &Catalogue, item: &Item, place: Place, aim: &str) -> Option<Station> {
    let (ratio, aspect) = throw(yard, catalogue)?;
    let (normal, wide, high) = match place.face {
        Some(face) => (face.normal(), f64::from(face.u.length()), f64::from(face.v.length())),
        None => (Vec3::Z, 1.0, 2.0 * f64::from(place.middle.y).max(0.15)),
    };
    // A figure taller than wide is best met by a projector on its side.
    let tall = high > 1.15 * wide;
    let (across, up) = if tall { (1.0 / aspect, 1.0) } else { (1.0, 1.0 / aspect) };
    let picture = (wide / across).min(high / up).min(4.0);
    let throw = (ratio * picture).max(0.8);
    let at = place.middle + throw as f32 * normal.with_y(0.0).normalize_or(Vec3::Z);
    let mut station = station(yard, item.name(), at.with_y(LOW as f32), aim);
    station.mount = Mount::Ground;
    if tall {
        (station.pose, station.content.stance) = (Pose::Upright, Stance::Upright);
        station.content.picture = "guardian".to_owned();
    }
    Some(station)
}

fn throw(yard: &Yard, catalogue: &Catalogue) -> Option<(f64, f64)> {
    let class = yard.projector(catalogue, CLASS)?;
    Some((class.throw_ratio.0, f64::from(class.pixels.0) / f64::from(class.pixels.1.max(1))))
}

/// A station as it begins, called after what it lights.
fn station(yard: &Yard, lights: &str, at: Vec3, aim: &str) -> Station {
    let mut title: String = lights.chars().take(50).collect();
    if let Some(first) = title.get(..1).map(str::to_uppercase) {
        title.replace_range(..1, &first);
    }
    let name = free_name(yard, &title);
    let at = at.as_dvec3().to_array().map(|v| (v * 100.0).round() / 100.0);
    Station {
        name: Name::of(&name),
        note: String::new(),
        projector: Ref::to(CLASS),
        on: true,
        at: Point::metres(at[0], at[1], at[2]),
        mount: Mount::Stand,
        aim: Aim::Thing(Ref::to(aim)),
        target: Targets::default(),
        pose: Pose::Table,
        roll_deg: Angle(0.0),
        mirrors: Vec::new(),
        content: Content {
            picture: "owl_face".to_owned(),
            from: crate::scene::Uv([0.0, 0.0]),
            to: crate::scene::Uv([1.0, 1.0]),
            stance: Stance::Wide,
            mirrored: false,
        },
        lumens: None,
        throw_ratio: None,
        shift: None,
        gamma: None,
        keystone: Keystone::default(),
        focus: None,
        hours: 0.0,
        box_window: Fraction(1.0),
        loads: Vec::new(),
        shelter: None,
        second_tie: false,
        ballast_kg: 0.0,
    }
}
