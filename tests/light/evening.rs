//! The evening by date and place: light that adds up, from where it should come, over the hours.

use crate::lab::Lab;
use gauzelight::{
    light::{
        Ambient, Body, Source,
        ambient::{self, course::SUNSET_DEG, crossing, daylight},
        luma,
    },
    scene::{Angle, Clock, Date, Evening, Fraction, Latitude, Longitude, Setting, When, Yard, Zone},
};
use glam::Vec3;
use proptest::prelude::*;

fn when(date: &str, clock: &str) -> When {
    When {
        date: Date::parse(date).expect("a date"),
        clock: Clock::parse(clock).expect("a clock time"),
        latitude_deg: Latitude(52.52),
        longitude_deg: Longitude(13.405),
        zone: Zone::parse("Europe/Berlin").expect("a zone"),
        faces_deg: Angle(180.0),
        cloud: Fraction(0.0),
    }
}

fn at(date: &str, clock: &str) -> Ambient {
    let when = when(date, clock);
    Ambient::at(&when, COUNTRY, when.now())
}

const COUNTRY: Setting = Setting::CountryLane;

fn glow(setting: Setting, cloud: f64) -> f64 {
    ambient::town::glow_lx(setting, cloud)
}

#[test]
fn plain_numbers_stay_what_they_are() {
    let of = |evening: Evening| Ambient::of(&Yard { evening, setting: Setting::City, ..Yard::named("yard") });
    let plain = of(Evening { sky_lx: 0.35, ..Evening::default() });
    assert_eq!((plain.sky_lx, plain.town_lx, plain.disc, plain.sun, plain.moon), (0.35, 0.0, None, None, None));
    let dated = of(Evening { sky_lx: 77.0, when: Some(when("2026-12-21", "23:00")), ..Evening::default() });
    assert!(dated.sky_lx < 1.0 && dated.town_lx > 0.04, "a date rules, and the city's glow with it");
}

/// A night without moon never falls below the glow of its setting, which cloud brightens; the stars are in it.
#[test]
fn a_dated_night_has_the_glow_of_its_town() {
    for (setting, mag) in [(COUNTRY, 21.3), (Setting::Suburb, 19.5), (Setting::Town, 18.5), (Setting::City, 17.5_f64)] {
        for cloud in [0.0, 0.4, 1.0] {
            let when = When { cloud: Fraction(cloud), ..when("2026-12-09", "23:00") };
            let found = Ambient::at(&when, setting, when.now());
            let zenith = 1.08e5 * 10_f64.powf(-0.4 * mag);
            let town = 1.5 * std::f64::consts::PI * zenith * (1.0 + 4.0 * cloud);
            let natural = 0.002 * (1.0 - 0.75 * cloud.powf(3.4));
            let wanted = town.max(natural);
            assert!(
                (found.sky_lx / wanted - 1.0).abs() < 1e-3 && found.disc.is_none(),
                "{setting:?} {cloud}: {found:?}"
            );
            assert!((found.town_lx - (wanted - natural)).abs() < 1e-9);
        }
    }
}

/// Sky and disc together are what sun, moon and stars give in all, whatever the split.
#[test]
fn nothing_is_lost_between_sky_and_disc() {
    for (date, clock, cloud) in [
        ("2026-06-21", "13:00", 0.0),
        ("2026-06-21", "13:00", 0.5),
        ("2026-06-21", "13:00", 1.0),
        ("2026-12-21", "15:50", 0.0),
        ("2026-12-21", "16:40", 0.3),
        ("2026-12-24", "23:00", 0.0),
        ("2026-12-24", "23:00", 0.9),
        ("2026-12-09", "23:00", 0.0),
    ] {
        let when = When { cloud: Fraction(cloud), ..when(date, clock) };
        let found = Ambient::at(&when, Setting::Town, when.now());
        let sun = found.sun.expect("it is dated");
        let left = daylight::left_by_cloud(cloud);
        let natural = daylight::clear_sun_lx(sun.height_deg).max(daylight::STARS_LX);
        let all = (left * natural).max(glow(Setting::Town, cloud)) + found.moon_lx;
        let sum = found.sky_lx + found.disc.map_or(0.0, |disc| disc.lx);
        assert!((sum / all - 1.0).abs() < 1e-12, "{date} {clock}: {sum} of {all}");
        assert!(cloud < 1.0 || found.disc.is_none(), "no shadow under an overcast");
    }
}

