//! A projector that somebody has.

use super::{OwnFault, checked};
use crate::{
    craft::claim::{CLAIMS, Measured, nearest_class, real_lumens},
    scene::{Catalogue, Name, OwnCatalogue, Positive, ProjectorClass, Size, Source},
    units::{Length, two_digits, with_band},
};

/// What makes a projector's light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LightSource {
    /// Light-emitting diodes.
    Led,
    /// A discharge lamp that is replaced when it is spent.
    Lamp,
}

impl LightSource {
    /// The classes of the catalogue that it is in.
    const fn classes(self) -> &'static [&'static str] {
        match self {
            Self::Led => &["mini LED", "compact LED", "12 V pocket", "short-throw LED", "big LED"],
            Self::Lamp => &["used lamp projector", "used lamp projector, wide"],
        }
    }
}

/// What somebody knows of a projector.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnProjector {
    /// What they call it.
    pub name: String,
    /// Lumens printed on its box.
    pub box_lumens: f64,
    /// Native pixels across and down.
    pub pixels: (u32, u32),
    /// A picture that it was seen to throw, if one was measured; the throw ratio follows.
    pub picture: Option<Measured>,
    /// The nearest distance from lens to wall at which it was seen sharp, if that was tried.
    pub nearest: Option<Length>,
    /// What makes its light.
    pub light: LightSource,
}

/// Nothing that throws pictures has fewer pixels across.
const FEWEST_ACROSS: u32 = 100;

impl OwnProjector {
    /// Its entry. What nobody measures comes from the class that is most like it by box, pixels and light, and the note says
    /// what does. The source is [`Source::Measured`] only where a tape was held to its light, and then speaks for what the note calls measured.
    pub fn entry(&self, catalogue: &Catalogue) -> Result<ProjectorClass, OwnFault> {
        self.check_box()?;
        let class = self.class_like_it(catalogue)?;
        let ratio = self.picture.as_ref().map(ratio).transpose()?;
        if let Some(nearest) = self.nearest.as_ref().filter(|nearest| !(0.01..=50.0).contains(&nearest.m)) {
            let remedy = "measure from the lens to a wall on which it is just sharp, from 1 cm to 50 m";
            return Err(OwnFault::Range { what: "a nearest distance", said: nearest.to_string(), remedy });
        }
        let measured = ratio.is_some() || self.nearest.is_some();
        let entry = ProjectorClass {
            name: Name::of(&self.name),
            note: self.note(class, ratio),
            source: if measured { Source::Measured } else { class.source },
            claimed: Positive(self.box_lumens),
            lumens: real_lumens(self.box_lumens, class),
            pixels: self.pixels,
            throw_ratio: ratio.map_or(class.throw_ratio, Positive),
            // A measured picture is the one at which the lens stood; whether it zooms from there is not known.
            throw_ratio_tele: if ratio.is_some() { None } else { class.throw_ratio_tele },
            nearest: self.nearest.clone().map_or_else(|| class.nearest.clone(), Size),
            // It is there already; what it runs on is to be bought all the same.
            price: None,
            ..class.clone()
        };
        checked(&OwnCatalogue { projectors: vec![entry.clone()], ..OwnCatalogue::default() })?;
        Ok(entry)
    }

    fn check_box(&self) -> Result<(), OwnFault> {
        if !CLAIMS.contains(&self.box_lumens) {
            let remedy = "say what the box claims, from 20 to 100000 lm";
            return Err(OwnFault::Range { what: "a claim", said: format!("{} lm", self.box_lumens), remedy });
        }
        let (across, down) = self.pixels;
        if across < FEWEST_ACROSS || down == 0 || across < down || across > down.saturating_mul(5) {
            let remedy = "say its native pixels across and then down, such as 854 by 480, not what it takes in";
            return Err(OwnFault::Range { what: "a raster", said: format!("{across} by {down} pixels"), remedy });
        }
        Ok(())
    }

    fn class_like_it<'a>(&self, catalogue: &'a Catalogue) -> Result<&'a ProjectorClass, OwnFault> {
        let names = self.light.classes();
        let classes = names.iter().filter_map(|name| catalogue.projector(name));
        nearest_class(classes, self.box_lumens, Some(self.pixels)).ok_or(OwnFault::Nothing(names[0]))
    }

    fn note(&self, class: &ProjectorClass, ratio: Option<f64>) -> String {
        let mut measured = Vec::new();
        let mut guessed = Vec::new();
        let band = real_lumens(self.box_lumens, class);
        guessed.push(format!("{} in truth", with_band(band.low, band.typical, band.high, "lm")));
        match (ratio, &self.picture) {
            (Some(ratio), Some(Measured { width, at })) => {
                measured.push(format!("throw ratio {} ({width} wide at {at})", two_digits(ratio)));
            }
            _ => guessed.push("throw ratio".to_owned()),
        }
        match &self.nearest {
            Some(nearest) => measured.push(format!("sharp from {nearest}")),
            None => guessed.push("nearest distance".to_owned()),
        }
        guessed.push("lens opening, lens shift, contrast, gamma, colours, evenness, ageing and power".to_owned());
        let (across, down) = self.pixels;
        let mut note = String::new();
        if !measured.is_empty() {
            note += &format!("Measured: {}. ", measured.join(", "));
        }
        note += &format!("By its owner: {} lm on the box, {across} by {down} pixels. ", self.box_lumens);
        note + &format!("Guessed, as of a “{}”: {}", class.name.0, guessed.join(", "))
    }
}

fn ratio(picture: &Measured) -> Result<f64, OwnFault> {
    let said = || format!("{} at {}", picture.width, picture.at);
    let fault = || OwnFault::Range { what: "a picture", said: said(), remedy: Measured::REMEDY };
    picture.throw_ratio().ok_or_else(fault)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_is_of_one_light() {
        let catalogue = Catalogue::builtin();
        let mut listed: Vec<&str> = [LightSource::Led, LightSource::Lamp].map(LightSource::classes).concat();
        let mut known: Vec<&str> = catalogue.projectors.iter().map(|class| class.name.0.as_str()).collect();
        listed.sort_unstable();
        known.sort_unstable();
        assert_eq!(listed, known);
    }
}
