//! Power, money, and what a projector does when power comes.

use super::Provoked;
use gauzelight::judge::findings::Matter;

/// A lamp projector that waits for a button and throws blue meanwhile, and another that does neither.
const LAMP: &str = r#"(
    name: "lamp",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "used lamp projector", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
    projectors: [(name: "steady", claimed: 3000, lumens: 2400, pixels: (1024, 768), throw_ratio: 1.5, nearest: "1.2 m", shift: (0, 0.5), wakes: ByItself, shows: Nothing)],
)"#;

/// A house with an outlet in it, and a wall before it that a station lights; what feeds that differs.
macro_rules! fed {
    ($projector:literal, $loads:literal, $power:literal) => {
        concat!(
            r#"(
    name: "fed",
    evening: (sky_lx: 0.05),
    houses: [(name: "house", at: (0, 0, -2), width: "6 m", depth: "5 m", height: "3 m")],
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: ""#,
            $projector,
            r#"", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"), loads: ["#,
            $loads,
            r#"])],
    "#,
            $power,
            "
)"
        )
    };
}

pub(super) const ROWS: &[Provoked] = &[
    Provoked { matter: Matter::Idle, yard: LAMP, instead: ("used lamp projector", "steady") },
    Provoked { matter: Matter::ByHand, yard: LAMP, instead: ("used lamp projector", "steady") },
    Provoked {
        matter: Matter::Guard,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: false))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²")]"#
        ),
        instead: ("gfci: false", "gfci: true"),
    },
    Provoked {
        matter: Matter::SupplyRain,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -1.5), kind: Mains(gfci: true), ip: "IP20")],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²")]"#
        ),
        instead: ("IP20", "IP55"),
    },
    Provoked {
        matter: Matter::Fuse,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 100, fuse_a: None), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "14 AWG")]"#
        ),
        instead: ("fuse_a: None", "fuse_a: 5"),
    },
    // A fuse that the cable does not bear.
    Provoked {
        matter: Matter::Fuse,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 100, fuse_a: 30), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "18 AWG")]"#
        ),
        instead: ("fuse_a: 30", "fuse_a: 5"),
    },
    // A fuse that never blows, as its supply gives no more than 5 A.
    Provoked {
        matter: Matter::Fuse,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "brick", at: (0, 0.3, -2.5), kind: TwelveVolt(watts: 60, fuse_a: 30, from: "outlet")), (name: "outlet", at: (0, 0.3, -2.6), kind: Mains(gfci: true))],
    cables: [(name: "lead", from: "brick", to: "one", gauge: "10 AWG")]"#
        ),
        instead: ("fuse_a: 30", "fuse_a: 5"),
    },
    // Wire for low voltage on the mains; a lead for indoors that goes out; a thin one.
    Provoked {
        matter: Matter::OutdoorCable,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: true))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²", made_for: LowVoltage)]"#
        ),
        instead: ("LowVoltage", "Outdoors"),
    },
    Provoked {
        matter: Matter::OutdoorCable,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: true))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²", made_for: Indoors)]"#
        ),
        instead: ("made_for: Indoors", "made_for: Unsaid"),
    },
    Provoked {
        matter: Matter::OutdoorCable,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: true))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "0.75 mm²")]"#
        ),
        instead: ("0.75 mm²", "1.5 mm²"),
    },
    // A heater against dew that nobody reckoned with.
    Provoked {
        matter: Matter::Cable,
        yard: fed!(
            "mini LED",
            "(watts: 1500)",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: true))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "0.75 mm²")]"#
        ),
        instead: ("1500", "150"),
    },
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "brick", at: (0, 0.3, -2.5), kind: TwelveVolt(watts: 24, fuse_a: 4, from: "outlet")), (name: "outlet", at: (0, 0.3, -2.6), kind: Mains(gfci: true))],
    cables: [(name: "lead", from: "brick", to: "one", gauge: "12 AWG")]"#
        ),
        instead: ("watts: 24", "watts: 60"),
    },
    // A battery that does not last the night.
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 9, fuse_a: 5), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "14 AWG")]"#
        ),
        instead: ("amp_hours: 9", "amp_hours: 35"),
    },
    // Two on one breaker, of which one could hang elsewhere.
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "mini LED",
            "(watts: 1500), (watts: 1300)",
            r#"supplies: [
        (name: "outlet", at: (0, 0.3, -2.5), kind: Mains(breaker_a: 13, gfci: true)),
        (name: "kitchen outlet", at: (1, 0.3, -2.5), kind: Mains(breaker_a: 20, gfci: true)),
    ],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "4 mm²")]"#
        ),
        instead: ("breaker_a: 13", "breaker_a: 20"),
    },
    Provoked {
        matter: Matter::Volts,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "brick", at: (0, 0.3, -2.5), kind: TwelveVolt(watts: 60, fuse_a: 4, from: "outlet")), (name: "outlet", at: (0, 0.3, -2.6), kind: Mains(gfci: true))],
    cables: [(name: "lead", from: "brick", to: "one", via: [(6, 0, -2), (6, 0, 2.5)], gauge: "18 AWG")]"#
        ),
        instead: ("18 AWG", "12 AWG"),
    },
    Provoked {
        matter: Matter::Budget,
        yard: r#"(
    name: "dear",
    evening: (sky_lx: 0.05),
    budget: 180,
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "12 V pocket", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("budget: 180", r#"budget: 180, owned: [(what: "12 V pocket")]"#),
    },
];
