//! Numbers as they are printed: to the mark that a tape has, and the degree that a phone shows.

use crate::{
    scene::Units,
    units::{Length, Style},
};

/// How lengths are printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Digits(pub Units);

/// Square centimetres in a square inch.
const CM2_PER_INCH2: f64 = 6.4516;

/// The steps that a tolerance is rounded down to, m: 5 mm, and 1/4 in.
const COARSE: [f64; 2] = [0.005, 0.25 * 0.0254];

impl Digits {
    /// A length to the millimetre, `1.234 m`, or to the sixteenth of an inch, `4' 0 9/16"`.
    pub fn length(self, m: f64) -> String {
        match self.0 {
            Units::Metric => {
                let text = format!("{m:.3} m");
                if text == "-0.000 m" { "0.000 m".to_owned() } else { text }
            }
            Units::Feet => feet(m),
        }
    }

    /// A length as a drawing has it, without its unit where that is metres.
    pub fn drawn(self, m: f64) -> String {
        self.length(m).trim_end_matches(" m").to_owned()
    }

    /// The length of a bar: `0.5 m`, `2'`, `6"`.
    pub fn bar(self, m: f64) -> String {
        match self.0 {
            Units::Metric => format!("{m} m"),
            Units::Feet => feet(m),
        }
    }

    /// An area given in cm²: `60 cm²`, or `9.3 in²`.
    pub fn area(self, cm2: f64) -> String {
        match self.0 {
            Units::Metric => format!("{cm2:.0} cm²"),
            Units::Feet => format!("{:.1} in²", cm2 / CM2_PER_INCH2),
        }
    }

    /// What is still fine, rounded down: `45 mm` to 5 mm, `1 3/4"` to a quarter of an inch.
    pub fn fine(self, m: f64) -> String {
        let step = COARSE[usize::from(self.0 == Units::Feet)];
        // A millionth keeps a whole step that arithmetic has left a hair short.
        let steps = (m.max(0.0) / step + 1e-6).floor();
        match self.0 {
            Units::Metric => format!("{} mm", (steps * 5.0) as u64),
            Units::Feet => feet(steps * step),
        }
    }
}

/// Feet and inches; `9' 0 15/16"` where there are no whole inches, as `9' 15/16"` is misread on a ladder.
fn feet(m: f64) -> String {
    let shown = Length::metres(m).show(Style::FeetInches);
    match shown.split_once("' ") {
        Some((feet, inches)) if inches.contains('/') && !inches.contains(' ') => format!("{feet}' 0 {inches}"),
        _ => shown,
    }
}

/// An angle to a tenth of a degree, without its sign: `12.3°`.
pub(super) fn degrees(angle: f64) -> String {
    format!("{:.1}°", angle.abs())
}

/// An angle to a tenth, with a word for either way; at nothing the word for neither.
pub(super) fn turned(angle: f64, [less, more]: [&str; 2], neither: &str) -> String {
    if angle.abs() < 0.05 {
        return format!("0.0° {neither}").trim_end().to_owned();
    }
    format!("{} {}", degrees(angle), if angle < 0.0 { less } else { more })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_printed_to_a_tape_s_mark_and_tolerances_rounded_down() {
        let (metric, feet) = (Digits(Units::Metric), Digits(Units::Feet));
        assert_eq!((metric.length(1.2344).as_str(), feet.length(1.2344).as_str()), ("1.234 m", "4' 0 5/8\""));
        assert_eq!((metric.length(-0.0001).as_str(), feet.length(0.0).as_str()), ("0.000 m", "0\""));
        assert_eq!((metric.fine(0.0499).as_str(), feet.fine(0.0499).as_str()), ("45 mm", "1 3/4\""));
        assert_eq!((metric.fine(0.005).as_str(), feet.fine(0.00635).as_str()), ("5 mm", "1/4\""));
        assert_eq!((metric.fine(0.0049).as_str(), feet.fine(0.0063).as_str()), ("0 mm", "0\""));
    }

    #[test]
    fn an_angle_says_its_way() {
        assert_eq!(turned(-12.34, ["down", "up"], "level"), "12.3° down");
        assert_eq!(turned(0.04, ["down", "up"], "level"), "0.0° level");
    }
}
