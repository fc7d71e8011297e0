//! What a change of a yard can change in what is found there: a rule that errs only towards looking again.

use super::{Finding, Matter};
use crate::{
    judge::reading::Depth,
    light::throws_alike,
    scene::{Climate, Cloth, Count, Station, Yard},
};

/// How far the light differs between two yards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Touched {
    /// Not at all: what differs is boxes, power, wind, mounts or money.
    NoLight,
    /// By these stations alone, in their order.
    Stations(Vec<bool>),
    /// Perhaps everywhere.
    Anything,
}

impl Touched {
    pub fn between(before: &Yard, after: &Yard) -> Self {
        let (one, mut other) = (unlit(before), unlit(after));
        let names = |yard: &Yard| yard.stations.iter().map(|s| s.name.0.clone()).collect::<Vec<_>>();
        if names(&one) != names(&other) {
            return Self::Anything;
        }
        other.stations.clone_from(&one.stations);
        if one != other {
            return Self::Anything;
        }
        let stations = before.stations.iter().zip(&after.stations);
        let changed: Vec<bool> = stations.map(|(before, after)| !throws_alike(before, after)).collect();
        if changed.contains(&true) { Self::Stations(changed) } else { Self::NoLight }
    }

    /// Which stations of a yard throw another light; `None` where more than that may differ.
    pub fn stations(&self, yard: &Yard) -> Option<Vec<bool>> {
        match self {
            Self::NoLight => Some(vec![false; yard.stations.len()]),
            Self::Stations(changed) => Some(changed.clone()),
            Self::Anything => None,
        }
    }

    /// Whether what was found of a matter still holds.
    pub fn leaves(&self, matter: Matter) -> bool {
        match self {
            Self::NoLight => LIT.contains(&matter),
            Self::Stations(_) => DARK.contains(&matter),
            Self::Anything => false,
        }
    }
}

/// Matters that light, people and time alone decide.
const LIT: &[Matter] = &[
    Matter::NoPicture,
    Matter::Nowhere,
    Matter::Hidden,
    Matter::Sideways,
    Matter::Word,
    Matter::Overspill,
    Matter::LensThrough,
    Matter::RoomThrough,
    Matter::Leak,
    Matter::Bars,
    Matter::Screen,
    Matter::Glass,
    Matter::WrongWay,
    Matter::ShowsByDay,
    Matter::ShowsByLamplight,
    Matter::Unmeasured,
    Matter::Ghost,
    Matter::LensBehind,
    Matter::Spill,
    Matter::GreyBox,
    Matter::Uneven,
    Matter::Trapezoid,
    Matter::Keystone,
    Matter::Blur,
    Matter::Pixels,
    Matter::Nets,
    Matter::Upright,
    Matter::Dazzle,
    Matter::LensSeen,
    Matter::Driver,
    Matter::Neighbour,
    Matter::Skyward,
    Matter::Crossed,
    Matter::NearLens,
    Matter::Sunlit,
    Matter::Outshone,
    Matter::Motion,
];

/// Of these those that are looked for with all stations dark.
const DARK: &[Matter] = &[Matter::ShowsByDay, Matter::ShowsByLamplight, Matter::Nets];

/// Of these those that ask of no station but the one that they are about.
const OF_ONE: &[Matter] = &[
    Matter::Nowhere,
    Matter::Hidden,
    Matter::Sideways,
    Matter::Word,
    Matter::Overspill,
    Matter::LensThrough,
    Matter::RoomThrough,
    Matter::Leak,
    Matter::Bars,
    Matter::Screen,
    Matter::Glass,
    Matter::WrongWay,
    Matter::Unmeasured,
    Matter::Ghost,
    Matter::LensBehind,
    Matter::Spill,
    Matter::GreyBox,
    Matter::Uneven,
    Matter::Trapezoid,
    Matter::Keystone,
    Matter::Blur,
    Matter::Pixels,
    Matter::Upright,
    Matter::Outshone,
    Matter::ByHand,
    Matter::Idle,
];

