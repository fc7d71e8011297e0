//! By day: one rule for comparing and for findings, however dark the evening is.

use crate::Lit;
use gauzelight::{
    craft::money::Running,
    judge::{
        compare::{Of, Question, compare},
        findings::Matter,
    },
};

/// A cloth before a pale wall, seen straight and aslant; every contrast by day is a finding.
fn yard(evening: &str, fabric: &str) -> Lit {
    Lit::parse(&format!(
        r#"(
    name: "yard", evening: ({evening}),
    walls: [(name: "wall", at: (0, 0, -1), width: 12, height: 3, surface: "plaster, white")],
    things: [Block(name: "dark", at: (-0.4, 0, -0.9), width: 0.5, height: 2.6, depth: 0.1, surface: "black paint")],
    cloths: [(name: "net", fabric: "{fabric}", at: (0, 2.4, 0), width: 2, height: 1.8)],
    lamps: [(name: "porch", kind: "porch lamp", at: (2, 2, 2))],
    spots: [(name: "path", at: (0.3, 0, 6)), (name: "aside", at: (-5, 0, 5))],
    limits: [(name: "shows by day", value: 1.001)],
    stations: [(name: "Net", projector: "mini LED", at: (0, 0.6, 3), mount: Ground, aim: "net", content: (picture: "owl_face"))],
)"#
    ))
}

/// What comparing has for the cloth as it hangs, from each spot.
fn compared(lit: &Lit) -> Vec<f64> {
    let question = Question {
        yard: &lit.yard,
        catalogue: &lit.catalogue,
        night: &lit.night,
        shelf: &lit.shelf,
        station: 0,
        of: Of::Fabrics,
        running: Running::of(&lit.yard, 1),
    };
    let rows = compare(question).unwrap().rows;
    let now = rows.iter().find(|row| row.now).unwrap();
    now.spots.iter().map(|spot| spot.by_day.unwrap()).collect()
}

/// What the finding has, from the spot where it is most.
fn found(lit: &Lit) -> f64 {
    let all = lit.findings();
    all.iter().find(|one| one.matter == Matter::ShowsByDay && one.of == "net").unwrap().number
}

#[test]
fn comparing_and_findings_have_one_number() {
    for fabric in ["white sheer", "white tulle", "cotton sheet, white", "black tulle"] {
        let lit = yard("sky_lx: 0.2", fabric);
        let most = compared(&lit).into_iter().fold(0.0, f64::max);
        assert!((found(&lit) / most - 1.0).abs() < 1e-9, "{fabric}: {} against {most}", found(&lit));
    }
}

/// The day does not ask how the night is: not its sky, not its lamps, not its date.
#[test]
fn a_day_is_a_day_however_dark_the_evening() {
    let dated =
        r#"when: (date: "2026-12-09", clock: "23:00", latitude_deg: 52.5, longitude_deg: 13.4, zone: "Europe/Berlin")"#;
    let plain = yard("sky_lx: 0.2", "white sheer");
    let wanted = (compared(&plain), found(&plain));
    for evening in ["sky_lx: 0", "sky_lx: 0.0001", "sky_lx: 300", dated] {
        let lit = yard(evening, "white sheer");
        assert_eq!((compared(&lit), found(&lit)), wanted, "{evening}");
    }
}

/// High in the open, with nothing but sky behind it and no ground worth the name, by hand: half the dome lights each face, so that a
/// cloth that throws back and lets on 0.4 each has `0.8 E / 2 / π` before `E / π`: 2.5 times darker. One that passes a fifth straight
/// has 0.3 + 0.2 of the sky's.
#[test]
fn a_cloth_against_the_sky_is_as_on_paper() {
    for (kind, wanted) in [
        ("Cloth(through: 0, diffuse: 0.4, reflect: 0.4)", 2.5),
        ("Cloth(through: 0.2, diffuse: 0.3, reflect: 0.3)", 2.0),
    ] {
        let lit = Lit::parse(&format!(
            r#"(
    name: "open", evening: (sky_lx: 0), ground: (width: 1, depth: 1),
    fabrics: [(name: "mine", kind: {kind})],
    cloths: [(name: "net", fabric: "mine", at: (0, 61, 0), width: 2, height: 2)],
    spots: [(name: "path", at: (0, 50, 100), eye: 5)],
    limits: [(name: "shows by day", value: 1.001)],
)"#
        ));
        assert!((found(&lit) / wanted - 1.0).abs() < 0.01, "{kind}: {}", found(&lit));
    }
}
