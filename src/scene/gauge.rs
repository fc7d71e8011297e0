//! How thick a conductor is, in the notation that is printed on the cable.

use super::Fault;
use std::fmt;

/// The size of one conductor: a gauge number, or its nominal cross-section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gauge {
    /// American wire gauge after ASTM B258, 0 to 30: the greater, the thinner.
    Awg(u8),
    /// Nominal cross-section after IEC 60228, mm².
    Mm2(f64),
}

impl Gauge {
    /// The thinnest gauge number that is read.
    const THINNEST_AWG: u8 = 30;
    /// The cross-sections that are read, mm².
    const MM2: std::ops::RangeInclusive<f64> = 0.05..=70.0;
    /// What is read.
    pub const FORM: &str = "such as \"18 AWG\" or \"1.5 mm²\"";

    /// Reads `18 AWG`, `AWG 18`, `1.5 mm²`, `1.5 mm2`.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let compact: String = text.chars().filter(|c| !c.is_whitespace()).collect::<String>().to_lowercase();
        let gauge = match compact.strip_suffix("mm²").or_else(|| compact.strip_suffix("mm2")) {
            Some(number) => number.parse().ok().filter(|mm2| Self::MM2.contains(mm2)).map(Self::Mm2),
            None => {
                let number = compact.strip_suffix("awg").or_else(|| compact.strip_prefix("awg"));
                let number = number.and_then(|number| number.parse().ok());
                number.filter(|awg| *awg <= Self::THINNEST_AWG).map(Self::Awg)
            }
        };
        let fault = || {
            let text: String = text.chars().take(40).collect();
            let range = "gauge numbers go from 0 to 30, cross-sections from 0.05 to 70 mm²";
            Fault::new(format!("“{text}” is no size of a conductor")).remedy(format!("{}; {range}", Self::FORM))
        };
        gauge.ok_or_else(fault)
    }
}

/// As it is printed.
impl serde::Serialize for Gauge {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl fmt::Display for Gauge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Awg(number) => write!(f, "{number} AWG"),
            Self::Mm2(area) => write!(f, "{area} mm²"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_notations_are_read_and_written_again() {
        for (text, gauge, written) in [
            ("18 AWG", Gauge::Awg(18), "18 AWG"),
            ("awg12", Gauge::Awg(12), "12 AWG"),
            ("1.5 mm²", Gauge::Mm2(1.5), "1.5 mm²"),
            ("0.75mm2", Gauge::Mm2(0.75), "0.75 mm²"),
        ] {
            assert_eq!(Gauge::parse(text).unwrap(), gauge, "{text}");
            assert_eq!(gauge.to_string(), written);
            assert_eq!(Gauge::parse(written).unwrap(), gauge);
        }
        for wrong in ["", "18", "thick", "31 AWG", "-2 AWG", "0 mm²", "NaN mm²", "inf mm2", "900 mm²", "1.5 AWG"] {
            let fault = Gauge::parse(wrong).unwrap_err();
            assert!(fault.remedy.contains("18 AWG"), "{wrong}: {fault}");
        }
    }
}
