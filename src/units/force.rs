//! Pull, weight and wind as people read them: newtons, kilograms and metres a second, and where lengths are read in feet
//! pounds and miles an hour beside them.

use super::{show::to_digits, two_digits};

/// Newtons in a pound-force: the avoirdupois pound (0.453 592 37 kg) under standard gravity (9.806 65 m/s²).
pub const NEWTONS_PER_POUND: f64 = 4.448_221_6;
/// Kilograms in a pound.
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// Metres a second in a mile an hour: 1609.344 m in 3600 s.
pub const M_S_PER_MILE_AN_HOUR: f64 = 0.447_04;

/// A force given in newtons, to two digits: `54 N`, or `54 N (12 lbf)`.
pub fn force(n: f64, feet: bool) -> String {
    both(n, "N", n / NEWTONS_PER_POUND, "lbf", feet)
}

/// A mass given in kilograms, to two digits: `2.5 kg`, or `2.5 kg (5.5 lb)`.
pub fn mass(kg: f64, feet: bool) -> String {
    both(kg, "kg", kg / KILOGRAMS_PER_POUND, "lb", feet)
}

/// A wind given in m/s, to two digits: `8.0 m/s (29 km/h)`, or `8.0 m/s (18 mph)`.
pub fn wind(m_s: f64, feet: bool) -> String {
    // Of what is shown, so that the two agree.
    let m_s = to_digits(m_s, 2);
    let (other, unit) = if feet { (m_s / M_S_PER_MILE_AN_HOUR, "mph") } else { (m_s * 3.6, "km/h") };
    both(m_s, "m/s", other, unit, true)
}

fn both(value: f64, unit: &str, other: f64, other_unit: &str, show_other: bool) -> String {
    let first = format!("{} {unit}", two_digits(value));
    if show_other { format!("{first} ({} {other_unit})", two_digits(other)) } else { first }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_systems_say_the_same() {
        assert_eq!(force(54.0, false), "54 N");
        assert_eq!(force(54.0, true), "54 N (12 lbf)");
        assert_eq!(mass(2.5, true), "2.5 kg (5.5 lb)");
        assert_eq!(wind(8.0, false), "8.0 m/s (29 km/h)");
        assert_eq!(wind(8.0, true), "8.0 m/s (18 mph)");
        assert!((NEWTONS_PER_POUND - KILOGRAMS_PER_POUND * 9.806_65).abs() < 1e-7);
    }
}
