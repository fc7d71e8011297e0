//! A thousand random edits on every yard.

use super::yards;
use gauzelight::{
    edit::{Edit, History, fresh, kinds},
    scene::{
        Aim, Angle, Catalogue, Clock, Date, Evening, Fraction, GroundState, Latitude, Longitude, Point, Ref, Tape,
        Units, When, Yard, Zone,
    },
};

/// A small generator, so that a failing run can be had again (Marsaglia, "Xorshift RNGs", 2003).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % sides as u64) as usize
    }

    fn one_of<T: Clone>(&mut self, list: &[T]) -> T {
        list[self.roll(list.len())].clone()
    }

    fn metres(&mut self) -> f64 {
        (self.roll(20_001) as f64 - 10_000.0) / 1000.0
    }
}

const TYPED: [&str; 26] = [
    "1.9 m",
    "6' 3 1/2\"",
    "+4 in",
    "+-25 cm",
    "",
    "0",
    "-1 m",
    "1e9",
    "NaN",
    "white tulle",
    "voile, white",
    "nothing like it",
    "true",
    "Double",
    "2",
    "0.5",
    "None",
    "(",
    "\"quoted\"",
    "600 m",
    "mini LED",
    "owl_wall",
    "18:30",
    "1 am",
    "25:00",
    "2026-12-21",
];

fn name(yard: &Yard, dice: &mut Dice) -> String {
    let names: Vec<String> = yard.items().map(|item| item.name().to_owned()).collect();
    if names.is_empty() || dice.roll(30) == 0 { "nobody".to_owned() } else { dice.one_of(&names) }
}

fn changed(yard: &Yard, dice: &mut Dice) -> Option<Edit> {
    let item = yard.item(&name(yard, dice))?;
    let item = match dice.roll(5) {
        0 => item.moved([dice.metres(), dice.metres(), dice.metres()]),
        1 => item.turned(dice.metres() * 50.0),
        2 => item.slid(dice.metres(), dice.metres()),
        3 => match dice.roll(2) {
            0 => item.aimed(Aim::At(Point::metres(dice.metres(), dice.metres(), dice.metres()))),
            _ => item.aimed(Aim::Thing(Ref::to(&name(yard, dice)))),
        },
        _ => {
            let fields = item.fields();
            let field = dice.one_of(&fields);
            // What is typed may be refused before it is an edit at all.
            item.with_entry(&field.name, dice.roll(3), dice.one_of(&TYPED)).ok()?
        }
    };
    Some(Edit::Change(item))
}

/// An evening with a date, often one that cannot be.
fn dated(yard: &Yard, dice: &mut Dice) -> Evening {
    let when = When {
        date: Date::parse(&format!("20{:02}-{:02}-01", dice.roll(100), 1 + dice.roll(12))).unwrap(),
        clock: Clock::new(dice.roll(24) as u16, dice.roll(60) as u16),
        latitude_deg: Latitude(dice.metres() * 20.0),
        longitude_deg: Longitude(dice.metres() * 20.0),
        zone: Zone::parse(dice.one_of(&["Europe/Berlin", "America/New_York", "+09:30", "UTC"][..])).unwrap(),
        faces_deg: Angle(dice.metres() * 30.0),
        cloud: Fraction(0.25),
    };
    Evening { when: Some(when), soaked: dice.roll(2) == 0, moon: None, ..yard.evening.clone() }
}

fn edit(yard: &Yard, dice: &mut Dice) -> Option<Edit> {
    let words = ["owl", "second", "tern", "gate post", " ", "A long name that goes on", "first", ""];
    Some(match dice.roll(16) {
        0..=5 => changed(yard, dice)?,
        6 | 7 => {
            let host = name(yard, dice);
            let at = [dice.metres(), 0.0, dice.metres()];
            let kinds = kinds();
            Edit::Add(fresh(yard, dice.one_of(&kinds[..]), at, Some(&host))?)
        }
        8 => Edit::Remove {
            name: name(yard, dice),
            leaving: (dice.roll(2) == 0).then(|| Point::metres(dice.metres(), 1.0, dice.metres())),
        },
        9 => Edit::Rename { from: name(yard, dice), to: dice.one_of(&words).to_owned() },
        10 => Edit::Lock(name(yard, dice), dice.roll(3) == 0),
        11 => Edit::Hide(name(yard, dice), dice.roll(2) == 0),
        12 => match dice.roll(6) {
            0 if dice.roll(2) == 0 => Edit::Evening(dated(yard, dice)),
            3 => Edit::LayTape(Tape::between([dice.metres(), 0.0, 1.0], [dice.metres() * 90.0, 1.0, 0.0])),
            4 => Edit::DropTapes,
            5 => Edit::Around(
                yard.around().with_entry("visitors", dice.roll(2), dice.one_of(&["18:30", "23:10", "7 pm"])).ok()?,
            ),
            0 => Edit::Evening(Evening { sky_lx: dice.metres(), ground: GroundState::Wet, ..yard.evening.clone() }),
            1 => Edit::Units(if dice.roll(2) == 0 { Units::Feet } else { Units::Metric }),
            2 => Edit::Title(dice.one_of(&words).to_owned()),
            _ => Edit::Ground(yard.ground.clone()),
        },
        13 => Edit::KeepAs(dice.one_of(&words).to_owned()),
        14 => match yard.arrangements.first() {
            Some(one) if dice.roll(3) > 0 => Edit::Arrange(one.name.0.clone()),
            Some(one) => Edit::DropArrangement(one.name.0.clone()),
            None => Edit::Arrange("nowhere".to_owned()),
        },
        _ => {
            let item = yard.item(&name(yard, dice))?;
            let copy = gauzelight::edit::free_name(yard, item.name());
            let copy = item.moved([0.3, 0.0, 0.3]).named(&copy);
            Edit::All(vec![Edit::Add(copy), changed(yard, dice)?])
        }
    })
}

