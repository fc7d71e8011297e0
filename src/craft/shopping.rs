//! What is to be bought, in whatever money the prices are: by item, by station and in all, what is owned taken off, against the
//! budget; cloth off the roll; what to buy first; what to pack with what.
//!
//! Which goods a station takes is common practice, no source: a yard's own goods of a kind come before the catalogue's.

mod csv;
mod cut;
mod first;
mod leads;
mod line;
mod measure;
mod need;
mod pack;
mod page;
mod planned;
mod price;
mod wear;

pub use csv::csv;
pub use cut::{Cut, cut, cuts};
pub use line::{Group, Line};
pub use need::{Need, What};
pub use pack::{Pack, labels};
pub use price::Price;
pub use wear::Wear;

use crate::{
    scene::{Catalogue, Yard},
    units::border,
};
use serde::Serialize;

/// A run of cable as another part of the program found it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Run {
    /// Name of the cable.
    pub cable: String,
    /// Whether it carries the mains: then it is leads with plugs, else wire for low voltage.
    pub mains: bool,
    /// Its conductor, mm².
    pub mm2: f64,
    /// Its length, m.
    pub metres: f64,
    /// Joints along it.
    pub joints: u32,
    /// Plugs that want a socket at its end.
    pub plugs: u32,
    /// Whether any of it lies outdoors.
    pub in_the_wet: bool,
    /// Whether its end is indoors or in a weather box.
    pub ends_dry: bool,
    /// Name of the station that it feeds; empty for one that feeds several.
    pub of: String,
}

/// A drawn cable with what is bought for it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayOut {
    /// Name of the cable.
    pub cable: String,
    /// How much of it is needed, slack and all, m.
    #[serde(serialize_with = "border::lengths")]
    pub length_m: f64,
    /// Leads, end to end, or wire.
    pub by: Vec<String>,
}

/// What a list is made for.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The yard.
    pub yard: &'a Yard,
    /// The catalogue.
    pub catalogue: &'a Catalogue,
    /// Cables, where they are planned.
    pub runs: &'a [Run],
    /// What else is needed; a station that a supply or a lead is among it for gets no lead by rule.
    pub more: &'a [Need],
    /// Hours that each projector is to run, for its lamps.
    pub hours: f64,
}

/// What one station comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StationCost {
    /// Its name.
    pub station: String,
    /// All that it takes, with the cloth or mirror that it lights.
    pub all: Price,
    /// What of that is not owned.
    pub to_buy: Price,
    /// How its projector wears.
    pub wear: Option<Wear>,
}

/// A shopping list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ShoppingList {
    /// Name of the yard.
    pub yard: String,
    /// Item by item: projectors, fabrics, goods.
    pub lines: Vec<Line>,
    /// Cloth and film, piece by piece, off the roll.
    pub cuts: Vec<Cut>,
    /// Cable by cable, as the yard has them drawn.
    pub ways: Vec<WayOut>,
    /// Station by station.
    pub stations: Vec<StationCost>,
    /// What all of it would cost.
    pub all: Price,
    /// What is still to be bought.
    pub to_buy: Price,
    /// What may be spent.
    #[serde(serialize_with = "border::light")]
    pub budget: Option<f64>,
    /// Items with no price, which are in no sum.
    pub no_price: Vec<String>,
    /// What to buy first and why, a sentence each.
    pub first: Vec<String>,
    /// What goes with what.
    pub packs: Vec<Pack>,
}

impl ShoppingList {
    /// Of all that is brought out in a yard, whether or not it is switched on.
    pub fn of(asked: Asked) -> Self {
        let Asked { yard, catalogue, .. } = asked;
        let cuts = cuts(yard, catalogue);
        let needs = need::all(asked, &cuts);
        let lines = line::all(yard, catalogue, &needs);
        let ways = asked.runs.iter().map(|run| WayOut {
            cable: run.cable.clone(),
            length_m: run.metres,
            by: need::of_way(asked, run).into_iter().map(|what| line::name(yard, catalogue, &what)).collect(),
        });
        let ways = ways.collect();
        let sum = |cost: fn(&Line) -> Option<Price>| lines.iter().filter_map(cost).sum();
        let shown = yard.stations.iter().filter(|station| !yard.is_hidden(&station.name.0));
        let stations = shown.map(|station| {
            let name = &station.name.0;
            let class = yard.projector(catalogue, &station.projector.0);
            let [all, to_buy] = line::of_station(&lines, &needs, yard, catalogue, name);
            let wear = class.map(|class| Wear::of(class, station.hours, asked.hours));
            StationCost { station: name.clone(), all, to_buy, wear }
        });
        let stations = stations.collect();
        Self {
            yard: yard.name.0.clone(),
            all: sum(|line| line.cost_of_all),
            to_buy: sum(|line| line.cost),
            budget: yard.budget.map(|budget| budget.0),
            no_price: lines.iter().filter(|line| line.each.is_none()).map(|line| line.what.clone()).collect(),
            first: first::advice(yard, catalogue, &lines, &cuts),
            packs: pack::all(yard, catalogue, &needs, &cuts),
            lines,
            cuts,
            ways,
            stations,
        }
    }

    /// What is to be bought over the budget, at typical prices; `None` where no budget is set.
    pub fn over(&self) -> Option<f64> {
        self.budget.map(|budget| self.to_buy.typical / budget)
    }
}
