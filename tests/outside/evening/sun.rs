//! The sun's place, and when it passes a height.

use super::when;
use gauzelight::{
    light::ambient::{crossing, season::sun_times, sun},
    scene::{Catalogue, Clock, Yard},
};
use jiff::Timestamp;
use solar_positioning::{Location, RefractionCorrection, SolarPositions, time::JulianDate};

/// Worked example of Reda and Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302 (revised 2008),
/// appendix A.5: 2003-10-17 12:30:30, seven hours behind universal time.
#[test]
fn the_sun_crate_reproduces_nrel_s_example() {
    let time = JulianDate::new(2_452_930.312_847_222, 67.0).unwrap();
    let place = Location { latitude: 39.742_476, longitude: -105.1786 };
    let air = RefractionCorrection::new(820.0, 11.0).unwrap();
    let seen = SolarPositions::new().at_from_julian(time, place, 1830.14, Some(air)).unwrap();
    assert!((seen.zenith_angle() - 50.111_622).abs() < 1e-4, "{}", seen.zenith_angle());
    assert!((seen.azimuth() - 194.340_241).abs() < 1e-4, "{}", seen.azimuth());
    // The same through an evening of a yard, at sea level and with the lag of time as this program knows it.
    let evening = when("2003-10-17", "12:30", place.latitude, place.longitude, "-07:00");
    let instant: Timestamp = "2003-10-17T19:30:30Z".parse().unwrap();
    let sun = sun::place(&evening, instant);
    assert!((sun.height_deg - 39.872_046).abs() < 2e-4, "{}", sun.height_deg);
    assert!((sun.bearing_deg - 194.340_241).abs() < 2e-4, "{}", sun.bearing_deg);
}

const DENVER: (f64, f64, &str) = (39.7392, -104.9903, "America/Denver");
const NEW_YORK: (f64, f64, &str) = (40.7128, -74.0060, "America/New_York");
const LONDON: (f64, f64, &str) = (51.5074, -0.1278, "Europe/London");

/// Evening crossings of −0.8333°, −6°, −12° and −18°, local time with summer time, reckoned by pvlib 0.16.1 (`spa_python`, sea level, no
/// refraction).
#[test]
fn sunset_and_twilights_come_on_time() {
    for ((latitude, longitude, zone), date, times) in [
        (DENVER, "2024-10-31", ["17:58:23", "18:26:20", "18:58:10", "19:29:35"]),
        (DENVER, "2024-12-21", ["16:39:02", "17:09:29", "17:43:26", "18:16:19"]),
        (DENVER, "2024-06-21", ["20:31:35", "21:04:16", "21:45:42", "22:33:54"]),
        (NEW_YORK, "2024-10-31", ["17:52:51", "18:21:14", "18:53:31", "19:25:22"]),
        (NEW_YORK, "2024-12-21", ["16:32:02", "17:03:02", "17:37:32", "18:10:54"]),
        (LONDON, "2024-10-31", ["16:34:28", "17:09:34", "17:48:58", "18:27:37"]),
        (LONDON, "2024-12-21", ["15:53:37", "16:33:58", "17:17:10", "17:58:00"]),
    ] {
        let evening = when(date, "18:00", latitude, longitude, zone);
        for (height, time) in [-0.8333, -6.0, -12.0, -18.0].into_iter().zip(times) {
            let instant = crossing(&evening, height).unwrap();
            let clock = evening.zone.civil().to_datetime(instant);
            let wanted: jiff::civil::DateTime = format!("{date}T{time}").parse().unwrap();
            let off = clock.duration_since(wanted).as_secs();
            assert!(off.abs() <= 60, "{zone} {date} {height}°: {clock}, published {wanted}");
            let height_there = sun::place(&evening, instant).height_deg;
            assert!((height_there - height).abs() < 0.01, "{height_there}");
        }
    }
}

/// At the winter solstice the sun culminates at 90° − latitude − 23.44°, in the south.
#[test]
fn the_midwinter_sun_stands_low_in_the_south() {
    let text = r#"(
        name: "south",
        evening: (when: (date: "2026-12-21", clock: "18:00", latitude_deg: 52.5, longitude_deg: 15, zone: "+01:00", faces_deg: 180)),
        season: ("2026-12-21", "2026-12-21"),
    )"#;
    let yard = Yard::parse(text, "south", &Catalogue::builtin()).unwrap().yard;
    let times = sun_times(yard.evening.when.as_ref().unwrap(), yard.season);
    assert!(times.iter().all(|time| time.date == "2026-12-21" && time.toward.y > 0.0));
    let noon = times.iter().find(|time| time.clock == Clock::new(12, 0)).unwrap();
    let height = f64::from(noon.toward.y).asin().to_degrees();
    assert!((height - 14.06).abs() < 0.15 && noon.toward.x.abs() < 0.03 && noon.toward.z > 0.9, "{height} {noon:?}");
    // In the morning it stands in the east, which is to the left of who looks at the house from the south, at x > 0.
    assert!(times[0].toward.x > 0.5, "{:?}", times[0]);
}
