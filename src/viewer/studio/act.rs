//! Everything a person can do in the window.

use super::{
    super::hands::{Grip, Step},
    printing::Kind,
    recovery::Left,
};
use gauzelight::{
    edit::{Edit, Starter},
    judge::{compare, findings::Finding},
    scene::{Clock, Yard},
    sheet::Setup,
};
use glam::Vec3;
use std::path::PathBuf;

/// Everything a person can do in the window.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Stand at a viewing spot, by its place in the yard.
    Go(usize),
    /// Back to the spot last stood at.
    Home,
    /// Turn about what is looked at, rad.
    Turn(f32, f32),
    /// Look around, rad.
    Look(f32, f32),
    /// Walk to the right, up, forwards, m.
    Walk([f32; 3]),
    /// Come closer by a factor.
    Approach(f32),
    /// Pass by at this speed, m/s; none stops.
    WalkBy(Option<f32>),
    /// Choose a thing by its name, or none.
    Choose(Option<String>),
    /// The station after the chosen one.
    NextStation,
    /// The thing after the chosen one, of whatever kind.
    NextThing,
    /// Switch a station on or off.
    Switch(usize),
    /// Switch the chosen one.
    SwitchChosen,
    /// Luminance that shows as white, cd/m².
    White(f32),
    /// False colour on or off.
    FalseColour,
    /// What an adapted eye sees, on or off.
    Adapted,
    /// Outlines of the throws on or off.
    Outlines,
    /// Set the clock of a dated evening, and whether that goes on from the one before.
    Clock(Clock, bool),
    /// Give the evening a date and a place, or go back to plain numbers.
    Dated(bool),
    /// Show this at the side, or close it.
    Aside(Aside),
    /// Try what would help against a finding.
    WhatHelps(Box<Finding>),
    /// Illuminance by the sky, lx, and whether it goes on from the one before.
    Sky(f32, bool),
    /// Change the yard.
    Edit(Edit),
    /// Change the yard; once that is done the card in the middle closes, and this is chosen.
    Build(Edit, Option<String>),
    /// Set one entry of one field of a thing as typed.
    Type {
        /// Whose.
        of: Of,
        /// The field; `name` renames it.
        field: String,
        /// Which of the field's entries.
        index: usize,
        /// What was typed.
        text: String,
    },
    /// Keep what somebody owns, for this yard and every other.
    Own(Edit),
    /// Show a change without making it; none goes back.
    Preview(Option<Edit>),
    /// Take hold of the chosen thing.
    Grip(Grip),
    /// Drag it to where the pointer is, or let go.
    Drag(Option<Step>),
    /// Take up a tape measure, or put it down.
    Tape,
    /// Hold an end of it here.
    TapeAt(Vec3),
    /// Move the chosen thing by so many steps along x, y and z.
    Nudge([i32; 3]),
    /// Turn the chosen thing by so many degrees.
    TurnChosen(f64),
    /// Copy the chosen thing.
    CopyChosen,
    /// Remove the chosen thing.
    RemoveChosen,
    /// Lock or unlock the chosen thing.
    LockChosen,
    /// Put the chosen thing away, or bring it out.
    HideChosen,
    /// Lay the chosen station on its side, hang it, or stand it up: the next way to lie.
    LayChosen,
    /// Add a new thing of this kind where one looks.
    Add(&'static str),
    /// Put a film into the chosen window and a station behind it.
    LightWindow,
    /// One step back.
    Undo,
    /// One step forward.
    Redo,
    /// Compare what could be bought for a station, by its index.
    CompareFor(usize, compare::Of),
    /// Lay out everything that can be printed, as it was last where nothing is said.
    Print(Option<Setup>),
    /// Write what was laid out.
    WritePaper(Kind, PathBuf),
    /// Hold the arrangement shown against this one.
    Compare(String),
    /// Flip to the arrangement shown before.
    Flip,
    /// Help on or off.
    Help,
    /// The page of five questions on or off.
    Questions,
    /// Open a yard made by the five questions.
    Open(Box<Yard>),
    /// Begin anew.
    New(Starter),
    /// Open a yard's file.
    OpenFile(PathBuf),
    /// Save.
    Save,
    /// Save to this file.
    SaveAs(PathBuf),
    /// Ask for a file to open or to save to.
    Ask(Asking),
    /// End, if nothing is lost by it.
    Quit,
    /// Go on with what would lose changes.
    Lose,
    /// Lets the yard read files outside its folder.
    Trust,
    /// Takes up the changes that the card in the middle offers.
    Restore,
    /// Throws the changes away that the card in the middle offers.
    Discard,
    /// The first card has done its work.
    Welcomed,
    /// Close what is open.
    Close,
}

/// Whose fields are typed.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Of {
    /// Those of a thing, by its name.
    Thing(String),
    /// Those of the evening.
    Evening,
    /// Those of what lies around.
    Around,
}

/// What stands on the card at the side while nothing is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aside {
    /// How dark the evening is.
    Evening,
    /// All findings.
    Findings,
}

/// What a card in the middle asks.
#[derive(Clone, Debug, PartialEq)]
pub enum Asking {
    /// Which file to open.
    Open,
    /// Where to save.
    Save,
    /// For the measures of an empty front.
    Front,
    /// For a photo of a front.
    Photo,
    /// Nothing: it shows two arrangements.
    Compare,
    /// What somebody owns.
    Own,
    /// Nothing: it shows what could be bought.
    Choices,
    /// For tapes to the chosen thing.
    Tapes,
    /// What is printed, and where it goes.
    Paper,
    /// Whether changes may be lost by this act.
    Lose(Box<Act>),
    /// Whether the yard may read files outside its folder.
    Outside,
    /// Whether changes come back that were never saved.
    Restore(Box<Left>),
}

impl Asking {
    /// Whether it must be answered before anything else is done.
    pub fn is_question(&self) -> bool {
        matches!(self, Self::Lose(_) | Self::Outside | Self::Restore(_))
    }
}
