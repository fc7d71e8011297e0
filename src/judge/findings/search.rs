//! The search for the least move of a station that takes a finding away.

use super::{
    Finding, Level, Stopped,
    moves::{Shift, Slide, Way},
    remedy::{Proposal, Remedy, settle},
    trial::{Trial, Trials},
};
use crate::scene::Station;
use std::sync::Arc;

/// Steps of a move that are tried, one after the other until one helps; then those between it and the one before.
const STEPS: [i32; 12] = [1, 2, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96];

/// Of a move that at its least makes something else worse, so many farther ones are tried.
const FARTHER: usize = 2;

/// Ways that are tried together where none helps alone.
const TOGETHER: [Way; 5] = [Way::Nearer, Way::Higher, Way::AimHigher, Way::AimRight, Way::Right];

/// How far on each at once, in steps; how often; and how far in all.
const STRIDES: [i32; 4] = [8, -8, 2, -2];
const ROUNDS: usize = 5;
const REACH: i32 = 30;

/// The search for what takes one finding away.
#[derive(Clone, Copy)]
pub(super) struct Search<'a> {
    pub trials: &'a Trials<'a>,
    pub finding: &'a Finding,
}

/// A station moved: what is left of the finding, if anything, and the way there.
struct Moved {
    left: Option<Finding>,
    proposal: Proposal,
    trial: Arc<Trial>,
}

impl Search<'_> {
    /// The station moved, and the finding looked for alone; `None` where it cannot stand there.
    fn moved(&self, station: &Station, shift: Shift) -> Result<Option<Moved>, Stopped> {
        let Some(proposal) = shift.of(self.trials.case, station) else { return Ok(None) };
        let Some(trial) = self.trials.light(&proposal.edit)? else { return Ok(None) };
        let left = self.trials.left_of(self.finding, &trial);
        Ok(Some(Moved { left, proposal, trial }))
    }

    fn helps(&self, station: &Station, shift: Shift) -> Result<bool, Stopped> {
        Ok(self.moved(station, shift)?.is_some_and(|moved| moved.left.is_none()))
    }

    /// The least steps of a move after which the finding, looked for alone, is gone.
    pub fn least(&self, slide: &Slide) -> Result<Option<i32>, Stopped> {
        let steps = STEPS.into_iter().filter(|steps| *steps < slide.most).chain([slide.most]);
        let mut short = 0;
        for far in steps {
            if self.helps(&slide.station, slide.shift(far))? {
                let helps = |steps| self.helps(&slide.station, slide.shift(steps));
                return least_between(short, far, helps).map(Some);
            }
            short = far;
        }
        Ok(None)
    }

    /// The remedy that a move is, judged in full: at its least, or somewhat farther where that worsens less.
    pub fn farther(&self, slide: &Slide, least: i32) -> Result<Option<Remedy>, Stopped> {
        let mut best: Option<Remedy> = None;
        let on = STEPS.into_iter().filter(|steps| *steps > least && *steps <= slide.most).take(FARTHER);
        for steps in [least].into_iter().chain(on) {
            let Some(moved) = self.moved(&slide.station, slide.shift(steps))? else { break };
            if moved.left.is_some() {
                continue;
            }
            let remedy = settle(self.trials, self.finding, &moved.proposal, &moved.trial)?;
            let better = |remedy: &Remedy| best.as_ref().is_none_or(|best| remedy.worsens.len() < best.worsens.len());
            best = remedy.filter(better).or(best);
            if best.as_ref().is_some_and(|best| best.worsens.is_empty()) {
                break;
            }
        }
        Ok(best)
    }

    /// Where no move helps alone: several, one after the other, each time that after which least is left of the finding; of
    /// what takes it away as little on each way as still does. Where no move lessens it, none is sought any farther.
    pub fn together(&self, station: &Station) -> Result<Option<Remedy>, Stopped> {
        let (mut at, mut least) = (Shift::default(), size(self.finding));
        for _ in 0..ROUNDS {
            let (mut helps, mut lessens): (Option<Shift>, Option<Shift>) = (None, None);
            for (way, by) in TOGETHER.into_iter().flat_map(|way| STRIDES.map(|by| (way, by))) {
                let next = at.with(way, at.0[way as usize] + by);
                if next.0[way as usize].abs() > REACH {
                    continue;
                }
                match self.moved(station, next)?.map(|moved| moved.left) {
                    Some(None) if helps.is_none_or(|known| next.trouble() < known.trouble()) => helps = Some(next),
                    Some(Some(left)) if size(&left) < least => (lessens, least) = (Some(next), size(&left)),
                    _ => {}
                }
            }
            if let Some(shift) = helps {
                let shift = self.shrunk(station, shift)?;
                let Some(moved) = self.moved(station, shift)? else { return Ok(None) };
                return settle(self.trials, self.finding, &moved.proposal, &moved.trial);
            }
            let Some(shift) = lessens else { break };
            at = shift;
        }
        Ok(None)
    }

    /// Of a shift that helps as little on each of its ways, one after the other, as still does.
    fn shrunk(&self, station: &Station, mut shift: Shift) -> Result<Shift, Stopped> {
        for way in TOGETHER {
            let steps = shift.0[way as usize];
            let with = |steps: i32| shift.with(way, steps);
            if steps == 0 {
                continue;
            }
            let helps = |least: i32| self.helps(station, with(least * steps.signum()));
            let least = if helps(0)? { 0 } else { least_between(0, steps.abs(), helps)? };
            shift = with(least * steps.signum());
        }
        Ok(shift)
    }
}

/// The least that helps between what does not and what does, by halving.
fn least_between(mut short: i32, mut far: i32, helps: impl Fn(i32) -> Result<bool, Stopped>) -> Result<i32, Stopped> {
    while far - short > 1 {
        let middle = i32::midpoint(short, far);
        *(if helps(middle)? { &mut far } else { &mut short }) = middle;
    }
    Ok(far)
}

fn size(finding: &Finding) -> (Level, f64) {
    (finding.level, finding.excess())
}
