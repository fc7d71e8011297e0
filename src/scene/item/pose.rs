//! Where an item stands and how it is turned, and the same item moved or turned, its lengths in the notation they had.

use super::Item;
use crate::scene::{Aim, Angle, Form, Plant, Point, Thing};
use crate::units::Length;

impl Item {
    /// Its positions: one, or both ends; none for what has no place of its own, as a film in a window.
    pub fn points(&self) -> Vec<[f64; 3]> {
        // The one list of positions is the one that can change them.
        self.clone().points_mut().iter().map(|point| [0, 1, 2].map(|axis| point.0[axis].m)).collect()
    }

    /// Its turn about the vertical, degrees, counter-clockwise from above; `None` for what has none.
    pub fn turn_deg(&self) -> Option<f64> {
        self.clone().turn_mut().map(|angle| angle.0)
    }

    /// Whether it can be moved freely.
    pub fn is_movable(&self) -> bool {
        matches!(self, Self::Area(_)) || !self.points().is_empty()
    }

    /// Moved by so much, m. What is aimed at a point keeps that aim; an opening is moved by [`Item::slid`].
    pub fn moved(mut self, by: [f64; 3]) -> Self {
        if let Self::Area(area) = &mut self {
            for (pair, by) in [(&mut area.x, by[0]), (&mut area.z, by[2])] {
                shift(&mut pair.0, by);
                shift(&mut pair.1, by);
            }
        }
        for point in self.points_mut() {
            point.0.iter_mut().zip(by).for_each(|(length, by)| shift(length, by));
        }
        self
    }

    /// An opening slid along and up its wall, m; anything else stays.
    pub fn slid(mut self, right: f64, up: f64) -> Self {
        if let Self::Opening(_, opening) = &mut self {
            let (left, sill) = opening.corner_mut();
            shift(left, right);
            shift(sill, up);
        }
        self
    }

    /// Turned further about the vertical, degrees; what has no turn stays.
    pub fn turned(mut self, by_deg: f64) -> Self {
        if let Some(angle) = self.turn_mut() {
            // To a hundredth of a degree, from −180 to 180: no hand sets it finer.
            let turned = ((angle.0 + by_deg + 180.0).rem_euclid(360.0) - 180.0) * 100.0;
            *angle = Angle(turned.round() / 100.0);
        }
        self
    }

    /// Aimed elsewhere, where it is a station or a viewing spot; anything else stays.
    pub fn aimed(mut self, at: Aim) -> Self {
        match &mut self {
            Self::Station(station) => station.aim = at,
            Self::Spot(spot) => spot.look = at,
            _ => {}
        }
        self
    }

    fn points_mut(&mut self) -> Vec<&mut Point> {
        match self {
            Self::Area(_) | Self::Opening(..) => Vec::new(),
            Self::House(n) => vec![&mut n.at],
            Self::Wall(n) => vec![&mut n.at],
            Self::Thing(Thing::Block(n)) => vec![&mut n.at],
            Self::Thing(Thing::Steps(n)) => vec![&mut n.at],
            Self::Thing(Thing::Fence(n)) => vec![&mut n.from, &mut n.to],
            Self::Thing(Thing::Post(n)) => vec![&mut n.at],
            Self::Thing(Thing::Pergola(n)) => vec![&mut n.at],
            Self::Thing(Thing::Porch(n)) => vec![&mut n.at],
            Self::Thing(Thing::Bench(n)) => vec![&mut n.at],
            Self::Plant(Plant::Hedge(n)) => vec![&mut n.from, &mut n.to],
            Self::Plant(Plant::Tree(n)) => vec![&mut n.at],
            Self::Lamp(n) => std::iter::once(&mut n.at).chain(n.to.as_mut()).collect(),
            Self::Spot(n) => std::iter::once(&mut n.at).chain(n.to.as_mut()).collect(),
            Self::Meter(n) => vec![&mut n.at],
            Self::Cloth(n) => vec![&mut n.at],
            Self::Film(n) => n.at.as_mut().into_iter().collect(),
            Self::Form(Form::Figure(n)) => vec![&mut n.at],
            Self::Form(Form::Bag(n)) => vec![&mut n.at],
            Self::Form(Form::Gourd(n)) => vec![&mut n.at],
            Self::Form(Form::Globe(n)) => vec![&mut n.at],
            Self::Form(Form::Turned(n)) => vec![&mut n.at],
            Self::Mirror(n) => vec![&mut n.at],
            Self::Station(n) => vec![&mut n.at],
            Self::Supply(n) => vec![&mut n.at],
            Self::Cable(n) => n.via.iter_mut().collect(),
        }
    }

    fn turn_mut(&mut self) -> Option<&mut Angle> {
        match self {
            Self::House(n) => Some(&mut n.turn_deg),
            Self::Wall(n) => Some(&mut n.turn_deg),
            Self::Thing(Thing::Block(n)) => Some(&mut n.turn_deg),
            Self::Thing(Thing::Steps(n)) => Some(&mut n.turn_deg),
            Self::Thing(Thing::Pergola(n)) => Some(&mut n.turn_deg),
            Self::Thing(Thing::Porch(n)) => Some(&mut n.turn_deg),
            Self::Thing(Thing::Bench(n)) => Some(&mut n.turn_deg),
            Self::Lamp(n) => Some(&mut n.turn_deg),
            Self::Meter(n) => Some(&mut n.turn_deg),
            Self::Cloth(n) => Some(&mut n.turn_deg),
            Self::Film(n) => Some(&mut n.turn_deg),
            Self::Form(Form::Figure(n)) => Some(&mut n.turn_deg),
            Self::Form(Form::Bag(n)) => Some(&mut n.turn_deg),
            Self::Form(Form::Gourd(n)) => Some(&mut n.turn_deg),
            Self::Mirror(n) => Some(&mut n.turn_deg),
            Self::Station(n) => Some(&mut n.roll_deg),
            Self::Area(_)
            | Self::Opening(..)
            | Self::Plant(_)
            | Self::Spot(_)
            | Self::Form(_)
            | Self::Thing(_)
            | Self::Supply(_)
            | Self::Cable(_) => None,
        }
    }
}

fn shift(length: &mut Length, by: f64) {
    if by != 0.0 {
        *length = length.changed(length.m + by);
    }
}
