//! The page of a station: what a person on a ladder sets, first; then the rest in the order of the work.

mod turning;

use super::{
    Datum, Digits, Edge, Ink, Landed, Listed, Part, Subject, View, Weight, Worked,
    draw::Sketch,
    elevation,
    flow::{BODY, Column, Flow, SMALL, line},
    landing::{Across, Spot},
    pair, plan,
};
use crate::{
    craft::shopping::cuts,
    light::Beam,
    scene::{Mount, Station},
};
use std::sync::Arc;

/// What the frame with what is still fine begins with.
const STAYS: &str = "This far off is still fine, the figure stays on its target:";
/// The same of a figure that is not all on its target.
const STAYS_IN_PART: &str =
    "This far off, what lands of the figure stays on its target (some of it is beside it already, as above):";
/// Open findings that are printed, the worst.
const FINDINGS: usize = 3;
/// What the part for the first night takes, points.
const NIGHT: f64 = 300.0;
/// Height of the drawings, points.
const DRAWN: f64 = 196.0;

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
    flow.part(Part::Day.name());
    page.landing(flow);
    page.lens(flow);
    turning::boxes(flow, &page);
    page.cut(flow);
    page.notes(flow, Part::Day);
    // What is for the night begins on the back where little is left of the front.
    flow.need(NIGHT);
    flow.part(Part::FirstNight.name());
    page.first_night(flow);
    page.notes(flow, Part::FirstNight);
    flow.part(Part::EachEvening.name());
    flow.list(&["Look from a viewing spot: is the picture sharp, whole, and where it belongs?".to_owned()]);
    page.notes(flow, Part::EachEvening);
    flow.part(Part::TakeDown.name());
    flow.list(&["Before it comes down, write into the table what differs from this sheet: for next year.".to_owned()]);
    page.notes(flow, Part::TakeDown);
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
        let note = if station.note.is_empty() { String::new() } else { format!(" {}", station.note) };
        format!("{}, {mount}, throws “{}”{onto}.{off}{note}", station.projector.0, station.content.picture)
    }

    fn landing(&self, flow: &mut Flow) {
        let (Some(landed), Some(beam)) = (self.landed(), self.beam()) else { return };
        let mut left = flow.column(0.0, 0.57);
        left.title("Where the picture must land");
        if let Some(edges) = &landed.edges {
            let [a, b, c, d] = edges.marks.map(|mark| self.listed.number(mark));
            left.text(
                &format!(
                    "On {}. Left and right as you stand at the projector and look along its light. Left edge: marks {a} and {c}; right \
                     edge: marks {b} and {d}.",
                    self.onto()
                ),
                SMALL,
                Weight::Regular,
            );
        } else {
            let side = one_side(landed)
                .map_or_else(String::new, |side| format!("; of the two that fit, always the one {side}"));
            let says = format!("Each place by its height over the yard's zero, and by two tapes{side}.");
            left.text(&says, SMALL, Weight::Regular);
        }
        left.gap(2.0);
        for (number, spot) in landed.spots.iter().enumerate() {
            self.spot(&mut left, number + 1, spot, one_side(landed).is_some());
        }
        left.gap(5.0);
        self.fine(&mut left, landed);
        let right = flow.column(0.60, 0.40);
        let size = [right.width, DRAWN.max(left.y - 4.0).min(260.0)];
        let mut right = right;
        right.sketch = elevation::draw(self.subject.night, beam, landed, self.digits, [right.x, 4.0], size);
        right.y = size[1] + 4.0;
        flow.block(vec![left, right]);
        flow.gap(4.0);
    }

    fn spot(&self, column: &mut Column, number: usize, spot: &Spot, side_is_said: bool) {
        let lands = &spot.lands;
        let missed = match (&lands.on, lands.hits) {
            (_, true) => String::new(),
            (Some((name, _)), false) => format!("misses, lands on “{name}”"),
            (None, false) => "misses, leaves the yard".to_owned(),
        };
        let number = number.to_string();
        let head = [(number.as_str(), BODY, Weight::Bold), (spot.name, BODY, Weight::Regular)];
        let wide = column.width;
        if let Some(places) = &lands.edges {
            let [side, up] = places.map(|place| across(self.digits, place));
            let cells = [head[0], head[1], (&side, BODY, Weight::Bold), (&up, BODY, Weight::Bold)];
            column.cells(&cells, &[0.06, 0.29, 0.31, 0.34].map(|share| share * wide));
            if !missed.is_empty() {
                column.gap(-2.0);
                let cells = [("", SMALL, Weight::Regular), (missed.as_str(), SMALL, Weight::Regular)];
                column.cells(&cells, &[0.06, 0.94].map(|share| share * wide));
            }
            column.rule();
            return;
        }
        let place = match &lands.taped {
            Some(taped) => {
                let tapes = taped
                    .tapes
                    .map(|(mark, m)| format!("{} from mark {}", self.digits.length(m), self.listed.number(mark)));
                let side = if side_is_said { String::new() } else { format!("; the place {}", taped.side) };
                format!("{} up, {}, {}{side}", self.digits.length(taped.height), tapes[0], tapes[1])
            }
            None => lands.on.as_ref().map_or_else(String::new, |(_, at)| self.by_lines(*at)),
        };
        let says = match (missed.is_empty(), place.is_empty()) {
            (true, _) => place,
            (false, true) => missed,
            (false, false) => format!("{missed}: {place}"),
        };
        column.row(&[head[0], head[1], (&says, BODY, Weight::Bold)], &[0.06, 0.29, 0.65].map(|share| share * wide));
    }

    /// A place by the yard's own lines.
    fn by_lines(&self, at: glam::DVec3) -> String {
        let [along, height, out] = self.datum.coordinates(at).map(|m| self.digits.length(m));
        format!("along {along}, height {height}, out {out}")
    }

    /// What is still fine, in a frame: the figures that save a second climb.
    fn fine(&self, column: &mut Column, landed: &Landed) {
        let top = column.y;
        column.gap(3.0);
        let mut inner = Column::new(column.x + 6.0, column.width - 12.0);
        inner.y = column.y;
        match &landed.fine {
            Some(fine) => {
                let [left, right, up, down] = [fine.left, fine.right, fine.up, fine.down].map(|m| self.digits.fine(m));
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
        column.y = inner.y + 4.0;
        column.sketch.extend(inner.sketch);
        let frame = Sketch::rectangle([column.x, top], [column.width, column.y - top]);
        column.sketch.outline(&frame, 1.2, 0.0);
    }

    fn lens(&self, flow: &mut Flow) {
        let pose = &self.worked.pose;
        let digits = self.digits;
        let mut left = flow.column(0.0, 0.57);
        left.title("Where the lens goes");
        if let Some(taped) = &pose.taped {
            for (mark, m) in taped.tapes {
                let name = self.listed.mark(mark).name();
                left.measured(Some(self.listed.number(mark)), &name, &digits.length(m));
            }
        }
        match pose.below.as_ref().filter(|(_, m)| (m - pose.lens.y).abs() > 5e-4) {
            Some((name, m)) => {
                left.measured(None, &format!("height over “{name}” right below"), &digits.length(*m));
                left.measured(None, "the same over the yard's zero", &digits.length(pose.lens.y));
            }
            None => {
                left.measured(None, "height over the ground right below, the yard's zero", &digits.length(pose.lens.y))
            }
        }
        left.gap(2.0);
        match &pose.taped {
            Some(taped) => {
                left.text(&format!("Of the two places that fit, the one {}.", taped.side), SMALL, Weight::Regular)
            }
            None => left.text("No two marks lie well for tapes: set it by the yard's lines.", BODY, Weight::Bold),
        }
        if let Some((mark, m)) = pose.check {
            let mark = (self.listed.number(mark), self.listed.mark(mark).name());
            left.text(
                &format!("To check: {} from mark {}, {}.", digits.length(m), mark.0, mark.1),
                SMALL,
                Weight::Regular,
            );
        }
        left.text(&format!("By the yard's lines: {}.", self.by_lines(pose.lens)), SMALL, Weight::Regular);
        let mut right = flow.column(0.60, 0.40);
        let size = [right.width, DRAWN.min(left.y.max(150.0))];
        let site = (self.subject.yard, self.subject.night, self.datum);
        right.sketch = plan::station(site, self.listed, self.worked, digits, [right.x, 4.0], size);
        right.y = size[1] + 4.0;
        flow.block(vec![left, right]);
        flow.gap(4.0);
    }

    /// What the cloth or film is cut to, layer by layer.
    fn cut(&self, flow: &mut Flow) {
        let Subject { yard, catalogue, .. } = *self.subject;
        let length = |m: f64| self.digits.length(m);
        let pieces = cuts(yard, catalogue).into_iter().filter(|cut| self.targets().contains(&cut.of));
        let says = pieces.map(|cut| {
            let [wide, tall] = [cut.cut_width_m, cut.cut_height_m].map(length);
            let (trimmed, done) =
                (if cut.is_film { "trimmed to" } else { "hemmed to" }, [cut.width_m, cut.height_m].map(length));
            format!("{}: cut {wide} wide and {tall} high, {trimmed} {} by {}", cut.fabric, done[0], done[1])
        });
        let mut lines: Vec<String> = says.collect();
        if !lines.is_empty() {
            let cloths = yard.cloths.iter().filter(|cloth| self.targets().contains(&cloth.name.0));
            let gathered = cloths.filter(|cloth| cloth.fullness.0 > 1.0);
            lines.extend(gathered.map(|cloth| format!("gathered to {}", length(cloth.width.0.m))));
        }
        if !lines.is_empty() {
            flow.heading(&format!("Cut for {}", self.onto()));
            flow.list(&lines);
        }
    }

    fn first_night(&self, flow: &mut Flow) {
        let mut lines = Vec::new();
        if self.landed().is_some() {
            let outline = if self.targets().is_empty() {
                String::new()
            } else {
                format!("what its outline shows must lie on the edges of {}, ", self.onto())
            };
            lines.push(format!(
                "Throw the alignment card: {outline}its dashed lines where the figure's top and foot belong."
            ));
            lines.push("Focus until the spokes of the star part as far in as they will.".to_owned());
        }
        lines.push("Write down what you measure, then tie everything off and measure once more.".to_owned());
        flow.list(&lines);
        flow.gap(3.0);
        let mut left = flow.column(0.0, 0.55);
        self.view(&mut left);
        let mut right = flow.column(0.58, 0.42);
        self.table(&mut right);
        flow.block(vec![left, right]);
        let own = self.subject.findings.iter().filter(|finding| {
            let of_target = |target: &String| finding.concerns(target);
            finding.concerns(&self.station.name.0) || self.targets().iter().any(of_target)
        });
        let count = own.clone().count();
        let open = own.take(FINDINGS).map(|finding| format!("{}: {}.", finding.level.name(), finding.says));
        let mut open: Vec<String> = open.collect();
        if count > FINDINGS {
            open.push(format!("and {} more, which `judge` tells", count - FINDINGS));
        }
        if !open.is_empty() {
            flow.heading("Still open");
            flow.list(&open);
        }
    }

    /// A picture from a viewing spot that shows it, with a frame around where it is.
    fn view(&self, column: &mut Column) {
        let at = plan::middle(self.landed()).map(|at| at.as_vec3());
        let found: Option<(&View, [f64; 2])> =
            at.and_then(|at| self.subject.views.iter().find_map(|view| Some((view, view.shows(at)?))));
        let Some((view, place)) = found else {
            column.text("No viewing spot has this station in its picture.", SMALL, Weight::Regular);
            return;
        };
        let [w, h] = view.picture.size.map(f64::from);
        let size = [column.width, column.width * h / w];
        let corner = [column.x, column.y + 2.0];
        column.sketch.ink.push(Ink::Picture { at: corner, size, picture: Arc::clone(&view.picture) });
        let [x, y] = [corner[0] + place[0] * size[0], corner[1] + place[1] * size[1]];
        let half = 15.0;
        let [low, high] = [0, 1].map(|i| [corner[i], corner[i] + size[i]]);
        let box_low = [(x - half).max(low[0]), (y - half).max(high[0])];
        let box_high = [(x + half).min(low[1]), (y + half).min(high[1])];
        let frame = Sketch::rectangle(box_low, [box_high[0] - box_low[0], box_high[1] - box_low[1]]);
        // Black on white, so that it shows on dark and on light.
        column.sketch.outline(&frame, 2.6, 1.0);
        column.sketch.outline(&frame, 1.0, 0.0);
        column.y += size[1] + 3.0;
        let spot = &self.subject.yard.spots[view.spot].name.0;
        column.text(
            &format!("At night from “{spot}”, this station framed; lightened for paper."),
            SMALL,
            Weight::Regular,
        );
    }

    /// A table to write down what was measured.
    fn table(&self, column: &mut Column) {
        column.title("Measured");
        let pose = &self.worked.pose;
        let digits = self.digits;
        let mut rows: Vec<(String, String)> = Vec::new();
        if let Some(taped) = &pose.taped {
            let tape = |(mark, m): (usize, f64)| (format!("tape {}", self.listed.number(mark)), digits.length(m));
            rows.extend(taped.tapes.map(tape));
        }
        rows.push(("lens height".to_owned(), digits.length(pose.lens.y)));
        if let Some(turn) = pose.turn {
            rows.push(("tilt".to_owned(), turning::tilt(turn.tilt_deg)));
        }
        rows.push(("lux in the middle, white".to_owned(), String::new()));
        rows.push(("date, name".to_owned(), String::new()));
        let widths = [0.40, 0.27, 0.33].map(|share| share * column.width);
        let top = column.y;
        column.row(
            &[("", SMALL, Weight::Regular), ("sheet", SMALL, Weight::Regular), ("measured", SMALL, Weight::Regular)],
            &widths,
        );
        for (what, value) in &rows {
            column.gap(3.0);
            column.row(
                &[(what, BODY, Weight::Regular), (value, BODY, Weight::Bold), ("", BODY, Weight::Regular)],
                &widths,
            );
        }
        let x = column.x + widths[0] + widths[1] - 4.0;
        column.sketch.line(&[[x, top], [x, column.y]], 0.5, 0.3);
        column.gap(line(SMALL));
    }

    fn notes(&self, flow: &mut Flow, part: Part) {
        let Some(notes) = self.subject.station_notes.get(self.index) else { return };
        pair::sections(flow, notes.of(part));
    }
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

/// A frame of boxes side by side: a label, a value, a remark in each.
fn boxed(flow: &mut Flow, cells: &[[String; 3]; 3]) {
    let mut columns: Vec<Column> = Vec::new();
    for (index, [label, value, remark]) in cells.iter().enumerate() {
        let mut column = flow.column(index as f64 / 3.0, 1.0 / 3.0 - 0.012);
        let (x, width) = (column.x, column.width);
        (column.x, column.width) = (x + 5.0, width - 10.0);
        column.gap(2.0);
        column.told(label, value, remark);
        column.gap(3.0);
        (column.x, column.width) = (x, width);
        columns.push(column);
    }
    let tall = columns.iter().map(|column| column.y).fold(0.0, f64::max);
    for column in &mut columns {
        column.sketch.outline(&Sketch::rectangle([column.x, 0.0], [column.width, tall]), 0.7, 0.2);
    }
    flow.block(columns);
    flow.gap(5.0);
}
