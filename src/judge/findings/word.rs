//! The figure is hard to see from a viewing spot.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::{Word, sight::Question},
    scene::{Item, Lamp},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mut list = Vec::new();
    for (_, _, reading) in case.lit() {
        // A spot that is meant for other stations does not see this one at all.
        let seen =
            reading.spots.iter().filter_map(|spot| Some((spot, spot.sight.as_ref().filter(|_| spot.in_sight > 0.5)?)));
        for (spot, sight) in seen {
            if sight.word >= Word::Clear {
                continue;
            }
            let answer = sight.worst();
            let value = answer.value.map_or(0.0, |value| value.typical);
            let bound = case.limit(answer.question.limits()[1]);
            let level = if sight.word == Word::Lost { Level::Fix } else { Level::Check };
            let says = format!("{} is {} from {}: {}", reading.station, sight.phrase(), spot.spot, sight.reason);
            let finding = Finding::new(Matter::Word, level, &reading.station, Some(&spot.spot));
            list.push(finding.against(value, &bound, says).unsure(sight.most >= Word::Clear));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let sight =
        reading.spots.iter().find(|spot| Some(spot.spot.as_str()) == finding.from()).and_then(|s| s.sight.as_ref());
    let mut list = Vec::new();
    if let Some(sight) = sight
        && sight.answer(Question::HoldsItsOwn).word < Word::Clear
        && let Some(lamp) = sight.rival.as_ref().and_then(|r| case.yard.lamps.iter().find(|lamp| lamp.name.0 == r.name))
    {
        list.push(Proposal {
            says: format!("Switch off {} while it plays", lamp.name.0),
            edit: Edit::Change(Item::Lamp(Lamp { on: false, ..lamp.clone() })),
        });
    }
    list.extend(moves::along(case, station, &[0.25, 0.5, 1.0, 1.5]));
    list.extend(moves::brighter(case, station, (finding.limit / finding.number.max(1e-6)).min(20.0)));
    list
}
