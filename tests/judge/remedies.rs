//! Every finding is provoked by a yard and gone from another; every remedy, applied, takes its finding away and raises none
//! that it did not announce.

use super::{Lit, yards::all};
use gauzelight::{
    edit::Edit,
    judge::findings::{Case, Finding, Matter, Remedy, Stopped, Work, all_remedies, remedies},
    scene::{Item, Station, Yard},
};

#[test]
fn every_matter_is_provoked_and_can_be_quiet() {
    for matter in Matter::ALL {
        assert!(all().any(|one| one.matter == *matter), "no yard provokes {matter:?}");
    }
    for provoked in all() {
        let (matter, (what, instead)) = (provoked.matter, provoked.instead);
        assert!(provoked.yard.contains(what), "{matter:?}: {what} is not in its yard");
        let found = Lit::parse(provoked.yard).findings();
        let said: Vec<&String> = found.iter().map(|finding| &finding.says).collect();
        let mine = found.iter().find(|finding| finding.matter == matter);
        let mine = mine.unwrap_or_else(|| panic!("{matter:?} is not found among {said:?}"));
        assert!(mine.says.len() > 20 && !mine.says.contains("NaN") && mine.limit.is_finite(), "{mine:?}");
        assert!(mine.why.len() > 10, "{matter:?} has no reason");
        let quiet = Lit::parse(&provoked.yard.replace(what, instead)).findings();
        let still = quiet.iter().find(|finding| finding.matter == matter);
        assert!(still.is_none(), "{matter:?} stays: {}", still.unwrap().says);
    }
}

/// Matters that nothing to be tried mends in their yards: what is not measured is measured, pixels need a projector that the
/// catalogue has not, a second net keeps a second picture from the wall, the sun is kept out with a cap, and which picture is
/// meant nobody can guess.
const NO_REMEDY: &[Matter] = &[Matter::NoPicture, Matter::Unmeasured, Matter::Pixels, Matter::Nets, Matter::Sunlit];

#[test]
fn every_remedy_helps_and_says_what_it_worsens() {
    let mut helped = Vec::new();
    for provoked in all() {
        let lit = Lit::parse(provoked.yard);
        let before = lit.findings();
        for finding in before.iter().filter(|finding| finding.matter == provoked.matter) {
            let found = remedies(&lit.case(), finding, &lit.shelf, None);
            for remedy in found {
                // By the way of a file, as somebody else would have it.
                let changed = remedy.edit.apply(&lit.yard, &lit.catalogue, None).unwrap();
                let again = Yard::parse(&changed.to_text(), "changed", &lit.catalogue).unwrap().yard;
                let after = Lit::of(again).findings();
                let still = after.iter().find(|one| one.is_same(finding));
                assert!(still.is_none(), "“{}” does not help: {}", remedy.says, finding.says);
                for new in after.iter().filter(|one| {
                    let was = before.iter().find(|was| was.is_same(one));
                    was.is_none_or(|was| one.level > was.level || one.excess() / was.excess() > 1.25)
                }) {
                    assert!(remedy.worsens.contains(&new.says), "“{}” also brings: {}", remedy.says, new.says);
                }
                helped.push(finding.matter);
            }
        }
    }
    let without: Vec<&Matter> = Matter::ALL.iter().filter(|matter| !helped.contains(matter)).collect();
    assert_eq!(without, NO_REMEDY.iter().collect::<Vec<_>>(), "matters for which nothing that was tried helps");
}

/// What takes the first finding about a matter away.
fn found(lit: &Lit, matter: Matter) -> (Finding, Vec<Remedy>) {
    let finding = lit.findings().into_iter().find(|finding| finding.matter == matter).unwrap();
    let remedies = remedies(&lit.case(), &finding, &lit.shelf, None);
    (finding, remedies)
}

/// How far a remedy moves the lens of the first station, m.
fn moved(lit: &Lit, remedy: &Remedy) -> f64 {
    let Edit::Change(Item::Station(after)) = &remedy.edit else { panic!("{remedy:?}") };
    let before = &lit.yard.stations[0];
    (0..3).map(|axis| (after.at.0[axis].m - before.at.0[axis].m).powi(2)).sum::<f64>().sqrt()
}

/// A wall 0.76 m before a small projector, which is sharp from 1 m on.
const TOO_NEAR: &str = r#"(
    name: "too near",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 3), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.2, 0.76), aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#;

