//! The pictures of "Owl Night at Tern Lane", drawn by rule and by seeded chance.
//!
//! Each is a lit figure on a ground of true black, because a projector can add light to a surface but cannot
//! take any away. Drawing one twice gives the same picture, so the PNGs that go with the program can be held
//! against the code that made them.

mod canvas;
mod carving;
mod curve;
mod down;
mod field;
mod gourds;
mod guardian;
mod guardian_face;
mod guardian_hands;
mod lantern;
mod noise;
mod owl_face;
mod owl_glide;
mod owl_head;
mod owl_wall;
mod plume;
mod reeds;
mod seed;
mod tone;
mod wing;

use tiny_skia::Pixmap;

/// Every drawing: its name and what draws it.
pub const ALL: &[(&str, fn() -> Pixmap)] = &[
    ("owl_face", owl_face::draw),
    ("owl_glide", owl_glide::draw),
    ("owl_wall", owl_wall::draw),
    ("guardian", guardian::draw),
    ("gourds", gourds::draw),
];
