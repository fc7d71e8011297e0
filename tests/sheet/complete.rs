//! The paper alone is enough: from the text of the file, in both units, every pose is set up again, and lands where the yard says.
//! The places are reckoned here anew, from the printed numbers by plane geometry, and from the yard by its lens and faces.

use super::{
    SETUPS, Stage,
    read::{Leaf, leaves},
    yards::{by_chance, short},
};
use gauzelight::{
    geometry::Sight,
    judge::{Touch, aimed},
    light::VeilSort,
    scene::{Item, Units},
    sheet::{SIGNS, pdf},
    units::Length,
};
use glam::{DVec3, Vec3};
use std::{collections::BTreeMap, fs, path::Path};

/// What is asked of the paper, m.
const LENS: f64 = 0.005;
const CORNER: f64 = 0.010;
/// Half of the last printed digit with a hair for single precision, m: a millimetre, a sixteenth of an inch.
const DIGIT: [f64; 2] = [0.00052, 0.00081];

/// A length at the start of a text, m, and what follows it.
fn length(text: &str) -> (f64, &str) {
    let text = text.trim_start();
    let end = match (text.find(" m"), text.find('"')) {
        (Some(m), Some(inch)) if m < inch => m + 2,
        (Some(m), None) => m + 2,
        (_, Some(inch)) => inch + 1,
        _ => panic!("no length: {text:.60}"),
    };
    (Length::parse(&text[..end]).unwrap_or_else(|error| panic!("{error}")).m, &text[end..])
}

/// The first number in a text, and what follows it.
fn number(text: &str) -> (f64, &str) {
    let text = text.trim_start();
    let end = text.find(|c: char| !c.is_ascii_digit() && !".-".contains(c)).unwrap_or(text.len());
    (text[..end].parse().unwrap_or_else(|_| panic!("no number: {text:.60}")), &text[end..])
}

/// The number of a mark, M1 and on, at the start of a text, and what follows it.
fn sign(text: &str) -> (usize, &str) {
    let text = text.trim_start();
    let rest = text.strip_prefix('M').unwrap_or_else(|| panic!("no mark: {text:.60}"));
    let (number, rest) = number(rest);
    (number as usize, rest)
}

fn after<'a>(text: &'a str, words: &str) -> &'a str {
    let at = text.find(words).unwrap_or_else(|| panic!("“{words}” is not in: {text}"));
    &text[at + words.len()..]
}

/// What the paper says.
struct Paper {
    /// Number to name and place, by the yard's lines.
    marks: BTreeMap<usize, (String, DVec3)>,
    /// The text of each station, all its pages.
    stations: Vec<String>,
}

impl Paper {
    fn read(leaves: &[Leaf], names: &[String]) -> Self {
        let starts: Vec<usize> = names
            .iter()
            .enumerate()
            .map(|(i, name)| {
                let title = format!("{} {name}", i + 1);
                leaves.iter().position(|leaf| leaf.runs[0].says == title).unwrap_or_else(|| panic!("{title}"))
            })
            .collect();
        let ends = starts.iter().skip(1).copied().chain([leaves.len()]);
        let stations = starts
            .iter()
            .zip(ends)
            .map(|(from, to)| leaves[*from..to].iter().map(Leaf::text).collect::<Vec<_>>().join(" "));
        Self { marks: marks(&leaves[..starts[0]]), stations: stations.collect() }
    }
}

/// The table of marks: rows on one base line, under the heads of their columns.
fn marks(cover: &[Leaf]) -> BTreeMap<usize, (String, DVec3)> {
    let mut list = BTreeMap::new();
    let mut columns: Option<[f64; 5]> = None;
    for leaf in cover {
        for (index, run) in leaf.runs.iter().enumerate() {
            if run.says == "mark" {
                let head = &leaf.runs[index..index + 4];
                columns = Some([0.0, head[0].edges[0], head[1].edges[0], head[2].edges[0], head[3].edges[0]]);
            }
            let Some(columns) = columns else { continue };
            let Some(Ok(number)) = run.says.strip_prefix('M').map(str::parse::<usize>) else { continue };
            if run.edges[0] > columns[1] - 5.0 {
                continue;
            }
            let cell = |column: usize| {
                let here = leaf.runs[index..].iter().find(|other| {
                    (other.edges[0] - columns[column]).abs() < 1.0 && (other.edges[1] - run.edges[1]).abs() < 0.5
                });
                here.unwrap().says.clone()
            };
            let at = [2, 3, 4].map(|column| length(&cell(column)).0);
            list.insert(number, (cell(1), DVec3::from(at)));
        }
    }
    list
}

