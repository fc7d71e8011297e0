//! Every finding is provoked by a yard and gone from another; every remedy, applied, takes its finding away and raises none
//! that it did not announce.

use super::{Lit, yards::all};
use gauzelight::{
    judge::findings::{Matter, remedies},
    scene::Yard,
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
