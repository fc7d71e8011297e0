//! Cautions: what can hurt people, animals and houses, each one short text, for whoever meets it.
//!
//! They are common practice and no law: local codes come before them, and whatever could fall, burn or carry mains is for a
//! licensed person. The sheet, lists, findings and the window take their words from here.

mod when;

pub use when::{of_station, of_yard};

use serde::Serialize;

/// Part of a season.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The day on which things are put up.
    Day,
    /// The first night.
    FirstNight,
    /// Each evening.
    EachEvening,
    /// The day on which things are taken down.
    TakeDown,
}

impl Part {
    /// Every one, in their order.
    pub const ALL: [Self; 4] = [Self::Day, Self::FirstNight, Self::EachEvening, Self::TakeDown];

    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Day => "Day",
            Self::FirstNight => "First night",
            Self::EachEvening => "Each evening",
            Self::TakeDown => "Take-down",
        }
    }
}

use Part::{Day, EachEvening, FirstNight, TakeDown};

/// Declares the cautions: each with its name, the parts of a season that it belongs to and its text.
macro_rules! cautions {
    ($( $(#[$meta:meta])* $Caution:ident = $name:literal in [$($part:ident),*]: $text:literal; )*) => {
        /// Something to be careful of, the gravest first.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Caution {
            $( $(#[$meta])* $Caution, )*
        }

        impl Caution {
            /// Every one.
            pub const ALL: &[Self] = &[$( Self::$Caution ),*];

            /// What it is about, in a few words.
            pub const fn name(self) -> &'static str {
                match self {
                    $( Self::$Caution => $name, )*
                }
            }

            /// The parts of a season that it belongs to.
            pub const fn parts(self) -> &'static [Part] {
                match self {
                    $( Self::$Caution => &[$( $part ),*], )*
                }
            }

            /// The whole of it, in plain sentences.
            pub const fn text(self) -> &'static str {
                match self {
                    $( Self::$Caution => $text, )*
                }
            }
        }
    };
}

