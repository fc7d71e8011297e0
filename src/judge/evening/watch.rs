//! Every station from one spot, traced once for all evenings.

use super::{Hour, Hours, Run, Start};
use crate::{
    frames::Shelf,
    judge::{
        Limits, Sighting, Weights, Word,
        sight::{Question, Sums},
        sighting,
    },
    light::{Ambient, Disc, DiscLight, Night, NightFault, Rgb, Source, ambient::Moment},
    scene::{Angle, Catalogue, Clock, Lamp, Moon, Setting, When, Yard},
};
use glam::Vec3;
use jiff::{SignedDuration, Timestamp};
use std::collections::HashMap;

/// Height and, along its height, breadth of the cells of the heavens in which a disc counts as standing in the middle, degrees:
/// it is at most two degrees off.
const CELL: f64 = 3.0;

/// Every station that is on, as it is seen from one spot of a yard, ready for any evening. It stays good as long as nothing but the
/// evening's date, clock, place and cloud changes.
pub struct Watch {
    /// The yard under an even sky of 1 lx with every lamp lit, and a disc that gives 1 lx square to it.
    night: Night,
    disc: u32,
    seen: Vec<Watched>,
    limits: Limits,
    /// Lamps that have switch times, by their index among the sources.
    switched: Vec<(usize, Lamp)>,
    switches: Vec<Clock>,
    /// What a disc in a cell of the heavens does to a station.
    discs: HashMap<(usize, [i32; 2]), Option<Sums>>,
}

struct Watched {
    index: usize,
    name: String,
    sighting: Sighting,
}

impl Watch {
    /// Looks from the spot of this index; `night` is that of the yard as it stands, whatever its evening. Without such a spot
    /// nothing is seen.
    pub fn of(
        night: &Night,
        yard: &Yard,
        catalogue: &Catalogue,
        shelf: &Shelf,
        spot: usize,
    ) -> Result<Self, NightFault> {
        let even = evenly_lit(yard);
        let mut night = night.clone();
        night.follow(yard, &even, catalogue, shelf)?;
        let disc = night.disc().map_or(0, |disc| disc.source);
        let watched = |index: usize| {
            let sighting = sighting(&night, &even, catalogue, index, spot)?;
            Some(Watched { index, name: yard.stations[index].name.0.clone(), sighting })
        };
        let seen = (0..yard.stations.len()).filter_map(watched).collect();
        let switched: Vec<(usize, Lamp)> = yard
            .lamps
            .iter()
            .filter(|lamp| lamp.from.is_some() || lamp.until.is_some())
            .filter_map(|lamp| {
                let is_it = |source: &Source| matches!(source, Source::Lamp(name) if *name == lamp.name.0);
                Some((night.sources.iter().position(is_it)?, lamp.clone()))
            })
            .collect();
        let switches = switched.iter().flat_map(|(_, lamp)| [lamp.from, lamp.until]).flatten().collect();
        Ok(Self { disc, seen, limits: Limits::of(yard, catalogue), switched, switches, discs: HashMap::new(), night })
    }

    /// How many stations are on and not hidden.
    pub fn len(&self) -> usize {
        self.seen.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.seen.is_empty()
    }

    /// Index in the yard, and name, of one of them.
    pub fn station(&self, at: usize) -> (usize, &str) {
        (self.seen[at].index, &self.seen[at].name)
    }

    /// The clock times at which a lamp is switched.
    pub(super) fn switches(&self) -> &[Clock] {
        &self.switches
    }

    /// The word of one of them at a moment; `None` where nothing of the figure is in sight. What is worse than `from` may be told as
    /// some other word that is.
    pub fn word(&mut self, at: usize, moment: &Moment, from: Word) -> Option<Word> {
        let mut weights = self.weights(moment);
        let Some(disc) = moment.ambient.disc else { return self.weighed(at, None, &weights) };
        // With more light around, a figure shows less of its own light; its strokes and its rivals stay what they are. Where these
        // three fall short already, the disc need not be traced.
        let words = self.questioned(at, None, &weights)?;
        let stands = Question::StandsOut as usize;
        let most = (0..4).filter(|at| *at != stands).map(|at| words[at]).min().unwrap_or(Word::Lost);
        if most < from {
            return Some(most);
        }
        weights = weights.with(self.disc as usize, disc.square_lx());
        let cell = cell_of(&disc);
        if !self.discs.contains_key(&(at, cell)) {
            let traced = self.traced(at, middle_of(cell));
            self.discs.insert((at, cell), traced);
        }
        self.weighed(at, self.discs.get(&(at, cell)).and_then(Option::as_ref), &weights)
    }

