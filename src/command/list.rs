//! `list`: what is to be bought, what it comes to, and what is packed with what.

use super::{Failure, stage, which};
use gauzelight::{
    craft::money::{Running, SEASONS},
    craft::shopping::{ShoppingList, csv, labels},
    scene::Loaded,
};
use std::path::PathBuf;

/// Options of `list`.
#[derive(clap::Args)]
pub struct List {
    /// Yard to buy for
    yard: PathBuf,
    /// Seasons that projectors are to last, for the lamps that they take
    #[arg(long, default_value_t = SEASONS, value_parser = clap::value_parser!(u32).range(1..=100))]
    seasons: u32,
    /// As JSON, packing and labels too
    #[arg(long, conflicts_with_all = ["csv", "labels"])]
    json: bool,
    /// As CSV, a line an item
    #[arg(long, conflicts_with = "labels")]
    csv: bool,
    /// Only labels to pack by: what goes with each station
    #[arg(long)]
    labels: bool,
}

impl List {
    /// Prints the list.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let catalogue = super::home::catalogue();
        // No picture and no night is wanted here: a yard whose pictures are missing is bought for all the same.
        let Loaded { yard, warnings, .. } = stage::load(&self.yard).map_err(|faults| stage::tell(&faults))?;
        if !warnings.is_empty() {
            stage::tell(&warnings);
        }
        let list = ShoppingList::planned(&yard, &catalogue, Running::of(&yard, self.seasons));
        if list.lines.is_empty() {
            super::aside("note: this yard has no station, cloth, film or mirror, so there is nothing to buy");
        }
        if self.json {
            super::say(serde_json::to_string_pretty(&list).map_err(Failure::said)?);
        } else if self.csv {
            super::say(csv(&list).trim_end());
        } else if self.labels {
            super::say(labels(&list.packs).trim_end());
        } else {
            let packs = labels(&list.packs);
            super::say(format!("{}\npacked together\n\n{}", list.page(yard.units.style()), packs.trim_end()));
        }
        Ok(())
    }
}
