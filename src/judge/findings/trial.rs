//! Trials: a yard as an edit would have it, looked at no farther than it takes.

use super::{
    Case, Finding, Stopped, Work,
    case::{Known, Reading},
    finding::gathered,
    found,
    touched::Touched,
};
use crate::{
    edit::Edit,
    frames::Shelf,
    judge::{Landings, reading::Depth},
    light::{Followed, Night},
    scene::{Station, Yard},
};
use std::{
    collections::VecDeque,
    path::Path,
    sync::{Arc, Mutex, OnceLock, PoisonError},
};

/// Where edits of one yard are tried.
pub(super) struct Trials<'a> {
    pub case: &'a Case<'a>,
    /// All findings of the yard as it is.
    pub before: Vec<Finding>,
    pub work: &'a Work,
    shelf: &'a Shelf,
    folder: Option<&'a Path>,
    /// What was judged in full: several findings may have one proposal.
    judged: Mutex<Vec<(Yard, Arc<Vec<Finding>>)>>,
    /// Moves of stations that were lit last, by their edits: searches for several findings try the same.
    moved: Mutex<VecDeque<(Edit, Arc<Trial>)>>,
}

/// So many moves are kept.
const KEPT: usize = 64;

/// A yard after an edit, lit.
pub(super) struct Trial {
    yard: Yard,
    night: Night,
    touched: Touched,
    /// What of its readings is known since a finding that was looked for alone was gone, until all is judged.
    read: Mutex<Vec<Reading>>,
    /// Where its rasters land, as far as they were followed.
    landings: Vec<OnceLock<Arc<Landings>>>,
}

impl<'a> Trials<'a> {
    pub fn of(case: &'a Case<'a>, shelf: &'a Shelf, folder: Option<&'a Path>, work: &'a Work) -> Self {
        Self {
            case,
            before: super::judge(case),
            work,
            shelf,
            folder,
            judged: Mutex::default(),
            moved: Mutex::default(),
        }
    }

    /// The yard after an edit; `None` where it would not pass the checks of a file or cannot be lit.
    pub fn light(&self, edit: &Edit) -> Result<Option<Arc<Trial>>, Stopped> {
        self.work.goes_on()?;
        let moved = || self.moved.lock().unwrap_or_else(PoisonError::into_inner);
        let known = moved().iter().find(|(of, _)| of == edit).map(|(_, trial)| Arc::clone(trial));
        Ok(known.or_else(|| {
            let trial = Arc::new(self.after(edit)?);
            // Such a night shares all but its beams with the yard's own; others are large, and seldom wanted twice.
            if matches!(trial.touched, Touched::Stations(_)) {
                let mut moved = moved();
                moved.truncate(KEPT - 1);
                moved.push_front((edit.clone(), Arc::clone(&trial)));
            }
            Some(trial)
        }))
    }

    /// The yard after an edit, lit anew.
    fn after(&self, edit: &Edit) -> Option<Trial> {
        let Case { yard: before, catalogue, night, .. } = self.case;
        let yard = edit.apply(before, catalogue, self.folder).ok()?;
        let mut followed = Night::clone(night);
        let night = match followed.follow(before, &yard, catalogue, self.shelf).ok()? {
            Followed::Nothing | Followed::Lights => followed,
            Followed::Hung => followed.settle(night).then_some(followed)?,
            Followed::Rebuild => night.build_after(&yard, catalogue, self.shelf).ok()?,
        };
        let touched = Touched::between(before, &yard);
        let landings = yard.stations.iter().map(|_| OnceLock::new()).collect();
        Some(Trial { yard, night, touched, read: Mutex::default(), landings })
    }

    /// What is left of a finding, looked for alone: no other matter, and no more stations and spots than it takes.
    pub fn left_of(&self, finding: &Finding, trial: &Trial) -> Option<Finding> {
        let alone = finding.matter.stands_alone(finding);
        let mut yard = Yard::clone(&trial.yard);
        yard.spots.retain(|spot| alone.has_spot(&spot.name.0));
        let deep = |station: &Station| alone.depth(station);
        let known = Known { landings: &trial.landings, ..Known::default() };
        let case = match trial.touched.stations(&yard) {
            Some(changed) => Case::after(self.case, &yard, &trial.night, (&changed, known), deep),
            None => Case::as_far(&yard, self.case.catalogue, &trial.night, known, deep),
        };
        let left = gathered(finding.matter.look(&case)).into_iter().find(|one| one.is_same(finding));
        if left.is_none() && yard.spots.len() == trial.yard.spots.len() {
            let measured = case.measured(deep);
            if measured.iter().any(Option::is_some) {
                *trial.read.lock().unwrap_or_else(PoisonError::into_inner) = measured;
            }
        }
        left
    }

