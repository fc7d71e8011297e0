//! How well marks agree.

use super::{Mark, SquareUp, solve};
use std::fmt;

/// Marks that agree as well as this, px, are above suspicion: nobody clicks better.
const GOOD_SPREAD: f64 = 0.5;
/// How seldom chance may throw suspicion on a mark. Chosen, no source.
const SELDOM: f64 = 0.02;

/// By how much a mark and the map miss each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss {
    /// On the photo, px.
    pub photo: f64,
    /// On the wall, m.
    pub wall: f64,
}

/// A mark that seems to be wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// The mark, from zero.
    pub mark: usize,
    /// The spread of the others without it, px.
    pub spread_without: f64,
}

/// How well the marks agree with the map that they settled.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fit {
    /// One for each mark, in their order. The largest need not be the culprit's: a corner that is wrong pulls the map
    /// to itself.
    pub misses: Vec<Miss>,
    /// The mark that seems to be wrong, if one does; it takes six marks to tell.
    pub suspect: Option<Suspect>,
}

impl Fit {
    /// The fit of a map to marks; none where one of them is on the horizon of the wall.
    pub(super) fn new(square_up: &SquareUp, marks: &[Mark]) -> Option<Self> {
        let miss = |mark: &Mark| {
            let photo = square_up.photo_from_wall(mark.wall)?.distance(mark.photo);
            let wall = square_up.wall_from_photo(mark.photo)?.distance(mark.wall);
            Some(Miss { photo, wall })
        };
        let misses = marks.iter().map(miss).collect::<Option<Vec<_>>>()?;
        let mut fit = Self { misses, suspect: None };
        fit.suspect = fit.find_suspect(marks);
        Some(fit)
    }

    /// Numbers known beyond the eight that settle the map; with none, the misses are naught and tell nothing.
    pub fn spare(&self) -> usize {
        spare(self.misses.len())
    }

    /// How far off a single coordinate of a click seems to be, px (one standard deviation): the root of the sum of the
    /// squared misses over [`Fit::spare`]; none with four marks.
    pub fn spread(&self) -> Option<f64> {
        (self.spare() > 0).then(|| (self.sum() / self.spare() as f64).sqrt())
    }

    fn sum(&self) -> f64 {
        self.misses.iter().map(|miss| miss.photo * miss.photo).sum()
    }

    /// The mark without which the others agree better than chance would have it.
    ///
    /// With normal noise on ν spare numbers, the share of the sum of squares that is left without one mark, and so without
    /// two of them, is distributed as Beta((ν − 2)/2, 1), so that it is less than x by chance x^((ν − 2)/2) of times; there
    /// are as many chances as marks. (The test of a deleted observation in linear regression, written for two numbers.)
    fn find_suspect(&self, marks: &[Mark]) -> Option<Suspect> {
        let spare_without = spare(marks.len()).checked_sub(2).filter(|left| *left > 0)?;
        self.spread().filter(|spread| *spread > GOOD_SPREAD)?;
        let without = |mark: usize| {
            let mut rest = marks.to_vec();
            rest.remove(mark);
            super::mark::check(&rest).ok()?;
            Some((mark, solve::squared_misses(solve::photo_from_wall(&rest)?, &rest)?))
        };
        let (mark, least) = (0..marks.len()).filter_map(without).min_by(|a, b| a.1.total_cmp(&b.1))?;
        let chance = marks.len() as f64 * (least / self.sum()).powf(spare_without as f64 / 2.0);
        let suspect = Suspect { mark, spread_without: (least / spare_without as f64).sqrt() };
        (chance < SELDOM).then_some(suspect)
    }
}

/// Numbers beyond eight that so many marks give.
fn spare(marks: usize) -> usize {
    (2 * marks).saturating_sub(8)
}

impl fmt::Display for Fit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.spread() {
            Some(spread) => write!(f, "The {} marks agree to about {spread:.1} pixels.", self.misses.len())?,
            None => f.write_str("Four marks always agree; add a fifth to see how well they fit.")?,
        }
        match self.suspect {
            Some(Suspect { mark, spread_without }) => {
                write!(f, " Look at mark {} again: without it the others agree to about {spread_without:.1}.", mark + 1)
            }
            None => Ok(()),
        }
    }
}
