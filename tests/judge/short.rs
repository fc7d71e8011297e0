//! The short list: each cause once, in few lines, and nothing left out without a word.

use super::{Lit, yards::all};
use gauzelight::{
    judge::findings::{Finding, Level, Matter, short, told},
    units::two_digits,
};

fn owl_night() -> Vec<Finding> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/owl_night.ron");
    Lit::parse(&std::fs::read_to_string(path).unwrap()).findings()
}

#[test]
fn our_yard_is_told_in_twelve_lines() {
    let found = owl_night();
    let lines = told(&found);
    assert!(lines.len() <= 12, "{lines:#?}");
    let list = short(&lines, 12, 160);
    assert_eq!(list.len(), lines.len());
    for (told, line) in lines.iter().zip(&list) {
        assert!(line.chars().count() <= 160 && !line.contains('…'), "{line}");
        let one = told.worst;
        assert!(line.contains(&one.says) && one.says.contains(|letter: char| letter.is_ascii_digit()), "{line}");
        // What to do is left out only where it and the problem leave no room for the places that are counted.
        let unsure = if one.unsure { " (may be fine)".len() } else { 0 };
        let needs = 7 + one.says.chars().count() + unsure + 2 + one.does.chars().count();
        assert!(line.ends_with(&one.does) || needs > 160 - 40, "{line}: {}", one.does);
    }
}

#[test]
fn every_cause_is_told_once_with_its_worst_place_first() {
    let found = owl_night();
    for (index, one) in found.iter().enumerate() {
        assert!(!found[index + 1..].iter().any(|other| other.is_same(one)), "{one:?} is told twice");
        let mut spots: Vec<&str> = one.places.iter().map(|place| place.spot.as_str()).collect();
        if let Some(first) = one.places.first() {
            assert_eq!((first.level, first.number, &first.says), (one.level, one.number, &one.says));
            assert!(one.places.iter().all(|place| place.level <= one.level), "{one:?}");
        }
        spots.sort_unstable();
        spots.dedup();
        assert_eq!(spots.len(), one.places.len(), "{one:?}");
        assert!(!one.does.is_empty() && !one.does.ends_with('.'), "{one:?}");
    }
    // What nobody measured is one line for the yard.
    assert!(found.iter().filter(|one| one.matter == Matter::Unmeasured).count() <= 1);
}

#[test]
fn what_is_left_out_is_counted_by_its_level() {
    let found = owl_night();
    let lines = told(&found);
    let list = short(&lines, 3, 160);
    assert_eq!(list.len(), 3);
    let left = |level| lines[2..].iter().filter(|line| line.worst.level == level).count();
    let mut parts = Vec::new();
    if left(Level::Fix) > 0 {
        parts.push(format!("{} more to fix", left(Level::Fix)));
    }
    if left(Level::Check) > 0 {
        parts.push(format!("{} more to check", left(Level::Check)));
    }
    assert_eq!(list[2].trim(), format!("{}; `--all` shows them", parts.join(", ")));
    // A narrow line still says what it is about.
    assert!(lines.iter().all(|line| line.line(60).chars().count() <= 60));
}

#[test]
fn one_cause_of_one_thing_is_one_line() {
    let of = |matter: Matter, thing: &str| {
        let found = owl_night();
        let mut one = found[0].clone();
        (one.matter, one.of, one.places) = (matter, thing.to_owned(), Vec::new());
        one
    };
    // What misses a target lights the sky; another station's light in the sky is another cause.
    let found = [of(Matter::Overspill, "one"), of(Matter::Skyward, "one"), of(Matter::Skyward, "two")];
    let lines = told(&found);
    assert_eq!(lines.len(), 2, "{lines:?}");
    assert!(lines[0].line(300).contains("; also light into the sky"), "{}", lines[0].line(300));
    assert_eq!(lines.iter().flat_map(|line| line.findings()).count(), 3);
}

#[test]
fn a_station_that_takes_the_eye_is_told_once() {
    let provoked = all().find(|one| one.matter == Matter::Outshone).unwrap();
    let found = Lit::parse(provoked.yard).findings();
    let outshone = found.iter().find(|one| one.matter == Matter::Outshone && one.of == "one");
    let outshone = outshone.unwrap_or_else(|| panic!("{found:#?}"));
    // By the number that is judged.
    let counts = format!("“one” counts for {} of it", two_digits(outshone.number));
    assert!(outshone.says.contains(&counts), "{} without {counts}", outshone.says);
    assert!(!found.iter().any(|one| one.matter == Matter::Word && one.says.contains("“other”")), "{found:#?}");
}

#[test]
fn places_that_are_counted_are_told_as_places() {
    let mut one = owl_night().into_iter().find(|one| !one.places.is_empty()).unwrap();
    one.says = "x".repeat(100);
    let mut place = one.places[0].clone();
    place.spot = "a far corner of the garden".to_owned();
    one.places = vec![place.clone(), place.clone()];
    let line = |one: &Finding| told(std::slice::from_ref(one))[0].line(130);
    assert!(line(&one).contains("; from 1 more place"), "{}", line(&one));
    one.places = vec![place; 4];
    assert!(line(&one).contains("; from 3 more places"), "{}", line(&one));
}
