//! Numbers as they leave the program for other programs: no more digits than mean anything. Inside nothing is rounded.

use super::show::to_digits;
use serde::{Serialize, Serializer};

/// A length in metres to a tenth of a millimetre.
pub fn sent_length(m: f64) -> f64 {
    (m * 1e4).round() / 1e4 + 0.0
}

/// Light, a ratio or a share to four significant digits.
pub fn sent_light(value: f64) -> f64 {
    to_digits(value, 4) + 0.0
}

/// One number or several.
pub trait Numbers: Serialize {
    /// Each of them changed.
    fn each(&self, change: fn(f64) -> f64) -> Self;
}

impl Numbers for f64 {
    fn each(&self, change: fn(f64) -> f64) -> Self {
        change(*self)
    }
}

impl<T: Numbers> Numbers for Option<T> {
    fn each(&self, change: fn(f64) -> f64) -> Self {
        self.as_ref().map(|value| value.each(change))
    }
}

impl<T: Numbers> Numbers for [T; 3] {
    fn each(&self, change: fn(f64) -> f64) -> Self {
        std::array::from_fn(|i| self[i].each(change))
    }
}

impl<T: Numbers> Numbers for [T; 4] {
    fn each(&self, change: fn(f64) -> f64) -> Self {
        std::array::from_fn(|i| self[i].each(change))
    }
}

/// Serialises lengths by [`sent_length`].
pub fn lengths<S: Serializer>(value: &impl Numbers, to: S) -> Result<S::Ok, S::Error> {
    value.each(sent_length).serialize(to)
}

/// Serialises light, ratios and shares by [`sent_light`].
pub fn light<S: Serializer>(value: &impl Numbers, to: S) -> Result<S::Ok, S::Error> {
    value.each(sent_light).serialize(to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_single_float_leaves_no_tail() {
        assert_eq!(sent_length(f64::from(1.93f32)).to_string(), "1.93");
        assert_eq!(sent_length(-0.000_01).to_string(), "0");
        assert_eq!(sent_light(f64::from(0.123_456f32)).to_string(), "0.1235");
        assert_eq!(sent_light(123_456.0).to_string(), "123500");
        assert_eq!((sent_light(0.0), sent_light(1e-320).is_finite()), (0.0, true));
        assert!(sent_light(f64::NAN).is_nan());
    }

    proptest! {
        #[test]
        fn light_has_at_most_four_digits(value in 1e-6..1e6f64) {
            let shown = format!("{:e}", sent_light(value));
            let digits = shown.split('e').next().unwrap_or("").chars().filter(char::is_ascii_digit).count();
            prop_assert!(digits <= 4, "{} for {}", shown, value);
            prop_assert!((sent_light(value) - value).abs() <= 0.000_51 * value);
        }
    }
}