    /// All findings of a yard in which one, looked for alone, is gone.
    pub fn judge(&self, trial: &Trial) -> Result<Arc<Vec<Finding>>, Stopped> {
        if let Some(known) = self.known(&trial.yard) {
            return Ok(known);
        }
        self.work.goes_on()?;
        let found = Arc::new(self.judge_whole(trial));
        let mut judged = self.judged.lock().unwrap_or_else(PoisonError::into_inner);
        judged.push((trial.yard.clone(), Arc::clone(&found)));
        Ok(found)
    }

    /// A trial with all that is judged.
    fn whole<'b>(&'b self, trial: &'b Trial) -> Case<'b> {
        let Trial { yard, night, touched, read, landings } = trial;
        let read = std::mem::take(&mut *read.lock().unwrap_or_else(PoisonError::into_inner));
        let known = Known { readings: &read, landings };
        match touched.stations(yard) {
            Some(changed) => Case::after(self.case, yard, night, (&changed, known), |_| Depth::Measured),
            None => Case::as_far(yard, self.case.catalogue, night, known, |_| Depth::Measured),
        }
    }

    fn judge_whole(&self, trial: &Trial) -> Vec<Finding> {
        let (case, touched) = (self.whole(trial), &trial.touched);
        let of = |matter| self.before.iter().filter(|one| one.matter == matter).cloned().collect();
        found(&case, |matter| touched.leaves(matter).then(|| of(matter)))
    }

    fn known(&self, yard: &Yard) -> Option<Arc<Vec<Finding>>> {
        let judged = self.judged.lock().unwrap_or_else(PoisonError::into_inner);
        judged.iter().find(|(of, _)| of == yard).map(|(_, found)| Arc::clone(found))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        judge::{
            OnTarget, PhoneCheck, StationReading,
            findings::{
                Matter, judge,
                moves::{Shift, Way},
            },
        },
        scene::{Aim, Catalogue, Item, Point, Positive, Ref, Station, Supply, SupplyKind},
    };

    /// A small generator, so that a failing run can be had again (Marsaglia, "Xorshift RNGs", 2003).
    struct Dice(u64);

    impl Dice {
        fn roll(&mut self, sides: usize) -> usize {
            self.0 ^= self.0 << 13;
            self.0 ^= self.0 >> 7;
            self.0 ^= self.0 << 17;
            (self.0 % sides as u64) as usize
        }

        fn metres(&mut self) -> f64 {
            (self.roll(2001) as f64 - 1000.0) / 1000.0
        }
    }

    fn changed(case: &Case, dice: &mut Dice) -> Option<Edit> {
        let station = &case.yard.stations[dice.roll(case.yard.stations.len())];
        let with = |station: Station| Edit::Change(Item::Station(station));
        Some(match dice.roll(11) {
            0..=3 => {
                let mut shift = Shift::default();
                for way in [Way::Nearer, Way::Higher, Way::Right, Way::AimHigher, Way::AimRight] {
                    shift = shift.with(way, dice.roll(9) as i32 - 4);
                }
                shift.of(case, station)?.edit
            }
            4 => with(Station { on: !station.on, ..station.clone() }),
            5 => with(Station { projector: Ref::to("big LED"), ..station.clone() }),
            6 => with(Station { ballast_kg: 3.0, second_tie: true, shelter: None, ..station.clone() }),
            7 => with(Station { aim: Aim::At(Point::metres(dice.metres(), 1.0, dice.metres())), ..station.clone() }),
            8 => {
                let supply: &Supply = case.yard.supplies.first()?;
                let SupplyKind::Mains(_) = supply.kind else { return None };
                Edit::Budget(Some(Positive(100.0)))
            }
            9 => {
                let mut lamp = case.yard.lamps.get(dice.roll(3))?.clone();
                lamp.on = !lamp.on;
                Edit::Change(Item::Lamp(lamp))
            }
            _ => {
                let cloth = case.yard.cloths.get(dice.roll(2))?.clone();
                Edit::Change(Item::Cloth(cloth).moved([dice.metres(), 0.0, dice.metres()]))
            }
        })
    }

