//! A list as a page of text.

use super::{
    Cut, Line, ShoppingList, StationCost, WayOut,
    measure::{Measure, shown},
};
use crate::{
    scene::Units,
    units::{Length, Style, two_digits},
};
use std::fmt::Write as _;

impl ShoppingList {
    /// A page of text, lengths in this style.
    pub fn page(&self, style: Style) -> String {
        let mut page = format!("To buy for {}; prices in your money, those of the catalogue invented\n", self.yard);
        // Writing to a string cannot fail.
        let mut group = None;
        for line in &self.lines {
            if group != Some(line.group) {
                group = Some(line.group);
                let _ = writeln!(page, "\n{}", line.group.name());
            }
            let _ = writeln!(page, "  {}", line.says());
        }
        if !self.cuts.is_empty() {
            page += "\ncloth and film off the roll\n";
        }
        for cut in &self.cuts {
            let _ = writeln!(page, "  {}", cut.says(style));
        }
        if !self.ways.is_empty() {
            page += "\ncables, as the yard has them\n";
        }
        for way in &self.ways {
            let _ = writeln!(page, "  {}", way.says(style));
        }
        if !self.stations.is_empty() {
            page += "\nby station\n";
        }
        for station in &self.stations {
            let _ = writeln!(page, "  {}", station.says());
        }
        let _ = writeln!(page, "\nin all {}; still to buy {}", self.all.show(), self.to_buy.show());
        if let Some(budget) = self.budget {
            let _ = writeln!(page, "{}", self.against(budget));
        }
        if !self.no_price.is_empty() {
            let _ = writeln!(page, "not in these sums, as nobody knows a price: {}", self.no_price.join(", "));
        }
        page += "forms themselves are in no sum: only what they are weighted with\n";
        if !self.stations.is_empty() {
            page += "buy what lies outdoors as made for outdoors; new outlets and lines are for a licensed electrician, and local codes come \
                     first\n";
        }
        if !self.first.is_empty() {
            page += "\nfirst\n";
        }
        for (number, says) in (1..).zip(&self.first) {
            let _ = writeln!(page, "  {number}. {says}");
        }
        page
    }

    fn against(&self, budget: f64) -> String {
        let left = budget - self.to_buy.typical;
        let word = if left >= 0.0 { "left of" } else { "over" };
        let mut says = format!("{} {word} a budget of {}", two_digits(left.abs()), two_digits(budget));
        if left >= 0.0 && self.to_buy.high > budget {
            says += "; at the high end of the prices it is not enough";
        }
        says
    }
}

impl Line {
    /// In one line.
    pub fn says(&self) -> String {
        let measure = |amount: f64| shown(amount, self.unit);
        let mut says = format!("{} {}", measure(self.to_buy), self.what);
        if self.owned > 0.0 {
            says += &format!(" ({} needed, {} owned)", measure(self.amount), measure(self.owned));
        }
        match (self.cost, self.to_buy > 0.0) {
            (_, false) => says += ": nothing to buy",
            (Some(cost), true) => says += &format!(": {}", cost.show()),
            (None, true) => says += ": price unknown",
        }
        says
    }
}

impl Cut {
    /// In one line.
    pub fn says(&self, style: Style) -> String {
        let show = |m: f64| Length::metres((m * 100.0).round() / 100.0).show(style);
        let mut says = format!(
            "{} of {}: cut {} by {} for {} by {} when done",
            self.of,
            self.fabric,
            show(self.cut_width_m),
            show(self.cut_height_m),
            show(self.width_m),
            show(self.height_m),
        );
        if let Some((roll, buy)) = self.roll_m.zip(self.buy_m) {
            let way = if self.across { "with the roll across" } else { "with the roll upright" };
            says += &format!("; {} off a roll {} wide, {way}", bought(buy, style), show(roll));
        } else {
            let measure = Measure::of_fabric(if style.is_feet() { Units::Feet } else { Units::Metric });
            let area = shown(measure.count(self.area_m2), measure.unit);
            says += &format!("; {area} with waste, the width of the roll is not known");
        }
        match (self.seams(), self.is_film) {
            (0, _) => {}
            (seams, true) => says += &format!(", {} lengths butted, which shows", seams + 1),
            (1, false) => says += ", one seam",
            (seams, false) => says += &format!(", {seams} seams"),
        }
        says
    }
}

/// What is asked for in a shop: metres, or yards to the quarter.
fn bought(m: f64, style: Style) -> String {
    if style.is_feet() {
        return format!("{} yd", ((m / 0.9144) * 4.0).round() / 4.0);
    }
    format!("{:.1} m", m)
}

impl WayOut {
    /// In one line.
    pub fn says(&self, style: Style) -> String {
        let long = Length::metres((self.length_m * 10.0 - 1e-6).ceil() / 10.0).show(style);
        format!("{}, {long}: {}", self.cable, self.by.join(" + "))
    }
}

impl StationCost {
    /// In one line.
    pub fn says(&self) -> String {
        let mut says = format!("{}: {}, still to buy {}", self.station, self.all.show(), self.to_buy.show());
        if let Some(wear) = &self.wear {
            let left = |i: usize| two_digits(100.0 * wear.light_left[i]);
            let hours = two_digits(wear.hours);
            says += &if wear.has_lamp {
                let cost = wear.lamps_cost.map_or_else(|| "a price nobody knows".to_owned(), super::Price::show);
                match wear.lamps {
                    0 => format!("; {hours} h on its lamp in the end, no other is needed"),
                    n => format!("; {n} more lamps by {hours} h, for {cost}"),
                }
            } else {
                format!("; {} % ({}–{}) of its first light left after {hours} h", left(1), left(0), left(2))
            };
        }
        says
    }
}
