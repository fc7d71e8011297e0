//! Remedies: proposals that were tried and found to help.

use super::{
    Case, Finding, Level, Matter, Place, Stopped, Work,
    family::Family,
    moves::Slide,
    search::Search,
    trial::{Trial, Trials},
};
use crate::{edit::Edit, frames::Shelf};
use rayon::prelude::*;
use std::path::Path;

/// What might help.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Proposal {
    /// What to do, in one sentence.
    pub says: String,
    /// The same as an edit.
    pub edit: Edit,
}

/// Something to try.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Attempt {
    /// One thing.
    Once(Proposal),
    /// A move, as far as it takes.
    Slide(Slide),
}

impl From<Proposal> for Attempt {
    fn from(proposal: Proposal) -> Self {
        Self::Once(proposal)
    }
}

/// What helps.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What to do, in one sentence.
    pub says: String,
    /// The same as one undoable edit.
    pub edit: Edit,
    /// What it makes worse: sentences of the findings that are new or graver.
    pub worsens: Vec<String>,
}

/// What a finding has in it that is new or graver than before: the whole, or some of the places that it shows from.
fn graver<'a>(before: &[Finding], one: &'a Finding) -> Vec<(Level, &'a String)> {
    let worse = |(was, then): (Level, f64), (level, now): (Level, f64)| level > was || now > WORSE * then;
    let was = || before.iter().filter(|was| was.is_same(one));
    if one.places.is_empty() || was().next().is_none() {
        let known = was().any(|was| !worse((was.level, was.excess()), (one.level, one.excess())));
        return if known { Vec::new() } else { vec![(one.level, &one.says)] };
    }
    let no_worse = |was: &Place, place: &Place| {
        was.spot == place.spot && !worse((was.level, was.excess()), (place.level, place.excess()))
    };
    let graver = |place: &&Place| !was().flat_map(|was| &was.places).any(|was| no_worse(was, place));
    one.places.iter().filter(graver).map(|place| (place.level, &place.says)).collect()
}

/// So many times as far beyond its limit a finding is worse than it was.
const WORSE: f64 = 1.25;

/// Matters by which a picture is lost, where they are to be fixed.
const LOSES: [Matter; 2] = [Matter::Word, Matter::Overspill];

/// Remedies that are enough.
const ENOUGH: usize = 3;

/// What takes one finding away; see [`all_remedies`].
pub fn remedies(case: &Case, finding: &Finding, shelf: &Shelf, folder: Option<&Path>) -> Vec<Remedy> {
    let all = all_remedies(case, std::slice::from_ref(finding), shelf, folder, &Work::default());
    all.ok().and_then(|mut all| all.pop()).unwrap_or_default()
}

/// For each finding what takes it away: what worsens least first, then what costs least trouble. [`Stopped`] where the work is called
/// off.
///
/// Each proposal is applied to a copy of the yard, which must pass the checks of a file; what is locked is not touched. There the
/// finding is looked for alone, and only where it is gone all is judged. Of a move the least that helps is searched; where none
/// helps alone, some are tried together. `shelf` holds the pictures of the stations, and `folder` is where more would be looked
/// for. A night that [remembers](crate::light::Night::remembering) makes it quick. It hangs on no chance and on no number
/// of threads.
pub fn all_remedies(
    case: &Case,
    findings: &[Finding],
    shelf: &Shelf,
    folder: Option<&Path>,
    work: &Work,
) -> Result<Vec<Vec<Remedy>>, Stopped> {
    let trials = Trials::of(case, shelf, folder, work);
    let proposed: Vec<Vec<Attempt>> =
        findings.par_iter().map(|finding| finding.matter.propose(case, finding)).collect();
    work.expect(proposed.iter().map(Vec::len).sum());
    findings.par_iter().zip(proposed).map(|(finding, attempts)| against(&trials, finding, &attempts)).collect()
}

