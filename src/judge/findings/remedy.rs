//! Remedies: proposals that were tried and found to help.

use super::{Case, Finding, Level, family::Family, judge};
use crate::{
    edit::Edit,
    frames::Shelf,
    light::{Followed, Night},
    scene::Yard,
};
use std::path::Path;

/// What might help.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Proposal {
    /// What to do, in one sentence.
    pub says: String,
    /// The same as an edit.
    pub edit: Edit,
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

/// So many times as far beyond its limit a finding is worse than it was.
const WORSE: f64 = 1.25;

/// Remedies that are enough.
const ENOUGH: usize = 3;

/// What takes a finding away, of each move the variant that worsens least, what costs least trouble first: each proposal is applied to a copy of the yard, which must pass
/// the checks of a file, and that is judged. What is locked is not touched. `shelf` holds the pictures of the stations, and `folder` is where
/// more would be looked for.
pub fn remedies(case: &Case, finding: &Finding, shelf: &Shelf, folder: Option<&Path>) -> Vec<Remedy> {
    let before = judge(case);
    let proposals = finding.matter.propose(case, finding);
    let mut kept: Vec<(Family, Remedy)> = Vec::new();
    for Proposal { says, edit } in proposals {
        let family = Family::of(case.yard, &edit);
        let variant = kept.iter().position(|(of, _)| *of == family);
        if variant.is_some_and(|at| kept[at].1.worsens.is_empty()) {
            continue;
        }
        let Ok(yard) = edit.apply(case.yard, case.catalogue, folder) else { continue };
        let Some(mut night) = lit(case, &yard, shelf) else { continue };
        let mut after = judge(&Case::of(&yard, case.catalogue, &night));
        if after.iter().any(|one| one.is_same(finding)) {
            continue;
        }
        if !night.thorough {
            // What a moved cloth shades still has the sky that it had: good enough to try, not to promise.
            let Ok(built) = Night::build(&yard, case.catalogue, shelf) else { continue };
            night = built;
            after = judge(&Case::of(&yard, case.catalogue, &night));
            if after.iter().any(|one| one.is_same(finding)) {
                continue;
            }
        }
        let no_worse = |was: &Finding, one: &Finding| was.level >= one.level && one.excess() <= WORSE * was.excess();
        let graver = |one: &&Finding| !before.iter().any(|was| was.is_same(one) && no_worse(was, one));
        // What is only to be checked is not cured by something that is to be fixed.
        if finding.level < Level::Fix && after.iter().filter(graver).any(|one| one.level == Level::Fix) {
            continue;
        }
        let worsens: Vec<String> = after.iter().filter(graver).map(|one| one.says.clone()).collect();
        let remedy = Remedy { says, edit, worsens };
        match variant {
            Some(at) if remedy.worsens.len() < kept[at].1.worsens.len() => kept[at].1 = remedy,
            Some(_) => {}
            None => kept.push((family, remedy)),
        }
        if kept.len() >= ENOUGH {
            break;
        }
    }
    let mut kept: Vec<Remedy> = kept.into_iter().map(|(_, remedy)| remedy).collect();
    // What worsens nothing comes first; otherwise they stay in the order of their trouble.
    kept.sort_by_key(|remedy| remedy.worsens.len());
    kept
}

/// The night of a changed yard.
fn lit(case: &Case, yard: &Yard, shelf: &Shelf) -> Option<Night> {
    let mut night = case.night.clone();
    match night.follow(case.yard, yard, case.catalogue, shelf).ok()? {
        Followed::Rebuild => case.night.rebuilt(yard, case.catalogue, shelf).ok(),
        _ => Some(night),
    }
}