    /// When one of them is seen well enough, from its words at moments that go on until the visitors have gone at least.
    pub(super) fn start(
        &mut self,
        at: usize,
        when: &When,
        hours: &Hours,
        (moments, words): (&[Moment], &[Option<Word>]),
        wanted: Word,
    ) -> Start {
        let is_well = |word: Option<Word>| word.is_some_and(|word| word >= wanted);
        let there = moments.iter().zip(words).take_while(|(moment, _)| moment.instant < hours.until.instant);
        let (mut runs, mut since, mut before) = (Vec::new(), None, None::<&Moment>);
        for (moment, word) in there {
            let is_on = is_well(*word);
            if is_on != since.is_some() {
                let turned = before
                    .map_or(moment.instant, |b| self.turned(at, (when, hours.setting), [b, moment], wanted, is_on));
                let turned = Hour::of(when, turned);
                match since.take() {
                    Some(from) => runs.push(Run { from, until: turned, lasts: false }),
                    None => since = Some(turned),
                }
            }
            before = Some(moment);
        }
        let minute_before = hours.until.instant.checked_sub(SignedDuration::from_mins(1)).unwrap_or(hours.from.instant);
        let last = self.word(at, &Moment::of(when, hours.setting, minute_before), Word::Faint);
        if let Some(from) = since {
            runs.push(Run { from, until: hours.until, lasts: true });
        }
        let first = self.word(at, &Moment::of(when, hours.setting, hours.from.instant), Word::Faint);
        Start::of(&runs, hours, [first, last])
    }

    /// The first minute between two moments from which a station is, or is no more, seen well enough.
    fn turned(
        &mut self,
        at: usize,
        (when, setting): (&When, Setting),
        [before, after]: [&Moment; 2],
        wanted: Word,
        is_on: bool,
    ) -> Timestamp {
        let minutes = after.instant.duration_since(before.instant).as_mins();
        let minute = |n: i64| before.instant.checked_add(SignedDuration::from_mins(n)).unwrap_or(after.instant);
        if minutes <= 1 {
            return after.instant;
        }
        // So near it matters where in its cell the disc stands.
        let middle = Ambient::at(when, setting, minute(minutes / 2)).disc;
        let disc = middle.or(after.ambient.disc).or(before.ambient.disc);
        let sums = disc.and_then(|disc| self.traced(at, disc.toward()));
        let (mut low, mut high) = (0, minutes);
        while high - low > 1 {
            let between = (low + high) / 2;
            let moment = Moment::of(when, setting, minute(between));
            let mut weights = self.weights(&moment);
            if let Some(disc) = moment.ambient.disc {
                weights = weights.with(self.disc as usize, disc.square_lx());
            }
            let is_well = self.weighed(at, sums.as_ref(), &weights).is_some_and(|word| word >= wanted);
            if is_well == is_on { high = between } else { low = between }
        }
        minute(high)
    }

    /// Sky and lamps as the clock has them; no disc.
    fn weights(&self, moment: &Moment) -> Weights {
        let mut weights = vec![1.0; self.night.sources.len()];
        for (source, lamp) in &self.switched {
            weights[*source] = f64::from(u8::from(lamp.shines(Some(moment.clock))));
        }
        // It was traced under 1 lx.
        weights[self.night.sky_source as usize] = moment.ambient.sky_lx;
        weights[self.disc as usize] = 0.0;
        Weights(weights)
    }

    fn questioned(&self, at: usize, sums: Option<&Sums>, weights: &Weights) -> Option<[Word; 4]> {
        let sighting = &self.seen[at].sighting;
        sighting.words(sums.unwrap_or(sighting.sums()), weights, &self.limits)
    }

    fn weighed(&self, at: usize, sums: Option<&Sums>, weights: &Weights) -> Option<Word> {
        self.questioned(at, sums, weights)?.into_iter().min()
    }

    fn traced(&mut self, at: usize, toward: Vec3) -> Option<Sums> {
        self.night.set_disc(Some(DiscLight { toward, square: Rgb::splat(1.0), source: self.disc }));
        self.seen[at].sighting.sums_with_disc(&self.night)
    }
}

/// The cell of the heavens that a disc stands in: its height, then its bearing in steps as broad at that height.
fn cell_of(disc: &Disc) -> [i32; 2] {
    let row = (disc.height_deg / CELL).floor();
    [row as i32, (disc.bearing_deg.rem_euclid(360.0) / breadth(row)).floor() as i32]
}

fn middle_of([row, column]: [i32; 2]) -> Vec3 {
    let breadth = breadth(f64::from(row));
    let (height, bearing) = ((f64::from(row) + 0.5) * CELL, (f64::from(column) + 0.5) * breadth);
    Disc { body: crate::light::Body::Moon, bearing_deg: bearing, height_deg: height, lx: 1.0 }.toward()
}

/// Breadth of a row's cells in bearing, degrees.
fn breadth(row: f64) -> f64 {
    let middle: f64 = ((row + 0.5) * CELL).to_radians();
    CELL / middle.cos().max(0.02)
}

/// A yard's even night: its sky neutral, every lamp that is on lit whatever the clock, and a moon to be moved.
fn evenly_lit(yard: &Yard) -> Yard {
    let mut even = yard.clone();
    even.evening.when = None;
    even.evening.sky_lx = 1.0;
    even.evening.moon = Some(Moon { lx: 1.0, bearing_deg: Angle(0.0), height_deg: Angle(45.0) });
    for lamp in &mut even.lamps {
        (lamp.from, lamp.until) = (None, None);
    }
    even
}
