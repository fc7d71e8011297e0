//! Evenings by date and place that cannot be, and the hours of lamps and visitors.

use super::GOOD;
use super::broken::{Case, case, try_all};
use gauzelight::scene::{Catalogue, Yard};

const PLAIN: &str = "evening: (sky_lx: 0.3, moon: (lx: 0.1, bearing_deg: 10, height_deg: 30))";

/// A dated evening in place of the plain one.
macro_rules! dated {
    ($($field:literal),*; $says:literal) => {
        case(PLAIN, concat!("evening: (when: (", $($field, ", "),*, "))"), $says, 6)
    };
}

const DATE: &str =
    "date: \"2026-12-21\", clock: \"18:30\", latitude_deg: 52.5, longitude_deg: 13.4, zone: \"Europe/Berlin\"";

const WHEN: &[Case] = &[
    dated!("date: \"2026-02-30\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "days 1 to 28"),
    dated!("date: \"21.12.2026\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "is not a date"),
    dated!("date: \"1812-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "from 1970 to 2100"),
    dated!("date: 2026", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "a date in quotes is wanted"),
    dated!("date: \"2026-12-21\"", "clock: \"24:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "hours are from 0 to 23"),
    dated!("date: \"2026-12-21\"", "clock: \"dusk\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "is not a clock time"),
    dated!("date: \"2026-12-21\"", "clock: 18.5", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\""; "a clock time in quotes"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 91", "longitude_deg: 13", "zone: \"UTC\""; "evening.when.latitude_deg: 91 is out of range"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: -181", "zone: \"UTC\""; "from -180 to 180"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: NaN", "longitude_deg: 13", "zone: \"UTC\""; "computed with"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"Europe/Berlni\""; "did you mean “Europe/Berlin”?"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"Berlin\""; "did you mean “Europe/Berlin”?"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"+25:00\""; "at most 14 hours"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: 1"; "a time zone in quotes"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13"; "this date and place has no zone"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\"", "cloud: 25"; "from 0 to 1"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\"", "faces_deg: 400"; "degrees from -360 to 360"),
    dated!("date: \"2026-12-21\"", "clock: \"18:30\"", "latitude_deg: 5", "longitude_deg: 13", "zone: \"UTC\"", "latitude: 5"; "did you mean “latitude_deg”?"),
    case(PLAIN, "evening: (soaked: 1)", "true or false is wanted", 6),
    case("units: Metric", "visitors: (\"17:00\", \"17:00\")", "visitors come from 17:00 to 17:00", 5),
    case(
        "units: Metric",
        "visitors: (\"21:00\", \"17:00\")",
        "visitors come from 21:00 to 17:00 of the next day, which is 20 hours (write the earlier first",
        5,
    ),
    case("units: Metric", "visitors: \"17:00\"", "a pair is wanted", 5),
    case("units: Metric", "visitors: (\"17:00\", \"9 o'clock\")", "visitors[1]: “9 o'clock” is not a clock time", 5),
    case("units: Metric", "season: (\"2026-10-31\", \"2026-10-24\")", "has no day", 5),
    case("units: Metric", "climate: (coldest_c: 20)", "is warmer than the warmest, 15 °C", 5),
    case("units: Metric", "climate: (above_sea: \"9000 m\")", "above_sea", 5),
    case("units: Metric", "season: (\"2026-10-31\", \"2028-10-24\")", "a season of 725 days is too long", 5),
    case("units: Metric", "setting: Village", "is no setting", 5),
    case("age: 35", "drives: 1", "true or false is wanted", 45),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), from: \"25:00\"", "lamps[0].from: “25:00” is not a clock time", 41),
    case(
        "at: (0, 2.2, 0.5)",
        "at: (0, 2.2, 0.5), from: \"17:00\", until: \"5 pm\"",
        "switched on and off at one time",
        41,
    ),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), motion: \"yes\"", "true or false is wanted", 41),
];

#[test]
fn evenings_that_cannot_be_are_told() {
    try_all(WHEN);
}

#[test]
fn a_dated_evening_is_good_and_keeps_what_it_says() {
    let text = GOOD.replace(PLAIN, &format!("evening: (when: ({DATE}))"));
    let loaded = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults}"));
    assert!(loaded.warnings.is_empty(), "{}", loaded.warnings);
    let saved = loaded.yard.to_text();
    let again = Yard::parse(&saved, "saved.ron", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(again.yard, loaded.yard);
    assert!(again.yard.evening.when.is_some() && saved.contains("zone: \"Europe/Berlin\""), "{saved}");
}