    /// What of a reading is known of a trial: not what each target gets, nor how far the aim may stray or what a phone reads, and what
    /// is seen of each of several only where any is see-through.
    fn measured(yard: &Yard, reading: &StationReading) -> StationReading {
        let is_through = |one: &OnTarget| {
            let name = |of: &str| of == one.target;
            yard.films.iter().any(|film| name(&film.name.0)) || yard.cloths.iter().any(|cloth| name(&cloth.name.0))
        };
        let apart = reading.targets.len() == 1 || reading.targets.iter().any(is_through);
        let seen = |one: &OnTarget| OnTarget {
            target: one.target.clone(),
            spots: if apart { one.spots.clone() } else { Vec::new() },
            ..OnTarget::default()
        };
        let targets = reading.targets.iter().map(seen).collect();
        StationReading { targets, slack: None, phone_check: PhoneCheck::default(), ..reading.clone() }
    }

    /// Matters of what is seen from behind each of several targets.
    const REAR: [Matter; 5] = [Matter::LensThrough, Matter::RoomThrough, Matter::Leak, Matter::Screen, Matter::Bars];

    /// Two sheers side by side by one projector behind them.
    const SHEERS: &str = r#"(
        name: "sheers",
        spots: [(name: "path", at: (0, 0, 7), look: (0, 1.5, 0)), (name: "gate", at: (2, 0, 5), look: (0, 1.5, 0))],
        cloths: [
            (name: "first", fabric: "white sheer", at: (-0.55, 2, 0), width: 1, height: 1),
            (name: "second", fabric: "white sheer", at: (0.55, 2, 0), width: 1, height: 1),
        ],
        stations: [(name: "one", projector: "mini LED", at: (0, 1.5, -2.6), mount: Shelf, aim: (0, 1.5, 0), target: ["first", "second"], content: (picture: "owl_wall", mirrored: true))],
    )"#;

    /// Random edits of a yard: in part and as a whole, from a night built anew. How many moved a cloth, and how many findings from behind
    /// were gone and left.
    fn hold(text: &str, edits: usize, seed: u64) -> (usize, [usize; 2]) {
        let catalogue = Catalogue::builtin();
        let yard = Yard::parse(text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
        let mut shelf = Shelf::beside(Path::new(""));
        shelf.fetch_for(&yard);
        let night = Night::build(&yard, &catalogue, &shelf).unwrap().remembering();
        let (case, work) = (Case::of(&yard, &catalogue, &night), Work::default());
        let trials = Trials::of(&case, &shelf, None, &work);
        let (mut dice, mut in_part, mut gone, mut hung, mut rear) = (Dice(seed), 0, 0, 0, [0, 0]);
        for _ in 0..edits {
            let Some(edit) = changed(&case, &mut dice) else { continue };
            let Some(trial) = trials.light(&edit).unwrap() else { continue };
            assert!(trial.night.thorough, "{} leaves the sky as it was", edit.label());
            hung += usize::from(matches!(edit, Edit::Change(Item::Cloth(_))));
            let built = Night::build(&trial.yard, &catalogue, &shelf).unwrap();
            let full = Case::of(&trial.yard, &catalogue, &built);
            let whole = judge(&full);
            in_part += usize::from(trial.touched != Touched::Anything);
            assert_eq!(trials.judge_whole(&trial), whole, "{}", edit.label());
            for finding in &trials.before {
                let still = whole.iter().any(|one| one.is_same(finding));
                gone += usize::from(!still);
                let left = trials.left_of(finding, &trial);
                assert!(still || left.is_none(), "{}, after {}: {left:?}", finding.says, edit.label());
                if REAR.contains(&finding.matter) {
                    rear[usize::from(left.is_some())] += 1;
                }
            }
            // By now some of its readings are known.
            assert_eq!(trials.judge_whole(&trial), whole, "{}", edit.label());
            let case = trials.whole(&trial);
            for index in 0..trial.yard.stations.len() {
                let [one, other] =
                    [&case, &full].map(|case| case.reading(index).map(|reading| measured(&trial.yard, reading)));
                assert_eq!(one, other, "{}", edit.label());
            }
        }
        assert!(in_part > edits / 4 && gone > 0, "{in_part} of {edits} in part, {gone} findings gone");
        (hung, rear)
    }

    #[test]
    fn what_is_judged_in_part_is_what_the_whole_yard_gives() {
        let (hung, _) = hold(include_str!("../../../scenes/crossing.ron"), 60, 7);
        assert!(hung > 2, "{hung} cloths moved");
        hold(include_str!("../../../scenes/owl_night.ron"), 8, 11);
        let (_, [gone, left]) = hold(SHEERS, 40, 3);
        assert!(gone > 0 && left > 0, "of findings from behind {gone} are gone, {left} left");
    }
}
