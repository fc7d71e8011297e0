//! What two of the questions offer: things to light and streets to light them in.

use super::{AskFault, Part};
use crate::{
    scene::{Fault, Units},
    units::Length,
};

/// What is lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// A rear film in a window, lit from the room.
    Window,
    /// A hanging cloth, lit from the side that people watch from.
    Cloth,
    /// A wall.
    Wall,
    /// A rounded form that stands on the ground.
    Form,
}

impl Target {
    /// Everything on offer, in the order that it is offered in.
    pub const ALL: [Self; 4] = [Self::Window, Self::Cloth, Self::Wall, Self::Form];

    /// What to call it, unique among all.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Window => "window",
            Self::Cloth => "cloth",
            Self::Wall => "wall",
            Self::Form => "form",
        }
    }

    /// One line that says what it is.
    pub const fn help(self) -> &'static str {
        match self {
            Self::Window => "a film in a window, lit from the room behind",
            Self::Cloth => "fabric that hangs in the air, lit from the front",
            Self::Wall => "the part of a pale wall or shed side that is lit",
            Self::Form => "a rounded white form on the ground: a blow-up bag, a robed figure",
        }
    }

    /// The target that a person named; a part of its name that no other has is enough.
    pub fn parse(said: &str) -> Result<Self, AskFault> {
        Ok(Self::ALL[pick(Part::Target, "thing to light", said, &Self::ALL.map(Self::name))?])
    }

    /// A usual width in round numbers.
    pub fn usual_width(self, units: Units) -> Length {
        let (metres, feet) = match self {
            Self::Window => (1.2, 4.0),
            Self::Cloth => (2.0, 7.0),
            Self::Wall => (2.4, 8.0),
            Self::Form => (0.8, 2.5),
        };
        let tape = Tape(units);
        tape.length(tape.round(metres, feet))
    }

    /// How high above the ground its lower edge usually is, in round numbers.
    pub fn usual_lower_edge(self, units: Units) -> Length {
        let (metres, feet) = match self {
            Self::Window => (1.0, 3.0),
            Self::Cloth => (0.4, 1.5),
            Self::Wall => (0.5, 1.5),
            Self::Form => (0.0, 0.0),
        };
        let tape = Tape(units);
        tape.length(tape.round(metres, feet))
    }

    /// Whether a projector is usually laid on its side for it.
    pub const fn is_upright(self) -> bool {
        matches!(self, Self::Form)
    }

    /// The fabric that it is usually made of, by its name in the catalogue; none for what is no fabric.
    pub const fn usual_fabric(self) -> Option<&'static str> {
        match self {
            Self::Window => Some("rear film, grey"),
            Self::Cloth => Some("white tulle"),
            Self::Wall | Self::Form => None,
        }
    }
}

/// How dark the street is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Street {
    /// No lamp, a moon.
    CountryLane,
    /// Few lamps, far apart.
    DimStreet,
    /// A residential street with working lamps.
    LitStreet,
    /// A town centre.
    BrightTown,
}

impl Street {
    /// Every street, darkest first.
    pub const ALL: [Self; 4] = [Self::CountryLane, Self::DimStreet, Self::LitStreet, Self::BrightTown];

    /// What to call it, unique among all.
    pub const fn name(self) -> &'static str {
        match self {
            Self::CountryLane => "country lane",
            Self::DimStreet => "dim street",
            Self::LitStreet => "lit street",
            Self::BrightTown => "bright town",
        }
    }

    /// One line that says how dark it is.
    pub const fn help(self) -> &'static str {
        match self {
            Self::CountryLane => "no lamps, as under a moon",
            Self::DimStreet => "few lamps, you watch your step (2 lx)",
            Self::LitStreet => "street lamps as by most homes (5 lx)",
            Self::BrightTown => "you could read the headlines (15 lx)",
        }
    }

    /// The street that a person named; a part of its name that no other has is enough.
    pub fn parse(said: &str) -> Result<Self, AskFault> {
        Ok(Self::ALL[pick(Part::Street, "street", said, &Self::ALL.map(Self::name))?])
    }

    /// Illuminance of open level ground by the sky, lx.
    pub const fn sky_lx(self) -> f64 {
        match self {
            // A usual full moon gives 0.05 to 0.1 lx (Kyba, Mohar and Posch 2017, A&G 58:1.31).
            Self::CountryLane => 0.05,
            // Sky glow over ever larger places: common practice, no source.
            Self::DimStreet => 0.1,
            Self::LitStreet => 0.3,
            Self::BrightTown => 1.0,
        }
    }

    /// Illuminance of the target's face by a street lamp, lx; none where there is no lamp.
    ///
    /// The maintained averages that EN 13201-2:2015 asks of the footway in classes P6, P4 and P1. That a face gets as
    /// much as the footway before it is common practice, no source; one set back from the street gets less.
    pub const fn lamp_lx(self) -> Option<f64> {
        match self {
            Self::CountryLane => None,
            Self::DimStreet => Some(2.0),
            Self::LitStreet => Some(5.0),
            Self::BrightTown => Some(15.0),
        }
    }

    /// The next darker street.
    pub fn darker(self) -> Option<Self> {
        let at = Self::ALL.iter().position(|street| *street == self)?;
        Self::ALL.get(at.checked_sub(1)?).copied()
    }
}

