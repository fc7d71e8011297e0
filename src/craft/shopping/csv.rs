//! A list as CSV, a line an item.

use super::{Line, Price, ShoppingList};
use crate::units::border::sent_light;
use std::fmt::Write as _;

/// The lines of a list, with a head.
pub fn csv(list: &ShoppingList) -> String {
    let mut table =
        "sort,what,unit,amount,owned,to_buy,each_low,each,each_high,cost_low,cost,cost_high,of\n".to_owned();
    for line in &list.lines {
        // Writing to a string cannot fail.
        let _ = writeln!(table, "{}", cells(line).join(","));
    }
    table
}

fn cells(line: &Line) -> Vec<String> {
    let number = |value: f64| sent_light(value).to_string();
    let three = |price: Option<Price>| {
        let parts = price.map(|price| [price.low, price.typical, price.high].map(number));
        parts.unwrap_or_default().join(",")
    };
    vec![
        quoted(line.sort),
        quoted(&line.what),
        quoted(line.unit),
        number(line.amount),
        number(line.owned),
        number(line.to_buy),
        three(line.each),
        three(line.cost),
        quoted(&line.of.join("; ")),
    ]
}

/// A text in quotes, those in it doubled (RFC 4180).
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('"', "\"\""))
}
