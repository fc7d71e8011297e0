//! What is printed of `owl_night` beside places, against the yard by hand: angles, throw, focus, cloth, heights of mounts.

use super::{SETUPS, Stage, read::leaves};
use gauzelight::{
    scene::{Aim, Units},
    sheet::pdf,
    units::{Length, Style},
};
use glam::DVec3;
use std::{fs, path::Path};

/// A length as a person would write it, by the house's own notation with its digits filled up.
pub fn written(m: f64, units: Units) -> String {
    match units {
        Units::Metric => format!("{m:.3} m"),
        Units::Feet => {
            let shown = Length::metres(m).show(Style::FeetInches);
            match shown.split_once("' ") {
                Some((feet, rest)) if rest.contains('/') && !rest.contains(' ') => format!("{feet}' 0 {rest}"),
                _ => shown,
            }
        }
    }
}

#[test]
fn angles_throw_focus_and_cloth_are_those_of_the_yard() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/owl_night.ron");
    let stage = Stage::of(&fs::read_to_string(file).unwrap());
    for (paper, units) in SETUPS {
        let leaves = leaves(&pdf(&stage.sheet(paper, units)).unwrap());
        for (index, station) in stage.yard.stations.iter().enumerate() {
            let start = format!("{} {} ", index + 1, station.name.0);
            let text = leaves.iter().map(|leaf| leaf.text()).find(|text| text.starts_with(&start)).unwrap();
            let class = stage.yard.projector(&stage.catalogue, &station.projector.0).unwrap();
            assert!(text.contains(&format!("fixed {:.3} ", class.throw_ratio.0)), "{text}");
            assert!(text.contains(&format!("{} × {} pixels", class.pixels.0, class.pixels.1)), "{text}");
            assert!(text.contains(if station.content.mirrored { "Picture mirrored" } else { "Picture not mirrored" }));
            let lens = DVec3::from(station.at.0.clone().map(|length| length.m));
            let aim = match &station.aim {
                Aim::At(point) => DVec3::from(point.0.clone().map(|length| length.m)),
                Aim::Thing(name) => stage.night.place(&name.0).unwrap().middle.as_dvec3(),
            };
            let way = aim - lens;
            if class.shift.0 == [0.0, 0.0] {
                // Without a shift the axis is the way to the aim.
                let tilt = (way.y / way.length()).asin().to_degrees();
                let word = if tilt.abs() < 0.05 {
                    "level"
                } else if tilt > 0.0 {
                    "up"
                } else {
                    "down"
                };
                let printed = format!("along its body {:.1}° {word}", tilt.abs());
                assert!(text.contains(&printed), "{printed}: {text}");
                let focus = station.focus.as_ref().map_or(way.length(), |focus| focus.m);
                let focus = format!("along its axis {} ", written(focus, units));
                assert!(text.contains(&focus), "{focus}: {text}");
                let pan = way.x.atan2(-way.z).to_degrees();
                let (pan, from) = if pan.abs() <= 90.0 { (pan, "in from") } else { (pan - 180.0, "out to") };
                let printed = format!("Pan {:.1}°", pan.abs() % 180.0);
                assert!(
                    text.contains(&printed) && text.contains(&format!("of straight {from} the street")),
                    "{printed}"
                );
            }
        }
        let net = leaves.iter().map(|leaf| leaf.text()).find(|text| text.starts_with("To make at home")).unwrap();
        let cut = format!(
            "cut {} wide and {} high, hemmed to {} by {}",
            // Hems of 4 cm at the sides and pockets of 10 cm above and below: common practice, no source.
            written(2.18, units),
            written(2.45, units),
            written(2.1, units),
            written(2.25, units)
        );
        assert!(net.contains(&cut), "{cut}: {net}");
    }
}