/// From below the horizon to overhead, under any cloud: sun and sky together are Seidelmann's total, neither is ever less than
/// nothing, and both go smoothly.
#[test]
fn sun_and_sky_are_the_almanac_s_total_all_day() {
    for cloud in [0.0, 0.35, 0.8, 1.0] {
        // New moon of 15 June 2026, near the tropic.
        let day = When { latitude_deg: Latitude(20.0), cloud: Fraction(cloud), ..when("2026-06-15", "00:00") };
        let left = daylight::left_by_cloud(cloud);
        let mut before: Option<Ambient> = None;
        let mut highest = 0.0_f64;
        for step in 0..(86_400 / 10) {
            let instant = day.now().checked_add(jiff::SignedDuration::from_secs(10 * step)).expect("a day later");
            let found = Ambient::at(&day, COUNTRY, instant);
            let (sun, straight) = (found.sun.expect("it is dated"), found.disc.map_or(0.0, |disc| disc.lx));
            highest = highest.max(sun.height_deg);
            let almanac = left * daylight::clear_sun_lx(sun.height_deg).max(daylight::STARS_LX);
            let wanted = almanac.max(glow(COUNTRY, cloud)) + found.moon_lx;
            assert!((found.level_lx() / wanted - 1.0).abs() < 1e-12, "{found:?}");
            assert!(found.sky_lx > 0.0 && straight >= 0.0, "{found:?}");
            if let Some(old) = before {
                let gone = (found.sky_lx / old.sky_lx).ln().abs();
                let jump = (straight - old.disc.map_or(0.0, |disc| disc.lx)).abs() / found.level_lx();
                assert!(gone < 0.06 && jump < 0.03, "{old:?} {found:?}");
            }
            before = Some(found);
        }
        assert!(highest > 80.0, "{highest}");
    }
}

/// A front that faces south, seen from the street: the sun comes from the left in the evening (west), and from the street's side.
#[test]
fn the_disc_stands_on_its_side_of_the_house() {
    let evening = at("2026-12-21", "15:15").disc.expect("the sun is up");
    assert_eq!(evening.body, Body::Sun);
    let toward = evening.toward();
    assert!(toward.x < -0.4 && toward.z > 0.4 && toward.y > 0.0 && toward.y < 0.1, "{toward}");
    let morning = at("2026-12-21", "09:00").disc.expect("the sun is up").toward();
    assert!(morning.x > 0.4 && morning.z > 0.4, "{morning}");
    // The same evening before a front that faces west: the sun is over the street, a little to the left.
    let west = When { faces_deg: Angle(270.0), ..when("2026-12-21", "15:15") };
    let toward = Ambient::at(&west, COUNTRY, west.now()).disc.expect("the sun is up").toward();
    assert!(toward.z > 0.6 && toward.x > 0.2, "south is to the right of one who looks east at the house: {toward}");
}

/// Full moon of 24 December 2026 (01:28 UTC by PyEphem 4.2): high in the night, a tenth of a lux and more; half a month before
/// there is none.
#[test]
fn the_moon_takes_over_where_the_sun_is_down() {
    let full = at("2026-12-24", "00:30");
    let disc = full.disc.expect("the moon is up");
    assert_eq!(disc.body, Body::Moon);
    assert!(full.moon.expect("it is dated").lit() > 0.99);
    assert!((0.1..0.32).contains(&full.moon_lx) && disc.lx < full.moon_lx && disc.lx > 0.6 * full.moon_lx, "{full:?}");
    let new = at("2026-12-09", "00:30");
    assert_eq!(new.disc, None);
    assert!((new.sky_lx - daylight::STARS_LX).abs() < 1e-6, "{new:?}");
    // The sun, as long as it stands above the horizon.
    assert_eq!(at("2026-12-23", "15:30").disc.map(|disc| disc.body), Some(Body::Sun));
}

#[test]
fn an_evening_goes_from_before_sunset_to_midnight_and_darkens() {
    // Without moon.
    let evening = when("2026-12-09", "18:00");
    let course = ambient::course(&evening, COUNTRY, 5);
    let sunset = crossing(&evening, SUNSET_DEG).expect("it sets");
    let (first, last) = (&course[0], &course[course.len() - 1]);
    assert!((59 * 60..=61 * 60).contains(&sunset.duration_since(first.instant).as_secs()));
    assert!(evening.midnight().duration_since(last.instant).as_secs() < 300 && last.instant <= evening.midnight());
    assert!(course.windows(2).all(|pair| pair[1].instant.duration_since(pair[0].instant).as_secs() == 300));
    let level = |ambient: &Ambient| ambient.sky_lx + ambient.disc.map_or(0.0, |disc| disc.lx);
    assert!(course.windows(2).all(|pair| level(&pair[1].ambient) < 1.002 * level(&pair[0].ambient)));
    assert!(level(&first.ambient) > 3000.0 && level(&last.ambient) < 0.004, "{first:?} {last:?}");
    assert_eq!(first.ambient.disc.map(|disc| disc.body), Some(Body::Sun));
    for moment in &course {
        assert_eq!(evening.clock_at(moment.instant), moment.clock);
        assert_eq!(moment.ambient, Ambient::at(&evening, COUNTRY, moment.instant));
    }
}

