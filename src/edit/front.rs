//! A house front from a few measures: a wall with its windows.

use super::{Edit, copy_of};
use crate::{
    scene::{Angle, Count, Door, Glazing, Item, Name, Opening, Point, Ref, Room, Side, Size, Wall, Window, Yard},
    units::Length,
};

/// A window or door as measured on its wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// From the left end of the wall, as seen from outside.
    pub left: Length,
    /// From the foot of the wall.
    pub sill: Length,
    /// Clear width.
    pub width: Length,
    /// Clear height.
    pub height: Length,
    /// Whether it is a door.
    pub door: bool,
}

/// A wall with its windows.
#[derive(Clone, Debug, PartialEq)]
pub struct Front {
    /// Along the wall.
    pub width: Length,
    /// From foot to top.
    pub height: Length,
    /// Foot of its middle.
    pub at: Point,
    /// Its windows and doors.
    pub openings: Vec<Measured>,
}

impl Front {
    /// A wall with so many windows of a usual size, evenly spread and 0.9 m above the foot, all in the notation of the
    /// wall's width.
    pub fn with_windows(width: Length, height: Length, at: Point, windows: u32) -> Self {
        let bay = width.m / f64::from(windows.max(1));
        let (wide, high) = (1.1_f64.min(0.7 * bay), 1.3_f64.min(0.5 * height.m));
        let sill = 0.9_f64.min(0.4 * height.m);
        let openings = (0..windows).map(|index| Measured {
            left: width.changed((f64::from(index) + 0.5) * bay - 0.5 * wide),
            sill: width.changed(sill),
            width: width.changed(wide),
            height: width.changed(high),
            door: false,
        });
        Self { openings: openings.collect(), width, height, at }
    }

    /// The edit that builds it.
    pub fn edit(&self, yard: &Yard) -> Edit {
        let named = |measured: &Measured| measured.opening(if measured.door { "door" } else { "window" });
        let openings = self.openings.iter().map(named).collect();
        let front = Item::Wall(wall("front", &self.width, &self.height, &self.at, openings));
        Edit::Add(copy_of(yard, &front))
    }
}

impl Measured {
    fn opening(&self, name: &str) -> Opening {
        let (name, note, side) = (Name::of(name), String::new(), Side::Front);
        let (left, sill) = (self.left.clone(), self.sill.clone());
        let (width, height) = (Size(self.width.clone()), Size(self.height.clone()));
        if self.door {
            let (surface, room) = (Ref::to("wood, dark"), Room::default());
            Opening::Door(Door { name, note, side, left, sill, width, height, open: false, surface, room })
        } else {
            Opening::Window(Window {
                name,
                note,
                side,
                left,
                sill,
                width,
                height,
                glazing: Glazing::Single,
                screen: None,
                bars: (Count(1), Count(1)),
                bar: Size::metres(0.03),
                escape: false,
                room: Room::default(),
            })
        }
    }
}

fn wall(name: &str, width: &Length, height: &Length, at: &Point, openings: Vec<Opening>) -> Wall {
    Wall {
        name: Name::of(name),
        note: String::new(),
        at: at.clone(),
        width: Size(width.clone()),
        height: Size(height.clone()),
        turn_deg: Angle(0.0),
        surface: Ref::to("painted boards, pale"),
        thickness: Size::metres(0.2),
        openings,
    }
}
