//! An axis, and the round values on it.

/// An axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// What it shows, with its unit.
    pub label: String,
    /// Whether it runs by powers of ten.
    pub log: bool,
}

impl Axis {
    /// One that runs evenly from 0.
    pub fn linear(label: &str) -> Self {
        Self { label: label.to_owned(), log: false }
    }

    /// One that runs by powers of ten.
    pub fn log(label: &str) -> Self {
        Self { label: label.to_owned(), log: true }
    }
}

/// Decades shown at most: what is fainter lies on the axis.
const MOST_DECADES: i32 = 5;

/// What an axis spans: values, or their powers of ten.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Span {
    log: bool,
    low: f64,
    high: f64,
}

impl Span {
    /// Everything with its bands.
    pub fn of(axis: &Axis, values: impl Iterator<Item = [f64; 3]>) -> Self {
        let all: Vec<f64> = values.flatten().filter(|value| value.is_finite() && *value > 0.0).collect();
        let most = all.iter().copied().fold(0.0, f64::max);
        if !axis.log {
            return Self { log: false, low: 0.0, high: if most > 0.0 { 1.05 * most } else { 1.0 } };
        }
        let least = all.iter().copied().fold(f64::INFINITY, f64::min);
        if all.is_empty() {
            return Self { log: true, low: -1.0, high: 1.0 };
        }
        let (low, high) = (least.log10() - 0.1, most.log10() + 0.1);
        Self { log: true, low: low.max(high - f64::from(MOST_DECADES)), high }
    }

    /// Where a value lies, 0 to 1.
    pub fn share(&self, value: f64) -> f64 {
        let at = if self.log { value.max(f64::MIN_POSITIVE).log10() } else { value };
        ((at - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }

    /// Round values with their names.
    pub fn ticks(&self) -> Vec<(f64, String)> {
        let mut ticks = Vec::new();
        if self.log {
            let leads: &[f64] = if self.high - self.low > 3.0 { &[1.0] } else { &[1.0, 2.0, 5.0] };
            for decade in self.low.floor() as i32..=self.high.ceil() as i32 {
                for lead in leads {
                    let value = lead * 10_f64.powi(decade);
                    if (self.low..=self.high).contains(&value.log10()) {
                        let decimals = (-decade).max(0) as usize;
                        ticks.push((value, format!("{value:.decimals$}")));
                    }
                }
            }
            return ticks;
        }
        let rough = (self.high / 6.0).max(f64::MIN_POSITIVE);
        let decade = 10_f64.powf(rough.log10().floor());
        let step =
            [1.0, 2.0, 5.0, 10.0].map(|lead| lead * decade).into_iter().find(|step| *step >= rough).unwrap_or(rough);
        let decimals = (-step.log10().floor()).max(0.0) as usize;
        let count = (self.high / step).floor() as usize;
        ticks.extend((0..=count).map(|i| (i as f64 * step, format!("{:.decimals$}", i as f64 * step))));
        ticks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_within() {
        let names = |axis: &Axis, values: &[f64]| -> Vec<String> {
            Span::of(axis, values.iter().map(|v| [*v; 3])).ticks().into_iter().map(|(_, name)| name).collect()
        };
        assert_eq!(names(&Axis::linear(""), &[60.0]), ["0", "20", "40", "60"]);
        assert_eq!(names(&Axis::linear(""), &[0.6]), ["0.0", "0.2", "0.4", "0.6"]);
        assert_eq!(names(&Axis::log(""), &[0.5, 12.0]), ["0.5", "1", "2", "5", "10"]);
        // Not below five decades.
        assert_eq!(names(&Axis::log(""), &[1e-9, 10.0]).len(), 5);
        let span = Span::of(&Axis::log(""), [[0.0, 1.0, 10.0]].into_iter());
        assert!(span.share(0.0) == 0.0 && span.share(1e9) == 1.0);
    }
}
