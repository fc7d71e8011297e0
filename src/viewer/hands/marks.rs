//! Marks over the picture for what has no body to click on, and handles of what is chosen.

use crate::viewer::studio::Studio;
use gauzelight::light::Night;
use glam::Vec3;

/// What a mark stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// A station's lens.
    Lens,
    /// A lamp.
    Lamp,
    /// A viewing spot.
    Spot,
    /// A meter.
    Meter,
    /// A supply of electricity.
    Supply,
    /// Where the middle of the chosen station's picture lands.
    Aim,
    /// Where the middle of its figure lands.
    Figure,
    /// The handle that moves the chosen thing along an axis: 0, 1 or 2.
    Axis(usize),
}

/// A mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it stands for.
    pub sign: Sign,
    /// Whose it is.
    pub name: String,
    /// Where it is.
    pub at: Vec3,
}

/// Marks of all stations, lamps, meters and supplies, and of what else is chosen; handles last, so that they are found first from the end. What
/// is locked has no handles.
pub fn marks(studio: &Studio, eye: Vec3) -> Vec<Mark> {
    let (yard, night) = (studio.yard(), studio.night());
    let mut list = Vec::new();
    for station in &yard.stations {
        list.push(Mark { sign: Sign::Lens, name: station.name.0.clone(), at: station.at.vec3() });
    }
    for lamp in &yard.lamps {
        list.push(Mark { sign: Sign::Lamp, name: lamp.name.0.clone(), at: lamp.at.vec3() });
    }
    for meter in &yard.meters {
        list.push(Mark { sign: Sign::Meter, name: meter.name.0.clone(), at: meter.at.vec3() });
    }
    for supply in &yard.supplies {
        list.push(Mark { sign: Sign::Supply, name: supply.name.0.clone(), at: supply.at.vec3() });
    }
    let Some(item) = studio.item() else { return list };
    if let Some(spot) = yard.spots.iter().find(|s| s.name.0 == item.name()) {
        let at = spot.at.vec3() + spot.eye.f32() * Vec3::Y;
        list.push(Mark { sign: Sign::Spot, name: spot.name.0.clone(), at });
    }
    if yard.locked.iter().any(|locked| locked.0 == item.name()) {
        return list;
    }
    if let Some(index) = yard.stations.iter().position(|s| s.name.0 == item.name()) {
        let name = &yard.stations[index].name.0;
        let figure = studio.readings.reading(index, name).and_then(|reading| reading.figure_at);
        if let Some(at) = figure {
            let at = Vec3::from(at.map(|v| v as f32));
            list.push(Mark { sign: Sign::Figure, name: name.clone(), at });
        }
        if let Some(at) = night.aim(&yard.stations[index].aim) {
            list.push(Mark { sign: Sign::Aim, name: name.clone(), at });
        }
    }
    if let Some(anchor) = anchor(&item, night) {
        // As long on the display however far away.
        let arm = 0.09 * (anchor - eye).length().max(0.5);
        for (axis, way) in [Vec3::X, Vec3::Y, Vec3::Z].into_iter().enumerate() {
            list.push(Mark { sign: Sign::Axis(axis), name: item.name().to_owned(), at: anchor + arm * way });
        }
    }
    list
}

/// The point that an item is moved by; `None` for what cannot be moved freely.
pub fn anchor(item: &gauzelight::scene::Item, night: &Night) -> Option<Vec3> {
    if !item.is_movable() {
        return None;
    }
    let points = item.points();
    let sum = points.iter().fold([0.0; 3], |a, p| [a[0] + p[0], a[1] + p[1], a[2] + p[2]]);
    let middle = Vec3::from(sum.map(|v| (v / points.len().max(1) as f64) as f32));
    if points.is_empty() { night.place(item.name()).map(|place| place.middle) } else { Some(middle) }
}
