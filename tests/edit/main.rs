//! Edits: a thousand of them at random on every yard, back and forth again; refusals that change nothing; and each kind
//! of edit by itself.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod arrange;
mod entry;
mod follow;
mod names;
mod power;
mod random;

use gauzelight::scene::{Catalogue, Yard};

/// Every yard that the program knows, by name.
fn yards() -> Vec<(&'static str, Yard)> {
    let texts = [
        ("owl_night", include_str!("../../scenes/owl_night.ron")),
        ("one_window", include_str!("../../scenes/one_window.ron")),
        ("fabric_row", include_str!("../../scenes/fabric_row.ron")),
        ("crossing", include_str!("../../scenes/crossing.ron")),
        ("one_of_each", include_str!("../../assets/starters/one_of_each.ron")),
        ("rich", include_str!("../abuse/rich.ron")),
    ];
    texts.map(|(name, text)| (name, Yard::parse(text, name, &Catalogue::builtin()).unwrap().yard)).to_vec()
}

fn yard(name: &str) -> Yard {
    yards().into_iter().find(|(n, _)| *n == name).unwrap().1
}
