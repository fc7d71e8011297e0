//! The projector as a person knows it: by its class, its lumens, or a picture measured on a wall.

use super::{AskFault, Lumens, Part, choice::pick};
use crate::{
    craft::{Measured, nearest_class, real_lumens},
    scene::{Band, Catalogue, ProjectorClass},
    units::{two_digits, with_band},
};

/// The projector in question; whatever is known of it counts together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Projector {
    /// Its class in the catalogue, or a part of that name that no other has. Where none is said it is the class that fits the lumens best,
    /// or the cheapest where they aren't known either.
    pub class: Option<String>,
    /// Its lumens.
    pub lumens: Option<Lumens>,
    /// A picture that it was seen to throw; its throw ratio follows.
    pub picture: Option<Measured>,
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
        if let Some(lumens) = self.lumens {
            lumens.check()?;
        }
        let mut notes = Vec::new();
        let class = self.find(catalogue, &mut notes)?;
        let lumens = self.lumens.map(|said| self.real(said, class, catalogue, &mut notes)).transpose()?;
        let wide = class.throw_ratio.0;
        let throw = match &self.picture {
            Some(picture) => {
                let out_of_range = || AskFault::Range {
                    part: Part::Picture,
                    what: "a picture",
                    said: format!("{} at {}", picture.width, picture.at),
                    remedy: Measured::REMEDY,
                };
                let ratio = picture.throw_ratio().ok_or_else(out_of_range)?;
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
        let said = match (&self.class, self.lumens) {
            (Some(said), _) => said,
            (None, None) => Self::USUAL,
            (None, Some(lumens)) => {
                let near = match lumens {
                    Lumens::OnBox(claimed) => nearest_class(classes, claimed, None),
                    Lumens::Measured(gives) => {
                        let apart = |class: &&ProjectorClass| (class.lumens.typical / gives).ln().abs();
                        classes.iter().min_by(|a, b| apart(a).total_cmp(&apart(b)))
                    }
                };
                let near = near.ok_or(AskFault::NoReading)?;
                let like = match lumens {
                    Lumens::OnBox(_) => format!("whose boxes claim {} lm", near.claimed.0),
                    Lumens::Measured(_) => format!("which gives about {} lm", two_digits(near.lumens.typical)),
                };
                notes.push(format!("No class said: taken as “{}”, {like}.", near.name.0));
                return Ok(near);
            }
        };
        Ok(&classes[pick(Part::Projector, "projector class", said, &names)?])
    }

    /// Real lumens of what was said, with what to say of any guess.
    fn real(
        &self,
        said: Lumens,
        class: &ProjectorClass,
        catalogue: &Catalogue,
        notes: &mut Vec<String>,
    ) -> Result<Band, AskFault> {
        // A claim has chosen its own class where none was said.
        let is_free = self.class.is_none() && matches!(said, Lumens::OnBox(_));
        if let Some(doubt) = said.doubt(class).filter(|_| !is_free) {
            return Err(AskFault::Doubted(Box::new(doubt)));
        }
        Ok(match said {
            Lumens::OnBox(claimed) => claim(claimed, class, catalogue, self.class.is_none(), notes),
            Lumens::Measured(gives) => Band::exact(gives),
        })
    }
}

/// Real lumens of a claim by its class, with what to say of that guess.
fn claim(claimed: f64, class: &ProjectorClass, catalogue: &Catalogue, guessed: bool, notes: &mut Vec<String>) -> Band {
    let band @ Band { low, typical, high } = real_lumens(claimed, class);
    let name = &class.name.0;
    let shown = with_band(low, typical, high, "lm");
    notes.push(format!("{}: {shown} in truth, by what “{name}” boxes claim and give.", Lumens::OnBox(claimed)));
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

    fn means(
        catalogue: &Catalogue,
        class: Option<&str>,
        lumens: Lumens,
    ) -> Result<(String, Band, Vec<String>), AskFault> {
        let projector = Projector { class: class.map(str::to_owned), lumens: Some(lumens), picture: None };
        projector.means(catalogue).map(|means| (means.class.name.0.clone(), means.lumens(), means.notes))
    }

    #[test]
    fn a_claim_is_cut_to_what_its_class_gives() {
        let catalogue = Catalogue::builtin();
        let of = |class, lumens| means(&catalogue, class, Lumens::OnBox(lumens)).unwrap();
        let mini = of(None, 7500.0);
        assert_eq!((mini.0.as_str(), mini.1), ("mini LED", catalogue.projector("mini LED").unwrap().lumens));
        assert!((of(Some("mini"), 15_000.0).1.typical - 200.0).abs() < 1e-9);
        let used = of(None, 3000.0);
        assert_eq!(used.0, "used lamp projector");
        assert!(used.2.iter().any(|note| note.contains("40 lm")), "{:?}", used.2);
    }

    #[test]
    fn what_is_measured_is_taken_as_it_is_where_it_can_be_believed() {
        let catalogue = Catalogue::builtin();
        let of = |class, lumens| means(&catalogue, class, Lumens::Measured(lumens));
        assert_eq!(of(Some("mini"), 112.5).unwrap().1, Band::exact(112.5));
        assert_eq!(of(None, 110.0).unwrap().0, "mini LED");
        assert_eq!(of(None, 2450.0).unwrap().0, "used lamp projector");
        assert!(matches!(of(Some("mini LED"), 7500.0), Err(AskFault::Doubted(_))));
        assert!(matches!(of(None, 75_000.0), Err(AskFault::Doubted(_))));
        assert!(matches!(of(None, f64::NAN), Err(AskFault::Range { .. })));
    }

    #[test]
    fn a_measured_picture_gives_the_throw_ratio() {
        let catalogue = Catalogue::builtin();
        let length = |text| Length::parse(text).unwrap();
        let measured = |width, at| Projector {
            picture: Some(Measured { width: length(width), at: length(at) }),
            ..Projector::default()
        };
        let [wide, tele] = measured("40in", "5ft").means(&catalogue).unwrap().throw;
        assert!((wide - 1.5).abs() < 1e-12 && wide == tele);
        for (width, at) in [("0 m", "1 m"), ("1 m", "-1 m"), ("1 mm", "1 m"), ("30 m", "1 m")] {
            assert!(measured(width, at).means(&catalogue).is_err(), "{width} at {at}");
        }
    }
}
