//! A program killed while it saves: the yard is the one before or the one after, whole, and the next save leaves nothing beside it.

use gauzelight::scene::{Catalogue, Yard};
use std::{
    fs,
    path::Path,
    process::{Command, Stdio},
    time::Duration,
};

/// Where the one that is killed saves.
const PLACE: &str = "GAUZELIGHT_TEST_SAVES_TO";
/// How often it is killed; so many times where nothing else is said.
const KILLS: (&str, usize) = ("GAUZELIGHT_TEST_KILLS", 20);

/// Yards of a size that takes several writes.
fn yards() -> [Yard; 2] {
    ["one", "other"].map(|name| {
        let rich = Yard::parse(super::RICH, "rich.ron", &Catalogue::builtin()).unwrap().yard;
        let spot = rich.spots[0].clone();
        let spots = (0..2000).map(|number| {
            let name = gauzelight::scene::Name::of(&format!("{name} {number}"));
            gauzelight::scene::Spot { name, ..spot.clone() }
        });
        Yard { spots: spots.collect(), ..Yard::named(name) }
    })
}

/// Saves until it is killed.
fn save_on(place: &Path) {
    for yard in yards().iter().cycle() {
        yard.save(place).unwrap();
    }
}

/// Runs itself in a process of its own as the one that saves and is killed.
#[test]
fn a_killed_save_costs_nothing() {
    if let Some(place) = std::env::var_os(PLACE) {
        return save_on(Path::new(&place));
    }
    let kills = std::env::var(KILLS.0).ok().and_then(|count| count.parse().ok()).unwrap_or(KILLS.1);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("yard.ron");
    let yards = yards();
    let texts = yards.each_ref().map(Yard::to_text);
    yards[0].save(&path).unwrap();
    let (mut seed, mut halves, mut others) = (1_u64, 0, 0);
    for kill in 0..kills {
        let before = fs::read(&path).unwrap();
        let mut saving = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "kills::a_killed_save_costs_nothing"])
            .env(PLACE, &path)
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        // Not before it has begun: its first save changes the file. From then on at any time.
        while fs::read(&path).unwrap() == before {
            std::thread::sleep(Duration::from_millis(1));
            assert!(saving.try_wait().unwrap().is_none(), "it ended by itself");
        }
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        std::thread::sleep(Duration::from_micros((seed >> 33) % 20_000));
        saving.kill().unwrap();
        saving.wait().unwrap();
        let left = fs::read_dir(folder.path()).unwrap().count();
        assert!(left <= 2, "kill {kill} left {left} files");
        halves += left - 1;
        let now = fs::read_to_string(&path).unwrap();
        let which = texts.iter().position(|text| *text == now).unwrap_or_else(|| panic!("kill {kill} left\n{now}"));
        others += which;
        // The next save is another than what stands there, so that the next kill sees it begin.
        yards[0].save(&path).unwrap();
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "kill {kill}: the next save sweeps");
    }
    println!("{kills} kills: {halves} within a save, {others} with the other yard in place; none lost");
}
