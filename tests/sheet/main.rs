//! The hang sheet as somebody holds it: read back from the written file, by a library that did not write it.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod card;
mod complete;
mod dimensions;
mod drawn;
mod layout;
mod pages;
mod read;
mod scenes;
mod yards;

use gauzelight::{
    frames::Shelf,
    light::Night,
    scene::{Catalogue, Units, Yard},
    sheet::{self, Notes, Paper, Part, Setup, Sheet, Subject, View},
};
use std::{collections::BTreeMap, path::Path};

/// A yard ready to be laid out.
struct Stage {
    yard: Yard,
    catalogue: Catalogue,
    night: Night,
    views: Vec<View>,
    stand_ins: BTreeMap<String, String>,
}

impl Stage {
    fn of(text: &str) -> Self {
        let catalogue = Catalogue::builtin();
        let yard = Yard::parse(text, "test.ron", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
        let mut shelf = Shelf::beside(Path::new(""));
        shelf.fetch_for(&yard);
        let night = Night::build(&yard, &catalogue, &shelf).unwrap();
        let views = sheet::views(&night, &yard, 0, |_| ());
        Self { yard, catalogue, night, views, stand_ins: shelf.stand_ins }
    }

    fn sheet(&self, paper: Paper, units: Units) -> Sheet {
        let notes = Notes {
            sections: vec![
                (Part::Day, "Ladder".to_owned(), vec!["Two people; one holds the ladder's foot.".to_owned()]),
                (Part::TakeDown, "Cloth".to_owned(), vec!["Dry it before it is folded. ".repeat(12)]),
            ],
        };
        let subject = Subject {
            yard: &self.yard,
            catalogue: &self.catalogue,
            night: &self.night,
            stand_ins: &self.stand_ins,
            findings: &[],
            views: &self.views,
            notes: &notes,
            station_notes: &vec![notes.clone(); self.yard.stations.len()],
        };
        sheet::lay_out(&subject, Setup { paper, units })
    }
}

/// Both papers in both units.
const SETUPS: [(Paper, Units); 4] = [
    (Paper::A4, Units::Metric),
    (Paper::Letter, Units::Feet),
    (Paper::A4, Units::Feet),
    (Paper::Letter, Units::Metric),
];
