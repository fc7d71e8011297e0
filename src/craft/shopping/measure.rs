//! What goods are measured by in the shops of a yard: metres, square metres and kilograms, or feet, square feet or yards and pounds.

use crate::{
    scene::{Sold, Units},
    units::KILOGRAMS_PER_POUND,
};

/// Metres in a foot and in a yard.
const FOOT_M: f64 = 0.3048;
const YARD_M: f64 = 3.0 * FOOT_M;
/// Weights are bought in tenths.
const TENTH: f64 = 0.1;

/// A measure of a shop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Measure {
    /// Its sign; empty for pieces.
    pub unit: &'static str,
    /// How many of it make a piece, a metre, a square metre or a kilogram.
    per: f64,
    /// What is bought is a whole number of these; 0 for any amount.
    step: f64,
}

impl Measure {
    /// Of goods.
    pub fn of(sold: Sold, units: Units) -> Self {
        let feet = units == Units::Feet;
        let (unit, per, step) = match (sold, feet) {
            (Sold::Piece, _) => ("", 1.0, 1.0),
            (Sold::Metre, false) => ("m", 1.0, 1.0),
            (Sold::Metre, true) => ("ft", 1.0 / FOOT_M, 1.0),
            (Sold::SquareMetre, false) => ("m²", 1.0, 0.0),
            (Sold::SquareMetre, true) => ("ft²", FOOT_M.powi(-2), 0.0),
            (Sold::Kilogram, false) => ("kg", 1.0, TENTH),
            (Sold::Kilogram, true) => ("lb", 1.0 / KILOGRAMS_PER_POUND, TENTH),
        };
        Self { unit, per, step }
    }

    /// Of cloth and film.
    pub fn of_fabric(units: Units) -> Self {
        match units {
            Units::Metric => Self::of(Sold::SquareMetre, units),
            Units::Feet => Self { unit: "yd²", per: YARD_M.powi(-2), step: 0.0 },
        }
    }

    /// An amount in pieces, m, m² or kg in this measure.
    pub fn count(self, amount: f64) -> f64 {
        amount * self.per
    }

    /// What one of it costs where a piece, m, m² or kg costs so much.
    pub fn share(self) -> f64 {
        1.0 / self.per
    }

    /// An amount in this measure as it is bought: up to the next step, and no negative zero of none.
    pub fn bought(self, amount: f64) -> f64 {
        if self.step > 0.0 { (amount / self.step - 1e-6).ceil() * self.step + 0.0 } else { amount }
    }
}

/// An amount with its unit as it stands on paper, never less than it is: `3`, `2.4 m²`.
pub(super) fn shown(amount: f64, unit: &str) -> String {
    if unit.is_empty() {
        return format!("{amount:.0}");
    }
    let tenths = format!("{:.1}", (amount / TENTH - 1e-6).ceil() * TENTH + 0.0);
    format!("{} {unit}", tenths.trim_end_matches(".0"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_lost_by_rounding_and_feet_are_feet() {
        let metre = Measure::of(Sold::Metre, Units::Metric);
        let foot = Measure::of(Sold::Metre, Units::Feet);
        assert_eq!((metre.bought(12.01), metre.bought(12.0)), (13.0, 12.0));
        assert_eq!(foot.bought(foot.count(3.048)), 10.0);
        assert!((foot.count(1.0) * foot.share() - 1.0).abs() < 1e-12);
        let pound = Measure::of(Sold::Kilogram, Units::Feet);
        assert!((pound.bought(pound.count(0.453_592_37)) - 1.0).abs() < 1e-9);
        assert!((Measure::of_fabric(Units::Feet).count(1.0) - 1.195_990_05).abs() < 1e-8);
        assert_eq!((shown(2.31, "m²"), shown(4.0, "kg"), shown(3.0, "")), ("2.4 m²".into(), "4 kg".into(), "3".into()));
    }
}