#[test]
fn where_the_sun_does_not_set_the_course_begins_at_noon() {
    for date in ["2026-06-21", "2026-12-21"] {
        let north = When { latitude_deg: Latitude(69.65), longitude_deg: Longitude(18.96), ..when(date, "18:00") };
        let north = When { zone: Zone::parse("Europe/Oslo").expect("a zone"), ..north };
        assert_eq!(crossing(&north, SUNSET_DEG), None, "{date}");
        assert_eq!(ambient::course(&north, COUNTRY, 15)[0].clock.to_string(), "12:00");
    }
    let june = When { latitude_deg: Latitude(69.65), ..when("2026-06-21", "23:59") };
    assert!(Ambient::at(&june, COUNTRY, june.now()).sky_lx > 400.0, "no night");
}

/// A wall at 23:00 under the moon, a lamp that has been switched off, and another that burns past midnight.
#[test]
fn a_night_follows_from_its_date() {
    let yard = |clock: &str| {
        Lab::new(&format!(
            r#"evening: (when: (date: "2026-12-23", clock: "{clock}", latitude_deg: 52.52, longitude_deg: 13.405,
                zone: "Europe/Berlin")),
            ground: (surface: "grey", width: 60, depth: 60),
            lamps: [
                (name: "early", kind: "globe", at: (20, 2, 20), from: "16:00", until: "22:00"),
                (name: "late", kind: "globe", at: (-20, 2, 20), from: "16:00", until: "01:00"),
                (name: "always", kind: "globe", at: (-20, 2, -20), motion: true),
                (name: "out", kind: "globe", at: (20, 2, -20), on: false, from: "10:00", until: "09:00"),
            ],"#
        ))
    };
    let names = |lab: &Lab| lab.night.sources.iter().map(|s| s.name().to_owned()).collect::<Vec<_>>();
    assert_eq!(names(&yard("15:00")), ["always", "sun", "sky"]);
    assert_eq!(names(&yard("18:00")), ["early", "late", "always", "moon", "sky"]);
    let lab = yard("23:00");
    assert_eq!(names(&lab), ["late", "always", "moon", "sky"]);
    let shares = lab.night.illuminance(Vec3::new(0.0, 0.0, 0.0), Vec3::Y);
    let of = |wanted: &Source| {
        let index = lab.night.sources.iter().position(|source| source == wanted).expect("it is a source");
        f64::from(luma(shares.lx[index]))
    };
    let dated = when("2026-12-23", "23:00");
    let wanted = Ambient::at(&dated, Setting::Suburb, dated.now());
    let disc = wanted.disc.expect("the moon is up");
    assert!((of(&Source::Moon) / disc.lx - 1.0).abs() < 1e-5);
    assert!((of(&Source::Sky) / wanted.sky_lx - 1.0).abs() < 1e-5);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// Anywhere on Earth, at any time that a yard may have, in any weather.
    #[test]
    fn every_evening_has_a_light(
        (year, month, day) in (1970_i32..=2100, 1_u32..=12, 1_u32..=28),
        clock in (0_u16..24, 0_u16..60),
        latitude_deg in prop_oneof![-90.0..=90.0, Just(90.0), Just(-90.0), Just(0.0)],
        longitude_deg in -180.0..=180.0,
        hours in -12_i32..=14,
        cloud in 0.0..=1.0,
        faces in -360.0..=360.0,
    ) {
        let when = When {
            date: Date::parse(&format!("{year}-{month:02}-{day:02}")).expect("a date"),
            clock: Clock::new(clock.0, clock.1),
            latitude_deg: Latitude(latitude_deg),
            longitude_deg: Longitude(longitude_deg),
            zone: Zone::parse(&format!("{hours:+03}:00")).expect("a zone"),
            faces_deg: Angle(faces),
            cloud: Fraction(cloud),
        };
        let found = Ambient::at(&when, Setting::City, when.now());
        prop_assert!(found.sky_lx > 0.0 && found.sky_lx < 135_000.0, "{found:?}");
        prop_assert!((0.0..0.33).contains(&found.moon_lx), "{found:?}");
        if let Some(disc) = found.disc {
            prop_assert!(disc.lx > 0.0 && disc.square_lx() < 130_000.0 && disc.square_lx().is_finite(), "{found:?}");
            prop_assert!((disc.toward().length() - 1.0).abs() < 1e-5 && disc.toward().y > 0.0);
        }
        for height in [SUNSET_DEG, -6.0, -12.0, -18.0] {
            if let Some(instant) = crossing(&when, height) {
                let there = ambient::sun::place(&when, instant).height_deg;
                prop_assert!((there - height).abs() < 0.02, "{there} for {height}: {when:?}");
                prop_assert!(instant.duration_since(when.instant(Clock::new(12, 0))).as_hours().abs() < 25);
            }
        }
        let course = ambient::course(&when, COUNTRY, 60);
        prop_assert!(!course.is_empty() && course.len() <= 26);
    }
}
