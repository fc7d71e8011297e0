//! Numbers within the drawings, tapes to check by and picture sizes, against the yard to the printed digit.

use super::{
    SETUPS, Stage,
    dimensions::written,
    read::{Leaf, leaves},
    yards::{by_chance, short},
};
use gauzelight::{
    geometry::Sight,
    judge::aimed,
    scene::{Item, Units},
    sheet::{Datum, landed, marks, pdf},
};
use glam::{DVec3, Vec3};
use std::{fs, path::Path};

/// The page of a station.
fn page<'a>(leaves: &'a [Leaf], stage: &Stage, index: usize) -> &'a Leaf {
    let title = format!("{} {} ", index + 1, stage.yard.stations[index].name.0);
    leaves.iter().find(|leaf| leaf.text().starts_with(&title)).unwrap()
}

/// A length as a drawing has it: its unit is left out where that is metres.
fn drawn(m: f64, units: Units) -> String {
    written(m, units).trim_end_matches(" m").to_owned()
}

/// Whether the page has a piece of text that says just that.
fn stands(leaf: &Leaf, says: &str) -> bool {
    leaf.runs.iter().any(|run| run.says == says)
}

fn owl_night() -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/owl_night.ron")).unwrap()
}

#[test]
fn sizes_of_boxes_and_targets_are_those_of_the_yard() {
    let stage = Stage::of(&owl_night());
    for (paper, units) in SETUPS {
        let leaves = leaves(&pdf(&stage.sheet(paper, units)).unwrap());
        let leaf = leaves.iter().find(|leaf| leaf.text().starts_with("To make at home")).unwrap();
        assert_eq!(leaf.text().matches("sizes inside").count(), 4);
        let mut boxes = 0;
        for station in &stage.yard.stations {
            let Some(shelter) = &station.shelter else { continue };
            boxes += 1;
            for size in [&shelter.width, &shelter.height, &shelter.depth] {
                assert!(stands(leaf, &drawn(size.0.m, units)), "{}: {}", station.name.0, drawn(size.0.m, units));
            }
            let window = [&shelter.window.width, &shelter.window.height].map(|size| written(size.0.m, units));
            assert!(leaf.text().contains(&format!("{} wide and {} high", window[0], window[1])), "{}", leaf.text());
            let air = match units {
                Units::Metric => format!("{:.0} cm² in all", shelter.inlet_cm2),
                // A square inch is 6.4516 cm².
                Units::Feet => format!("{:.1} in² in all", shelter.inlet_cm2 / 6.4516),
            };
            assert!(leaf.text().contains(&air), "{air}: {}", leaf.text());
        }
        assert_eq!(boxes, 4);
        // The net is 2.1 by 2.25 m; all of the first house is 9.2 m wide.
        let net = page(&leaves, &stage, 1);
        assert!(stands(net, &drawn(2.1, units)) && stands(net, &drawn(2.25, units)), "{}", net.text());
        assert!(stands(&leaves[0], &drawn(9.2, units)), "{}", leaves[0].text());
    }
}

/// From the lens to where the middle lands, level, on the plan; to check, along a third tape; and picture sizes at the throw.
#[test]
fn throws_check_tapes_and_picture_sizes_are_those_of_the_yard() {
    for text in [owl_night(), by_chance(12, 31, short)] {
        let stage = Stage::of(&text);
        let (yard, night) = (&stage.yard, &stage.night);
        let (known, datum) = (marks(yard, night), Datum::of(yard));
        let (mut plans, mut checks, mut sizes) = (0, 0, 0);
        for (paper, units) in &SETUPS[..2] {
            let leaves = leaves(&pdf(&stage.sheet(*paper, *units)).unwrap());
            for index in 0..yard.stations.len() {
                let (leaf, who) = (page(&leaves, &stage, index), &yard.stations[index].name.0);
                let text = leaf.text();
                let lens = DVec3::from(Item::Station(yard.stations[index].clone()).points()[0]);
                let beam = night.beams.iter().rfind(|beam| beam.station as usize == index).unwrap();
                let target = aimed(night, yard, index).unwrap();
                let along: Vec3 = beam.lens.direction(0.5, 0.5).normalize();
                let ends = night.touches(Sight::endless(beam.lens.at, along));
                let spots = landed(night, &known, &datum, index, &target).unwrap();
                let middle = ends.iter().find(|touch| spots.targets.contains(&night.names[touch.owner as usize]));
                if let Some(middle) = middle.map(|touch| touch.point.as_dvec3()) {
                    let level = (middle - lens).with_y(0.0).length();
                    // One that is too short on paper is left out.
                    plans += u32::from(stands(leaf, &drawn(level, *units)));
                }
                if let Some(at) = text.find("To check: ") {
                    let rest = &text[at + "To check: ".len()..];
                    let (printed, rest) = rest.split_once(" from M").unwrap();
                    let name = rest.split_once(", ").unwrap().1;
                    let mark = known.iter().find(|mark| name.starts_with(&mark.name())).unwrap();
                    assert_eq!(printed, written(mark.at.distance(lens), *units), "{who}: {}", mark.name());
                    checks += 1;
                }
                // Where the middle misses all targets, the depth is that of the plane that they lie on.
                if let Some((at, middle)) = text.find(" square to the light at ").zip(middle) {
                    let class = yard.projector(&stage.catalogue, &yard.stations[index].projector.0).unwrap();
                    let ratio = yard.stations[index].throw_ratio.map_or(class.throw_ratio.0, |ratio| ratio.0);
                    // Depth along the lens axis to where the middle lands.
                    let depth = (middle.point.as_dvec3() - lens).dot(beam.lens.forward.as_dvec3());
                    let wide = depth / ratio;
                    let tall = wide * f64::from(class.pixels.1) / f64::from(class.pixels.0);
                    let want = format!(
                        "{} × {} square to the light at {}",
                        written(wide, *units),
                        written(tall, *units),
                        written(depth, *units)
                    );
                    assert!(text.contains(&want), "{who}: {want}: {:.80}", &text[at.saturating_sub(30)..]);
                    sizes += 1;
                }
            }
        }
        let all = 2 * yard.stations.len() as u32;
        assert!(
            plans * 10 >= all * 4 && checks * 10 >= all * 8 && sizes * 10 >= all * 8,
            "{plans} {checks} {sizes} of {all}"
        );
    }
}
