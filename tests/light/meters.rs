//! Meters, against closed forms: what they read of a lamp, of a station, of the sky.

use crate::lab::{DARK, Lab, close, square_lx, station};
use gauzelight::judge::{MeterReading, read_meters};
use std::f64::consts::PI;

fn read(lab: &Lab) -> Vec<MeterReading> {
    read_meters(&lab.night, &lab.yard, &lab.catalogue)
}

#[test]
fn a_meter_reads_what_falls_on_its_face() {
    let lab = Lab::new(&format!(
        r#"{DARK} lamps: [(name: "lamp", kind: "globe", at: (0, 10, 0))], meters: [
            (name: "facing", at: (0, 10, -2)),
            (name: "away", at: (0, 10, -2), turn_deg: 180),
            (name: "from the left", at: (-3, 10, 0), turn_deg: 90),
            (name: "below", at: (0, 8, 0), tilt_deg: 90),
            (name: "aslant", at: (0, 10, -2), tilt_deg: 60, kind: NeighbourWindow),
        ],"#
    ));
    let lx = |distance: f64| 1000.0 / (4.0 * PI * distance * distance);
    let wanted = [lx(2.0), 0.0, lx(3.0), lx(2.0), 0.5 * lx(2.0)];
    for (reading, wanted) in read(&lab).iter().zip(wanted) {
        assert!((reading.lx.typical - wanted).abs() <= 1e-4 * wanted, "{reading:?}: {wanted}");
        assert_eq!((reading.stations_lx.typical, reading.stations_share), (0.0, 0.0));
        assert_eq!(reading.sources.len(), usize::from(wanted > 0.0));
        assert_eq!(reading.neighbour_window, reading.meter == "aslant");
    }
}

#[test]
fn stations_are_told_from_the_rest_each_with_its_band() {
    let place = r#"at: (0, 10, 4), aim: (0, 10, 0), lumens: (low: 500, typical: 1000, high: 1500)"#;
    let fields = format!(
        r#"evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1), {}
        lamps: [(name: "lamp", kind: "globe", at: (0, 10, 4))], meters: [(name: "window", at: (0, 10, 0))],"#,
        station("16:9", "white", place)
    );
    let reading = &read(&Lab::new(&fields))[0];
    let (by_station, by_lamp) = (square_lx(16.0 / 9.0, 4.0), 1000.0 / (4.0 * PI * 16.0));
    close(reading.stations_lx.typical, by_station, 1e-3);
    close(reading.stations_lx.low, 0.5 * by_station, 1e-3);
    close(reading.lx.typical, by_station + by_lamp, 1e-3);
    close(reading.lx.high, 1.5 * by_station + by_lamp, 1e-3);
    close(reading.stations_share, by_station / (by_station + by_lamp), 1e-3);
    let names: Vec<_> = reading.sources.iter().map(|share| (share.source.as_str(), share.is_station)).collect();
    assert_eq!(names, [("station", true), ("lamp", false)]);
}

#[test]
fn the_sky_counts_and_what_is_put_away_does_not_read() {
    let sky = r#"evening: (sky_lx: 2), ground: (surface: "black", width: 1, depth: 1)"#;
    let lab = Lab::new(&format!(r#"{sky}, meters: [(name: "up", at: (0, 10, 0), tilt_deg: 90)],"#));
    close(read(&lab)[0].lx.typical, 2.0, 0.01);
    assert_eq!(read(&lab)[0].sources[0].source, "sky");
    let lab = Lab::new(&format!(r#"{sky}, meters: [(name: "up", at: (0, 10, 0))], hidden: ["up"],"#));
    assert!(read(&lab).is_empty());
}
