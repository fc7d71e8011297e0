//! Why tapes place no point, and what would help.

use super::MOST_MOVES;
use crate::units::Length;
use glam::DVec3;

/// Why tapes place no point; amounts in m.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TapeFault {
    /// A tape that reads nothing, less, or too much to be true.
    #[error("The tape from {name} reads {m} m")]
    Length {
        /// Where it is held.
        name: String,
        /// What it reads, m.
        m: f64,
    },
    /// A known point that is nowhere.
    #[error("{name} is at no place that can be measured from")]
    Place {
        /// The point.
        name: String,
    },
    /// A height that is none.
    #[error("The height reads {height} m")]
    Height {
        /// What it reads, m.
        height: f64,
    },
    /// Two of the known points are one; with a known height, one right above the other.
    #[error("{} and {} are the same point, or one right above the other", names[0], names[1])]
    OnePoint {
        /// The two.
        names: [String; 2],
    },
    /// Three known points on a line: all places around it are as far away.
    #[error("{}, {} and {} lie on one line, or nearly so", names[0], names[1], names[2])]
    OnALine {
        /// The three.
        names: [String; 3],
    },
    /// Two tapes that do not reach each other.
    #[error("The tapes from {} and {} are too short to meet, by {} together", names[0], names[1], amount(*by))]
    TooShort {
        /// Where they are held.
        names: [String; 2],
        /// What they lack together.
        by: f64,
    },
    /// A tape that ends beyond all that another reaches.
    #[error("The tape from {long} goes past all that the tape from {short} reaches, by {}", amount(*by))]
    TooLong {
        /// Where the longer is held.
        long: String,
        /// Where the shorter is held.
        short: String,
        /// How far past.
        by: f64,
    },
    /// A tape that does not reach the known height.
    #[error("The tape from {name} is too short to reach that height, by {}", amount(*by))]
    Rise {
        /// Where it is held.
        name: String,
        /// What it lacks.
        by: f64,
    },
    /// Each two meet, but not all three.
    #[error("The three tapes do not meet: each would have to be {} {}", amount(by.abs()), if *by > 0.0 { "longer" } else { "shorter" })]
    NoMeeting {
        /// What each lacks; negative for what each has too much.
        by: f64,
    },
    /// The wanted side does not tell the two places apart.
    #[error("Neither of the two places is more on that side: {} and {}", at(places[0]), at(places[1]))]
    NeitherSide {
        /// The two.
        places: [DVec3; 2],
    },
    /// Both places are above the ground.
    #[error("Both places are above the ground: {} and {}", at(places[0]), at(places[1]))]
    BothAbove {
        /// The two.
        places: [DVec3; 2],
    },
    /// Neither place is above the ground.
    #[error("Both places are below the ground: {} and {}", at(places[0]), at(places[1]))]
    BothBelow {
        /// Height of the ground, m.
        ground: f64,
        /// The two.
        places: [DVec3; 2],
    },
    /// The point would move too far for each unit of error.
    #[error("{}", loose(*moves))]
    Loose {
        /// How far for each unit; infinite where the tapes say nothing in one direction.
        moves: f64,
    },
}

impl TapeFault {
    /// What would help, as one sentence for whoever holds the tape.
    pub fn remedy(&self) -> String {
        match self {
            Self::Length { name, .. } => format!("Read the tape from {name} again: more than 0 and at most 1000 m."),
            Self::Place { name } => format!("Give {name} a place within 1000 m."),
            Self::Height { .. } => "Give a height within 1000 m.".to_owned(),
            Self::OnePoint { names: [one, other] } => {
                format!("Hold one of the tapes at another point than {one} or {other}, some way to the side.")
            }
            Self::OnALine { .. } => {
                "Hold one tape at a point off that line: higher, lower, or nearer to you.".to_owned()
            }
            Self::TooShort { names: [one, other], .. } => {
                format!("Measure again from {one} and from {other}; check that both are the points you held the tape at.")
            }
            Self::TooLong { long, short, .. } => {
                format!("Measure again from {long} and from {short}; they may be swapped, or a foot or a metre misread.")
            }
            Self::Rise { name, .. } => format!("Measure again from {name}, or correct the height."),
            Self::NoMeeting { .. } => {
                "Measure again, tapes taut and straight; for a point that is nearly in one plane with the three, use two tapes and \
                 its height."
                    .to_owned()
            }
            Self::NeitherSide { .. } => "Say the side in another way: left or right, front or back, above.".to_owned(),
            Self::BothAbove { .. } => "Say whether it is in front or behind, left or right.".to_owned(),
            Self::BothBelow { .. } => "Measure again, or say how high the ground is there.".to_owned(),
            Self::Loose { .. } => {
                "Hold the tapes at points spread wider around it, so that they come in from directions square to each other, or \
                 use two tapes and its height."
                    .to_owned()
            }
        }
    }
}

fn loose(moves: f64) -> String {
    if moves.is_finite() && moves < 1000.0 {
        return format!(
            "Each centimetre of tape error would move the point by {moves:.0} cm; {MOST_MOVES} is the most"
        );
    }
    "These tapes leave one direction open: the point could slide without any of them showing it".to_owned()
}

/// An amount to the millimetre, and never as nothing.
fn amount(m: f64) -> String {
    if m < 0.001 { "less than 1 mm".to_owned() } else { Length::metres(m).to_string() }
}

fn at(place: DVec3) -> String {
    let [x, y, z] = place.to_array().map(|m| format!("{:.2}", m + 0.0));
    format!("({x}, {y}, {z}) m")
}
