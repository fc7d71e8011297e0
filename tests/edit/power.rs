//! Supplies and cables as things of a yard: named, moved, copied, taken away with what hangs on them.

use super::yard;
use gauzelight::{
    edit::{Edit, Refusal, copy_of, fresh},
    scene::{Catalogue, Item, SupplyKind, Yard},
};

fn done(yard: &Yard, edit: Edit) -> Result<Yard, Refusal> {
    edit.apply(yard, &Catalogue::builtin(), None)
}

fn remove(name: &str) -> Edit {
    Edit::Remove { name: name.to_owned(), leaving: None }
}

fn cables(yard: &Yard) -> Vec<&str> {
    yard.cables.iter().map(|cable| cable.name.0.as_str()).collect()
}

#[test]
fn cables_and_supplies_follow_a_new_name() {
    let before = yard("rich");
    let rename = |yard: &Yard, from: &str, to: &str| {
        done(yard, Edit::Rename { from: from.to_owned(), to: to.to_owned() }).unwrap()
    };
    let after = rename(&rename(&rename(&before, "outlet", "porch outlet"), "six", "sixth"), "long cord", "orange cord");
    assert_eq!((after.cables[0].from.0.as_str(), after.cables[0].to.0.as_str()), ("porch outlet", "sixth"));
    assert_eq!((after.cables[1].from.0.as_str(), after.cables[2].from.0.as_str()), ("sixth", "orange cord"));
    let SupplyKind::TwelveVolt(low) = &after.supplies[1].kind else { panic!("{:?}", after.supplies[1].kind) };
    assert_eq!(low.from.as_ref().unwrap().0, "porch outlet");
    let back = rename(&rename(&rename(&after, "porch outlet", "outlet"), "sixth", "six"), "orange cord", "long cord");
    assert_eq!(back.to_text(), before.to_text());
}

#[test]
fn what_is_fed_by_it_goes_with_it() {
    let before = yard("rich");
    let after = done(&before, remove("outlet")).unwrap();
    // “six” is still there, and what begins at it.
    assert_eq!(cables(&after), ["on to five", "lights"]);
    assert!(matches!(&after.supplies[0].kind, SupplyKind::TwelveVolt(low) if low.from.is_none()));
    // “six” is in another arrangement too, so that its cable waits there.
    assert_eq!(cables(&done(&before, remove("six")).unwrap()), cables(&before));
    assert_eq!(cables(&done(&before, remove("five")).unwrap()), ["long cord", "beside it", "lights"]);
    let locked = done(&before, Edit::Lock("lights".to_owned(), true)).unwrap();
    assert!(done(&locked, remove("brick")).unwrap_err().to_string().contains("“lights” is locked"));
}

#[test]
fn a_supply_moves_and_a_cable_s_corners_do() {
    let before = yard("rich");
    let moved = before.item("outlet").unwrap().moved([1.0, 0.0, 0.5]);
    let after = done(&before, Edit::Change(moved)).unwrap();
    assert_eq!(after.supplies[0].at.0.clone().map(|length| length.m), [1.0, 0.4, 0.6]);
    let cable = before.item("long cord").unwrap();
    assert_eq!(cable.points().len(), 2);
    let thicker = cable.with_entry("gauge", 0, "12 AWG").unwrap();
    let after = done(&before, Edit::Change(thicker)).unwrap();
    assert_eq!(after.cables[0].gauge.to_string(), "12 AWG");
    assert!(cable.with_entry("gauge", 0, "thick").unwrap_err().to_string().contains("18 AWG"));
    assert!(!before.item("on to five").unwrap().is_movable());
    let supply = before.item("outlet").unwrap().with_entry("kind", 0, "Battery(amp_hours: 40)").unwrap();
    // What wants the mains cannot hang on a battery.
    assert!(done(&before, Edit::Change(supply)).is_err());
}

#[test]
fn a_new_cable_leads_to_what_has_none() {
    let before = yard("rich");
    let Some(Item::Cable(cable)) = fresh(&before, "cable", [0.0; 3], None) else { panic!("no cable") };
    assert_eq!((cable.from.0.as_str(), cable.to.0.as_str()), ("outlet", "owl"));
    let after = done(&before, Edit::Add(Item::Cable(cable))).unwrap();
    let copy = copy_of(&after, &after.item("on to five").unwrap());
    let after = done(&after, Edit::Add(copy)).unwrap();
    let last = after.cables.last().unwrap();
    assert_eq!((last.name.0.as_str(), last.from.0.as_str(), last.to.0.as_str()), ("on to five 2", "six", "two"));
    let supply = copy_of(&after, &after.item("brick").unwrap());
    assert_eq!(done(&after, Edit::Add(supply)).unwrap().supplies.len(), 5);
}