#[test]
fn the_least_move_is_offered_in_the_steps_of_the_yard() {
    for (units, step) in [("", 0.05), ("units: Feet,", 0.0508)] {
        let lit = Lit::parse(&TOO_NEAR.replacen("name: \"too near\",", &format!("name: \"too near\", {units}"), 1));
        let (finding, remedies) = found(&lit, Matter::Blur);
        let farther =
            remedies.iter().find(|remedy| remedy.says.contains("farther")).unwrap_or_else(|| panic!("{remedies:#?}"));
        let steps = moved(&lit, farther) / step;
        assert!((steps - steps.round()).abs() < 0.02, "{} is not in steps of {step} m", farther.says);
        // A step less leaves it, this much takes it away.
        let blurred = |by: f64| {
            let mut yard = lit.yard.clone();
            let at = &mut yard.stations[0].at.0[2];
            *at = at.changed(at.m + by);
            Lit::of(yard).findings().iter().any(|one| one.is_same(&finding))
        };
        let by = steps.round() * step;
        assert!(!blurred(by) && blurred(by - step), "{} is not the least", farther.says);
        assert!(by < 0.3, "{} where less than 0.24 m are missing", farther.says);
    }
}

#[test]
fn what_is_locked_is_not_moved() {
    let text = TOO_NEAR.replacen("name: \"too near\",", "name: \"too near\", locked: [\"one\"],", 1);
    assert!(found(&Lit::parse(&text), Matter::Blur).1.is_empty());
}

#[test]
fn work_can_be_called_off_and_says_how_far_it_is() {
    let lit = Lit::parse(TOO_NEAR);
    let (case, findings, work) = (lit.case(), lit.findings(), Work::default());
    assert!(all_remedies(&case, &findings, &lit.shelf, None, &work).is_ok());
    let (done, all) = work.progress();
    assert!(done == all && all > 3, "{done} of {all}");
    let stopped = Work::default();
    stopped.stop();
    assert_eq!(all_remedies(&case, &findings, &lit.shelf, None, &stopped), Err(Stopped));
}

#[test]
fn remedies_hang_on_neither_threads_nor_memory() {
    let provoked = all().find(|one| one.matter == Matter::Spill).unwrap();
    let lit = Lit::parse(provoked.yard);
    let with = |threads: usize, remembers: bool| {
        let night = if remembers { lit.night.remembering() } else { lit.night.clone() };
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        pool.install(|| {
            let case = Case::of(&lit.yard, &lit.catalogue, &night);
            all_remedies(&case, &lit.findings(), &lit.shelf, None, &Work::default()).unwrap()
        })
    };
    let plain = with(1, false);
    assert!(plain.iter().any(|remedies| !remedies.is_empty()));
    for (threads, remembers) in [(1, true), (4, false), (4, true)] {
        assert_eq!(with(threads, remembers), plain, "{threads} threads, memory {remembers}");
    }
}

/// A board that is a little too narrow for the figure, which lands to the right of its middle.
const BESIDE_AND_WIDE: &str = r#"(
    name: "beside",
    evening: (sky_lx: 0.05),
    walls: [
        (name: "board", at: (0, 0, 0), width: "1.1 m", height: "2.2 m", surface: "plaster, white"),
        (name: "house wall", at: (0, 0, -0.15), width: "9 m", height: "5 m", surface: "plaster, white"),
    ],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3.4), mount: Ground, aim: (0.5, 1.2, 0), target: "board", content: (picture: "owl_face"))],
)"#;

#[test]
fn what_no_move_mends_alone_is_mended_by_two() {
    let lit = Lit::parse(BESIDE_AND_WIDE);
    let (finding, remedies) = found(&lit, Matter::Overspill);
    let [both] = remedies.as_slice() else { panic!("{remedies:#?}") };
    assert!(both.says.contains(" nearer to what it lights, and aim it "), "{}", both.says);
    let Edit::Change(Item::Station(after)) = &both.edit else { panic!("{both:?}") };
    // Either of the two alone leaves it.
    let before = &lit.yard.stations[0];
    for part in [
        Station { at: after.at.clone(), ..before.clone() },
        Station { aim: after.aim.clone(), target: after.target.clone(), ..before.clone() },
    ] {
        let yard = Edit::Change(Item::Station(part)).apply(&lit.yard, &lit.catalogue, None).unwrap();
        assert!(Lit::of(yard).findings().iter().any(|one| one.is_same(&finding)), "{}", both.says);
    }
}
