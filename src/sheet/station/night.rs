//! The first night: the card, the lux to expect, what was measured, and a picture from a viewing spot.

use super::Page;
use crate::{
    judge::Banded,
    scene::Units,
    sheet::{
        Ink, Part, View, Weight,
        draw::{Sketch, Stand},
        flow::{BODY, Column, Flow, SMALL},
        lux::Lux,
        plan,
        station::turning,
    },
    units::{LUX_PER_FOOT_CANDLE, illuminance, two_digits},
};
use std::sync::Arc;

/// Lays it out: a line of words, then the lux to expect, what was measured, the picture.
pub(super) fn lay_out(flow: &mut Flow, page: &Page) {
    let mut head = flow.column(0.0, 1.0);
    words(&mut head, page);
    let mut left = flow.column(0.0, 0.37);
    match &page.worked.lux {
        Some(lux) => expect(&mut left, page, lux),
        None => left.text("Nothing of a white picture lands where a phone could read it.", SMALL, Weight::Regular),
    }
    let mut middle = flow.column(0.395, 0.325);
    table(&mut middle, page);
    let mut right = flow.column(0.745, 0.255);
    view(&mut right, page);
    let tall = [&left, &middle, &right].map(|column| column.y).into_iter().fold(0.0, f64::max);
    flow.part(Part::FirstNight.name(), head.y + tall);
    flow.block(vec![head]);
    flow.block(vec![left, middle, right]);
}

fn words(column: &mut Column, page: &Page) {
    if page.landed().is_some() {
        let outline = if page.targets().is_empty() {
            String::new()
        } else {
            format!("its outline on the edges of {}, ", page.onto())
        };
        column.text(
            &format!(
                "Throw the alignment card: {outline}its dashes at top and foot of the figure; focus on its star. Tie all off, then \
                 measure again."
            ),
            BODY,
            Weight::Regular,
        );
    }
}

/// Mean on the target, and the nine places of the phone check with what each should read.
fn expect(column: &mut Column, page: &Page, lux: &Lux) {
    let feet = page.digits.0 == Units::Feet;
    let shown = |lx: &Banded| illuminance(lx.low, lx.typical, lx.high, feet).join(", ");
    column.text("Lux to expect of a white picture", 10.0, Weight::Bold);
    column.text(&format!("Mean on the target: {}.", shown(&lux.on_target)), SMALL, Weight::Regular);
    column.text(
        &format!(
            "Phone check, mean of {}: {}; flat on the target, less what it reads with the lens covered.",
            match lux.places.iter().flatten().count() {
                1 => "one place".to_owned(),
                count => format!("{count} places"),
            },
            shown(&lux.mean)
        ),
        SMALL,
        Weight::Regular,
    );
    column.gap(2.0);
    let (wide, tall) = (column.width / 3.0, 12.0);
    for (i, lx) in lux.places.iter().enumerate() {
        let at = [column.x + wide * (i % 3) as f64, column.y + tall * (i / 3) as f64];
        column.sketch.outline(&Sketch::rectangle(at, [wide, tall]), 0.4, 0.4);
        let says = lx.map_or_else(|| "misses".to_owned(), two_digits);
        let base = [at[0] + 4.0, at[1] + tall - 3.2];
        column.sketch.text(base, BODY, Weight::Bold, Stand::Start, &says);
    }
    column.gap(3.0 * tall + 2.0);
    let unit = if feet { format!("lx; for fc divide by {:.1}; ", LUX_PER_FOOT_CANDLE) } else { "lx; ".to_owned() };
    column.text(&format!("{unit}as seen from the projector."), SMALL, Weight::Regular);
}

/// A picture from a viewing spot that shows it, with a frame around where it is.
fn view(column: &mut Column, page: &Page) {
    let at = plan::middle(page.landed()).map(|at| at.as_vec3());
    let found: Option<(&View, [f64; 2])> =
        at.and_then(|at| page.subject.views.iter().find_map(|view| Some((view, view.shows(at)?))));
    let Some((view, place)) = found else {
        column.text("No viewing spot has this station in its picture.", SMALL, Weight::Regular);
        return;
    };
    let [w, h] = view.picture.size.map(f64::from);
    let size = [column.width, column.width * h / w];
    let corner = [column.x, column.y + 2.0];
    column.sketch.ink.push(Ink::Picture { at: corner, size, picture: Arc::clone(&view.picture) });
    let [x, y] = [corner[0] + place[0] * size[0], corner[1] + place[1] * size[1]];
    let half = 11.0;
    let [low, high] = [0, 1].map(|i| [corner[i], corner[i] + size[i]]);
    let box_low = [(x - half).max(low[0]), (y - half).max(high[0])];
    let box_high = [(x + half).min(low[1]), (y + half).min(high[1])];
    let frame = Sketch::rectangle(box_low, [box_high[0] - box_low[0], box_high[1] - box_low[1]]);
    // Black on white, so that it shows on dark and on light.
    column.sketch.outline(&frame, 2.6, 1.0);
    column.sketch.outline(&frame, 1.0, 0.0);
    column.y += size[1] + 3.0;
    let spot = &page.subject.yard.spots[view.spot].name.0;
    column.text(&format!("At night from “{spot}”, this station framed; lightened for paper."), SMALL, Weight::Regular);
}

/// A table to write down what was measured.
fn table(column: &mut Column, page: &Page) {
    let (pose, digits) = (&page.worked.pose, page.digits);
    let mut rows: Vec<(String, String)> = Vec::new();
    if let Some(taped) = &pose.taped {
        let tape = |(mark, m): (usize, f64)| (format!("tape {}", page.listed.sign(mark)), digits.length(m));
        rows.extend(taped.tapes.map(tape));
    }
    rows.push(("lens height".to_owned(), digits.length(pose.lens.y)));
    if let Some(turn) = pose.turn {
        rows.push(("tilt".to_owned(), turning::tilt(turn.tilt_deg)));
    }
    let mean = page.worked.lux.as_ref().map(|lux| two_digits(lux.mean.typical) + " lx");
    rows.push(("phone, mean".to_owned(), mean.unwrap_or_default()));
    rows.push(("date, name".to_owned(), String::new()));
    let widths = [0.36, 0.34, 0.30].map(|share| share * column.width);
    let top = column.y;
    column.row(
        &[("", SMALL, Weight::Regular), ("sheet", SMALL, Weight::Regular), ("measured", SMALL, Weight::Regular)],
        &widths,
    );
    for (what, value) in &rows {
        column.gap(1.0);
        column.row(&[(what, BODY, Weight::Regular), (value, BODY, Weight::Bold), ("", BODY, Weight::Regular)], &widths);
    }
    let x = column.x + widths[0] + widths[1] - 3.0;
    column.sketch.line(&[[x, top], [x, column.y]], 0.5, 0.3);
}
