//! A night that follows its yard is the night of that yard.

use super::yard;
use gauzelight::{
    edit::Edit,
    frames::Shelf,
    light::{DiscLight, EyeRay, Followed, Night, SolidLight, luma},
    scene::{
        Aim, Angle, Catalogue, Clock, Date, Evening, Fraction, Item, Latitude, Longitude, Moon, Point, When, Yard, Zone,
    },
};
use glam::Vec3;
use std::{collections::BTreeMap, sync::Arc};

fn pictures(yard: &Yard) -> Shelf {
    let frame = Arc::new(gauzelight::frames::card::corners());
    let frames = yard.stations.iter().map(|s| (s.content.picture.clone(), Arc::clone(&frame)));
    Shelf::from(frames.collect::<BTreeMap<_, _>>())
}

/// The demo yard on an evening by plain numbers.
fn demo() -> Yard {
    let mut yard = yard("owl_night");
    yard.evening.when = None;
    yard
}

/// Luminance along some rays from the kerb.
fn looks(night: &Night) -> Vec<f32> {
    let from = Vec3::new(-1.2, 1.7, 11.2);
    let toward = |i: usize| Vec3::new(-8.0 + 0.27 * (i % 60) as f32, 0.1 + 0.15 * (i / 60) as f32, 3.0);
    (0..1800)
        .map(|i| luma(night.luminance(EyeRay { from, along: (toward(i) - from).normalize(), width: 0.0 })))
        .collect()
}

fn follow(edit: Edit, expected: Followed, sky: f64) {
    let mut before = demo();
    before.evening.sky_lx = sky;
    follow_from(before, edit, expected);
}

fn follow_from(before: Yard, edit: Edit, expected: Followed) {
    let catalogue = Catalogue::builtin();
    let pictures = pictures(&before);
    let after = edit.apply(&before, &catalogue, None).unwrap();
    let mut night = Night::build(&before, &catalogue, &pictures).unwrap();
    let first = looks(&night);
    let followed = night.follow(&before, &after, &catalogue, &pictures).unwrap();
    assert_eq!(followed, expected, "{}", edit.label());
    let built = match followed {
        Followed::Rebuild => {
            assert_eq!(looks(&night), first, "a night that cannot follow stays as it is");
            night = night.rebuilt(&after, &catalogue, &pictures).unwrap();
            assert!(!night.thorough);
            looks(&Night::build(&after, &catalogue, &pictures).unwrap())
        }
        _ => looks(&Night::build(&after, &catalogue, &pictures).unwrap()),
    };
    let off = |a: &[f32], b: &[f32]| a.iter().zip(b).filter(|(a, b)| (*a - *b).abs() > 1e-3 * a.max(1e-3)).count();
    assert_eq!(off(&looks(&night), &built), 0, "{}: not what the yard gives", edit.label());
    if expected != Followed::Nothing {
        assert!(off(&first, &built) > 3, "{}: the change is not in sight, so nothing is tested", edit.label());
    }
}

fn item(name: &str) -> Item {
    demo().item(name).unwrap()
}

#[test]
fn stations_lamps_and_sky_are_followed() {
    let shed = item("Shed wall").aimed(Aim::At(Point::metres(4.0, 1.0, 3.4)));
    follow(Edit::Change(shed), Followed::Lights, 0.3);
    follow(Edit::Remove { name: "Guardian".to_owned(), leaving: None }, Followed::Lights, 0.3);
    let mut more = demo().stations[3].clone();
    more.name.0 = "Guardian's twin".to_owned();
    follow(
        Edit::Add(Item::Station(more).moved([-1.0, 0.0, 0.0]).aimed(Aim::At(Point::metres(-1.0, 1.0, 0.0)))),
        Followed::Lights,
        0.3,
    );
    follow(Edit::Change(item("street lamp").moved([-2.0, 0.0, 0.0])), Followed::Lights, 0.3);
    follow(Edit::Hide("street lamp".to_owned(), true), Followed::Lights, 0.3);
    follow(Edit::Hide("Guardian".to_owned(), true), Followed::Lights, 0.3);
    let dusk = Evening { sky_lx: 5.0, ..demo().evening };
    follow(Edit::Evening(dusk), Followed::Lights, 0.3);
}

