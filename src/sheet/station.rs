//! The page of a station: what a person on a ladder sets, first; then the rest in the order of the work.

mod landing;
mod night;
mod place;
mod turning;

use super::{
    Datum, Digits, Landed, Listed, Part, Subject, Worked,
    draw::Sketch,
    elevation,
    flow::{Column, Flow},
    pair, plan,
};
use crate::{
    light::Beam,
    scene::{Mount, Station},
};

/// Heights that the two drawings may have, points.
const DRAWN: [f64; 2] = [120.0, 215.0];
/// Share of the width that words take, and where the drawings beside them begin.
const WORDS: f64 = 0.575;
const DRAWINGS: f64 = 0.60;

/// Lays out the page, and as many more as it takes.
pub(super) fn lay_out(
    flow: &mut Flow,
    subject: &Subject,
    datum: &Datum,
    listed: &Listed,
    index: usize,
    worked: &Worked,
) {
    let station = &subject.yard.stations[index];
    let page = Page { subject, datum, listed, index, station, worked, digits: flow.digits() };
    flow.begin(&format!("{} {}", index + 1, station.name.0), &page.remark());
    page.setting(flow);
    turning::boxes(flow, &page);
    page.work(flow);
    night::lay_out(flow, &page);
    if let Some(notes) = page.own_notes() {
        pair::sections(flow, notes.of(Part::FirstNight));
        for part in [Part::EachEvening, Part::TakeDown] {
            pair::part(flow, part.name(), notes.of(part));
        }
    }
}

/// What the page of one station is made from.
pub(super) struct Page<'a> {
    subject: &'a Subject<'a>,
    datum: &'a Datum,
    listed: &'a Listed<'a>,
    index: usize,
    station: &'a Station,
    worked: &'a Worked,
    digits: Digits,
}

impl Page<'_> {
    fn landed(&self) -> Option<&Landed> {
        self.worked.landed.as_ref()
    }

    fn beam(&self) -> Option<&Beam> {
        self.subject.night.beams.iter().rfind(|beam| beam.station as usize == self.index)
    }

    fn targets(&self) -> &[String] {
        self.landed().map_or(&[], |landed| &landed.targets)
    }

    /// Its targets in quotes: `“left gourd” and “right gourd”`; empty where it has none.
    fn onto(&self) -> String {
        self.targets().iter().map(|target| format!("“{target}”")).collect::<Vec<_>>().join(" and ")
    }

    /// What it is, in a line.
    fn remark(&self) -> String {
        let station = self.station;
        let mount = match station.mount {
            Mount::Ground => "low on the ground",
            Mount::Stand => "on a stand",
            Mount::Shelf => "on a shelf",
            Mount::Wall => "on a wall bracket",
            Mount::Hung => "hung from above",
            Mount::Tree => "in a tree",
        };
        let onto = if self.targets().is_empty() { String::new() } else { format!(" onto {}", self.onto()) };
        let off = match (self.landed(), station.on) {
            (Some(_), _) => "",
            (None, true) => " It is put away, so that nothing lands.",
            (None, false) => " It is off in this yard, so that nothing lands.",
        };
        let missing = self.subject.stand_ins.get(&station.content.picture).map_or_else(String::new, |why| {
            format!(" MISSING PICTURE: {why}. Put it beside the yard and print again; a test card stands in, and top and foot are the card's.")
        });
        let note = if station.note.is_empty() { String::new() } else { format!(" {}", station.note) };
        format!("{}, {mount}, throws “{}”{onto}.{off}{missing}{note}", station.projector.0, station.content.picture)
    }

    /// Where the lens goes and where the picture lands, with a drawing beside each.
    fn setting(&self, flow: &mut Flow) {
        let mut left = flow.column(0.0, WORDS);
        place::lens(&mut left, self);
        let mut right = flow.column(DRAWINGS, 1.0 - DRAWINGS);
        let site = (self.subject.yard, self.subject.night, self.datum);
        let drawn = |tall: f64| tall.clamp(DRAWN[0], DRAWN[1]);
        let size = [right.width, drawn(left.y - 4.0)];
        right.sketch = plan::station(site, self.listed, self.worked, self.digits, [right.x, 2.0], size);
        right.y = size[1] + 4.0;
        left.gap(3.0);
        if let (Some(landed), Some(beam)) = (self.landed(), self.beam()) {
            landing::lay_out(&mut left, self, landed);
            let size = [right.width, drawn(left.y - right.y)];
            let at = [right.x, right.y];
            right.sketch.extend(elevation::draw(self.subject.night, beam, landed, self.digits, at, size));
            right.y += size[1];
        }
        flow.block(vec![left, right]);
        flow.gap(5.0);
    }

    /// A place by the yard's own lines.
    fn by_lines(&self, at: glam::DVec3) -> String {
        let [along, height, out] = self.datum.coordinates(at).map(|m| self.digits.length(m));
        format!("along {along}, height {height}, out {out}")
    }

    /// Cable and wind, and what to be careful of: what is laid and tied on the day.
    fn work(&self, flow: &mut Flow) {
        if let Some(notes) = self.own_notes() {
            pair::sections(flow, notes.of(Part::Day));
        }
    }

    fn own_notes(&self) -> Option<&super::Notes> {
        self.subject.station_notes.get(self.index)
    }
}

/// A frame of boxes side by side: a label, a value, a remark in each.
fn boxed(flow: &mut Flow, cells: &[[String; 3]]) {
    let share = 1.0 / cells.len() as f64;
    let mut columns: Vec<Column> = Vec::new();
    for (index, [label, value, remark]) in cells.iter().enumerate() {
        let mut column = flow.column(index as f64 * share, share - 0.006);
        let (x, width) = (column.x, column.width);
        (column.x, column.width) = (x + 3.0, width - 6.0);
        column.told(label, value, remark);
        column.gap(2.0);
        (column.x, column.width) = (x, width);
        columns.push(column);
    }
    let tall = columns.iter().map(|column| column.y).fold(0.0, f64::max);
    for column in &mut columns {
        column.sketch.outline(&Sketch::rectangle([column.x, 0.0], [column.width, tall]), 0.7, 0.2);
    }
    flow.block(columns);
    flow.gap(3.0);
}
