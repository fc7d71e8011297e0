//! The projector as a person knows it: by its class, its box, or a picture measured on a wall.

use super::{AskFault, choice::pick};
use crate::{
    craft::{CLAIMS, Measured, nearest_class, real_lumens},
    scene::{Band, Catalogue, ProjectorClass},
    units::{two_digits, with_band},
};

/// The projector in question; whatever is known of it counts together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Projector {
    /// Its class in the catalogue, or a part of that name that no other has. Where none is said it is the class whose boxes claim most
    /// nearly `box_lumens`, or the cheapest where that isn't known either.
    pub class: Option<String>,
    /// Lumens printed on its box.
    pub box_lumens: Option<f64>,
    /// A picture that it was seen to throw; its throw ratio follows.
    pub measured: Option<Measured>,
}

/// What follows for the light.
#[derive(Clone, Debug)]
pub(super) struct Means<'a> {
    /// The class.
    pub class: &'a ProjectorClass,
    /// Real white lumens, where not those of the class.
    pub lumens: Option<Band>,
    /// Distance over picture width, widest and narrowest.
    pub throw: [f64; 2],
    /// What was guessed on the way, in sentences.
    pub notes: Vec<String>,
}

impl Means<'_> {
    /// Real white lumens.
    pub fn lumens(&self) -> Band {
        self.lumens.unwrap_or(self.class.lumens)
    }

    /// Width of the picture over its height.
    pub fn aspect(&self) -> f64 {
        f64::from(self.class.pixels.0) / f64::from(self.class.pixels.1.max(1))
    }
}

impl Projector {
    /// The class that is taken where nothing is known.
    pub const USUAL: &str = "mini LED";

    /// A projector of which only the class is known.
    pub fn class(name: &str) -> Self {
        Self { class: Some(name.to_owned()), ..Self::default() }
    }

    /// Whether anything follows from what is known of it; a fault if not.
    pub fn check(&self, catalogue: &Catalogue) -> Result<(), AskFault> {
        self.means(catalogue).map(drop)
    }

    /// What follows for the light.
    pub(super) fn means<'a>(&self, catalogue: &'a Catalogue) -> Result<Means<'a>, AskFault> {
        if let Some(lumens) = self.box_lumens.filter(|lumens| !CLAIMS.contains(lumens)) {
            let allowed = "say what the box claims, from 20 to 100000 lm";
            return Err(AskFault::Range { what: "a claim", said: format!("{lumens} lm"), allowed });
        }
        let mut notes = Vec::new();
        let class = self.find(catalogue, &mut notes)?;
        let lumens = self.box_lumens.map(|claimed| real(claimed, class, catalogue, self.class.is_none(), &mut notes));
        let wide = class.throw_ratio.0;
        let throw = match &self.measured {
            Some(measured) => {
                let out_of_range = || AskFault::Range {
                    what: "a picture",
                    said: format!("{} at {}", measured.width, measured.at),
                    allowed: Measured::REMEDY,
                };
                let ratio = measured.throw_ratio().ok_or_else(out_of_range)?;
                notes.push(format!(
                    "Throw ratio {} by the measured picture, not {wide} of the class.",
                    two_digits(ratio)
                ));
                [ratio; 2]
            }
            None => [wide, class.throw_ratio_tele.map_or(wide, |tele| tele.0)],
        };
        Ok(Means { class, lumens, throw, notes })
    }

    fn find<'a>(&self, catalogue: &'a Catalogue, notes: &mut Vec<String>) -> Result<&'a ProjectorClass, AskFault> {
        let classes = &catalogue.projectors;
        let names: Vec<&str> = classes.iter().map(|class| class.name.0.as_str()).collect();
        let said = match (&self.class, self.box_lumens) {
            (Some(said), _) => said,
            (None, None) => Self::USUAL,
            (None, Some(claimed)) => {
                let near = nearest_class(classes, claimed, None).ok_or(AskFault::NoReading)?;
                let (name, claims) = (&near.name.0, near.claimed.0);
                notes.push(format!("No class said: taken as “{name}”, whose boxes claim {claims} lm."));
                return Ok(near);
            }
        };
        Ok(&classes[pick("projector class", said, &names)?])
    }
}

/// Real lumens of a claim by its class, with what to say of that guess.
fn real(claimed: f64, class: &ProjectorClass, catalogue: &Catalogue, guessed: bool, notes: &mut Vec<String>) -> Band {
    let band @ Band { low, typical, high } = real_lumens(claimed, class);
    let name = &class.name.0;
    let shown = with_band(low, typical, high, "lm");
    notes.push(format!("{claimed} lm on the box: {shown} in truth, by what “{name}” boxes claim and give."));
    let ratio = |class: &ProjectorClass| class.lumens.typical / class.claimed.0;
    let worst = catalogue.projectors.iter().min_by(|a, b| ratio(a).total_cmp(&ratio(b)));
    if let Some(worst) = worst.filter(|worst| guessed && ratio(worst) < 0.5 * ratio(class)) {
        let lumens = two_digits(claimed * ratio(worst));
        notes.push(format!(
            "The same claim on a “{}” would mean {lumens} lm: say the class if you know it.",
            worst.name.0
        ));
    }
    band
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    #[test]
    fn a_claim_is_cut_to_what_its_class_gives() {
        let catalogue = Catalogue::builtin();
        let of = |class: Option<&str>, lumens| {
            let class = class.map(str::to_owned);
            Projector { class, box_lumens: Some(lumens), measured: None }.means(&catalogue).unwrap()
        };
        let mini = of(None, 7500.0);
        assert_eq!((mini.class.name.0.as_str(), mini.lumens()), ("mini LED", mini.class.lumens));
        assert!((of(Some("mini"), 15_000.0).lumens().typical - 200.0).abs() < 1e-9);
        let used = of(None, 3000.0);
        assert_eq!(used.class.name.0, "used lamp projector");
        assert!(used.notes.iter().any(|note| note.contains("40 lm")), "{:?}", used.notes);
    }

    #[test]
    fn a_measured_picture_gives_the_throw_ratio() {
        let catalogue = Catalogue::builtin();
        let length = |text| Length::parse(text).unwrap();
        let measured = |width, at| Projector {
            measured: Some(Measured { width: length(width), at: length(at) }),
            ..Projector::default()
        };
        let [wide, tele] = measured("40in", "5ft").means(&catalogue).unwrap().throw;
        assert!((wide - 1.5).abs() < 1e-12 && wide == tele);
        for (width, at) in [("0 m", "1 m"), ("1 m", "-1 m"), ("1 mm", "1 m"), ("30 m", "1 m")] {
            assert!(measured(width, at).means(&catalogue).is_err(), "{width} at {at}");
        }
    }
}
