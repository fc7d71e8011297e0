//! Where the lens goes: two tapes and a height, a tape to check by, and the ladder.

use super::Page;
use crate::sheet::{
    Weight,
    flow::{BODY, Column, SMALL},
};

/// Words and values of the place of the lens.
pub(super) fn lens(left: &mut Column, page: &Page) {
    let (pose, digits) = (&page.worked.pose, page.digits);
    left.title("Where the lens goes");
    if let Some(taped) = &pose.taped {
        for (mark, m) in taped.tapes {
            let name = page.listed.mark(mark).name();
            left.measured(Some(&page.listed.sign(mark)), &name, &digits.length(m));
        }
    }
    match pose.below.as_ref().filter(|(_, m)| (m - pose.lens.y).abs() > 5e-4) {
        Some((name, m)) => {
            left.measured(None, &format!("height over “{name}” right below"), &digits.length(*m));
            left.measured(None, "the same over the yard's zero", &digits.length(pose.lens.y));
        }
        None => left.measured(None, "height over the ground right below, the yard's zero", &digits.length(pose.lens.y)),
    }
    left.gap(2.0);
    match &pose.taped {
        Some(taped) => {
            left.text(&format!("Of the two places that fit, the one {}.", taped.side), BODY, Weight::Regular);
        }
        None => left.text("No two marks lie well for tapes: set it by the yard's lines.", BODY, Weight::Bold),
    }
    if let Some((mark, m)) = pose.check {
        let (sign, name) = (page.listed.sign(mark), page.listed.mark(mark).name());
        left.text(&format!("To check: {} from {sign}, {name}.", digits.length(m)), BODY, Weight::Regular);
    }
    left.text(&format!("By the yard's lines: {}.", page.by_lines(pose.lens)), SMALL, Weight::Regular);
    if let Some(ladder) = page.worked.ladders.first() {
        let [along, _, out] = page.datum.coordinates(ladder.foot).map(|m| digits.length(m));
        let more = if page.worked.ladders.len() > 1 { ", others as drawn" } else { "" };
        let says = format!("Ladder: foot at along {along}, out {out}, one out for every four up{more}.");
        left.text(&says, BODY, Weight::Regular);
    }
}
