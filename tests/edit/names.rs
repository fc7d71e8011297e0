//! Renaming and removing: whatever names a thing follows it.

use super::yard;
use gauzelight::{
    edit::{Edit, Refusal, free_name},
    scene::{Aim, Catalogue, Point, Yard},
};

fn done(yard: &Yard, edit: Edit) -> Result<Yard, Refusal> {
    edit.apply(yard, &Catalogue::builtin(), None)
}

fn rename(from: &str, to: &str) -> Edit {
    Edit::Rename { from: from.to_owned(), to: to.to_owned() }
}

#[test]
fn whatever_names_a_thing_follows_its_new_name() {
    let before = yard("one_window");
    let after = done(&before, rename("window", "parlour window")).unwrap();
    assert_eq!(after.films[0].window.as_ref().unwrap().0, "parlour window");
    assert!(matches!(&after.spots[0].look, Aim::Thing(name) if name.0 == "parlour window"));
    let after = done(&after, rename("film", "grey film")).unwrap();
    assert!(matches!(&after.stations[0].aim, Aim::Thing(name) if name.0 == "grey film"));
    let back = done(&done(&after, rename("grey film", "film")).unwrap(), rename("parlour window", "window")).unwrap();
    assert_eq!(back.to_text(), before.to_text());
}

#[test]
fn a_name_that_is_taken_or_no_name_is_refused() {
    let before = yard("one_window");
    let taken = done(&before, rename("film", "front")).unwrap_err().to_string();
    assert!(taken.contains("“front” is a name already"), "{taken}");
    let empty = done(&before, rename("film", "  ")).unwrap_err().to_string();
    assert!(empty.contains("empty"), "{empty}");
    let long = done(&before, rename("film", &"x".repeat(61))).unwrap_err().to_string();
    assert!(long.contains("too long"), "{long}");
}

#[test]
fn what_hangs_on_a_wall_goes_with_it_and_aims_stay_where_they_were() {
    let before = yard("one_window");
    let remove = |leaving| Edit::Remove { name: "front".to_owned(), leaving };
    let refused = done(&before, remove(None)).unwrap_err().to_string();
    assert!(refused.contains("aims at it"), "{refused}");
    let after = done(&before, remove(Some(Point::metres(0.0, 1.5, 0.0)))).unwrap();
    assert!(after.walls.is_empty() && after.films.is_empty());
    assert_eq!(after.stations[0].aim, Aim::At(Point::metres(0.0, 1.5, 0.0)));
    assert_eq!(after.spots[0].look, Aim::At(Point::metres(0.0, 1.5, 0.0)));
}

#[test]
fn what_is_locked_stays_as_it_is() {
    let locked = done(&yard("one_window"), Edit::Lock("film".to_owned(), true)).unwrap();
    let moved = locked.item("film").unwrap().with_entry("fabric", 0, "rear film, white").unwrap();
    for edit in [
        Edit::Change(moved.clone()),
        rename("film", "other"),
        Edit::Hide("film".to_owned(), true),
        Edit::Remove { name: "front".to_owned(), leaving: Some(Point::metres(0.0, 1.0, 0.0)) },
    ] {
        let refusal = done(&locked, edit).unwrap_err().to_string();
        assert!(refusal.contains("“film” is locked") && refusal.contains("unlock"), "{refusal}");
    }
    let free = done(&locked, Edit::Lock("film".to_owned(), false)).unwrap();
    assert_eq!(done(&free, Edit::Change(moved)).unwrap().films[0].fabric.0, "rear film, white");
}

#[test]
fn a_free_name_counts_on() {
    let yard = yard("one_of_each");
    assert_eq!(free_name(&yard, "cloth"), "cloth 2");
    assert_eq!(free_name(&yard, "cloth 2"), "cloth 2");
    assert_eq!(free_name(&yard, "lantern"), "lantern");
}
