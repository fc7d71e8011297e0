//! Arrangements: kept, shown, flipped.

use super::yard;
use gauzelight::{
    edit::{Edit, History},
    scene::{Aim, Catalogue, Point},
};

#[test]
fn flipping_between_two_arrangements_brings_each_back_to_the_byte() {
    let catalogue = Catalogue::builtin();
    let mut history = History::of(yard("owl_night"));
    let mut act = |edit: Edit| history.act(&edit, None, &catalogue, None).map(|()| history.yard().clone());
    let kept = act(Edit::KeepAs("from the left".to_owned())).unwrap();
    assert_eq!((kept.arrangement.0.as_str(), kept.arrangements[0].name.0.as_str()), ("from the left", "first"));
    let station = kept.item("Shed wall").unwrap().aimed(Aim::At(Point::metres(6.5, 1.0, 3.4)));
    let moved = act(Edit::Change(station)).unwrap();
    let first = act(Edit::Arrange("first".to_owned())).unwrap();
    assert_eq!(first.stations, yard("owl_night").stations);
    let back = act(Edit::Arrange("from the left".to_owned())).unwrap();
    assert_eq!(back.to_text(), moved.to_text());
    let again = act(Edit::KeepAs("first".to_owned())).unwrap_err().to_string();
    assert!(again.contains("already"), "{again}");
    assert!(act(Edit::DropArrangement("from the left".to_owned())).is_err(), "the one shown is kept");
    assert!(act(Edit::DropArrangement("first".to_owned())).unwrap().arrangements.is_empty());
}

#[test]
fn a_station_is_renamed_in_every_arrangement() {
    let catalogue = Catalogue::builtin();
    let edits = Edit::All(vec![
        Edit::KeepAs("second".to_owned()),
        Edit::Rename { from: "Gourds".to_owned(), to: "Pair of gourds".to_owned() },
    ]);
    let after = edits.apply(&yard("owl_night"), &catalogue, None).unwrap();
    for stations in [&after.stations, &after.arrangements[0].stations] {
        assert!(stations.iter().any(|s| s.name.0 == "Pair of gourds") && stations.iter().all(|s| s.name.0 != "Gourds"));
    }
}

#[test]
fn of_three_arrangements_the_last_is_the_one_shown_before_and_notes_stay_with_theirs() {
    let catalogue = Catalogue::builtin();
    let mut yard = yard("owl_night");
    yard.arrangement_note = "as hung last year".to_owned();
    let steps = ["second", "third"].map(|name| Edit::KeepAs(name.to_owned()));
    let mut yard = Edit::All(steps.to_vec()).apply(&yard, &catalogue, None).unwrap();
    for (show, shown_before) in [("first", "third"), ("second", "first"), ("first", "second")] {
        yard = Edit::Arrange(show.to_owned()).apply(&yard, &catalogue, None).unwrap();
        assert_eq!(yard.arrangement.0, show);
        assert_eq!(yard.arrangements.last().unwrap().name.0, shown_before);
        assert_eq!(yard.arrangement_note, if show == "first" { "as hung last year" } else { "" });
    }
}
