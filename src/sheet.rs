//! The hang sheet: a cover for the yard and a page for each station, for the day with the ladder; and the frame that a station
//! throws on its first night.
//!
//! What a person sets is worked out first ([`marks()`], [`pose()`], [`landed()`]), then laid out as [`Page`]s of ink, the one drawing that
//! all writers take: [`pdf()`], [`html()`], and [`preview()`] for a display.

mod brief;
mod card;
mod cover;
mod digits;
mod draw;
mod elevation;
mod flow;
mod font;
mod housing;
mod html;
mod ladder;
mod landing;
mod lux;
mod marks;
mod notes;
mod pair;
mod paper;
mod pdf;
mod plan;
mod pose;
mod preview;
mod scale;
mod station;
mod taped;
mod view;
mod workshop;

pub use brief::{brief, brief_in_full};
pub use card::{alignment_card, card_file, file_name};
pub use digits::Digits;
pub use draw::{Ink, Page, Picture, Weight};
pub use html::html;
pub use ladder::{Ladder, ladders};
pub use landing::{Across, Edge, Edges, Fine, Landed, Lands, SIGNS, Spot, landed};
pub use marks::{BY_HAND_M, BY_LADDER_M, Datum, Mark, Reach, marks};
pub use notes::{Notes, Part};
pub use paper::Paper;
pub use pdf::{PdfFault, pdf};
pub use pose::{PoseSheet, pose};
pub use preview::preview;
pub use taped::TapedPoint;
pub use view::{View, views};

use lux::{Lux, lux};
use marks::Listed;
use std::collections::BTreeMap;

use crate::{
    judge::{Aimed, aimed, findings::Finding},
    light::Night,
    scene::{Catalogue, Units, Yard},
};

/// All that a sheet is made from.
#[derive(Clone, Copy)]
pub struct Subject<'a> {
    /// The yard.
    pub yard: &'a Yard,
    /// The catalogue.
    pub catalogue: &'a Catalogue,
    /// Its night.
    pub night: &'a Night,
    /// Pictures that are missing beside the yard, by their names, each with the reason.
    pub stand_ins: &'a BTreeMap<String, String>,
    /// What is found about it, the worst first.
    pub findings: &'a [Finding],
    /// Pictures from the viewing spots, by [`views()`].
    pub views: &'a [View],
    /// What else stands on the cover.
    pub notes: &'a Notes,
    /// What else stands on each station's page, in the yard's order; it may be shorter.
    pub station_notes: &'a [Notes],
}

/// On what, and in which units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setup {
    /// The paper.
    pub paper: Paper,
    /// Metres, or feet and inches.
    pub units: Units,
}

/// A sheet ready to be written.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// What it is called.
    pub title: String,
    /// Its pages, the cover first.
    pub pages: Vec<Page>,
    /// Characters that the font lacks; each stands as � on the pages.
    pub lost: Vec<char>,
}

/// Where a station's light goes, worked out once.
struct Worked {
    aimed: Option<Aimed>,
    landed: Option<Landed>,
    pose: PoseSheet,
    ladders: Vec<Ladder>,
    lux: Option<Lux>,
}

/// Lays out the sheet of a yard.
pub fn lay_out(subject: &Subject, setup: Setup) -> Sheet {
    use rayon::prelude::*;
    let Subject { yard, catalogue, night, .. } = *subject;
    let known = marks(yard, night);
    let datum = Datum::of(yard);
    let worked: Vec<Worked> = (0..yard.stations.len())
        .into_par_iter()
        .map(|index| {
            let aimed = aimed(night, yard, index);
            let landed = aimed.as_ref().and_then(|aimed| landed(night, &known, &datum, index, aimed));
            let pose = pose(yard, catalogue, night, &known, &datum, index);
            let beam = night.beams.iter().rfind(|beam| beam.station as usize == index);
            let ladders = ladders(yard, catalogue, night, index, beam);
            let lux = lux(yard, catalogue, night, index);
            Worked { aimed, landed, pose, ladders, lux }
        })
        .collect();
    // Only marks that a page uses are listed, numbered in the yard's order.
    let mut used: Vec<usize> =
        worked.iter().flat_map(|w| w.pose.marks().chain(w.landed.iter().flat_map(Landed::marks))).collect();
    used.sort_unstable();
    used.dedup();
    let listed = Listed::of(&known, used);
    let mut flow = flow::Flow::new(setup, &yard.name.0);
    cover::lay_out(&mut flow, subject, &datum, &listed, &worked);
    for (index, worked) in worked.iter().enumerate() {
        station::lay_out(&mut flow, subject, &datum, &listed, index, worked);
    }
    workshop::lay_out(&mut flow, subject);
    let (pages, lost) = flow.finish();
    Sheet { title: format!("Hang sheet, {}", yard.name.0), pages, lost }
}