/// An evening of the demo yard with a date.
fn evening(clock: &str) -> Evening {
    let when = When {
        date: Date::parse("2026-12-23").unwrap(),
        clock: Clock::parse(clock).unwrap(),
        latitude_deg: Latitude(52.52),
        longitude_deg: Longitude(13.405),
        zone: Zone::parse("Europe/Berlin").unwrap(),
        faces_deg: Angle(120.0),
        cloud: Fraction(0.2),
    };
    Evening { when: Some(when), moon: None, ..demo().evening }
}

#[test]
fn the_clock_is_followed_through_dusk_and_switch_times() {
    let mut dated = demo();
    dated.evening = evening("16:20");
    dated.lamps[0].until = Some(Clock::new(22, 0));
    // Twilight alone; the sun gives way to the moon; a lamp is switched off.
    follow_from(dated.clone(), Edit::Evening(evening("16:40")), Followed::Lights);
    follow_from(dated.clone(), Edit::Evening(evening("15:20")), Followed::Lights);
    follow_from(dated.clone(), Edit::Evening(evening("22:30")), Followed::Lights);
    dated.evening = evening("22:30");
    // Plain numbers beside a date are not read.
    let plain = Evening { sky_lx: 44.0, ..evening("22:30") };
    follow_from(dated, Edit::Evening(plain), Followed::Nothing);
}

#[test]
fn soaked_cloths_are_woven_anew() {
    // Without sky, of which more comes through them.
    let dry = Evening { sky_lx: 0.0, ..demo().evening };
    follow(Edit::Evening(Evening { soaked: true, ..dry }), Followed::Rebuild, 0.0);
}

#[test]
fn a_cloth_is_followed_where_it_hangs_and_in_what_it_is() {
    // Without sky, whose shade behind a moved cloth waits for the yard to be built again.
    follow(Edit::Change(item("net").moved([0.3, -0.1, 0.2])), Followed::Hung, 0.0);
    follow(Edit::Change(item("net").turned(20.0)), Followed::Hung, 0.0);
    follow(Edit::Change(item("net").with_entry("fabric", 0, "white sheer").unwrap()), Followed::Hung, 0.0);
    follow(Edit::Change(item("owl film").with_entry("fabric", 0, "rear film, white").unwrap()), Followed::Hung, 0.0);
}

#[test]
fn walls_and_forms_are_built_again_and_the_rest_remembers_its_sky() {
    follow(Edit::Change(item("guardian form").moved([-0.4, 0.0, 0.2])), Followed::Rebuild, 0.0);
    follow(Edit::Hide("guardian form".to_owned(), true), Followed::Rebuild, 0.0);
    follow(Edit::Hide("net".to_owned(), true), Followed::Rebuild, 0.0);
}

#[test]
fn what_gives_no_light_changes_no_light() {
    follow(Edit::Title("Another night".to_owned()), Followed::Nothing, 0.3);
    follow(Edit::Lock("net".to_owned(), true), Followed::Nothing, 0.3);
    follow(Edit::Change(item("kerb").moved([1.0, 0.0, 0.0])), Followed::Nothing, 0.3);
}

#[test]
fn a_station_that_is_weighed_down_or_boxed_throws_the_same_light() {
    let boxed = item("Guardian").with_entry("ballast_kg", 0, "5").unwrap();
    follow(Edit::Change(boxed), Followed::Nothing, 0.3);
}

/// All of the sky that a night knows, by places and sides so that its order does not count.
fn skies(night: &Night) -> (Vec<String>, Vec<String>) {
    let corners = |solid: &SolidLight| solid.corners.map(|corner| corner.to_array().map(f32::to_bits));
    let solids = (0..).zip(night.solids.iter());
    let mut solids: Vec<_> =
        solids.map(|(i, solid)| format!("{:?} {:?}", corners(solid), night.corner_sky(i))).collect();
    let veils = (0..).zip(&night.veils);
    let mut veils: Vec<_> = veils.map(|(i, veil)| format!("{:?} {:?}", veil.outline, night.sheet_sky(i))).collect();
    solids.sort_unstable();
    veils.sort_unstable();
    (solids, veils)
}

