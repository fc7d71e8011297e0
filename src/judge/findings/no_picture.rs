//! A station that throws nothing of its own: its picture is missing, black or transparent.

use super::{Case, Finding, Level, Matter, finding::Bound, people, remedy::Proposal};
use crate::scene::limits;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::BLACK);
    let mut list = Vec::new();
    for (_, station, beams) in people::shining(case) {
        let Some(frame) = beams.first().map(|beam| &beam.frame) else { continue };
        let (of, picture) = (&station.name.0, &station.content.picture);
        let finding = Finding::new(Matter::NoPicture, Level::Fix, of, None);
        if frame.stand_in {
            let one = Bound { value: 1.0, unit: "picture".to_owned(), why: bound.why.clone() };
            let says = format!("The picture “{picture}” of “{of}” is missing: a test card stands in for it");
            list.push(finding.against(0.0, &one, says));
        } else if f64::from(frame.peak) <= bound.value {
            let says = format!(
                "The picture “{picture}” of “{of}” is black or transparent: its brightest point is {:.1} % of white",
                100.0 * frame.peak
            );
            list.push(finding.against(f64::from(frame.peak), &bound, says));
        }
    }
    list
}

/// Which picture it ought to be nobody can guess.
pub(super) fn propose(_: &Case, _: &Finding) -> Vec<Proposal> {
    Vec::new()
}
