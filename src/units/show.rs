//! Light as people check it: lux, foot-candles, cd/m² and footlamberts, never to more digits than are known.

/// One foot-candle in lux: square feet in a square metre.
pub const LUX_PER_FOOT_CANDLE: f64 = 10.763_910;

/// One footlambert in cd/m²: 1/π candela per square foot.
pub const NITS_PER_FOOT_LAMBERT: f64 = 3.426_259_1;

/// A value is taken as known to two digits where its band stays within this part of it on either side.
const KNOWN: f64 = 0.05;

/// Illuminance in lux, to two digits: `12 lx`.
pub fn lux(lx: f64) -> String {
    two_digits(lx) + " lx"
}

/// Illuminance in foot-candles, to two digits: `1.1 fc`.
pub fn foot_candles(lx: f64) -> String {
    two_digits(lx / LUX_PER_FOOT_CANDLE) + " fc"
}

/// Luminance in cd/m², to two digits: `18 cd/m²`.
pub fn candelas(nits: f64) -> String {
    two_digits(nits) + " cd/m²"
}

/// Luminance in footlamberts, to two digits: `5.3 fL`.
pub fn foot_lamberts(nits: f64) -> String {
    two_digits(nits / NITS_PER_FOOT_LAMBERT) + " fL"
}

/// A number to two significant digits: `0.043`, `1.8`, `18`, `180`.
pub fn two_digits(value: f64) -> String {
    if !value.is_finite() {
        return "unknown".to_owned();
    }
    let rounded = to_digits(value, 2);
    if rounded == 0.0 {
        return "0".to_owned();
    }
    // Rounding up may have gained a digit: 9.96 is 10, not 10.0.
    let decimals = (1 - order(rounded)).clamp(0, 12) as usize;
    format!("{rounded:.decimals$}")
}

/// Illuminance given in lux with the range it may have, as [`with_band`] shows it: in lux, and where lengths are read in
/// feet in foot-candles as well. One text for each unit, to be set side by side or in lines.
pub fn illuminance(low: f64, typical: f64, high: f64, feet: bool) -> Vec<String> {
    let [low_fc, typical_fc, high_fc] = [low, typical, high].map(|lx| lx / LUX_PER_FOOT_CANDLE);
    let mut shown = vec![with_band(low, typical, high, "lx")];
    if feet {
        shown.push(with_band(low_fc, typical_fc, high_fc, "fc"));
    }
    shown
}

/// A value with the range it may have: `18 cd/m²` where the band is narrow enough to know two digits, else
/// `about 18 (9–35) cd/m²`, the ends of the band to the decimal of the value.
pub fn with_band(low: f64, typical: f64, high: f64, unit: &str) -> String {
    let shown = two_digits(typical);
    if is_known(low, typical, high) {
        return format!("{shown} {unit}");
    }
    let decimals = shown.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let end = |value: f64| {
        let coarse = two_digits(value);
        let at_decimal = format!("{value:.decimals$}");
        // An end far below the value would be rounded to nothing; one far above would pretend to digits.
        if value.abs() < 10f64.powi(-(decimals as i32)) || value.abs() >= 100.0 { coarse } else { at_decimal }
    };
    format!("about {shown} ({}–{}) {unit}", end(low), end(high))
}

/// A value where there is no room for its range: `18 cd/m²`, and `about 14 cd/m²` where [`with_band`] would show the
/// range. The digits are the same in both, so that two places that show one value agree.
pub fn about(low: f64, typical: f64, high: f64, unit: &str) -> String {
    let word = if is_known(low, typical, high) { "" } else { "about " };
    format!("{word}{} {unit}", two_digits(typical))
}

/// Whether a range is narrow enough to know two digits.
fn is_known(low: f64, typical: f64, high: f64) -> bool {
    let room = typical.abs() * KNOWN;
    typical - low <= room && high - typical <= room
}

/// A number rounded to so many significant digits: the float nearest to that decimal. What is not finite stays.
pub(super) fn to_digits(value: f64, count: usize) -> f64 {
    format!("{value:.*e}", count.saturating_sub(1)).parse().unwrap_or(value)
}

/// Power of ten of the first digit.
fn order(value: f64) -> i32 {
    value.abs().log10().floor() as i32
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn two_digits_and_no_more() {
        let table = [
            (0.0, "0"),
            (0.0431, "0.043"),
            (1.0, "1.0"),
            (1.84, "1.8"),
            (9.96, "10"),
            (18.4, "18"),
            (184.0, "180"),
            (12_345.0, "12000"),
            (-2.55, "-2.5"),
            (f64::NAN, "unknown"),
        ];
        for (value, shown) in table {
            assert_eq!(two_digits(value), shown, "{value}");
        }
    }

    #[test]
    fn a_wide_band_is_shown_and_a_narrow_one_is_not() {
        assert_eq!(with_band(9.0, 18.0, 35.0, "cd/m²"), "about 18 (9–35) cd/m²");
        assert_eq!(with_band(0.9, 1.8, 3.5, "lx"), "about 1.8 (0.9–3.5) lx");
        assert_eq!(with_band(17.5, 18.0, 18.4, "lx"), "18 lx");
        assert_eq!(with_band(0.04, 18.0, 1234.0, "lx"), "about 18 (0.040–1200) lx");
        assert_eq!(with_band(90.0, 180.0, 350.0, "lx"), "about 180 (90–350) lx");
    }

    #[test]
    fn a_value_has_the_same_digits_with_its_band_and_without() {
        let table = [
            ((9.0, 14.0, 21.0), "about 14 lx"),
            ((90.0, 183.0, 350.0), "about 180 lx"),
            ((0.01, 0.0184, 0.03), "about 0.018 lx"),
            ((17.5, 18.0, 18.4), "18 lx"),
            ((0.0, 0.0, 0.0), "0 lx"),
        ];
        for ((low, typical, high), shown) in table {
            assert_eq!(about(low, typical, high, "lx"), shown);
            let bare = shown.trim_end_matches(" lx");
            assert!(with_band(low, typical, high, "lx").starts_with(bare), "{shown}");
        }
    }

    #[test]
    fn foot_candles_stand_beside_lux_for_who_reads_feet() {
        assert_eq!(illuminance(9.0, 18.0, 35.0, false), ["about 18 (9–35) lx"]);
        assert_eq!(illuminance(9.0, 18.0, 35.0, true), ["about 18 (9–35) lx", "about 1.7 (0.8–3.3) fc"]);
        assert_eq!(illuminance(12.0, 12.0, 12.0, true), ["12 lx", "1.1 fc"]);
    }

    #[test]
    fn feet_and_metres_agree() {
        // 1 fL is 1/π candela per square foot, so that one foot-candle on a perfect diffuser shows one footlambert.
        assert!((LUX_PER_FOOT_CANDLE / std::f64::consts::PI - NITS_PER_FOOT_LAMBERT).abs() < 1e-6);
        assert_eq!(foot_candles(10.763_910), "1.0 fc");
        assert_eq!(foot_lamberts(47.967_627), "14 fL");
        assert_eq!((lux(0.27), candelas(48.0)), ("0.27 lx".to_owned(), "48 cd/m²".to_owned()));
    }

    proptest! {
        #[test]
        fn two_digits_are_within_half_a_step(value in prop::num::f64::NORMAL.prop_filter("sane", |v| (1e-9..1e12).contains(&v.abs()))) {
            let shown: f64 = two_digits(value).parse().unwrap();
            prop_assert!((shown - value).abs() <= value.abs() * 0.0501);
        }
    }
}
