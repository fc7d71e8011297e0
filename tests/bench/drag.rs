//! What a step of a drag costs the core: the edit with all its checks, the night that follows, the reading of the station
//! that lights it. Two hundred steps each on the demo yard; printed, not asserted.

use gauzelight::{
    edit::{Edit, History},
    frames::Shelf,
    judge,
    light::{Followed, Night},
    scene::{Catalogue, Yard},
};
use std::{
    hint::black_box,
    path::Path,
    sync::Arc,
    time::{Duration, Instant},
};

const STEPS: usize = 200;

fn main() {
    let catalogue = Catalogue::builtin();
    let text = include_str!("../../scenes/owl_night.ron");
    let yard = Yard::parse(text, "owl_night.ron", &catalogue).unwrap_or_else(|f| panic!("{f}")).yard;
    let mut shelf = Shelf::beside(Path::new("scenes"));
    shelf.fetch(yard.stations.iter().map(|s| s.content.picture.as_str()));
    let night = Arc::new(Night::build(&yard, &catalogue, &shelf).unwrap_or_else(|f| panic!("{f}")));
    println!("{STEPS} steps each, ms: edit + night + reading        median   95th   worst");
    // What is dragged, and the station whose reading is on the card.
    for (kind, name, station) in [
        ("station", "Shed wall", 2),
        ("cloth", "net", 1),
        ("lamp", "street lamp", 2),
        ("form", "guardian form", 3),
        ("house", "shed", 2),
    ] {
        let mut history = History::of(yard.clone());
        let (mut shown, mut night) = (Arc::clone(history.yard()), Arc::clone(&night));
        let mut times: Vec<Duration> = Vec::new();
        for step in 0..STEPS {
            let way = if step % 40 < 20 { 0.01 } else { -0.01 };
            let begun = Instant::now();
            let item = history.yard().item(name).unwrap_or_else(|| panic!("no {name}"));
            let edit = Edit::Change(item.moved([way, 0.0, 0.5 * way]));
            history.act(&edit, Some(1), &catalogue, None).unwrap_or_else(|refusal| panic!("{refusal}"));
            // The window's renderer holds the night as well, so that each step works on a copy.
            let held = Arc::clone(&night);
            let followed = Arc::make_mut(&mut night).follow(&shown, history.yard(), &catalogue, &shelf);
            if followed.unwrap_or_else(|f| panic!("{f}")) == Followed::Rebuild {
                night = Arc::new(held.rebuilt(history.yard(), &catalogue, &shelf).unwrap_or_else(|f| panic!("{f}")));
            }
            shown = Arc::clone(history.yard());
            black_box(judge::read_station(&night, &shown, &catalogue, station));
            times.push(begun.elapsed());
        }
        times.sort();
        let ms = |share: f64| times[((STEPS - 1) as f64 * share) as usize].as_secs_f64() * 1e3;
        println!("{kind:>8} {name:<34} {:>12.1} {:>6.1} {:>7.1}", ms(0.5), ms(0.95), ms(1.0));
    }
}