/// What takes a finding away.
fn against(trials: &Trials, finding: &Finding, attempts: &[Attempt]) -> Result<Vec<Remedy>, Stopped> {
    let search = Search { trials, finding };
    let mut moves: Vec<(&Slide, i32)> = Vec::new();
    for attempt in attempts {
        if let Attempt::Slide(slide) = attempt {
            moves.extend(search.least(slide)?.map(|steps| (slide, steps)));
            trials.work.finish(1);
        }
    }
    moves.sort_by_key(|(_, steps)| *steps);
    let (mut moves, mut kept) = (moves.into_iter(), Kept::default());
    for attempt in attempts {
        if kept.0.len() >= ENOUGH {
            break;
        }
        match attempt {
            Attempt::Once(proposal) => kept.try_once(trials, finding, proposal)?,
            // In the place of each move stands the next shortest that helps.
            Attempt::Slide(_) => {
                if let Some((slide, steps)) = moves.next() {
                    let remedy = search.farther(slide, steps)?;
                    kept.0.extend(remedy.map(|remedy| (None, remedy)));
                }
            }
        }
    }
    let slid = attempts.iter().find_map(|attempt| match attempt {
        Attempt::Slide(slide) => Some(&slide.station),
        Attempt::Once(_) => None,
    });
    if let Some(station) = slid.filter(|_| kept.0.is_empty()) {
        kept.0.extend(search.together(station)?.map(|remedy| (None, remedy)));
    }
    trials.work.finish(attempts.iter().filter(|attempt| matches!(attempt, Attempt::Once(_))).count());
    let mut kept: Vec<Remedy> = kept.0.into_iter().map(|(_, remedy)| remedy).collect();
    // What worsens nothing comes first; otherwise they stay in the order of their trouble.
    kept.sort_by_key(|remedy| remedy.worsens.len());
    Ok(kept)
}

/// What was found to help so far, with the family of what is one of several variants.
#[derive(Default)]
struct Kept(Vec<(Option<Family>, Remedy)>);

impl Kept {
    /// Tries a proposal: of each family the variant that worsens least is kept.
    fn try_once(&mut self, trials: &Trials, finding: &Finding, proposal: &Proposal) -> Result<(), Stopped> {
        let family = Some(Family::of(trials.case.yard, &proposal.edit));
        let variant = self.0.iter().position(|(of, _)| *of == family);
        if variant.is_some_and(|at| self.0[at].1.worsens.is_empty()) {
            return Ok(());
        }
        let Some(trial) = trials.light(&proposal.edit)? else { return Ok(()) };
        if trials.left_of(finding, &trial).is_some() {
            return Ok(());
        }
        let Some(remedy) = settle(trials, finding, proposal, &trial)? else { return Ok(()) };
        match variant {
            Some(at) if remedy.worsens.len() < self.0[at].1.worsens.len() => self.0[at].1 = remedy,
            Some(_) => {}
            None => self.0.push((family, remedy)),
        }
        Ok(())
    }
}

/// Judges all of a yard in which a finding, looked for alone, is gone; `None` where it is not gone after all, or what is only to
/// be checked would be cured by something that is to be fixed.
pub(super) fn settle(
    trials: &Trials,
    finding: &Finding,
    proposal: &Proposal,
    trial: &Trial,
) -> Result<Option<Remedy>, Stopped> {
    let after = trials.judge(trial)?;
    if after.iter().any(|one| one.is_same(finding)) {
        return Ok(None);
    }
    let graver: Vec<(Level, &String)> = after.iter().flat_map(|one| graver(&trials.before, one)).collect();
    if finding.level < Level::Fix && graver.iter().any(|(level, _)| *level == Level::Fix) {
        return Ok(None);
    }
    // What loses the picture mends nothing.
    let lost = |one: &Finding| LOSES.contains(&one.matter) && one.level == Level::Fix && one.of == finding.of;
    if after.iter().any(|one| lost(one) && !trials.before.iter().any(|was| was.is_same(one) && lost(was))) {
        return Ok(None);
    }
    let worsens = graver.into_iter().map(|(_, says)| says.clone()).collect();
    Ok(Some(Remedy { says: proposal.says.clone(), edit: proposal.edit.clone(), worsens }))
}
