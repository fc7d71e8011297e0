//! The cover: the yard from above, what the numbers on the pages mean, and what holds for all stations.

use super::{
    Datum, Part, Subject, Weight, Worked,
    flow::{BODY, Flow, ROW, SMALL, VALUE},
    marks::Listed,
    pair, plan,
};
use crate::craft::running::FAULT_LOG;

/// Rows of the fault log.
const LOGGED: usize = 8;
/// Height of the plan, points.
const PLAN: f64 = 300.0;

/// Lays out the cover, and as many more pages as it takes.
pub(super) fn lay_out(flow: &mut Flow, subject: &Subject, datum: &Datum, listed: &Listed, worked: &[Worked]) {
    let yard = subject.yard;
    flow.begin(&yard.name.0, &remark(subject));
    let mut column = flow.column(0.0, 1.0);
    let tall = if flow.is_letter() { PLAN - 20.0 } else { PLAN };
    // The measure of a house at the plan's upper edge stands above it.
    let at = [column.x, 12.0];
    let size = [column.width, tall - 10.0];
    column.sketch = plan::site((yard, subject.night, datum), (listed, worked), flow.digits(), at, size);
    column.y = tall + 6.0;
    flow.block(vec![column]);
    stations(flow, subject, datum, worked);
    marks(flow, datum, listed);
    open(flow, subject);
    for part in Part::ALL {
        pair::part(flow, part.name(), subject.notes.of(part));
    }
    flow.heading("Fault log", (LOGGED + 2) as f64 * ROW);
    let widths = [0.14, 0.16, 0.27, 0.25, 0.18].map(|share| share * flow.width());
    flow.blank_table(&FAULT_LOG, &widths, LOGGED);
}

/// Findings that are printed, the worst.
const FINDINGS: usize = 16;

/// What is found and still to be mended, the worst first: once, for all stations.
fn open(flow: &mut Flow, subject: &Subject) {
    let found = subject.findings;
    if found.is_empty() {
        return;
    }
    let mut lines: Vec<String> =
        found.iter().take(FINDINGS).map(|finding| format!("{}: {}", finding.level.name(), finding.says)).collect();
    if found.len() > FINDINGS {
        lines.push(format!("and {} more, which `judge` tells", found.len() - FINDINGS));
    }
    flow.heading("Still open", 3.0 * ROW);
    flow.list(&lines);
}

fn remark(subject: &Subject) -> String {
    let yard = subject.yard;
    let mut says = format!("Hang sheet, arrangement “{}”.", yard.arrangement.0);
    if let Some(when) = &yard.evening.when {
        says += &format!(" The evening of {}.", when.date);
    }
    if let Some((first, last)) = &yard.season {
        says += &format!(" Up from {first} to {last}.");
    }
    if yard.note.is_empty() { says } else { format!("{says} {}", yard.note) }
}

fn stations(flow: &mut Flow, subject: &Subject, datum: &Datum, worked: &[Worked]) {
    flow.heading("Stations, and where their lenses are", 3.0 * ROW);
    let widths = [0.05, 0.29, 0.27, 0.13, 0.13, 0.13].map(|share| share * flow.width());
    let head = ["", "station", "throws onto", "along", "height", "out"];
    row(flow, head, &widths, Weight::Regular, SMALL);
    for (index, worked) in worked.iter().enumerate() {
        let [along, height, out] = datum.coordinates(worked.pose.lens).map(|m| flow.digits().length(m));
        let onto =
            worked.landed.as_ref().map_or_else(|| "nothing now".to_owned(), |landed| landed.targets.join(" and "));
        let name = &subject.yard.stations[index].name.0;
        row(flow, [&(index + 1).to_string(), name, &onto, &along, &height, &out], &widths, Weight::Bold, BODY);
    }
    flow.gap(6.0);
}

fn marks(flow: &mut Flow, datum: &Datum, listed: &Listed) {
    if listed.each().next().is_none() {
        return;
    }
    flow.heading("Marks that tapes are held at", 5.0 * ROW);
    let mut column = flow.column(0.0, 1.0);
    column.text(
        &format!(
            "Start: {}. Along: to the right along the front, seen from the street. Height: over the yard's zero, its level ground. Out: from \
             the front towards the street. Left, right, upper and lower of marks are seen from the front of their thing.",
            datum.name
        ),
        SMALL,
        Weight::Regular,
    );
    flow.block(vec![column]);
    let widths = [0.06, 0.55, 0.13, 0.13, 0.13].map(|share| share * flow.width());
    row(flow, ["", "mark", "along", "height", "out"], &widths, Weight::Regular, SMALL);
    for (sign, mark) in listed.each() {
        let [along, height, out] = datum.coordinates(mark.at).map(|m| flow.digits().length(m));
        row(flow, [&sign, &mark.name(), &along, &height, &out], &widths, Weight::Regular, BODY);
    }
    flow.gap(6.0);
}

/// A row of plain cells; the first, a number, is bold in any case.
fn row<const N: usize>(flow: &mut Flow, cells: [&str; N], widths: &[f64; N], weight: Weight, size: f64) {
    let mut column = flow.column(0.0, 1.0);
    let mut list: Vec<(&str, f64, Weight)> = cells.into_iter().map(|says| (says, size, Weight::Regular)).collect();
    list[0].2 = Weight::Bold;
    if weight == Weight::Bold {
        list[1] = (list[1].0, size.min(VALUE), Weight::Bold);
    }
    column.row(&list, widths);
    flow.block(vec![column]);
}
