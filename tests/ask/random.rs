//! Any answers at all: word and numbers are those of the yard that is written, by the judge of every yard.

use super::{asked, length};
use gauzelight::{
    frames::Shelf,
    judge::{
        Limits, Weights, Word,
        ask::{Answer, Lumens, Projector, Question, Street, Target},
        findings::{Case, Matter, judge},
        read_station, sightings,
    },
    light::Night,
    scene::{Band, Catalogue, FabricKind, Units, Yard},
    units::Length,
};
use proptest::{prelude::*, sample::select, test_runner::RngSeed};
use std::path::Path;

fn metres(range: std::ops::Range<f64>) -> impl Strategy<Value = Length> {
    range.prop_map(|m| length(&format!("{m:.2} m")))
}

fn projector(catalogue: &Catalogue) -> impl Strategy<Value = Projector> + use<> {
    (select(catalogue.projectors.clone()), 0..3, 0.0..1.0_f64).prop_map(|(class, kind, part)| {
        let Band { low, high, .. } = class.lumens;
        let lumens = match kind {
            0 => None,
            1 => Some(Lumens::OnBox((class.claimed.0 * (0.3 + 2.7 * part)).round())),
            _ => Some(Lumens::Measured((low + part * (high - low)).round())),
        };
        Projector { lumens, ..Projector::class(&class.name.0) }
    })
}

fn fabric(catalogue: &Catalogue, target: Target) -> BoxedStrategy<Option<String>> {
    let is_film = |kind: &FabricKind| matches!(kind, FabricKind::Film { .. });
    let fits = |kind: &FabricKind| match target {
        Target::Window => is_film(kind),
        Target::Cloth => !is_film(kind),
        Target::Wall | Target::Form => false,
    };
    let fitting = catalogue.fabrics.iter().filter(|fabric| fits(&fabric.kind));
    let names: Vec<String> = fitting.map(|fabric| fabric.name.0.clone()).collect();
    if names.is_empty() { Just(None).boxed() } else { select(names).prop_map(Some).boxed() }
}

fn questions() -> impl Strategy<Value = Question> {
    let catalogue = Catalogue::builtin();
    let of = move |target: Target| {
        let sizes = (metres(0.3..4.0), prop::option::of(metres(0.3..3.0)), prop::option::of(metres(0.0..3.0)));
        let rest = (any::<bool>(), any::<bool>(), select(vec![Units::Metric, Units::Feet]));
        let all = (sizes, metres(0.6..9.0), projector(&catalogue), select(Street::ALL.to_vec()), rest);
        (all, fabric(&catalogue, target)).prop_map(move |((sizes, distance, projector, street, rest), fabric)| {
            let (width, height, lower_edge) = sizes;
            let (upright, lamp_off, units) = rest;
            let usual = Question::usual(target, units);
            let upright = upright || usual.upright;
            Question { width, height, lower_edge, distance, projector, street, fabric, upright, lamp_off, ..usual }
        })
    };
    select(Target::ALL.to_vec()).prop_flat_map(of)
}

fn check(question: &Question, answer: &Answer) -> Result<(), TestCaseError> {
    let catalogue = Catalogue::builtin();
    let loaded = Yard::parse(&answer.yard_text, "little.ron", &catalogue).unwrap();
    prop_assert!(loaded.warnings.is_empty(), "{}", loaded.warnings);
    let mut shelf = Shelf::beside(Path::new(""));
    shelf.fetch_for(&loaded.yard);
    let night = Night::build(&loaded.yard, &catalogue, &shelf).unwrap();
    let reading = read_station(&night, &loaded.yard, &catalogue, 0).unwrap();
    prop_assert_eq!(&reading, &answer.reading);
    let sight = sightings(&night, &loaded.yard, &catalogue, 0).unwrap()[0]
        .under(&Weights::default(), &Limits::of(&loaded.yard, &catalogue));
    prop_assert_eq!(&reading.spots[0].sight, &sight);
    prop_assert_eq!(&answer.verdict.sight, &sight);
    let Some(sight) = sight else {
        prop_assert_eq!(answer.verdict.word, Word::Lost, "{:?}", question);
        return Ok(());
    };
    let verdict = &answer.verdict;
    prop_assert_eq!([verdict.word, verdict.least, verdict.most], [sight.word, sight.least, sight.most]);
    prop_assert!(verdict.sentence.contains(&sight.reason), "{}", verdict.sentence);
    // And whoever has the yard judged hears the same.
    let found = judge(&Case::of(&loaded.yard, &catalogue, &night));
    let told = found.iter().any(|finding| finding.matter == Matter::Word);
    prop_assert_eq!(told, sight.word < Word::Clear && reading.spots[0].in_sight > 0.5, "{:?}", sight.word);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, rng_seed: RngSeed::Fixed(1), ..ProptestConfig::default() })]

    #[test]
    fn the_word_is_that_of_the_yard(question in questions()) {
        check(&question, &asked(&question))?;
    }
}
