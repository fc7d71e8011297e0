//! Where the picture must land: its corners A to D, its middle E, top and foot of its figure F and G.

use super::Page;
use crate::sheet::{
    Digits, Edge, Landed, SIGNS, Weight,
    draw::Sketch,
    flow::{BODY, Column, SMALL},
    landing::{Across, Spot},
};

/// What the frame with what is still fine begins with.
const STAYS: &str = "This far off is still fine, the figure stays on its target:";
/// The same of a figure that is not all on its target.
const STAYS_IN_PART: &str =
    "This far off, what lands of the figure stays on its target (some of it is beside it already, as above):";

/// Words and values of where it lands.
pub(super) fn lay_out(left: &mut Column, page: &Page, landed: &Landed) {
    left.title("Where the picture must land");
    if let Some(edges) = &landed.edges {
        let [a, b, c, _] = edges.corners().map(|at| place(page, at));
        let says = format!(
            "On {}, from its edges, as seen from the projector. By the yard's lines, along / height / out, its lower left corner is at \
             {a}, lower right at {b}, upper left at {c}.",
            page.onto()
        );
        left.text(&says, SMALL, Weight::Regular);
    } else {
        let side =
            one_side(landed).map_or_else(String::new, |side| format!("; of the two that fit, always the one {side}"));
        let says = format!("Each place by its height over the yard's zero, and by two tapes{side}.");
        left.text(&says, SMALL, Weight::Regular);
    }
    left.gap(1.0);
    for (sign, spot) in SIGNS.iter().zip(&landed.spots) {
        self::spot(left, page, sign, spot, one_side(landed).is_some());
    }
    for says in missing(landed) {
        left.text(&says, SMALL, Weight::Regular);
    }
    left.gap(4.0);
    fine(left, page.digits, landed);
}

/// A place by the yard's lines, as a row of numbers.
fn place(page: &Page, at: glam::DVec3) -> String {
    page.datum.coordinates(at).map(|m| page.digits.length(m)).join(" / ")
}

fn spot(column: &mut Column, page: &Page, sign: &str, spot: &Spot, side_is_said: bool) {
    let (lands, digits) = (&spot.lands, page.digits);
    let head = [(sign, BODY, Weight::Bold), (spot.name, BODY, Weight::Regular)];
    let wide = column.width;
    if let Some(places) = &lands.edges {
        let [side, up] = places.map(|place| across(digits, place));
        let cells = [head[0], head[1], (&side, BODY, Weight::Bold), (&up, BODY, Weight::Bold)];
        column.cells(&cells, &[0.06, 0.29, 0.31, 0.34].map(|share| share * wide));
        column.rule();
        return;
    }
    let place = match &lands.taped {
        Some(taped) => {
            let tapes = taped.tapes.map(|(mark, m)| format!("{} from {}", digits.length(m), page.listed.sign(mark)));
            let side = if side_is_said { String::new() } else { format!("; the place {}", taped.side) };
            format!("{} up, {}, {}{side}", digits.length(taped.height), tapes[0], tapes[1])
        }
        None => lands.on.as_ref().map_or_else(|| "leaves the yard".to_owned(), |(_, at)| page.by_lines(*at)),
    };
    column.row(&[head[0], head[1], (&place, BODY, Weight::Bold)], &[0.06, 0.29, 0.65].map(|share| share * wide));
}

/// What misses the target, by where it lands: a line a thing.
fn missing(landed: &Landed) -> Vec<String> {
    let mut on: Vec<(&str, Vec<&str>)> = Vec::new();
    for (sign, spot) in SIGNS.iter().zip(&landed.spots).filter(|(_, spot)| !spot.lands.hits) {
        let name = spot.lands.on.as_ref().map_or("", |(name, _)| name.as_str());
        match on.iter_mut().find(|(known, _)| *known == name) {
            Some((_, signs)) => signs.push(sign),
            None => on.push((name, vec![sign])),
        }
    }
    let line = |(name, signs): (&str, Vec<&str>)| {
        let verb = if signs.len() == 1 { ["misses", "lands", "leaves"] } else { ["miss", "land", "leave"] };
        let [miss, land, leave] = verb;
        let what = signs.join(", ");
        if name.is_empty() {
            format!("{what} {leave} the yard.")
        } else {
            format!("{what} {miss} and {land} on “{name}”.")
        }
    };
    on.into_iter().map(line).collect()
}

/// What is still fine, in a frame: the figures that save a second climb.
fn fine(column: &mut Column, digits: Digits, landed: &Landed) {
    let top = column.y;
    column.gap(2.0);
    let mut inner = Column::new(column.x + 6.0, column.width - 12.0);
    inner.y = column.y;
    match &landed.fine {
        Some(fine) => {
            let [left, right, up, down] = [fine.left, fine.right, fine.up, fine.down].map(|m| digits.fine(m));
            // What hangs over already is not told to stay.
            let over = landed.figure().iter().any(|spot| !spot.lands.hits);
            inner.text(if over { STAYS_IN_PART } else { STAYS }, SMALL, Weight::Regular);
            inner.text(&format!("{left} left · {right} right · {up} up · {down} down"), 10.0, Weight::Bold);
        }
        None => inner.text(
            "No room to spare: some of the figure's outline is beside its target already.",
            BODY,
            Weight::Bold,
        ),
    }
    column.y = inner.y + 3.0;
    column.sketch.extend(inner.sketch);
    let frame = Sketch::rectangle([column.x, top], [column.width, column.y - top]);
    column.sketch.outline(&frame, 1.2, 0.0);
}

/// The side on which all of a picture's places by tapes lie, where they lie on one.
fn one_side(landed: &Landed) -> Option<&'static str> {
    let mut sides = landed.spots.iter().filter_map(|spot| spot.lands.taped.as_ref()).map(|taped| taped.side);
    let first = sides.next()?;
    sides.all(|side| side == first).then_some(first)
}

/// A distance from an edge, in words.
fn across(digits: Digits, place: Across) -> String {
    let length = digits.length(place.m.abs());
    // What prints as nothing has no side.
    let inside = place.m >= 0.0 || length == digits.length(0.0);
    let (edge, way) = match (place.edge, inside) {
        (Edge::Left | Edge::Right, true) => (place.edge.name(), "from"),
        (Edge::Left | Edge::Right, false) => (place.edge.name(), "past"),
        (Edge::Top, true) | (Edge::Bottom, false) => (place.edge.name(), "below"),
        (Edge::Top, false) | (Edge::Bottom, true) => (place.edge.name(), "above"),
    };
    format!("{length} {way} {edge}")
}