cautions! {
    /// Wires overhead.
    OverheadLines = "overhead lines" in [Day, TakeDown]:
        "Look up before a ladder or a pole goes up: keep it well away from overhead lines, farther than it is long. Nobody but \
         the power company works near them.";
    /// Ladders.
    Ladder = "ladder" in [Day, FirstNight, EachEvening, TakeDown]:
        "Ladder: never alone, somebody holds its foot; on firm level ground, one out for every four up, three points always on \
         it; never wet, icy, in wind or in the dark. Tools and box come up on a line, with a tether on the box.";
    /// Roofs.
    Roof = "roof" in [Day, TakeDown]:
        "Roof: never when it is wet, icy or mossy, never alone, and not without a harness on something that holds. Whoever is not \
         used to it asks a roofer.";
    /// What hangs above heads.
    Falls = "things that can fall" in [Day, EachEvening, TakeDown]:
        "What hangs above heads has two ties, each of which would hold it alone and each to something else. Tug at both before \
         people come. What it hangs from is for somebody licensed to judge, where people stand below.";
    /// Structures and wind.
    RulesOfThumb = "wind" in [Day, EachEvening]:
        "Pulls and weights here are rules of thumb, no proof that anything holds. Look at the forecast each day and take down \
         early; for whatever could fall on somebody or pull on a house ask a licensed person, and mind local rules.";
    /// Mains outdoors.
    MainsOutdoors = "mains outdoors" in [Day, FirstNight, EachEvening]:
        "Mains outdoors only from an outlet with a residual-current device (GFCI, RCD): press its test button first. Leads, boxes \
         and plugs made for outdoors, none damaged, no lead through a shut window or door; new outlets and lines are for a licensed electrician.";
    /// Joints of leads.
    Joints = "joints in the wet" in [Day, EachEvening]:
        "Plugs and joints lie high and dry, never in grass, a puddle or under snow: off the ground, under a cover that drips, \
         with a loop of the lead below them.";
    /// Low voltage without a fuse.
    Unfused = "low voltage without a fuse" in [Day]:
        "12 V burns as well: a short on a strong supply or a battery sets cable alight. A fuse sits right at the supply, no larger \
         than the thinnest cable behind it may carry. Far above 12 V it shocks wet hands, too.";
    /// Batteries.
    Batteries = "batteries" in [Day, EachEvening, TakeDown]:
        "Batteries give off gas or burn when they are hurt: charge them in the dry and in fresh air, with their own charger, never \
         unwatched, and none of lithium below 0 °C. Their terminals stay covered.";
    /// Hot lamps.
    HotLamp = "hot lamp" in [Day, FirstNight, EachEvening]:
        "A projector with a lamp blows hot air: nothing that burns within an arm's length of its vents, no sheer, net, foam or \
         leaves on or over it, and let it cool before its power is cut.";
    /// Heat in a closed box.
    HotBox = "heat in a box" in [Day, FirstNight]:
        "A box keeps heat in: cool air enters low, warm air leaves high, neither is ever covered, and nothing that burns lies inside. \
         Run it for an hour with somebody beside it before it runs alone.";
    /// Cloth that burns.
    FlameRetardant = "cloth that burns" in [Day]:
        "Sheer, net and foam burn fast. Keep them off lamps, heaters and candles, and buy cloth that is sold as flame-retardant; \
         where the public comes in, local codes may ask for it and for its paper.";
    /// Flames in real gourds.
    Candles = "candles" in [FirstNight, EachEvening]:
        "No flame in a real gourd near cloth, straw or costumes, and none in a made one: take an LED. Where a candle must be, \
         somebody stays with it.";
    /// Nothing left alone.
    Unattended = "nothing left alone" in [EachEvening]:
        "Nothing warm runs all night with nobody about: a timer ends it, and somebody knows where to cut the power. A smoke alarm \
         hangs where a projector runs indoors.";
    /// Ways out.
    EscapeWays = "ways out" in [Day, EachEvening]:
        "Films, boxes and stands keep no door and no window shut that people would get out by; in a bedroom that may be the only \
         one. What covers it comes away with one hand.";
    /// Lines in the dark.
    GuysInTheDark = "guys and stakes in the dark" in [Day, FirstNight, EachEvening, TakeDown]:
        "No line at the height of shins or of necks where people may walk, children and the post included: lead it another way, or \
         mark line and stake with something white that catches light. Stakes get caps. Leads over a path lie under a cable ramp made for it, or above reach.";
    /// Light in eyes.
    Eyes = "eyes" in [Day, FirstNight]:
        "Nobody looks into a lens from near, children least: do not stare into the beam. Aim with the picture dim and the hand \
         before the lens.";
    /// Drivers and crowds.
    Kerb = "drivers and the kerb" in [FirstNight, EachEvening]:
        "No light into the eyes of drivers, and nothing like a signal. Walk the road once in both directions in the dark. Who stops \
         to look stands off the road: leave room for that, and ask before you draw a crowd.";
    /// Animals.
    LooseNet = "animals in loose net" in [Day, EachEvening, TakeDown]:
        "Birds, hedgehogs and deer get caught in loose net: keep it taut and its foot off the ground, look every morning, take \
         it in when the season is over.";
    /// The sun.
    Sun = "sun on lenses and mirrors" in [Day]:
        "The sun through a lens burns the picture chip, and off a mirror sets fire and blinds: cap or cover both by day.";
}

impl Caution {
    /// What to do, for the end of a finding's sentence, where one says just that.
    pub const fn short(self) -> &'static str {
        match self {
            Self::OverheadLines => "keep well away from overhead lines",
            Self::Ladder => "never alone, never wet, icy, in wind or in the dark, and with a tether on the box",
            Self::Sun => "cover it by day",
            Self::Falls => "give it a second tie, to something other than its mount",
            Self::Roof => "never wet, icy or mossy, never alone, and not without a harness",
            Self::RulesOfThumb => "take it down before",
            _ => self.name(),
        }
    }
}

impl Caution {
    /// Whether its text begins with what it is about.
    const fn names_itself(self) -> bool {
        matches!(self, Self::Ladder | Self::Roof | Self::MainsOutdoors | Self::Batteries)
    }

    /// The whole of it, what it is about first.
    pub fn titled(self) -> String {
        if self.names_itself() {
            return self.text().to_owned();
        }
        let mut name = self.name().to_owned();
        name[..1].make_ascii_uppercase();
        format!("{name}: {}", self.text())
    }
}

/// A page of text: cautions by the parts of a season, each in every part that it belongs to.
pub fn page(cautions: &[Caution]) -> String {
    let mut page = String::new();
    for part in Part::ALL {
        let of_part: Vec<&Caution> = cautions.iter().filter(|caution| caution.parts().contains(&part)).collect();
        if !of_part.is_empty() {
            page += part.name();
            page.push('\n');
        }
        for caution in of_part {
            page += "  ";
            page += caution.text();
            page.push('\n');
        }
    }
    page
}
