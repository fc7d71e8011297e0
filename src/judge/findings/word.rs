//! The figure is hard to see from a viewing spot.

use super::{Case, Finding, Level, Matter, focus, moves, remedy::Attempt, room_through};
use crate::{
    judge::{
        Sight, Word,
        sight::{Answer, Coarsest, Question, coarsest},
    },
    light::Source,
    units::two_digits,
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mut list = Vec::new();
    for (_, _, reading) in case.lit() {
        // A spot that is meant for other stations does not see this one at all.
        let seen =
            reading.spots.iter().filter_map(|spot| Some((spot, spot.sight.as_ref().filter(|_| spot.in_sight > 0.5)?)));
        for (spot, sight) in seen {
            let Some(answer) = open(case, sight) else { continue };
            let value = answer.value.map_or(0.0, |value| value.typical);
            let bound = case.limit(answer.question.limits()[1]);
            let level = if answer.word == Word::Lost { Level::Fix } else { Level::Check };
            let (name, word) = (&reading.station, answer.word.name());
            let says = format!("“{name}” is {word} from “{}”: {}", spot.spot, reason(sight, answer, bound.value));
            let finding = Finding::new(Matter::Word, level, name, Some(&spot.spot)).against(value, &bound, says);
            list.push(finding.doing(does(sight, answer)).unsure(answer.most >= Word::Clear));
        }
    }
    list
}

/// The worst of the answers that are less than clear. That another station takes the eye from it is told of by itself.
fn open<'a>(case: &Case, sight: &'a Sight) -> Option<&'a Answer> {
    let rival = sight.rival.as_ref().and_then(|rival| case.night.sources.get(rival.source as usize));
    let by_station = matches!(rival, Some(Source::Station(..)));
    let told =
        |answer: &&Answer| answer.word < Word::Clear && !(by_station && answer.question == Question::HoldsItsOwn);
    let short = |answer: &Answer| answer.value.map_or(0.0, |value| value.typical / answer.limits[1]);
    let order = |a: &&Answer, b: &&Answer| a.word.cmp(&b.word).then(short(a).total_cmp(&short(b)));
    sight.answers.iter().filter(told).min_by(order)
}

/// Why it is no better, with its number and what would be clear.
fn reason(sight: &Sight, answer: &Answer, clear: f64) -> String {
    let number = two_digits(answer.value.map_or(0.0, |value| value.typical));
    let clear = two_digits(clear);
    match answer.question {
        Question::LightEnough => format!("{number} times the least light that shows there, {clear} needed"),
        Question::FineEnough => {
            format!("its strokes are {number} times {}, {clear} needed", coarsest(sight.coarsest))
        }
        Question::StandsOut => {
            format!("its brightest parts are {number} times as bright as its dark ones, {clear} needed")
        }
        Question::HoldsItsOwn => match &sight.rival {
            Some(rival) => format!(
                "“{}” outshines it: it counts for {number} of that, {clear} needed ({} times its light, {:.0}° beside it)",
                rival.name,
                two_digits(rival.times),
                rival.degrees
            ),
            None => format!("{number} times what else is in sight, {clear} needed"),
        },
    }
}

fn does(sight: &Sight, answer: &Answer) -> String {
    match answer.question {
        Question::LightEnough => "Set it nearer, or use a brighter projector".to_owned(),
        Question::FineEnough => match sight.coarsest {
            Coarsest::Eye => "Throw it larger, or use a coarser picture".to_owned(),
            Coarsest::Pixel => "Use a projector with more pixels, or a coarser picture".to_owned(),
            Coarsest::Blur => "Focus it on its target".to_owned(),
        },
        Question::StandsOut => "Shade it from other light, or use a projector with deeper black".to_owned(),
        Question::HoldsItsOwn => match &sight.rival {
            Some(rival) => format!("Shade or switch off “{}” while it plays", rival.name),
            None => Matter::Word.advice().to_owned(),
        },
    }
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let seen = reading.spots.iter().find(|spot| Some(spot.spot.as_str()) == finding.from());
    let sight = seen.and_then(|seen| seen.sight.as_ref());
    let mut list = Vec::new();
    if let Some(sight) = sight
        && sight.answer(Question::HoldsItsOwn).word < Word::Clear
        && let Some(rival) = &sight.rival
    {
        list.extend(room_through::off(case, rival.source).map(Attempt::Once));
    }
    if let Some(sight) = sight
        && sight.answer(Question::FineEnough).word < Word::Clear
    {
        list.extend(match sight.coarsest {
            Coarsest::Eye => Vec::new(),
            Coarsest::Pixel => moves::other_class(case, station, |class, now| class.pixels.0 > now.pixels.0),
            Coarsest::Blur => focus::propose(case, finding),
        });
    }
    list.extend(moves::along(case, station, &[2.5]));
    list.extend(moves::brighter(case, station, (finding.limit / finding.number.max(1e-6)).min(20.0)));
    list
}
