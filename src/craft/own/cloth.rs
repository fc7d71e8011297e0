//! A cloth that somebody has, by its kind and colour.

use super::{OwnFault, checked};
use crate::scene::{Band, Catalogue, Colour, Fabric, FabricKind, Name, OwnCatalogue, Source};

/// Kinds of cloth that people know by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClothKind {
    /// Tulle or bobbinet.
    Tulle,
    /// Voile.
    Voile,
    /// A denser curtain sheer.
    Sheer,
    /// A bed sheet.
    CottonSheet,
    /// Muslin.
    Muslin,
    /// Spandex, stretched.
    Spandex,
}

impl ClothKind {
    /// All, in the order to offer them in.
    pub const ALL: [Self; 6] = [Self::Tulle, Self::Voile, Self::Sheer, Self::CottonSheet, Self::Muslin, Self::Spandex];

    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tulle => "tulle",
            Self::Voile => "voile",
            Self::Sheer => "sheer",
            Self::CottonSheet => "cotton sheet",
            Self::Muslin => "muslin",
            Self::Spandex => "spandex",
        }
    }

    /// The undyed fabric of the catalogue.
    const fn undyed(self) -> &'static str {
        match self {
            Self::Tulle => "white tulle",
            Self::Voile => "voile, white",
            Self::Sheer => "white sheer",
            Self::CottonSheet => "cotton sheet, white",
            Self::Muslin => "muslin, unbleached",
            Self::Spandex => "spandex, white",
        }
    }

    /// The fabric of the catalogue that is of this very colour, if there is one.
    const fn of_colour(self, colour: ClothColour) -> Option<&'static str> {
        match (self, colour) {
            (Self::Muslin, ClothColour::White) => None,
            (_, ClothColour::White) | (Self::Muslin, ClothColour::OffWhite) => Some(self.undyed()),
            (Self::Tulle, ClothColour::Grey) => Some("grey tulle"),
            (Self::Tulle, ClothColour::Black) => Some("black tulle"),
            (Self::CottonSheet, ClothColour::Black) => Some("black cloth"),
            _ => None,
        }
    }
}

/// The colour of a cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ClothColour {
    /// Bleached.
    White,
    /// Ivory, natural, unbleached.
    OffWhite,
    /// Dyed a middle grey.
    Grey,
    /// Dyed black.
    Black,
    /// Any other: what it throws back against a white one of its kind, linear Rec. 709.
    Tint(Colour),
}

/// What a grey dye leaves of reflected and scattered light: that of the catalogue's grey tulle against its white one.
const GREY: f64 = 0.4;
/// What a black dye leaves of it, by the catalogue's black tulle.
const BLACK: f64 = 0.07;
/// Half the way from white to the catalogue's raw cotton, (1, 0.93, 0.78): common practice, no source.
const OFF_WHITE: Colour = Colour([1.0, 0.965, 0.89]);

impl ClothColour {
    /// What is left of reflected and scattered light, and its tint.
    const fn left(self) -> (f64, Colour) {
        let plain = Colour::grey(1.0);
        match self {
            Self::White => (1.0, plain),
            Self::OffWhite => (1.0, OFF_WHITE),
            Self::Grey => (GREY, plain),
            Self::Black => (BLACK, plain),
            // The optics multiply with it channel by channel.
            Self::Tint(tint) => (1.0, tint),
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::White => "white",
            Self::OffWhite => "off-white",
            Self::Grey => "grey",
            Self::Black => "black",
            Self::Tint(_) => "tinted",
        }
    }
}

/// What somebody knows of a cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnCloth {
    /// What they call it.
    pub name: String,
    /// What it is.
    pub kind: ClothKind,
    /// Its colour.
    pub colour: ClothColour,
}

/// How much further than the catalogue's a band reaches each way, by ratio, where the catalogue has that kind in that
/// colour: theirs is another bolt. Common practice, no source.
const ANOTHER_BOLT: f64 = 0.15;
/// And where its colour is computed from another's.
const ANOTHER_DYE: f64 = 0.3;