/// Index of the name that was meant: written out, or by a beginning or another part that only one name has; capitals and
/// hyphens don't count.
pub(super) fn pick(part: Part, what: &'static str, said: &str, names: &[&str]) -> Result<usize, AskFault> {
    let plain = |text: &str| text.trim().to_lowercase().replace(['-', '_'], " ");
    let wanted = plain(said);
    if let Some(index) = names.iter().position(|name| plain(name) == wanted) {
        return Ok(index);
    }
    let only = |fits: &dyn Fn(&str) -> bool| {
        let mut fitting = (0..names.len()).filter(|index| fits(&plain(names[*index])));
        fitting.next().filter(|_| fitting.next().is_none())
    };
    // Fewer letters than three stand in the middle of a name by chance.
    let long_enough = wanted.chars().count() >= 3;
    let begun = only(&|name| !wanted.is_empty() && name.starts_with(&wanted));
    if let Some(index) = begun.or_else(|| only(&|name| long_enough && name.contains(&wanted))) {
        return Ok(index);
    }
    Err(AskFault::Unknown {
        part,
        what,
        said: said.trim().chars().take(60).collect(),
        nearest: Fault::default().nearest_of(&wanted, names.iter().copied()).nearest,
        known: names.join("; "),
    })
}

/// Lengths as a tape of the chosen units shows them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tape(pub Units);

impl Tape {
    /// A round number of metres, or one of feet that is about as long.
    pub fn round(self, metres: f64, feet: f64) -> f64 {
        match self.0 {
            Units::Metric => metres,
            Units::Feet => feet * 0.3048,
        }
    }

    /// So many metres to the nearest centimetre or half inch: as near as anybody sets a thing down.
    pub fn near(self, m: f64) -> Length {
        let step = self.round(0.01, 1.0 / 24.0);
        self.length((m / step).round() * step)
    }

    /// So many metres, to the tape's finest mark.
    pub fn length(self, m: f64) -> Length {
        let zero = match self.0 {
            Units::Metric => "0 m",
            Units::Feet => "0ft 0in",
        };
        let length = Length::parse(zero).unwrap_or_default().changed(m);
        let whole = length.text.strip_suffix(" 0in").and_then(|feet| Length::parse(feet).ok());
        whole.unwrap_or(length)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_by_a_part_and_slips_are_guessed() {
        assert_eq!(Target::parse(" Win ").unwrap(), Target::Window);
        assert_eq!(Street::parse("lit-street").unwrap(), Street::LitStreet);
        assert_eq!(Street::parse("bright").unwrap(), Street::BrightTown);
        assert_eq!(Street::parse("town").unwrap(), Street::BrightTown);
        let AskFault::Unknown { nearest, known, .. } = Target::parse("clot h").unwrap_err() else { panic!() };
        assert_eq!((nearest.as_deref(), known.as_str()), (Some("cloth"), "window; cloth; wall; form"));
        assert!(Target::parse("w").is_err(), "two names begin so");
        assert!(Target::parse("").is_err());
    }

    #[test]
    fn streets_stand_from_dark_to_bright() {
        let lit = |street: Street| street.lamp_lx().unwrap_or(0.0);
        for pair in Street::ALL.windows(2) {
            assert!(pair[0].sky_lx() < pair[1].sky_lx() && lit(pair[0]) < lit(pair[1]));
            assert_eq!(pair[1].darker(), Some(pair[0]));
        }
        assert_eq!(Street::CountryLane.darker(), None);
    }

    #[test]
    fn a_tape_shows_its_own_marks() {
        assert_eq!(Tape(Units::Metric).length(1.23456).to_text(), "1.235 m");
        assert_eq!(Tape(Units::Feet).length(1.2192).to_text(), "4ft");
        assert_eq!(Tape(Units::Feet).near(1.0).to_text(), "3ft 3 1/2in");
        assert_eq!(Target::Form.usual_width(Units::Feet).to_text(), "2ft 6in");
    }
}
