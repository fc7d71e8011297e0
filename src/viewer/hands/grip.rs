//! A grip on the chosen thing, from the press of the button to its release.

use super::snap::{Guide, slid_snapped, snapped};
use gauzelight::{
    edit::Edit,
    light::{EyeRay, Night},
    scene::{Aim, Item, Point, Ref, Yard},
};
use glam::{DVec3, Vec3};

/// What is taken hold of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Grip {
    /// The thing itself, at this point: it moves along the ground, or an opening along its wall.
    Body(Vec3),
    /// Its handle along an axis, which stands at this point.
    Axis(usize, Vec3),
    /// Where the middle of its picture lands.
    Aim,
    /// Where the middle of its figure lands, which is here.
    Figure(Vec3),
}

/// Where the pointer is now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The ray under it.
    pub ray: EyeRay,
    /// Upwards instead of along the ground.
    pub upright: bool,
    /// What is behind cloth and glass.
    pub through: bool,
    /// Without snapping.
    pub free: bool,
}

/// A thing that is held.
#[derive(Clone, Debug)]
pub struct Held {
    /// By what.
    pub grip: Grip,
    /// As it was.
    pub before: Item,
    /// How far it has come, m.
    pub by: [f64; 3],
    /// Lines that it has come to stand on.
    pub guides: Vec<Guide>,
}

/// How near a line must be to draw a thing onto it, as an angle seen from the eye, rad.
const DRAW: f32 = 0.006;

impl Held {
    /// Takes hold of an item.
    pub fn take(grip: Grip, item: Item) -> Self {
        Self { grip, before: item, by: [0.0; 3], guides: Vec::new() }
    }

    /// The edit that follows the pointer; `None` where it points nowhere.
    pub fn follow(&mut self, yard: &Yard, night: &Night, step: Step) -> Option<Edit> {
        let item = match self.grip {
            Grip::Aim => self.aimed(yard, night, step)?,
            Grip::Figure(from) => self.figure_aimed(yard, night, from, step)?,
            Grip::Axis(axis, from) => {
                let along = [Vec3::X, Vec3::Y, Vec3::Z][axis];
                let far = nearest_along(step.ray, from, along)?;
                let mut by = [0.0; 3];
                by[axis] = f64::from(far);
                self.moved(yard, night, by, from, step)
            }
            Grip::Body(from) => self.carried(yard, night, from, step)?,
        };
        Some(Edit::Change(item))
    }

    fn carried(&mut self, yard: &Yard, night: &Night, from: Vec3, step: Step) -> Option<Item> {
        if let Item::Opening(..) = &self.before {
            let face = night.place(self.before.name())?.face?;
            let on = meet(step.ray, from, face.normal())?;
            let (right, up) = ((on - from).dot(face.u.normalize()), (on - from).dot(face.v.normalize()));
            let way = [f64::from(right), f64::from(up)];
            let near = f64::from(DRAW * (from - step.ray.from).length());
            let ([right, up], guides) =
                if step.free { (way, Vec::new()) } else { slid_snapped(yard, &self.before, way, near) };
            (self.by, self.guides) = ([right, up, 0.0], guides);
            return Some(self.before.clone().slid(right, up));
        }
        let normal = if step.upright { step.ray.along.with_y(0.0).normalize_or(Vec3::Z) } else { Vec3::Y };
        let on = meet(step.ray, from, normal)?;
        let way = if step.upright { Vec3::Y * (on.y - from.y) } else { (on - from).with_y(0.0) };
        // Near the horizon a pixel is many metres.
        (way.length() < 60.0).then(|| self.moved(yard, night, way.as_dvec3().to_array(), from, step))
    }

    fn moved(&mut self, yard: &Yard, night: &Night, by: [f64; 3], from: Vec3, step: Step) -> Item {
        let near = f64::from(DRAW * (from - step.ray.from).length());
        (self.by, self.guides) =
            if step.free { (by, Vec::new()) } else { snapped(yard, night, &self.before, by, near) };
        self.before.clone().moved(self.by)
    }

    fn aimed(&mut self, yard: &Yard, night: &Night, step: Step) -> Option<Item> {
        let seen = night.seen(step.ray, step.through);
        if seen.name.is_empty() {
            return None;
        }
        self.guides.clear();
        let middle = night.place(&seen.name).map(|place| place.middle);
        let near = DRAW * 2.0 * seen.distance;
        let aim = match middle {
            Some(middle) if !step.free && (middle - seen.point).length() < near.max(0.04) => {
                Aim::Thing(Ref::to(&seen.name))
            }
            _ => Aim::At(point_like(&self.before, on_tape(yard, seen.point))),
        };
        Some(self.before.clone().aimed(aim))
    }

    /// The picture moves as far as its figure is moved.
    fn figure_aimed(&mut self, yard: &Yard, night: &Night, from: Vec3, step: Step) -> Option<Item> {
        let seen = night.seen(step.ray, step.through);
        let Item::Station(station) = &self.before else { return None };
        let aim = night.aim(&station.aim).filter(|_| !seen.name.is_empty())?;
        self.guides.clear();
        let at = on_tape(yard, aim + seen.point - from);
        self.by = (seen.point - from).as_dvec3().to_array();
        Some(self.before.clone().aimed(Aim::At(point_like(&self.before, at))))
    }
}

/// A point to the steps of a tape.
fn on_tape(yard: &Yard, point: Vec3) -> [f64; 3] {
    let tape = super::step_m(yard.units);
    point.as_dvec3().to_array().map(|v| (v / tape).round() * tape)
}

/// A point in the notation that an item's own position has.
fn point_like(item: &Item, at: [f64; 3]) -> Point {
    let own = match item {
        Item::Station(station) => station.at.clone(),
        Item::Spot(spot) => spot.at.clone(),
        _ => Point::default(),
    };
    Point([0, 1, 2].map(|axis| own.0[axis].changed(at[axis])))
}

/// Where a ray meets the plane through a point.
fn meet(ray: EyeRay, through: Vec3, normal: Vec3) -> Option<Vec3> {
    let steep = ray.along.dot(normal);
    let t = (through - ray.from).dot(normal) / steep;
    (steep.abs() > 1e-3 && t > 0.0 && t < 200.0).then(|| ray.from + t * ray.along)
}

/// How far along a line its point nearest to a ray is, m; `None` where both run alike.
fn nearest_along(ray: EyeRay, from: Vec3, along: Vec3) -> Option<f32> {
    let (d, w) = (ray.along.as_dvec3(), (from - ray.from).as_dvec3());
    let a = along.as_dvec3();
    let b = a.dot(d);
    let denominator = 1.0 - b * b;
    let t = (b * d.dot(w) - a.dot(w)) / denominator;
    (denominator > 1e-4 && DVec3::splat(t).is_finite() && t.abs() < 60.0).then_some(t as f32)
}