#[test]
fn a_night_that_settles_is_the_one_that_is_built_anew() {
    let mut before = demo();
    before.evening.sky_lx = 0.6;
    let (catalogue, pictures) = (Catalogue::builtin(), pictures(&before));
    let night = Night::build(&before, &catalogue, &pictures).unwrap();
    for edit in [
        Edit::Change(item("net").moved([0.3, -0.1, 0.2])),
        Edit::Change(item("net").with_entry("fabric", 0, "black cloth").unwrap()),
        Edit::Change(item("owl film").with_entry("fabric", 0, "rear film, white").unwrap()),
    ] {
        let after = edit.apply(&before, &catalogue, None).unwrap();
        let mut quick = night.clone();
        quick.follow(&before, &after, &catalogue, &pictures).unwrap();
        assert!(!quick.thorough);
        let built = Night::build(&after, &catalogue, &pictures).unwrap();
        assert!(quick.settle(&night) && quick.thorough);
        assert!(skies(&quick) == skies(&built), "{}: another sky than built anew", edit.label());
        assert!(skies(&quick) != skies(&night), "{}: the sky is the same, so nothing is tested", edit.label());
    }
    // What was learned on the way is what the night itself sees.
    assert!(skies(&night) == skies(&Night::build(&before, &catalogue, &pictures).unwrap()));
    let hidden = Edit::Hide("guardian form".to_owned(), true).apply(&before, &catalogue, None).unwrap();
    assert!(!night.rebuilt(&hidden, &catalogue, &pictures).unwrap().settle(&night), "that takes a night built anew");
}

#[test]
fn a_moon_that_is_moved_is_asked_for_anew() {
    let mut yard = demo();
    yard.evening.when = None;
    yard.evening.moon = Some(Moon { lx: 0.2, bearing_deg: Angle(0.0), height_deg: Angle(45.0) });
    let night = Night::build(&yard, &Catalogue::builtin(), &pictures(&yard)).unwrap();
    let mut remembers = night.remembering();
    let disc = night.disc().unwrap();
    let from = Vec3::new(-1.2, 1.7, 11.2);
    let along = |i: usize| (Vec3::new(-6.0 + 0.2 * i as f32, 0.3, 3.0) - from).normalize();
    let by_moon = |night: &Night| -> Vec<f32> {
        let light = |i| night.luminance_by_source(EyeRay { from, along: along(i), width: 0.0 })[disc.source as usize];
        (0..60).map(light).collect()
    };
    let before = by_moon(&remembers);
    let low = DiscLight { toward: Vec3::new(0.0, 0.1, 1.0).normalize(), ..disc };
    remembers.set_disc(Some(low));
    let mut fresh = night.clone();
    fresh.set_disc(Some(low));
    assert_eq!(by_moon(&remembers), by_moon(&fresh));
    assert_ne!(by_moon(&remembers), before, "a moon that does not matter shows nothing");
}

/// What a station's picture was cut into is kept as long as it throws that picture the same way, wherever it stands.
#[test]
fn cut_pictures_are_kept() {
    let (catalogue, before) = (Catalogue::builtin(), demo());
    let pictures = pictures(&before);
    let night = Night::build(&before, &catalogue, &pictures).unwrap();
    let drawing = |night: &Night, yard: &Yard| {
        let index = yard.stations.iter().position(|station| station.name.0 == "Guardian").unwrap();
        Arc::clone(&night.beams.iter().find(|beam| beam.station as usize == index).unwrap().drawing)
    };
    let first = drawing(&night, &before);
    let after = |edit: Edit| {
        let yard = edit.apply(&before, &catalogue, None).unwrap();
        let mut followed = night.clone();
        if followed.follow(&before, &yard, &catalogue, &pictures).unwrap() == Followed::Rebuild {
            followed = night.build_after(&yard, &catalogue, &pictures).unwrap();
        }
        Arc::ptr_eq(&drawing(&followed, &yard), &first)
    };
    assert!(after(Edit::Change(item("Guardian").moved([0.1, 0.2, 0.0]))), "moved");
    assert!(after(Edit::Remove { name: before.stations[0].name.0.clone(), leaving: None }), "another is gone");
    assert!(after(Edit::Change(item("guardian form").moved([-0.4, 0.0, 0.2]))), "built again");
    assert!(!after(Edit::Change(item("Guardian").with_entry("content.mirrored", 0, "true").unwrap())), "mirrored");
}