/// Where a point is that two tapes and its height give, on the side that is said: two circles in the level plane.
fn by_tapes(held: [(DVec3, f64); 2], height: f64, side: &str) -> DVec3 {
    let level = held.map(|(at, tape)| ([at.x, at.z], (tape * tape - (height - at.y).powi(2)).max(0.0).sqrt()));
    let [([ax, az], ra), ([bx, bz], rb)] = level;
    let (dx, dz) = (bx - ax, bz - az);
    let d = dx.hypot(dz);
    let x = (ra * ra - rb * rb + d * d) / (2.0 * d);
    let h = (ra * ra - x * x).max(0.0).sqrt();
    let both = [h, -h].map(|h| [ax + (x * dx - h * dz) / d, az + (x * dz + h * dx) / d]);
    let score = |p: &[f64; 2]| match side {
        s if s.starts_with("nearer the street") => p[1],
        s if s.starts_with("farther from the street") => -p[1],
        s if s.starts_with("farther right") => p[0],
        s if s.starts_with("farther left") => -p[0],
        s => panic!("which side? {s:.40}"),
    };
    let best = both.into_iter().max_by(|a, b| score(a).total_cmp(&score(b))).unwrap();
    DVec3::new(best[0], height, best[1])
}

/// The lens by its tapes, and by the yard's lines.
fn lens(text: &str, marks: &BTreeMap<usize, (String, DVec3)>) -> (Option<DVec3>, DVec3) {
    let part = after(text, "Where the lens goes");
    let by_lines = after(part, "By the yard's lines: along");
    let (along, rest) = length(by_lines);
    let (height, rest) = length(after(rest, "height"));
    let (out, _) = length(after(rest, "out"));
    let lines = DVec3::new(along, height, out);
    if part.trim_start().starts_with("height") || !part.contains("Of the two places that fit, the one ") {
        return (None, lines);
    }
    let mut rest = part;
    let held = [(); 2].map(|()| {
        let (mark, after_mark) = sign(rest);
        let (tape, after_tape) = length(after_mark);
        let (name, at) = &marks[&mark];
        rest = after(after_tape, name);
        (*at, tape)
    });
    // The height over the yard's zero is the last that stands before the side.
    let before = &rest[..rest.find("Of the two places").unwrap()];
    let zero = before.find("the same over").map_or(before, |at| {
        let head = before[..at].trim_end();
        let from = head.rfind("below").map_or(0, |at| at + 5);
        &head[from..]
    });
    let (height, _) = length(zero);
    (Some(by_tapes(held, height, after(rest, "Of the two places that fit, the one "))), lines)
}

/// The text of a point of the picture.
fn row<'a>(text: &'a str, index: usize, name: &str) -> &'a str {
    let rest = after(text, &format!("{} {name} ", SIGNS[index]));
    let names = ["upper right", "lower left", "lower right", "middle", "top of the", "foot of the"];
    let next = names.get(index).map(|name| format!(" {} {name}", SIGNS[index + 1]));
    let end = next.and_then(|next| rest.find(&next));
    let end = end.or_else(|| rest.find(" This far off")).or_else(|| rest.find(" No room to spare")).unwrap();
    &rest[..end]
}

/// The places of the corners and the middle that are printed: on a flat target by its edges, else by tapes.
fn landed(text: &str, marks: &BTreeMap<usize, (String, DVec3)>) -> (Vec<Option<DVec3>>, Option<[DVec3; 3]>) {
    let names = ["upper left corner", "upper right corner", "lower left corner", "lower right corner", "middle"];
    let part = after(text, "Where the picture must land");
    let said = part
        .find("of the two that fit, always the one ")
        .map(|at| &part[at + "of the two that fit, always the one ".len()..]);
    let face = part.find("its lower left corner is at ").map(|at| {
        let mut rest = &part[at..];
        ["lower left corner is at ", "lower right at ", "upper left at "].map(|words| {
            let (along, more) = length(after(rest, words));
            let (height, more) = length(after(more, "/ "));
            let (out, more) = length(after(more, "/ "));
            rest = more;
            DVec3::new(along, height, out)
        })
    });
    let places = names.iter().enumerate().map(|(index, name)| {
        let row = row(part, index, name);
        match face {
            Some([a, b, c]) => {
                let (u, v) = (b - a, c - a);
                let (m, rest) = length(row);
                let side = if rest.starts_with(" from") { m } else { -m };
                let across = if rest[..12].contains("left") { side } else { u.length() - side };
                let (m, rest) = length(&rest[11..]);
                let rest = rest.trim_start();
                let up = match rest {
                    r if r.starts_with("below top") => v.length() - m,
                    r if r.starts_with("above top") => v.length() + m,
                    r if r.starts_with("above bottom") => m,
                    r if r.starts_with("below bottom") => -m,
                    r => panic!("{r:.40}"),
                };
                Some(a + across * u.normalize() + up * v.normalize())
            }
            None if row.contains("leaves the yard") => None,
            None => {
                let row = row.find("”: ").map_or(row, |at| &row[at + "”: ".len()..]);
                let (height, rest) = length(row);
                let (one, rest) = length(after(rest, "up, "));
                let (first, rest) = sign(after(rest, "from"));
                let (other, rest) = length(&rest[1..]);
                let (second, rest) = sign(after(rest, "from"));
                let held = [(first, one), (second, other)].map(|(mark, m)| (marks[&mark].1, m));
                Some(by_tapes(held, height, said.unwrap_or_else(|| after(rest, "the place "))))
            }
        }
    });
    (places.collect(), face)
}

