//! Needs gathered into lines of a list.

use super::{Need, Price, What, leads::ALL_BUT, measure::Measure, need::station_of};
use crate::{
    craft::power::area_mm2,
    scene::{Catalogue, Gauge, Goods, GoodsKind, Sold, Units, Yard},
    units::{Length, border},
};
use serde::Serialize;

/// What a line stands under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Projectors.
    Projectors,
    /// Fabrics, screens and films.
    Fabrics,
    /// All else.
    Goods,
}

impl Group {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Projectors => "projectors",
            Self::Fabrics => "fabrics",
            Self::Goods => "goods",
        }
    }
}

/// One item of a list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Line {
    /// What sort of thing it is: projector, fabric, or what the goods are for.
    pub sort: &'static str,
    /// What it stands under.
    #[serde(skip)]
    pub group: Group,
    /// Its name in the catalogue; where that has none, what sort of thing is wanted.
    pub what: String,
    /// How much of it is needed.
    #[serde(serialize_with = "border::light")]
    pub amount: f64,
    /// Its measure; empty for pieces.
    pub unit: &'static str,
    /// How much of that is owned.
    #[serde(serialize_with = "border::light")]
    pub owned: f64,
    /// How much is to be bought.
    #[serde(serialize_with = "border::light")]
    pub to_buy: f64,
    /// Price of one, or of one of its measure; `None` where nobody knows.
    pub each: Option<Price>,
    /// Price of what is to be bought.
    pub cost: Option<Price>,
    /// Price of all that is needed.
    pub cost_of_all: Option<Price>,
    /// Names of the things that it is for.
    pub of: Vec<String>,
}

/// An entry of the catalogue that a need comes to.
#[derive(Clone, PartialEq)]
struct Entry {
    rank: u8,
    sort: &'static str,
    group: Group,
    name: String,
    measure: Measure,
    /// Price of one of its measure.
    each: Option<Price>,
}

/// Whether the shops of a yard have these goods.
pub(super) fn is_sold(yard: &Yard, goods: &Goods) -> bool {
    goods.shops.is_none_or(|units| units == yard.units)
}

/// The goods of a kind that a list takes: the first that is sold there, the yard's own before the catalogue's.
fn goods<'a>(yard: &'a Yard, catalogue: &'a Catalogue, kind: GoodsKind) -> Option<&'a Goods> {
    yard.all_goods(catalogue).find(|goods| goods.kind == kind && is_sold(yard, goods))
}

/// The thinnest wire for low voltage that has this conductor, mm², or all but.
fn wire<'a>(yard: &'a Yard, catalogue: &'a Catalogue, mm2: f64) -> Option<&'a Goods> {
    let wires = yard.all_goods(catalogue).filter(|goods| goods.kind == GoodsKind::Cable && is_sold(yard, goods));
    let thickness = |goods: &Goods| goods.mm2.map_or(0.0, |mm2| mm2.0);
    wires.filter(|goods| thickness(goods) >= ALL_BUT * mm2).min_by(|a, b| thickness(a).total_cmp(&thickness(b)))
}

impl Entry {
    fn of(yard: &Yard, catalogue: &Catalogue, what: &What) -> Self {
        let of_goods = |kind: GoodsKind, found: Option<&Goods>| {
            let measure = Measure::of(found.map_or(Sold::Piece, |goods| goods.sold), yard.units);
            Self {
                rank: 2 + kind as u8,
                sort: kind.name(),
                group: Group::Goods,
                name: found.map_or_else(|| kind.name().to_owned(), |goods| goods.name.0.clone()),
                measure,
                each: found.map(|goods| Price::from(goods.price).times(measure.share())),
            }
        };
        match what {
            What::Projector(class) => Self {
                rank: 0,
                sort: "projector",
                group: Group::Projectors,
                name: class.clone(),
                measure: Measure::of(Sold::Piece, yard.units),
                each: yard.projector(catalogue, class).and_then(|class| class.price).map(Price::from),
            },
            What::Fabric(fabric) => {
                let measure = Measure::of_fabric(yard.units);
                let price = yard.fabric(catalogue, fabric).and_then(|fabric| fabric.price).map(Price::from);
                let each = price.map(|price| price.times(measure.share()));
                Self { rank: 1, sort: "fabric", group: Group::Fabrics, name: fabric.clone(), measure, each }
            }
            What::Goods(kind) => of_goods(*kind, goods(yard, catalogue, *kind)),
            What::Named(name) => {
                let found = yard.all_goods(catalogue).find(|goods| goods.name.0 == *name);
                of_goods(found.map_or(GoodsKind::MainsLead, |goods| goods.kind), found)
            }
            What::Cable(mm2) => {
                let found = wire(yard, catalogue, *mm2);
                let mut entry = of_goods(GoodsKind::Cable, found);
                if found.is_none() {
                    entry.name = format!("cable, {}", conductor(yard, *mm2));
                    entry.measure = Measure::of(Sold::Metre, yard.units);
                }
                entry
            }
            What::Unsold(kind, mm2, metres) => {
                let mut entry = of_goods(*kind, None);
                let long = Length::metres((10.0 * metres).ceil() / 10.0).show(yard.units.style());
                entry.name = format!("{}, {long}, {}", kind.name(), conductor(yard, *mm2));
                entry
            }
            What::Fuse(amps) => {
                let mut entry = of_goods(GoodsKind::Fuse, goods(yard, catalogue, GoodsKind::Fuse));
                entry.name = format!("{}, {amps} A", entry.name);
                entry
            }
            What::Lamp(class) => {
                let known = yard.projector(catalogue, class).and_then(|class| class.lamp_price).map(|price| price.0);
                let own = known.map(|price| Price { low: price, typical: price, high: price });
                let mut entry = of_goods(GoodsKind::SpareBulb, goods(yard, catalogue, GoodsKind::SpareBulb));
                entry.name = format!("lamp for {class}");
                entry.each = own.or(entry.each);
                entry
            }
        }
    }
}

