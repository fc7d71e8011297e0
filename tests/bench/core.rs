//! How fast the core is, on the demo yard. Printed, not asserted.

#[path = "../sheet/yards.rs"]
#[expect(dead_code, reason = "the tests of the sheet need more of it")]
mod yards;

use divan::{
    Bencher,
    counter::{BytesCount, ItemsCount},
};
use gauzelight::{
    frames::Shelf,
    geometry::Sight,
    judge::{
        self,
        findings::{self, Case, Work},
    },
    light::Night,
    picture::{Camera, expose},
    scene::{Catalogue, Units, Yard},
    sheet::{self, Notes, Paper, Setup, Subject},
};
use glam::Vec3;
use std::{hint::black_box, path::Path, sync::LazyLock};

struct Stage {
    yard: Yard,
    catalogue: Catalogue,
    shelf: Shelf,
    night: Night,
}

static STAGE: LazyLock<Stage> = LazyLock::new(|| {
    let catalogue = Catalogue::builtin();
    let text = include_str!("../../scenes/owl_night.ron");
    let yard = Yard::parse(text, "owl_night.ron", &catalogue).unwrap_or_else(|f| panic!("{f}")).yard;
    let mut shelf = Shelf::beside(Path::new("scenes"));
    shelf.fetch(yard.stations.iter().map(|s| s.content.picture.as_str()));
    let night = Night::build(&yard, &catalogue, &shelf).unwrap_or_else(|f| panic!("{f}"));
    println!(
        "{} triangles, {} see-through things, {} beams, {} lamp points",
        night.solids.len(),
        night.veils.len(),
        night.beams.len(),
        night.lamps.len()
    );
    Stage { yard, catalogue, shelf, night }
});

/// Points spread over the yard without chance: additive recurrence of three irrationals.
fn scattered(i: usize) -> Vec3 {
    let part = |step: f64| ((i as f64 + 0.5) * step).fract() as f32;
    Vec3::new(24.0 * part(0.819_172_5) - 12.0, 0.05 + 5.0 * part(0.671_043_6), 20.0 * part(0.549_700_5) - 4.0)
}

#[divan::bench]
fn build_the_night(bencher: Bencher) {
    let stage = &*STAGE;
    bencher.bench(|| Night::build(&stage.yard, &stage.catalogue, &stage.shelf));
}

#[divan::bench]
fn still_1280_by_720(bencher: Bencher) {
    let camera = Camera::looking(Vec3::new(-0.9, 1.7, 18.9), Vec3::new(-0.6, 2.2, 0.0), 0.8);
    bencher.bench(|| expose(&STAGE.night, &camera, (1280, 720), 1, |_| ()));
}

/// One core; random segments across the yard.
#[divan::bench]
fn occlusion_rays(bencher: Bencher) {
    const RAYS: usize = 200_000;
    let rays: Vec<Sight> = (0..RAYS).map(|i| Sight::between(scattered(i), scattered(i + 7919))).collect();
    bencher.counter(ItemsCount::new(RAYS)).bench(|| rays.iter().filter(|ray| STAGE.night.blocked(**ray)).count());
}

/// A station moved by a centimetre, and its readings: what a drag costs each step.
#[divan::bench(args = [0, 1, 2, 3, 4])]
fn move_a_station_and_read_it(bencher: Bencher, station: usize) {
    let stage = &*STAGE;
    let mut yard = stage.yard.clone();
    let mut night = stage.night.clone();
    let mut step = 0.0;
    bencher.bench_local(|| {
        step += 0.01;
        let at = &mut yard.stations[station].at.0[0];
        *at = at.changed(stage.yard.stations[station].at.0[0].m + step % 0.2);
        if night.set_station(&yard, &stage.catalogue, &stage.shelf, station).is_err() {
            panic!("the station could not be set");
        }
        black_box(judge::read_station(&night, &yard, &stage.catalogue, station))
    });
}

/// Every finding of the yard, from every viewing spot.
#[divan::bench]
fn judge_the_yard(bencher: Bencher) {
    let stage = &*STAGE;
    bencher.bench(|| findings::judge(&Case::of(&stage.yard, &stage.catalogue, &stage.night)));
}

/// Pictures, pages and file of a sheet for 64 stations.
#[divan::bench(sample_count = 5)]
fn a_sheet_of_64_stations(bencher: Bencher) {
    let catalogue = Catalogue::builtin();
    let text = yards::by_chance(64, 7, yards::short);
    let yard = Yard::parse(&text, "64", &catalogue).unwrap_or_else(|f| panic!("{f}")).yard;
    let mut shelf = Shelf::beside(Path::new(""));
    shelf.fetch_for(&yard);
    let night = Night::build(&yard, &catalogue, &shelf).unwrap_or_else(|f| panic!("{f}"));
    let (notes, station_notes) = (Notes::default(), vec![Notes::default(); yard.stations.len()]);
    bencher.bench(|| {
        let views = sheet::views(&night, &yard, 0, |_| ());
        let subject = Subject {
            yard: &yard,
            catalogue: &catalogue,
            night: &night,
            stand_ins: &shelf.stand_ins,
            findings: &[],
            views: &views,
            notes: &notes,
            station_notes: &station_notes,
        };
        sheet::pdf(&sheet::lay_out(&subject, Setup { paper: Paper::A4, units: Units::Metric }))
    });
}

/// A megabyte of what a careless reader would look past to the end of the file, again and again.
#[divan::bench(args = ["1 ", "a: ", "\"a\" ", "(a:1),", "[],", "/**/a ", "@ "], sample_count = 3)]
fn refuse_a_megabyte(bencher: Bencher, piece: &str) {
    let catalogue = Catalogue::builtin();
    let text = format!("(name: \"x\", houses: [{}", piece.repeat((1 << 20) / piece.len()));
    bencher.counter(BytesCount::of_str(&text)).bench(|| Yard::parse(&text, "yard.ron", &catalogue).is_err());
}

/// What would help against every finding of the yard.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn try_what_helps_the_yard(bencher: Bencher) {
    let stage = &*STAGE;
    bencher.bench(|| {
        let night = stage.night.remembering();
        let case = Case::of(&stage.yard, &stage.catalogue, &night);
        let findings = findings::judge(&case);
        findings::all_remedies(&case, &findings, &stage.shelf, None, &Work::default()).map(|found| found.len())
    });
}

fn main() {
    divan::main();
}