/// The ways of the corners from a lens that is set by the paper: the middle onto its place, rolled and shifted as it says.
fn ways(text: &str, lens: DVec3, middle: DVec3) -> Vec<DVec3> {
    let roll = after(text, "Lies, and rolled beyond that as it looks ");
    let (deg, rest) = number(roll);
    let sign = if rest[2..].trim_start().starts_with("counter") { -1.0 } else { 1.0 };
    let how = &rest[..rest.find("Throw ratio").unwrap()];
    let lies = match how {
        how if how.contains("on its side") => 90.0,
        how if how.contains("upside down") => 180.0,
        _ => 0.0,
    };
    let roll = (lies + sign * deg).to_radians();
    let ratio = after(after(text, "Throw ratio, "), "fixed");
    let (ratio, rest) = number(ratio);
    let pixels = &rest[..rest.find(" pixels").unwrap()];
    let (tall, wide) = (pixels.rsplit(" × ").next().unwrap(), pixels.rsplit(" × ").nth(1).unwrap());
    let wide: f64 = wide.rsplit(' ').next().unwrap().parse().unwrap();
    let tall: f64 = tall.parse().unwrap();
    let shift = rest[..rest.find("Focus").unwrap()].find("lens shift").map_or([0.0; 2], |at| {
        let (x, more) = number(&rest[at + "lens shift".len()..]);
        let (y, _) = number(after(more, "right,"));
        [x, y]
    });
    let (w, h) = (1.0 / ratio, tall / wide / ratio);
    // The axis is found step by step: it is right where the middle of the shifted picture lands on its place.
    let want = (middle - lens).normalize();
    let mut axis = want;
    let mut frame = [DVec3::X, DVec3::Y];
    for _ in 0..40 {
        let level = axis.cross(DVec3::Y).normalize();
        let upright = level.cross(axis);
        let (sin, cos) = roll.sin_cos();
        frame = [cos * level - sin * upright, cos * upright + sin * level];
        let shifted = (axis + shift[0] * w * frame[0] + shift[1] * h * frame[1]).normalize();
        axis = (axis + want - shifted).normalize();
    }
    let corners = [(-0.5, 0.5), (0.5, 0.5), (-0.5, -0.5), (0.5, -0.5)];
    corners.map(|(x, y)| axis + (x + shift[0]) * w * frame[0] + (y + shift[1]) * h * frame[1]).to_vec()
}

/// The yard's own place by its lines.
fn by_lines(stage: &Stage, at: DVec3) -> DVec3 {
    // All yards here begin at the front left foot of a house that faces the street, with its front at z = 0.
    let house = &stage.yard.houses[0];
    DVec3::new(at.x - house.at.0[0].m + 0.5 * house.width.0.m, at.y, at.z - house.at.0[2].m)
}

