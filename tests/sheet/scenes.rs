//! Every station of every yard of the program's own gets a sheet and a card, and so does each of 64.

use super::{
    SETUPS, Stage,
    read::leaves,
    yards::{by_chance, short},
};
use gauzelight::sheet::{alignment_card, html, pdf, preview};
use std::{fs, path::Path};

#[test]
fn every_station_of_every_yard_gets_its_page_and_its_card() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut seen = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let stage = Stage::of(&fs::read_to_string(entry.unwrap().path()).unwrap());
        for (paper, units) in &SETUPS[..2] {
            let sheet = stage.sheet(*paper, *units);
            assert!(sheet.lost.is_empty(), "{:?}", sheet.lost);
            let file = pdf(&sheet).unwrap();
            let leaves = leaves(&file);
            assert_eq!(leaves.len(), sheet.pages.len());
            let page = html(&sheet, *paper);
            for (index, station) in stage.yard.stations.iter().enumerate() {
                let title = format!("{} {}", index + 1, station.name.0);
                assert!(sheet.pages.iter().any(|page| page.title == title), "{title}");
                assert!(leaves.iter().any(|leaf| leaf.text().starts_with(&title)), "{title}");
                assert!(page.contains(&format!("\n{title}\n")), "{title}");
                let card = alignment_card(&stage.yard, &stage.catalogue, &stage.night, index).unwrap();
                let class = stage.yard.projector(&stage.catalogue, &station.projector.0).unwrap();
                assert_eq!(card.dimensions(), class.pixels);
                seen += 1;
            }
            let shown = preview(&sheet.pages[0], 400);
            assert_eq!(shown.width(), 400);
            assert!(shown.pixels().any(|pixel| pixel.0[0] < 40), "nothing is drawn");
        }
    }
    assert!(seen >= 20, "{seen}");
}

#[test]
fn a_station_that_is_off_has_its_page_and_no_card() {
    let text = by_chance(3, 5, short).replacen("projector: \"mini LED\",", "projector: \"mini LED\", on: false,", 1);
    let stage = Stage::of(&text);
    let leaves = leaves(&pdf(&stage.sheet(SETUPS[0].0, SETUPS[0].1)).unwrap());
    let page = leaves.iter().find(|leaf| leaf.text().starts_with("1 s0")).unwrap().text();
    assert!(page.contains("It is off in this yard") && page.contains("Where the lens goes"), "{page}");
    assert!(alignment_card(&stage.yard, &stage.catalogue, &stage.night, 0).is_none());
}

#[test]
fn what_the_font_lacks_is_told() {
    let stage = Stage::of(&by_chance(1, 5, |kind, index| short(kind, index) + "猫"));
    let sheet = stage.sheet(SETUPS[0].0, SETUPS[0].1);
    assert_eq!(sheet.lost, ['猫']);
    assert!(leaves(&pdf(&sheet).unwrap())[0].text().starts_with("yard\u{FFFD}"));
}

/// How quick that is the bench tells.
#[test]
fn sixty_four_stations_have_their_pages() {
    let stage = Stage::of(&by_chance(64, 7, short));
    let leaves = leaves(&pdf(&stage.sheet(SETUPS[0].0, SETUPS[0].1)).unwrap());
    for (index, station) in stage.yard.stations.iter().enumerate() {
        let title = format!("{} {}", index + 1, station.name.0);
        assert!(leaves.iter().any(|leaf| leaf.text().starts_with(&title)), "{title}");
    }
}

#[test]
fn a_missing_picture_is_marked_on_its_page_and_on_no_other() {
    let text = by_chance(2, 5, short).replacen("picture: \"owl_face\"", "picture: \"nowhere.png\"", 1);
    let stage = Stage::of(&text);
    let leaves = leaves(&pdf(&stage.sheet(SETUPS[0].0, SETUPS[0].1)).unwrap());
    let marked = |title: &str| {
        let page = leaves.iter().find(|leaf| leaf.text().starts_with(title)).unwrap();
        page.text().contains("MISSING PICTURE")
    };
    assert!(marked("1 s0") && !marked("2 s1"));
}
