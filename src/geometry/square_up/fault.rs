//! Why a photo cannot be squared up, and what would help.

use std::fmt;

/// One of the two sides of a mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// On the photo.
    Photo,
    /// On the wall.
    Wall,
}

impl fmt::Display for Where {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Where::Photo => "on the photo",
            Where::Wall => "on the wall",
        })
    }
}

/// Why a photo cannot be squared up. Marks are counted from zero here and from one in the words.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SquareUpFault {
    /// Fewer than four marks.
    #[error("{}", match given { 0 => "There is no mark yet".to_owned(), 1 => "There is only one mark".to_owned(), n => format!("There are only {n} marks") })]
    TooFew {
        /// Marks there are.
        given: usize,
    },
    /// More marks than anybody sets by hand.
    #[error("There are {given} marks, more than {most}")]
    TooMany {
        /// Marks there are.
        given: usize,
        /// Marks there may be.
        most: usize,
    },
    /// A coordinate is not a number, or is infinite.
    #[error("Mark {} has a place {place} that is not a number", mark + 1)]
    NotFinite {
        /// The mark.
        mark: usize,
        /// Which of its places.
        place: Where,
    },
    /// A coordinate is further off than any photo or wall reaches.
    #[error("Mark {} is impossibly far off {place}", mark + 1)]
    FarOff {
        /// The mark.
        mark: usize,
        /// Which of its places.
        place: Where,
    },
    /// Two marks are at the same place.
    #[error("Marks {} and {} are at the same place {place}", marks[0] + 1, marks[1] + 1)]
    Coincide {
        /// The two marks.
        marks: [usize; 2],
        /// Where they coincide.
        place: Where,
    },
    /// Three of four marks, or all marks but one at most, lie on a line.
    #[error("Marks {} lie on one line {place}, or nearly so", listed(marks))]
    OnALine {
        /// The marks on the line.
        marks: Vec<usize>,
        /// Where they lie on a line.
        place: Where,
    },
    /// No camera could have seen the marks in this order.
    #[error("The marks are in another order on the photo than on the wall")]
    Crossed {
        /// The two marks that look swapped, if one swap would mend it.
        swapped: Option<[usize; 2]>,
    },
    /// The marks run round the other way on the photo than on the wall.
    #[error("The marks run round the other way on the photo than on the wall")]
    Mirrored,
    /// The wanted stretch has no width or no height, or its numbers are not finite.
    #[error("The wanted stretch of wall has no width or no height")]
    Stretch,
    /// Pixels per metre that are not a positive number.
    #[error("No picture can have {pixels_per_metre} pixels per metre")]
    Scale {
        /// What was asked for.
        pixels_per_metre: f64,
    },
    /// Part of the wanted stretch lies beside or behind the camera.
    #[error(
        "The wanted stretch of wall runs past the camera: part of it lies beside or behind where the photo was taken"
    )]
    PastTheCamera,
    /// Nothing of the wanted stretch is on the photo.
    #[error("Nothing of the wanted stretch of wall is on the photo")]
    Unseen,
    /// The picture would be less than a pixel on one side.
    #[error("The squared-up picture would be less than a pixel across or down")]
    TooSmall {
        /// Pixels per metre from which on it is not.
        least: f64,
    },
    /// The picture would have too many pixels on one side.
    #[error(
        "The squared-up picture would be {columns:.0} by {rows:.0} pixels; {} is the most on a side",
        super::squared::MOST_SIDE
    )]
    TooLarge {
        /// Pixels across.
        columns: f64,
        /// Pixels down.
        rows: f64,
        /// Pixels per metre up to which it is not.
        most: f64,
    },
}

impl SquareUpFault {
    /// What would help, as one sentence for whoever set the marks.
    pub fn remedy(&self) -> String {
        match self {
            Self::TooFew { .. } => {
                "Mark at least four places whose position on the wall you know, such as the corners of the front or of a window."
                    .to_owned()
            }
            Self::TooMany { most, .. } => format!("Keep the {most} that you are surest of, spread over the whole wall."),
            Self::NotFinite { mark, place: Where::Photo } => format!("Set mark {} on the photo again.", mark + 1),
            Self::NotFinite { mark, place: Where::Wall } => {
                format!("Write how far along the wall and how far up mark {} is.", mark + 1)
            }
            Self::FarOff { mark, place: Where::Photo } => format!("Set mark {} on the photo again, inside the picture.", mark + 1),
            Self::FarOff { mark, place: Where::Wall } => {
                format!("Check the unit in which mark {} is written; lengths are from the left end and the foot of the wall.", mark + 1)
            }
            Self::Coincide { marks: [one, other], .. } => {
                format!("Move one of marks {} and {}, or take it away.", one + 1, other + 1)
            }
            Self::OnALine { .. } => {
                "Choose marks that span a broad four-sided piece of the wall, two high and two low; where the wall shows too \
                 narrow, take the photo more squarely from the front."
                    .to_owned()
            }
            Self::Crossed { swapped: Some([one, other]) } => {
                format!("Marks {} and {} look swapped: swap them on the photo.", one + 1, other + 1)
            }
            Self::Crossed { swapped: None } => {
                "Go through the marks one by one: each place on the photo must be the very place that is written for the wall, and all \
                 must lie on the same flat wall."
                    .to_owned()
            }
            Self::Mirrored => {
                "Swap two opposite marks if they are confused; if the photo is mirrored, mirror it back; write places along the wall from \
                 its left end as seen on the photo, and up from its foot."
                    .to_owned()
            }
            Self::Stretch => "Give a left end, a right end further along, a foot and a top above it, all in metres.".to_owned(),
            Self::Scale { .. } => "Give a number above zero: 100 pixels per metre shows a centimetre as a pixel.".to_owned(),
            Self::PastTheCamera => {
                "Ask for a shorter stretch that ends nearer the marks, or take the photo from further away.".to_owned()
            }
            Self::Unseen => "Ask for a stretch nearer the marks, or use a photo that shows it.".to_owned(),
            Self::TooSmall { least } => format!("Ask for more than {} pixels per metre.", rounded(*least, f64::ceil)),
            Self::TooLarge { most, .. } => {
                format!("Ask for {} pixels per metre at most, or for less of the wall.", rounded(*most, f64::floor))
            }
        }
    }
}

/// A number to three digits, rounded to the side that is meant.
fn rounded(number: f64, round: impl Fn(f64) -> f64) -> f64 {
    // Powers of ten with a negative exponent are not exact, their reciprocals are.
    let digits = 2 - number.log10().floor() as i32;
    let ten = 10f64.powi(digits.abs());
    if digits < 0 { round(number / ten) * ten } else { round(number * ten) / ten }
}

/// "1, 2 and 3".
fn listed(marks: &[usize]) -> String {
    let names: Vec<String> = marks.iter().map(|mark| (mark + 1).to_string()).collect();
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => names.concat(),
    }
}