impl OwnCloth {
    /// Its entry: the catalogue's fabric of that kind and colour, or the undyed one of its kind with what it reflects and
    /// scatters scaled by the colour; the way straight through is that of its holes and stays. Bands are wider than the
    /// catalogue's, as far as no more light goes on than came.
    pub fn entry(&self, catalogue: &Catalogue) -> Result<Fabric, OwnFault> {
        if let ClothColour::Tint(tint) = self.colour {
            let sane = tint.0.iter().all(|channel| (0.0..=1.0).contains(channel)) && tint.0.iter().any(|c| *c >= 0.01);
            if !sane {
                let remedy = "each channel is from 0 to 1, and one at least 0.01; a cloth as dark as that is black";
                return Err(OwnFault::Range { what: "a tint", said: format!("{:?}", tint.0), remedy });
            }
        }
        let as_it_is = self.kind.of_colour(self.colour);
        let like = as_it_is.unwrap_or(self.kind.undyed());
        let base = catalogue.fabric(like).ok_or(OwnFault::Nothing(like))?;
        let ((left, tint), more) = match as_it_is {
            Some(_) => ((1.0, base.tint), ANOTHER_BOLT),
            None => (self.colour.left(), ANOTHER_DYE),
        };
        let entry = Fabric {
            name: Name::of(&self.name),
            note: self.note(base, as_it_is.is_some(), more),
            source: if as_it_is.is_some() { base.source } else { Source::Invented },
            kind: dyed(&base.kind, left, more),
            screen: base.screen,
            tint,
            // It is there already.
            price: None,
            roll_width: base.roll_width.clone(),
            weight_g_m2: base.weight_g_m2,
            // Another bolt need not be treated.
            flame_retardant: None,
        };
        checked(&OwnCatalogue { fabrics: vec![entry.clone()], ..OwnCatalogue::default() })?;
        Ok(entry)
    }

    fn note(&self, base: &Fabric, as_it_is: bool, more: f64) -> String {
        let (kind, colour, name, more) = (self.kind.name(), self.colour.name(), &base.name.0, more * 100.0);
        let colour = if as_it_is {
            "nothing is measured".to_owned()
        } else {
            format!("what it reflects and scatters is guessed for {colour}, nothing is measured")
        };
        format!("Guessed: {kind} as the catalogue's “{name}”; {colour}; ranges wider by up to {more:.0} % each way")
    }
}

/// The values of a fabric with a dye that leaves so much of what is scattered, in wider bands.
fn dyed(kind: &FabricKind, left: f64, more: f64) -> FabricKind {
    let [left_of, same] = [left, 1.0].map(|factor| move |band: Band| scaled(band, factor));
    match *kind {
        FabricKind::Net { thread, reflect, diffuse } => {
            let [reflect, diffuse] = widened([left_of(reflect), left_of(diffuse)], more);
            let [thread] = widened([thread], more);
            FabricKind::Net { thread, reflect, diffuse }
        }
        FabricKind::Cloth { through, diffuse, reflect } => {
            let [through, diffuse, reflect] = widened([same(through), left_of(diffuse), left_of(reflect)], more);
            FabricKind::Cloth { through, diffuse, reflect }
        }
        // No kind on offer is a film; a catalogue that says so is taken at its word.
        FabricKind::Film { .. } => kind.clone(),
    }
}

fn scaled(band: Band, factor: f64) -> Band {
    Band { low: band.low * factor, typical: band.typical * factor, high: band.high * factor }
}

/// Bands that reach further by `more`, the upper ends alike and only so far that together they stay at 1 or below.
fn widened<const N: usize>(bands: [Band; N], more: f64) -> [Band; N] {
    let sum: f64 = bands.iter().map(|band| band.high).sum();
    let room = if sum > 0.0 { (1.0 / sum - 1.0).max(0.0) } else { 0.0 };
    let up = 1.0 + more.min(room);
    bands.map(|band| Band { low: band.low * (1.0 - more), typical: band.typical, high: band.high * up })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The dyes are those of the catalogue's own tulles.
    #[test]
    fn dyes_are_the_catalogue_s() {
        let catalogue = Catalogue::builtin();
        let reflect = |name: &str| match catalogue.fabric(name).unwrap().kind {
            FabricKind::Net { reflect, .. } => reflect.typical,
            _ => panic!("{name} is no net"),
        };
        let white = reflect("white tulle");
        assert!((reflect("grey tulle") / white - GREY).abs() < 0.01);
        assert!((reflect("black tulle") / white - BLACK).abs() < 0.01);
        let raw = catalogue.fabric("muslin, unbleached").unwrap().tint;
        for (half, whole) in OFF_WHITE.0.into_iter().zip(raw.0) {
            assert!((half - 0.5 * (1.0 + whole)).abs() < 1e-12);
        }
    }
}
