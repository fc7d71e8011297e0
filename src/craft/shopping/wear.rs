//! How a projector wears: lamps that are changed, LEDs that fade.

use super::Price;
use crate::{craft::money::lamps_needed, scene::ProjectorClass, units::border};
use serde::Serialize;

/// What running it for some hours does to a projector.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Wear {
    /// Hours on it in the end.
    #[serde(serialize_with = "border::light")]
    pub hours: f64,
    /// Whether it has a lamp that is changed.
    pub has_lamp: bool,
    /// Lamps to be bought in that time, beyond the one that is in it.
    pub lamps: u32,
    /// Price of those; `None` where lamps are needed whose price is not known.
    pub lamps_cost: Option<Price>,
    /// Share of its first light left in the end: least, typical, most. Of one with a lamp, before that is changed.
    #[serde(serialize_with = "border::light")]
    pub light_left: [f64; 3],
}

impl Wear {
    /// Of a class whose lamp or LED has run for some hours already, over some hours more.
    pub fn of(class: &ProjectorClass, run_hours: f64, hours: f64) -> Self {
        let lamps = lamps_needed(class, run_hours, hours);
        let all = run_hours.max(0.0) + hours.max(0.0);
        let on_it = class.lamp_hours.map_or(all, |life| all.min(life.0));
        let cost = |price: f64| Price { low: price, typical: price, high: price }.times(f64::from(lamps));
        let lamps_cost = if lamps == 0 { Some(Price::default()) } else { class.lamp_price.map(|price| cost(price.0)) };
        let left = class.left_after_1000_h;
        Self {
            hours: all,
            has_lamp: class.lamp_hours.is_some(),
            lamps,
            lamps_cost,
            light_left: [left.low, left.typical, left.high].map(|left| left.powf(on_it / 1000.0)),
        }
    }
}
