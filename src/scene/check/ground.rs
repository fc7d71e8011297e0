//! The ground, the areas on it, the evening, and when people come by.

use super::known::Known;
use super::range::{unless, within};
use crate::scene::{Climate, Clock, Evening, Faults, Latitude, Longitude, When, Yard};
use crate::units::{Length, number, two_digits};

/// Open level ground under an overcast noon sky, lx; no evening is brighter.
const BRIGHTEST_SKY: f64 = 120_000.0;

/// Longer than the longest night of where most people live nobody comes by: common sense, no source. Hours.
const LONGEST_VISIT: f64 = 16.0;

/// Days of a year: a season that is longer comes round again.
const LONGEST_SEASON: i32 = 366;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_field("ground", |faults| known.surface("surface", &known.yard.ground.surface, faults));
    faults.in_each("areas", &known.yard.areas, |faults, area| {
        known.surface("surface", &area.surface, faults);
        ordered("x", &area.x, faults);
        ordered("z", &area.z, faults);
    });
    faults.in_field("evening", |faults| evening(&known.yard.evening, faults));
    season(known.yard, faults);
    faults.in_field("climate", |faults| climate(&known.yard.climate, faults));
}

fn ordered(field: &str, (least, greatest): &(Length, Length), faults: &mut Faults) {
    let what = format!("an area from {least} to {greatest} has no extent");
    unless(least.m < greatest.m, faults, field, what, "write the lesser first, then the greater");
    let far = least.m.abs().max(greatest.m.abs());
    unless(far <= 500.0, faults, field, "this area reaches too far", "from -500 to 500 m");
}

fn evening(evening: &Evening, faults: &mut Faults) {
    let allowed = "from 0 (no light at all) to 120000 lx (open shade by day)";
    within(faults, "sky_lx", evening.sky_lx, 0.0..=BRIGHTEST_SKY, allowed);
    if let Some(moon) = &evening.moon {
        faults.in_field("moon", |faults| {
            within(faults, "lx", moon.lx, 0.0..=1.0, "from 0 to 1 lx; a high full moon gives 0.3");
            let allowed = "from 2 to 90 degrees above the horizon; leave the moon out when it is down";
            within(faults, "height_deg", moon.height_deg.0, 2.0..=90.0, allowed);
        });
    }
    let Some(when) = &evening.when else { return };
    faults.in_field("when", |faults| place(when, faults));
}

fn place(when: &When, faults: &mut Faults) {
    within(faults, "latitude_deg", when.latitude_deg.0, -Latitude::MOST..=Latitude::MOST, Latitude::ALLOWED);
    within(faults, "longitude_deg", when.longitude_deg.0, -Longitude::MOST..=Longitude::MOST, Longitude::ALLOWED);
}

fn climate(climate: &Climate, faults: &mut Faults) {
    within(faults, "coldest_c", climate.coldest_c, -60.0..=40.0, "from -60 to 40 °C");
    within(faults, "warmest_c", climate.warmest_c, -60.0..=55.0, "from -60 to 55 °C");
    let what = format!(
        "the coldest, {} °C, is warmer than the warmest, {} °C",
        number(climate.coldest_c),
        number(climate.warmest_c)
    );
    unless(climate.coldest_c <= climate.warmest_c, faults, "coldest_c", what, "write the colder as `coldest_c`");
    within(faults, "gust_m_s", climate.gust_m_s, 0.0..=80.0, "from 0 to 80 m/s");
    within(faults, "above_sea", climate.above_sea.m, -450.0..=6000.0, "from -450 to 6000 m above the sea");
}

/// They may stay beyond midnight; a first clock time after the second is else a slip.
fn visitors((from, until): (Clock, Clock), faults: &mut Faults) {
    let hours = f64::from((until.minutes() + 24 * 60 - from.minutes()) % (24 * 60)) / 60.0;
    if hours == 0.0 {
        unless(false, faults, "visitors", format!("visitors come from {from} to {until}"), "write two clock times");
    } else if hours > LONGEST_VISIT {
        let what =
            format!("visitors come from {from} to {until} of the next day, which is {} hours", two_digits(hours));
        let remedy = format!("write the earlier first; over midnight at most {LONGEST_VISIT} hours are taken");
        unless(false, faults, "visitors", what, remedy);
    }
}

fn season(yard: &Yard, faults: &mut Faults) {
    visitors(yard.visitors, faults);
    if let Some((first, last)) = yard.season {
        let what = format!("a season from {first} to {last} has no day");
        unless(first <= last, faults, "season", what, "write the first day, then the last");
        let days = (last.civil() - first.civil()).get_days();
        let what = format!("a season of {} days is too long", i64::from(days) + 1);
        unless(days < LONGEST_SEASON, faults, "season", what, format!("at most {LONGEST_SEASON} days"));
    }
}
