//! Findings about power that have no matter of their own: wrong volts, and a projector's USB outlet.

use super::Lit;
use gauzelight::judge::findings::{Finding, Level, Matter, remedies};

const YARD: &str = r#"(
    name: "fed",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "12 V pocket", at: (0, 0.5, 2.5), mount: Shelf, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"), loads: [(watts: 2, volts: Usb, from: ProjectorUsb)])],
    supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(volts: 12, amp_hours: 60, fuse_a: 5), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "14 AWG")],
)"#;

fn found(text: &str, matter: Matter) -> Option<Finding> {
    Lit::parse(text).findings().into_iter().find(|finding| finding.matter == matter && finding.of == "one")
}

#[test]
fn wrong_volts_and_a_weak_usb_outlet_are_found_and_mended() {
    for (what, instead, matter, level, helps) in [
        ("volts: 12", "volts: 24", Matter::Volts, Level::Fix, "Take one of 12 V and 120 Ah for “battery”"),
        ("watts: 2,", "watts: 20,", Matter::Supply, Level::Check, "an adapter of its own"),
    ] {
        assert!(found(YARD, matter).is_none());
        let text = YARD.replacen(what, instead, 1);
        let lit = Lit::parse(&text);
        let finding = found(&text, matter).unwrap_or_else(|| panic!("{instead}: {:#?}", lit.findings()));
        assert!(finding.level == level && finding.limit > 0.0 && finding.why.len() > 10, "{finding:?}");
        let remedies = remedies(&lit.case(), &finding, &lit.shelf, None);
        assert!(remedies.iter().any(|remedy| remedy.says.contains(helps)), "{remedies:#?}");
    }
}
