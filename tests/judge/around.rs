//! Limits go by what lies around a yard.

use super::Lit;
use gauzelight::judge::findings::{Finding, Matter};

fn found(text: &str, matter: Matter) -> Option<Finding> {
    Lit::parse(text).findings().into_iter().find(|finding| finding.matter == matter)
}

/// CIE 150:2017, table 2, for the zones E2, E3 and E4 before and after curfew; from memory.
#[test]
fn windows_of_neighbours_are_held_to_their_zone() {
    for (setting, lx) in [("CountryLane", [5.0, 1.0]), ("Suburb", [10.0, 2.0]), ("Town", [25.0, 5.0])] {
        for (until, limit) in ["22:30", "23:30"].into_iter().zip(lx) {
            let text = format!(
                r#"(name: "into a window", evening: (sky_lx: 0.05), setting: {setting}, visitors: ("17:00", "{until}"),
                walls: [(name: "wall", at: (0, 0, 8), width: 6, height: 3, surface: "plaster, white")],
                meters: [(name: "next door", at: (0, 1.1, 6), turn_deg: 180, kind: NeighbourWindow)],
                stations: [(name: "one", projector: "used lamp projector", at: (0, 0.5, 0), mount: Ground, aim: (0, 1.2, 8),
                    target: "wall", content: (picture: "owl_face"))])"#
            );
            let finding = found(&text, Matter::Neighbour).unwrap();
            assert_eq!(finding.limit, limit, "{setting} until {until}");
        }
    }
}

/// The threshold increment of EN 13201-3 falls as the road gets brighter: what blinds on a lane blinds less in a street.
#[test]
fn a_lens_blinds_on_a_dark_lane_sooner_than_in_a_street() {
    let driver = |setting: &str| {
        let text = format!(
            r#"(name: "road", evening: (sky_lx: 0.05), setting: {setting},
            forms: [Figure(name: "form", at: (-4, 0, 8), height: 1.9)],
            spots: [(name: "lane", at: (-20, 0, 10), eye: 1.2, look: "form", to: (20, 0, 10), drives: true)],
            stations: [(name: "one", projector: "used lamp projector", at: (4, 0.6, 8.5), mount: Ground, aim: "form", content: (picture: "guardian"))])"#
        );
        found(&text, Matter::Driver).map_or(0.0, |finding| finding.number)
    };
    let increments = ["CountryLane", "Suburb", "Town"].map(driver);
    assert!(increments[0] > increments[1] && increments[1] > increments[2] && increments[2] > 0.0, "{increments:?}");
}