/// A conductor as the shops of a yard call it: the next gauge number that is no thinner, or its cross-section.
fn conductor(yard: &Yard, mm2: f64) -> String {
    let number = (0..=30).rev().map(Gauge::Awg).find(|gauge| area_mm2(*gauge) >= ALL_BUT * mm2);
    number.filter(|_| yard.units == Units::Feet).unwrap_or(Gauge::Mm2(mm2)).to_string()
}

/// The lines of all needs: projectors, fabrics, then goods by kind, each once.
pub(super) fn all(yard: &Yard, catalogue: &Catalogue, needs: &[Need]) -> Vec<Line> {
    let mut gathered: Vec<(Entry, f64, Vec<String>)> = Vec::new();
    for need in needs.iter().filter(|need| need.amount > 0.0) {
        let entry = Entry::of(yard, catalogue, &need.what);
        let of = (!need.of.is_empty()).then(|| need.of.clone());
        match gathered.iter_mut().find(|(known, ..)| *known == entry) {
            Some((_, amount, names)) => {
                *amount += need.amount;
                names.extend(of.filter(|of| !names.contains(of)));
            }
            None => gathered.push((entry, need.amount, of.into_iter().collect())),
        }
    }
    gathered.sort_by(|(a, ..), (b, ..)| a.rank.cmp(&b.rank).then_with(|| a.name.cmp(&b.name)));
    gathered.into_iter().map(|(entry, amount, of)| line(yard, entry, amount, of)).collect()
}

fn line(yard: &Yard, entry: Entry, amount: f64, of: Vec<String>) -> Line {
    let bought = |amount: f64| entry.measure.bought(amount);
    let amount = bought(entry.measure.count(amount));
    let has: f64 = yard
        .owned
        .iter()
        .filter(|owned| owned.what.0 == entry.name)
        .map(|owned| entry.measure.count(owned.amount.0))
        .fold(0.0, |sum, more| sum + more);
    let owned = has.min(amount);
    let to_buy = bought((amount - owned).max(0.0));
    Line {
        sort: entry.sort,
        group: entry.group,
        what: entry.name,
        amount,
        unit: entry.measure.unit,
        owned,
        to_buy,
        each: entry.each,
        cost: entry.each.map(|each| each.times(to_buy)),
        cost_of_all: entry.each.map(|each| each.times(amount)),
        of,
    }
}

/// What one station takes, with what it lights: all of it, and its share of what is to be bought.
pub(super) fn of_station(
    lines: &[Line],
    needs: &[Need],
    yard: &Yard,
    catalogue: &Catalogue,
    station: &str,
) -> [Price; 2] {
    let mut sums = [Price::default(); 2];
    for need in needs.iter().filter(|need| station_of(yard, &need.of) == Some(station)) {
        let entry = Entry::of(yard, catalogue, &need.what);
        let line = lines.iter().find(|line| line.what == entry.name && line.sort == entry.sort);
        if let Some((line, each)) = line.zip(entry.each) {
            let share = if line.amount > 0.0 { line.to_buy / line.amount } else { 0.0 };
            let amount = entry.measure.count(need.amount);
            sums = [sums[0] + each.times(amount), sums[1] + each.times(amount * share)];
        }
    }
    sums
}

/// What something needed is called.
pub(super) fn name(yard: &Yard, catalogue: &Catalogue, what: &What) -> String {
    Entry::of(yard, catalogue, what).name
}

/// What a need is called on a label, with how much of it: `2 m²`, `12`.
pub(super) fn named(yard: &Yard, catalogue: &Catalogue, need: &Need) -> (String, f64, &'static str) {
    let entry = Entry::of(yard, catalogue, &need.what);
    (entry.name, entry.measure.count(need.amount), entry.measure.unit)
}