#[test]
fn a_thousand_random_edits_go_back_and_forth_byte_for_byte() {
    let catalogue = Catalogue::builtin();
    for (seed, (file, yard)) in yards().into_iter().enumerate() {
        let mut dice = Dice(0x9e37_79b9_7f4a_7c15 ^ (seed as u64 + 1));
        let start = yard.to_text();
        let mut history = History::of(yard);
        let (mut done, mut refused, mut steps) = (0, 0, 0);
        let mut gesture = 0;
        while done + refused < 1000 {
            let before = history.yard().clone();
            let Some(edit) = edit(&before, &mut dice) else { continue };
            // Now and then a drag: several edits that are one step back.
            if dice.roll(4) > 0 {
                gesture += 1;
            }
            let undo = history.can_undo().map(str::to_owned);
            match history.act(&edit, Some(gesture), &catalogue, None) {
                Ok(()) => {
                    done += 1;
                    if done % 20 == 0 {
                        let text = history.yard().to_text();
                        let again = Yard::parse(&text, file, &catalogue).unwrap_or_else(|faults| {
                            panic!("{file}: after {edit:?}:\n{}", faults.plain());
                        });
                        assert_eq!(again.yard, **history.yard(), "{file}: {edit:?}");
                    }
                }
                Err(refusal) => {
                    refused += 1;
                    assert_eq!(history.yard().to_text(), before.to_text(), "{file}: {edit:?} was refused");
                    assert_eq!(history.can_undo().map(str::to_owned), undo);
                    assert!(refusal.to_string().len() > 10, "{file}: {edit:?} says only {refusal}");
                }
            }
        }
        assert!(done > 200 && refused > 100, "{file}: {done} done, {refused} refused");
        let end = history.yard().to_text();
        while history.undo().is_some() {
            steps += 1;
        }
        assert_eq!(history.yard().to_text(), start, "{file}: undone to its beginning");
        assert!(history.is_saved(), "{file}: as it was opened");
        for _ in 0..steps {
            assert!(history.redo().is_some());
        }
        assert_eq!(history.redo(), None);
        assert_eq!(history.yard().to_text(), end, "{file}: done again to its end");
        println!("{file}: {done} edits done in {steps} steps, {refused} refused");
    }
}

#[test]
fn every_kind_can_be_added_to_a_yard_and_taken_out_again() {
    let catalogue = Catalogue::builtin();
    for kind in kinds() {
        let mut history = History::of(super::yard("one_window"));
        if kind == "cable" {
            // It begins at a supply.
            assert_eq!(fresh(history.yard(), kind, [0.0; 3], None), None);
            let supply = fresh(history.yard(), "supply", [0.0; 3], None).unwrap();
            history.act(&Edit::Add(supply), None, &catalogue, None).unwrap();
        }
        let start = history.yard().to_text();
        let item =
            fresh(history.yard(), kind, if kind == "door" { [4.5, 0.0, 0.0] } else { [1.0, 0.9, 2.0] }, Some("front"))
                .unwrap();
        let name = item.name().to_owned();
        assert_eq!(item.word(), kind);
        history.act(&Edit::Add(item), None, &catalogue, None).unwrap_or_else(|e| panic!("{kind}: {e}"));
        assert!(matches!(history.yard().item(&name), Some(item) if item.word() == kind));
        history.act(&Edit::Remove { name, leaving: None }, None, &catalogue, None).unwrap();
        assert_eq!(history.yard().to_text(), start, "{kind}");
    }
    assert!(kinds().len() >= 22, "{:?}", kinds());
    assert_eq!(fresh(&super::yard("one_window"), "window", [0.0; 3], None), None);
}

#[test]
fn a_gesture_that_is_given_up_leaves_nothing() {
    let catalogue = Catalogue::builtin();
    let mut history = History::of(super::yard("one_window"));
    let start = history.yard().to_text();
    for step in 1..=3 {
        let item = history.yard().item("Window").unwrap().moved([0.1 * f64::from(step), 0.0, 0.0]);
        history.act(&Edit::Change(item), Some(7), &catalogue, None).unwrap();
    }
    history.abandon(7);
    assert_eq!(history.yard().to_text(), start);
    assert!(history.is_saved() && history.can_undo().is_none() && history.can_redo().is_none());
    // There and back again is no step either.
    for way in [0.1, -0.1] {
        let item = history.yard().item("Window").unwrap().moved([way, 0.0, 0.0]);
        history.act(&Edit::Change(item), Some(8), &catalogue, None).unwrap();
    }
    assert_eq!(history.yard().to_text(), start);
    assert!(history.is_saved() && history.can_undo().is_none());
}
