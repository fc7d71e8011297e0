//! Lumens as somebody knows them: printed on a box, or measured.

use super::{AskFault, Part};
use crate::{
    craft::CLAIMS,
    scene::ProjectorClass,
    units::{number, two_digits},
};
use std::fmt;

/// Lumens with where they are from, lm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lumens {
    /// Printed on the box; what the projector gives is guessed by its class.
    OnBox(f64),
    /// Measured: mean lux at the centres of 3 × 3 equal parts of a white picture square on, times its area (ISO/IEC 21118).
    Measured(f64),
}

/// What a projector may be measured to give, lm; as a yard has it.
const GIVES: std::ops::RangeInclusive<f64> = 0.1..=100_000.0;

impl Lumens {
    /// The number, lm.
    pub const fn value(self) -> f64 {
        match self {
            Self::OnBox(lm) | Self::Measured(lm) => lm,
        }
    }

    /// The same number, from the other place.
    #[must_use]
    pub const fn otherwise(self) -> Self {
        match self {
            Self::OnBox(lm) => Self::Measured(lm),
            Self::Measured(lm) => Self::OnBox(lm),
        }
    }

    /// A fault where no projector at all has that many.
    pub(super) fn check(self) -> Result<(), AskFault> {
        let (what, range, remedy) = match self {
            Self::OnBox(_) => ("a claim", CLAIMS, "say what the box claims, from 20 to 100000 lm"),
            Self::Measured(_) => ("a measurement", GIVES, "say what it gives in white, from 0.1 to 100000 lm"),
        };
        if range.contains(&self.value()) {
            return Ok(());
        }
        Err(AskFault::Range { part: Part::Lumens, what, said: format!("{} lm", number(self.value())), remedy })
    }

    /// Why these are not to be believed of a class, where they are not.
    pub fn doubt(self, class: &ProjectorClass) -> Option<Doubt> {
        (!self.is_likely_of(class)).then(|| Doubt {
            said: self,
            class: class.name.0.clone(),
            gives: [class.lumens.low, class.lumens.high],
            claims: class.claimed.0,
            likelier: Some(self.otherwise()).filter(|other| other.check().is_ok() && other.is_likely_of(class)),
        })
    }

    fn is_likely_of(self, class: &ProjectorClass) -> bool {
        match self {
            Self::OnBox(lm) => class.may_claim(lm),
            Self::Measured(lm) => class.may_give(lm),
        }
    }
}

impl fmt::Display for Lumens {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OnBox(lm) => write!(f, "{lm} lm on the box"),
            Self::Measured(lm) => write!(f, "{lm} lm measured"),
        }
    }
}

/// Lumens that are not to be believed of a class.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// What was said.
    pub said: Lumens,
    /// The class.
    pub class: String,
    /// The least and the most that such projectors give, lm.
    pub gives: [f64; 2],
    /// What their boxes claim, lm.
    pub claims: f64,
    /// The same number from the other place, where that is to be believed.
    pub likelier: Option<Lumens>,
}

impl Doubt {
    /// What is wrong, without what to do.
    pub fn why(&self) -> String {
        let [low, high] = self.gives.map(two_digits);
        format!(
            "{} is implausible for a “{}”: such projectors give {low} to {high} lm, and their boxes claim about {}",
            self.said, self.class, self.claims
        )
    }
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. ", self.why())?;
        match self.likelier {
            Some(Lumens::OnBox(_)) => write!(f, "Which was meant? Say “on the box” if it is printed there, or")?,
            Some(Lumens::Measured(_)) => write!(f, "Which was meant? Say “measured” if it was, or")?,
            None => write!(f, "Check the number, or")?,
        }
        write!(f, " name the class that it is")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{Band, Catalogue};

    #[test]
    fn what_no_projector_of_a_class_gives_or_claims_is_doubted() {
        let catalogue = Catalogue::builtin();
        let doubt = |said: Lumens, class: &str| said.doubt(catalogue.projector(class).unwrap());
        let said = doubt(Lumens::Measured(7500.0), "mini LED").unwrap();
        assert_eq!(said.likelier, Some(Lumens::OnBox(7500.0)));
        for part in
            ["7500 lm measured is implausible for a “mini LED”", "60 to 150 lm", "claim about 7500", "on the box"]
        {
            assert!(said.to_string().contains(part), "{said}");
        }
        assert_eq!(doubt(Lumens::OnBox(100.0), "mini LED").unwrap().likelier, Some(Lumens::Measured(100.0)));
        assert_eq!(doubt(Lumens::Measured(1.0), "mini LED").unwrap().likelier, None);
        for class in &catalogue.projectors {
            let Band { low, typical, high } = class.lumens;
            for lm in [low, typical, high] {
                assert_eq!(Lumens::Measured(lm).doubt(class), None, "{lm} of {}", class.name.0);
            }
            assert_eq!(Lumens::OnBox(class.claimed.0).doubt(class), None, "{}", class.name.0);
        }
    }
}