fn check(stage: &Stage) {
    let names: Vec<String> = stage.yard.stations.iter().map(|station| station.name.0.clone()).collect();
    for (paper, units) in &SETUPS[..2] {
        let sheet = Paper::read(&leaves(&pdf(&stage.sheet(*paper, *units)).unwrap()), &names);
        let digit = DIGIT[usize::from(*units == Units::Feet)];
        let mut taped = 0;
        for (index, text) in sheet.stations.iter().enumerate() {
            let who = &names[index];
            let at = Item::Station(stage.yard.stations[index].clone()).points()[0];
            let truth = by_lines(stage, DVec3::from(at));
            let (tapes, lines) = lens(text, &sheet.marks);
            assert!((lines - truth).abs().max_element() <= digit, "{who}: {lines} for {truth}");
            if let Some(tapes) = tapes {
                taped += 1;
                assert!(
                    tapes.distance(truth) <= LENS,
                    "{who}, {units:?}: {tapes} for {truth}: {}",
                    tapes.distance(truth)
                );
            }
            let lens = tapes.unwrap_or(lines);
            let (places, face) = landed(text, &sheet.marks);
            corners(stage, index, &places, face.is_some(), fine(text));
            let Some(middle) = places[4] else { continue };
            let mut rest: Vec<DVec3> = places[..4].iter().flatten().copied().collect();
            for way in ways(text, lens, middle) {
                let near = |p: &DVec3| match face {
                    // Where the rebuilt ray meets the printed face.
                    Some([a, b, c]) => {
                        let normal = (b - a).cross(c - a);
                        let met = lens + (a - lens).dot(normal) / way.dot(normal) * way;
                        met.distance(*p)
                    }
                    None => (*p - lens).reject_from(way.normalize()).length(),
                };
                let Some((found, off)) =
                    rest.iter().enumerate().map(|(i, p)| (i, near(p))).min_by(|a, b| a.1.total_cmp(&b.1))
                else {
                    continue;
                };
                if face.is_none() && off > 0.2 {
                    // A corner that leaves the yard has no place on paper.
                    continue;
                }
                assert!(off <= CORNER, "{who}, {units:?}: a corner is {off} m off");
                rest.remove(found);
            }
        }
        assert!(taped * 10 >= names.len() * 9, "only {taped} of {} by tapes", names.len());
    }
}

/// The printed corners against where the yard's lens throws them: onto the plane of its flat target, else to where the light ends. Where
/// something is still fine, what is printed is nearer than that.
fn corners(stage: &Stage, index: usize, places: &[Option<DVec3>], flat: bool, fine: Option<f64>) {
    let who = &stage.yard.stations[index].name.0;
    let beam = stage.night.beams.iter().rfind(|beam| beam.station as usize == index).unwrap();
    let target = aimed(&stage.night, &stage.yard, index).unwrap().targets;
    // Light goes on through glass.
    let is_thing =
        |touch: &&Touch| touch.veil.is_none_or(|veil| stage.night.veils[veil as usize].sort != VeilSort::Pane);
    let ends = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].map(|uv: [f32; 2]| {
        let along: Vec3 = beam.lens.direction(uv[0], uv[1]).normalize();
        if flat {
            let face = stage.night.places[target[0] as usize].face.unwrap();
            let (normal, from, along) = (face.normal().as_dvec3(), beam.lens.at.as_dvec3(), along.as_dvec3());
            let far = (face.corner.as_dvec3() - from).dot(normal) / along.dot(normal);
            return (far > 0.0).then(|| by_lines(stage, from + far * along));
        }
        let touches = stage.night.touches(Sight::endless(beam.lens.at, along));
        let on = touches.iter().find(|t| target.contains(&t.owner)).or_else(|| touches.iter().find(is_thing));
        on.map(|touch| by_lines(stage, touch.point.as_dvec3()))
    });
    let truth: Vec<DVec3> = ends.into_iter().flatten().collect();
    let printed: Vec<DVec3> = places[..4].iter().flatten().copied().collect();
    assert_eq!(printed.len(), truth.len(), "{who}");
    for at in &truth {
        let off = printed.iter().map(|p| p.distance(*at)).fold(f64::MAX, f64::min);
        // On a flat target to the digits of the marks and of the two distances, each by half of its last.
        assert!(!flat || off <= 4.0 * DIGIT[1], "{who}: a corner is printed {off} m off");
        assert!(off <= CORNER, "{who}, flat {flat}: a corner is printed {off} m off: {at}, {printed:?}");
        assert!(fine.is_none_or(|fine| fine == 0.0 || off <= fine), "{who}: {off} m off is more than {fine:?}");
    }
}

/// The least of the four distances that are still fine, m.
fn fine(text: &str) -> Option<f64> {
    let at = text.find("still fine, the figure stays on its target: ")? + "still fine, the figure ".len();
    let mut rest = &text[at + "stays on its target: ".len()..];
    let mut least = f64::MAX;
    for word in ["left", "right", "up", "down"] {
        let end = rest.find(word).unwrap();
        least = least.min(Length::parse(rest[..end].trim()).unwrap().m);
        rest = rest[end + word.len()..].trim_start_matches([' ', '·']);
    }
    Some(least)
}

#[test]
fn owl_night_is_set_up_again_from_its_paper_alone() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/owl_night.ron");
    check(&Stage::of(&fs::read_to_string(file).unwrap()));
}

#[test]
fn two_hundred_stations_by_chance_are_set_up_again_from_their_paper_alone() {
    check(&Stage::of(&by_chance(200, 3, short)));
}
