//! Trials: a yard as an edit would have it, looked at no farther than it takes.

use super::{Case, Finding, Stopped, Work, finding::gathered, judge_after, touched::Touched};
use crate::{
    edit::Edit,
    frames::Shelf,
    light::{Followed, Night},
    scene::Yard,
};
use std::{
    path::Path,
    sync::{Arc, Mutex, PoisonError},
};

/// How far beyond its limit a finding may be under a sky as it was, and yet be gone under the true one; invented.
const NEARLY: f64 = 1.1;

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
}

/// A yard after an edit, lit.
pub(super) struct Trial {
    yard: Yard,
    night: Night,
}

impl<'a> Trials<'a> {
    pub fn of(case: &'a Case<'a>, shelf: &'a Shelf, folder: Option<&'a Path>, work: &'a Work) -> Self {
        Self { case, before: super::judge(case), work, shelf, folder, judged: Mutex::default() }
    }

    /// The yard after an edit; `None` where it would not pass the checks of a file or cannot be lit. Where opaque things differ, its sky
    /// is not asked for anew yet.
    pub fn light(&self, edit: &Edit) -> Result<Option<Trial>, Stopped> {
        self.work.goes_on()?;
        let Case { yard: before, catalogue, night, .. } = self.case;
        let Ok(yard) = edit.apply(before, catalogue, self.folder) else { return Ok(None) };
        let mut followed = Night::clone(night);
        Ok(match followed.follow(before, &yard, catalogue, self.shelf) {
            Ok(Followed::Rebuild) => night.rebuilt(&yard, catalogue, self.shelf).ok(),
            Ok(_) => Some(followed),
            Err(_) => None,
        }
        .map(|mut followed| {
            if !followed.thorough {
                // What hangs elsewhere shades other places.
                followed.settle(night);
            }
            Trial { yard, night: followed }
        }))
    }

    /// What is left of a finding, looked for alone. Under a sky as it was that is good enough to give a trial up, where it is well
    /// beyond its limit; for all else the sky is asked for anew. What cannot be lit leaves all of it.
    pub fn left_of(&self, finding: &Finding, trial: &mut Trial) -> Option<Finding> {
        let left = self.alone(finding, trial);
        if trial.night.thorough || left.as_ref().is_some_and(|left| left.excess() > NEARLY) {
            return left;
        }
        match Night::build(&trial.yard, self.case.catalogue, self.shelf) {
            Ok(built) => trial.night = built,
            Err(_) => return Some(finding.clone()),
        }
        self.alone(finding, trial)
    }

    /// What is left of a finding under the night as it is: no other matter, and no more stations and spots than it takes.
    fn alone(&self, finding: &Finding, trial: &Trial) -> Option<Finding> {
        let alone = finding.matter.stands_alone(finding);
        let mut yard = Yard::clone(&trial.yard);
        if alone.spots && !finding.places.is_empty() {
            yard.spots.retain(|spot| finding.shows_from(&spot.name.0));
        }
        let case = Case::only(&yard, self.case.catalogue, &trial.night, |station| alone.reads(station));
        gathered(finding.matter.look(&case)).into_iter().find(|one| one.is_same(finding))
    }

    /// All findings of a yard in which one, looked for alone, is gone: so its night is thorough.
    pub fn judge(&self, trial: Trial) -> Result<Arc<Vec<Finding>>, Stopped> {
        if let Some(known) = self.known(&trial.yard) {
            return Ok(known);
        }
        self.work.goes_on()?;
        let touched = Touched::between(self.case.yard, &trial.yard);
        let found = Arc::new(judge_after(self.case, &self.before, &trial.yard, &trial.night, &touched));
        let mut judged = self.judged.lock().unwrap_or_else(PoisonError::into_inner);
        judged.push((trial.yard, Arc::clone(&found)));
        Ok(found)
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
        judge::findings::{
            judge,
            moves::{Shift, Way},
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

    /// Random edits of a yard: in part and as a whole, from a night built anew. How many moved a cloth.
    fn hold(text: &str, edits: usize, seed: u64) -> usize {
        let catalogue = Catalogue::builtin();
        let yard = Yard::parse(text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
        let mut shelf = Shelf::beside(Path::new(""));
        shelf.fetch_for(&yard);
        let night = Night::build(&yard, &catalogue, &shelf).unwrap().remembering();
        let (case, work) = (Case::of(&yard, &catalogue, &night), Work::default());
        let trials = Trials::of(&case, &shelf, None, &work);
        let (mut dice, mut in_part, mut gone, mut hung) = (Dice(seed), 0, 0, 0);
        for _ in 0..edits {
            let Some(edit) = changed(&case, &mut dice) else { continue };
            let Some(mut trial) = trials.light(&edit).unwrap() else { continue };
            assert!(trial.night.thorough, "{} leaves the sky as it was", edit.label());
            hung += usize::from(matches!(edit, Edit::Change(Item::Cloth(_))));
            let built = Night::build(&trial.yard, &catalogue, &shelf).unwrap();
            let whole = judge(&Case::of(&trial.yard, &catalogue, &built));
            let touched = Touched::between(&yard, &trial.yard);
            in_part += usize::from(touched != Touched::Anything);
            let part = judge_after(&case, &trials.before, &trial.yard, &trial.night, &touched);
            assert_eq!(part, whole, "{}", edit.label());
            for finding in &trials.before {
                let still = whole.iter().any(|one| one.is_same(finding));
                gone += usize::from(!still);
                let left = trials.left_of(finding, &mut trial);
                assert!(still || left.is_none(), "{}, after {}: {left:?}", finding.says, edit.label());
            }
        }
        assert!(in_part > edits / 4 && gone > 0, "{in_part} of {edits} in part, {gone} findings gone");
        hung
    }

    #[test]
    fn what_is_judged_in_part_is_what_the_whole_yard_gives() {
        let hung = hold(include_str!("../../../scenes/crossing.ron"), 60, 7);
        assert!(hung > 2, "{hung} cloths moved");
        hold(include_str!("../../../scenes/owl_night.ron"), 8, 11);
    }
}
