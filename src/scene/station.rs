//! Stations: one projector each, with its mount, aim and content.

use super::{
    Angle, Band, Fraction, Gamma, Keystone, Load, Name, Point, Positive, ProjectorClass, Ref, Shelter, Targets, Uv,
};
use crate::units::Length;

/// A point, or a thing by its name.
#[derive(Clone, Debug, PartialEq)]
pub enum Aim {
    /// A position.
    At(Point),
    /// The middle of a named thing.
    Thing(Ref),
}

/// How the projector lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Pose {
    /// On its feet.
    #[default]
    Table,
    /// Upside down under a ceiling.
    Ceiling,
    /// On its right side as it looks, so that the picture stands upright: taller than wide.
    Upright,
}

choice! { Pose as "pose" { Table, Ceiling, Upright } }

/// What carries it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mount {
    /// Low, on the ground.
    Ground,
    /// On a tripod or stand.
    #[default]
    Stand,
    /// On a shelf or table.
    Shelf,
    /// On a wall bracket.
    Wall,
    /// Under eaves or a beam.
    Hung,
    /// In a tree.
    Tree,
}

choice! { Mount as "mount" { Ground, Stand, Shelf, Wall, Hung, Tree } }

/// How a picture stands in its file, as against the projector's raster.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stance {
    /// Drawn as the raster lies.
    #[default]
    Wide,
    /// Drawn taller than wide, for a projector on its side.
    Upright,
}

choice! { Stance as "stance" { Wide, Upright } }

noun! {
    /// What a station throws.
    Content as "content" {
        /// A file beside the yard, or one of the built-in pictures.
        picture: String,
        /// Left upper corner of the picture's own box inside the raster as it is seen.
        from: Uv = Uv([0.0, 0.0]),
        /// Right lower corner of that box.
        to: Uv = Uv([1.0, 1.0]),
        /// How the picture stands in its file.
        stance: Stance = Stance::Wide,
        /// Whether it is sent mirrored left for right.
        mirrored: bool = false,
    }
}

impl Station {
    /// What it is meant to light, where that has a name: its targets, else the thing that it is aimed at.
    pub fn lit(&self) -> &[Ref] {
        match &self.aim {
            Aim::Thing(name) if self.target.0.is_empty() => std::slice::from_ref(name),
            _ => &self.target.0,
        }
    }

    /// Whether it is meant to light the thing of this name.
    pub fn lights(&self, name: &str) -> bool {
        self.lit().iter().any(|lit| lit.0 == name)
    }
}

noun! {
    /// One projector with what it throws: what you would carry up a ladder.
    Station as "station" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Class, by its name in the catalogue.
        projector: Ref,
        /// Whether it is on.
        on: bool = true,
        /// The lens.
        at: Point,
        /// What carries it.
        mount: Mount = Mount::Stand,
        /// Where the middle of the picture lands; by way of the mirrors where there are any.
        aim: Aim,
        /// What it is meant to light, where that is not the thing aimed at: one thing or several.
        target: Targets = Targets::default(),
        /// How it lies.
        pose: Pose = Pose::Table,
        /// Further roll about the lens axis, clockwise as the projector looks.
        roll_deg: Angle = Angle(0.0),
        /// Fold mirrors in the order that the light meets them, at most two.
        mirrors: Vec<Ref> = Vec::new(),
        /// What it throws.
        content: Content,
        /// Real white lumens as measured, in place of the class's; not those on the box.
        lumens: Option<Band> = None,
        /// Distance over picture width, in place of the class's.
        throw_ratio: Option<Positive> = None,
        /// Lens shift in picture widths and heights, in place of the class's.
        shift: Option<Uv> = None,
        /// Curve from signal to light, in place of the class's.
        gamma: Option<Gamma> = None,
        /// How it bends its picture to a surface that it does not face squarely.
        keystone: Keystone = Keystone::default(),
        /// Distance that it is focused at; the target if left out.
        focus: Option<Length> = None,
        /// Hours that the lamp or LED has run.
        hours: f64 = 0.0,
        /// Share of light that the window of its weather box lets through.
        box_window: Fraction = Fraction(1.0),
        /// What it draws beside the projector and the fan of its weather box.
        loads: Vec<Load> = Vec::new(),
        /// The weather box that it stands in.
        shelter: Option<Shelter> = None,
        /// Whether a second tie, a safety line of its own, holds it should its mount give way.
        second_tie: bool = false,
        /// Weight hung on or put on its stand, kg.
        ballast_kg: f64 = 0.0,
    }
}

impl Station {
    /// Width of its picture at unit depth, height there, and lens shift in picture widths and heights.
    pub fn raster(&self, class: &ProjectorClass) -> (f64, f64, [f64; 2]) {
        let wide = 1.0 / self.throw_ratio.unwrap_or(class.throw_ratio).0;
        let aspect = f64::from(class.pixels.0) / f64::from(class.pixels.1.max(1));
        (wide, wide / aspect, self.shift.unwrap_or(class.shift).0)
    }

    /// The same with another projector in its place, a new one as its class is: what was measured of the old one or set on it is
    /// forgotten, and so are its hours.
    #[must_use]
    pub fn with_projector(&self, class: &ProjectorClass) -> Self {
        Self {
            projector: Ref::to(&class.name.0),
            lumens: None,
            throw_ratio: None,
            shift: None,
            gamma: None,
            keystone: Keystone::default(),
            focus: None,
            hours: 0.0,
            ..self.clone()
        }
    }

    /// Width, height and depth of its projector's body as it lies, m.
    pub fn body(&self, class: &ProjectorClass) -> [f64; 3] {
        let [wide, high, deep] = [&class.body.width, &class.body.height, &class.body.depth].map(|size| size.0.m);
        if self.pose == Pose::Upright { [high, wide, deep] } else { [wide, high, deep] }
    }
}
