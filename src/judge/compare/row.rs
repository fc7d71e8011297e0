//! What one thing that was tried comes to.

use super::{Of, Question, candidate::Candidate, money};
use crate::{
    craft::{money::Upkeep, shopping::cuts},
    judge::{
        Banded, Fate, Word, day,
        fate::fate,
        findings::{Case, ghost},
        spot::{self, SpotReading},
    },
    light::Night,
    scene::{Item, Yard},
    units::border,
};
use serde::Serialize;

/// The second picture on what stands behind, from one viewing spot.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ghost {
    /// What it lies on.
    pub thing: String,
    /// The station's own luminance there, as it comes through what is before it, divided by its own on the target; each a mean over the
    /// places in sight on both. 1.
    #[serde(serialize_with = "border::light")]
    pub times: f64,
}

/// What it is from one viewing spot.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FromSpot {
    /// The word for the figure; `None` where nothing of it is in sight.
    pub word: Option<Word>,
    /// That word with what it may also be; empty out of sight.
    pub phrase: String,
    /// Mean luminance of the figure, cd/m².
    pub mean: Banded,
    /// Luminance of the ground beside it, cd/m².
    pub ground: Banded,
    /// The brightest second picture; `None` where none is in sight.
    pub ghost: Option<Ghost>,
    /// How many times brighter or darker than what is behind it the target looks by day, under a white overcast sky that is alike all
    /// over, geometric mean over the target; `None` where no more than half of it is in sight, and for projectors.
    #[serde(serialize_with = "border::light")]
    pub by_day: Option<f64>,
}

impl FromSpot {
    /// How bright the second picture is, divided by the figure: 0 where the figure is in sight and no second picture, `None` where the
    /// figure is not.
    pub fn second_picture(&self) -> Option<f64> {
        self.word.map(|_| self.ghost.as_ref().map_or(0.0, |ghost| ghost.times))
    }
}

/// What one thing that was tried comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Its names: fabrics from front to back, or a projector class.
    pub names: Vec<String>,
    /// The target that it was tried on, where the station has several and it is not for all of them.
    pub on: Option<String>,
    /// The thing of the yard with it.
    #[serde(skip)]
    pub item: Item,
    /// Whether it is what is there now.
    pub now: bool,
    /// From each viewing spot, in the yard's order.
    pub spots: Vec<FromSpot>,
    /// Share of light that passes straight through, square on; `None` where the target lets none pass.
    pub straight: Option<Banded>,
    /// What becomes of the light that meets the target.
    pub fate: Option<Fate>,
    /// Illuminance of the target in white, lx.
    pub white_lx: Banded,
    /// Width of the lit picture on the target, m.
    #[serde(serialize_with = "border::lengths")]
    pub picture_width_m: f64,
    /// Share of the raster's light that misses the target.
    #[serde(serialize_with = "border::light")]
    pub misses: f64,
    /// Real lumens of the station.
    pub lumens: Banded,
    /// What it costs, with all lamps to be bought; `None` where a price is not known. Money.
    pub cost: Option<Banded>,
    /// What running it takes; `None` for fabrics.
    pub upkeep: Option<Upkeep>,
}

impl Row {
    /// Its names as one, with its target where there are several.
    pub fn name(&self) -> String {
        let on = self.on.as_ref().map_or_else(String::new, |on| format!(" on “{on}”"));
        self.names.join(" + ") + &on
    }
}

/// Reads a row; `None` where nothing lands on the target.
pub(super) fn row(question: &Question, night: &Night, yard: &Yard, candidate: &Candidate) -> Option<Row> {
    let (index, catalogue) = (question.station, question.catalogue);
    let name = &yard.stations.get(index)?.name;
    let case = Case::only(yard, catalogue, night, |one| one.name == *name);
    let reading = case.reading(index)?;
    let target = candidate.target.as_ref().unwrap_or(&reading.target);
    let owner = night.names.number(target)?;
    // A fabric is judged by what is seen on its own target.
    let own = candidate.target.as_ref().and_then(|target| reading.targets.iter().find(|one| one.target == *target));
    let (seen, white_lx, fate) = match own {
        Some(one) => {
            let landings = case.landings(index).only(owner);
            (&one.spots, one.mean_on_target_lx, fate(night, yard, &landings))
        }
        None => (&reading.spots, reading.mean_on_target_lx, reading.fate.clone()),
    };
    let straight = night.veils.iter().find(|veil| veil.owner == owner).map(|veil| {
        let [low, typical, high] = night.optics[veil.optic as usize].straight.map(f64::from);
        Banded { low, typical, high }
    });
    let by_day = match question.of {
        Of::Projectors => vec![None; yard.spots.len()],
        _ => yard.spots.iter().map(|spot| day::contrast(night, owner, spot::eye(spot))).collect(),
    };
    let second = |read: &SpotReading, spot| {
        let ghost = ghost::brightest(&case, index, reading, spot, read.sight.as_ref()?)?;
        Some(Ghost { thing: night.names[ghost.owner as usize].clone(), times: ghost.times })
    };
    let spots = seen.iter().zip(&yard.spots).zip(by_day).map(|((read, spot), by_day)| FromSpot {
        word: read.sight.as_ref().map(|sight| sight.word),
        phrase: read.sight.as_ref().map_or_else(String::new, |sight| sight.phrase()),
        mean: read.mean,
        ground: read.ground,
        ghost: second(read, spot),
        by_day,
    });
    let (cost, upkeep) = cost(question, night, yard, owner, candidate);
    Some(Row {
        names: candidate.names.clone(),
        on: candidate.target.clone().filter(|_| reading.targets.len() > 1),
        item: candidate.item.clone(),
        now: candidate.now,
        spots: spots.collect(),
        straight,
        fate,
        white_lx,
        picture_width_m: reading.picture.width_m,
        misses: reading.misses,
        lumens: reading.lumens,
        cost,
        upkeep,
    })
}

fn cost(
    question: &Question,
    night: &Night,
    yard: &Yard,
    target: u32,
    candidate: &Candidate,
) -> (Option<Banded>, Option<Upkeep>) {
    if question.of == Of::Projectors {
        let station = &yard.stations[question.station];
        let Some(class) = yard.projector(question.catalogue, &candidate.names[0]) else { return (None, None) };
        let upkeep = Upkeep::of(class, station, question.running);
        let all = class.price.zip(upkeep.lamps_cost).map(|(price, lamps)| money::cost(price, 1.0, lamps));
        return (all, Some(upkeep));
    }
    if candidate.now {
        // It hangs there already.
        return (Some(Banded::default()), None);
    }
    // Off the roll, as the shopping list has it.
    let name = &night.names[target as usize];
    let price = |fabric: &str| yard.fabric(question.catalogue, fabric)?.price;
    let cuts = cuts(yard, question.catalogue).into_iter().filter(|cut| cut.of == *name);
    let layers: Option<Vec<Banded>> =
        cuts.map(|cut| Some(money::cost(price(&cut.fabric)?, cut.area_m2, 0.0))).collect();
    let layers = layers.filter(|layers| layers.len() == candidate.names.len());
    let sum =
        |a: Banded, b: Banded| Banded { low: a.low + b.low, typical: a.typical + b.typical, high: a.high + b.high };
    (layers.map(|layers| layers.into_iter().fold(Banded::default(), sum)), None)
}
