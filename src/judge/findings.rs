//! Findings: what a decorator should know before the ladder comes out, each one plain sentence with its number, its limit, why
//! that is the limit, and what would help.
//!
//! Every [`Matter`] has a file that looks for it and proposes remedies. A proposal is only a guess: [`remedies`] tries each on
//! a copy of the yard, judges that, keeps the ones that take the finding away, and says of each what it makes worse.

mod bars;
mod box_cold;
mod box_hot;
mod box_window;
mod boxes;
mod budget;
mod by_hand;
mod cable;
mod case;
mod crossed;
mod dazzle;
mod driver;
mod escape;
mod family;
mod finding;
mod focus;
mod fuse;
pub(super) mod ghost;
mod give_away;
mod glass;
mod glimpse;
mod grey_box;
mod guard;
mod hidden;
mod idle;
mod in_the_rain;
mod keystone;
mod ladder;
mod leak;
mod lens_behind;
mod lens_seen;
mod lens_through;
mod matter;
mod motion;
mod moves;
mod near_lens;
mod neighbour;
mod nets;
mod no_picture;
mod nowhere;
mod on_a_stand;
mod outdoor_cable;
mod outshone;
mod overspill;
mod people;
mod pixels;
mod power;
mod rain;
mod rear;
mod remedy;
mod room_through;
mod screen;
mod search;
mod second_tie;
mod sideways;
mod skyward;
mod spill;
mod sunlit;
mod supply;
mod ties;
mod told;
mod topples;
mod touched;
mod trapezoid;
mod trial;
mod uneven;
mod unmeasured;
mod upright;
mod volts;
mod word;
mod work;
mod wrong_way;

pub use case::Case;
pub use finding::{Finding, Level, Place};
pub use matter::Matter;
pub use remedy::{Remedy, all_remedies, remedies};
pub use told::{Told, each, short, told};
pub use work::{Stopped, Work};

use finding::{gathered, worst_first};
use rayon::prelude::*;

/// All that a yard's light and its boxes give rise to, each cause once, the worst first.
pub fn judge(case: &Case) -> Vec<Finding> {
    if let Some(found) = case.found.get() {
        return found.clone();
    }
    let found = found(case, |_| None);
    case.found.get_or_init(|| found).clone()
}

/// What is known of each matter, else what is found of it; the worst first.
fn found(case: &Case, known: impl Fn(Matter) -> Option<Vec<Finding>> + Sync) -> Vec<Finding> {
    let of = |matter: &Matter| known(*matter).unwrap_or_else(|| gathered(matter.look(case)));
    let mut list: Vec<Finding> = Matter::ALL.par_iter().flat_map_iter(of).collect();
    list.sort_by(worst_first);
    list
}