/// Matters that ask for no station's reading.
const OF_NONE: &[Matter] = &[
    Matter::NoPicture,
    Matter::ShowsByDay,
    Matter::ShowsByLamplight,
    Matter::Nets,
    Matter::Dazzle,
    Matter::LensSeen,
    Matter::Driver,
    Matter::Neighbour,
    Matter::Skyward,
    Matter::Crossed,
    Matter::NearLens,
    Matter::Sunlit,
    Matter::Escape,
    Matter::Guard,
    Matter::SupplyRain,
    Matter::Fuse,
    Matter::OutdoorCable,
    Matter::Cable,
    Matter::Supply,
    Matter::Volts,
    Matter::BoxHot,
    Matter::Rain,
    Matter::BoxCold,
    Matter::BoxWindow,
    Matter::SecondTie,
    Matter::Ties,
    Matter::Topples,
    Matter::Ladder,
    Matter::Budget,
];

/// Matters that each spot has to itself: from one it is found or not, whatever shows from others.
const BY_SPOT: &[Matter] = &[
    Matter::Hidden,
    Matter::Word,
    Matter::LensThrough,
    Matter::RoomThrough,
    Matter::Leak,
    Matter::Glass,
    Matter::Ghost,
    Matter::LensBehind,
    Matter::Uneven,
    Matter::Dazzle,
    Matter::LensSeen,
    Matter::Driver,
    Matter::NearLens,
    Matter::Outshone,
];

/// Of those that ask for a station's reading those that ask no more of it than where its raster lands: so for no spot.
const OF_LANDINGS: &[Matter] = &[
    Matter::Nowhere,
    Matter::Sideways,
    Matter::Overspill,
    Matter::Trapezoid,
    Matter::Keystone,
    Matter::ByHand,
    Matter::Idle,
];

/// And those that ask no more of it than what the spots see.
const OF_SIGHT: &[Matter] = &[
    Matter::Hidden,
    Matter::Word,
    Matter::LensThrough,
    Matter::RoomThrough,
    Matter::Leak,
    Matter::Screen,
    Matter::Glass,
    Matter::Ghost,
    Matter::LensBehind,
    Matter::GreyBox,
    Matter::Uneven,
    Matter::Outshone,
];

/// What must be read for a finding to be looked for alone.
pub(super) struct Alone<'a> {
    /// No spots but its own.
    own_spots: bool,
    /// How far stations are read that must be.
    depth: Depth,
    /// Of the stations only this one, or none, or all.
    stations: Stations<'a>,
    finding: &'a Finding,
}

enum Stations<'a> {
    None,
    One(&'a str),
    All,
}

impl Alone<'_> {
    /// Whether there must be a spot of this name.
    pub fn has_spot(&self, name: &str) -> bool {
        self.depth >= Depth::Seen
            && (!self.own_spots || self.finding.places.is_empty() || self.finding.shows_from(name))
    }

    /// How far a station must be read.
    pub fn depth(&self, station: &Station) -> Depth {
        let reads = match self.stations {
            Stations::None => false,
            Stations::One(name) => station.name.0 == name,
            Stations::All => true,
        };
        if reads { self.depth } else { Depth::Nothing }
    }
}

impl Matter {
    /// What must be read for a finding about it to be looked for alone.
    pub(super) fn stands_alone(self, finding: &Finding) -> Alone<'_> {
        let stations = if OF_NONE.contains(&self) {
            Stations::None
        } else if OF_ONE.contains(&self) {
            Stations::One(&finding.of)
        } else {
            Stations::All
        };
        let depth = if OF_LANDINGS.contains(&self) {
            Depth::Landed
        } else if OF_SIGHT.contains(&self) {
            Depth::Seen
        } else {
            Depth::Measured
        };
        Alone { own_spots: BY_SPOT.contains(&self), depth, stations, finding }
    }
}

/// A yard without what light does not ask for; nor do people who watch, or the sun.
fn unlit(yard: &Yard) -> Yard {
    let mut yard = yard.clone();
    (yard.note, yard.budget, yard.tariff, yard.climate) = (String::new(), None, None, Climate::default());
    (yard.supplies, yard.cables, yard.owned, yard.goods) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for cloth in &mut yard.cloths {
        *cloth = Cloth { note: String::new(), ties: Count(1), hem_kg_m: 0.0, weight_g_m2: None, ..cloth.clone() };
    }
    yard.forms = yard.forms.into_iter().map(|form| form.with_ballast(0.0)).collect();
    yard
}
