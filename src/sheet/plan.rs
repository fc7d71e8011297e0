//! Plans: the yard from above, the street below, to scale.

use super::{
    Datum, Digits, Landed, Listed, Weight, Worked,
    draw::{Sketch, Stand},
    flow::SMALL,
    ladder::Ladder,
    pose::PoseSheet,
    scale::{Scale, around, clipped, within},
};
use crate::{
    craft::power,
    geometry::Quad,
    light::Night,
    scene::{Form, Plant, Point, Thing, Yard},
};
use glam::DVec3;

/// A thing from above.
enum Shape {
    /// Its outline; how dark within, and how wide the line around.
    Area(Vec<DVec3>, f64, f64),
    /// A line and its width.
    Line([DVec3; 2], f64),
}

fn place(point: &Point) -> DVec3 {
    DVec3::from([0, 1, 2].map(|axis| point.0[axis].m))
}

/// A rectangle about the middle of its back edge, before turning: to both sides, and outwards from `back` to `front`.
fn rectangle(at: DVec3, turn_deg: f64, width: f64, [back, front]: [f64; 2]) -> Vec<DVec3> {
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    let (along, out) = (DVec3::new(cos, 0.0, -sin), DVec3::new(sin, 0.0, cos));
    [(-0.5, back), (0.5, back), (0.5, front), (-0.5, front)].map(|(x, z)| at + x * width * along + z * out).to_vec()
}

fn ring(at: DVec3, radius: f64) -> Vec<DVec3> {
    let angles = (0..20).map(|i| (f64::from(i) * std::f64::consts::TAU / 20.0).sin_cos());
    angles.map(|(sin, cos)| at + radius * DVec3::new(cos, 0.0, sin)).collect()
}

fn strip(from: DVec3, to: DVec3, depth: f64) -> Vec<DVec3> {
    let side = 0.5 * depth * (to - from).with_y(0.0).normalize_or_zero().cross(DVec3::Y);
    vec![from - side, to - side, to + side, from + side]
}

/// Everything of a yard that helps to find one's way, what lies lowest first.
fn shapes(yard: &Yard, night: &Night) -> Vec<Shape> {
    let mut list = Vec::new();
    let shown = |name: &str| !yard.is_hidden(name);
    for area in yard.areas.iter().filter(|area| shown(&area.name.0)) {
        let corner = |x: f64, z: f64| DVec3::new(x, 0.0, z);
        let ([x0, x1], [z0, z1]) = ([area.x.0.m, area.x.1.m], [area.z.0.m, area.z.1.m]);
        list.push(Shape::Area(vec![corner(x0, z0), corner(x1, z0), corner(x1, z1), corner(x0, z1)], 0.96, 0.3));
    }
    for plant in yard.plants.iter().filter(|plant| shown(&plant.name().0)) {
        let outline = match plant {
            Plant::Hedge(hedge) => strip(place(&hedge.from), place(&hedge.to), hedge.depth.0.m),
            Plant::Tree(tree) => ring(place(&tree.at), tree.crown.0.m),
        };
        list.push(Shape::Area(outline, 0.92, 0.3));
    }
    for house in yard.houses.iter().filter(|house| shown(&house.name.0)) {
        let outline = rectangle(place(&house.at), house.turn_deg.0, house.width.0.m, [-house.depth.0.m, 0.0]);
        list.push(Shape::Area(outline, 0.85, 1.0));
    }
    for wall in yard.walls.iter().filter(|wall| shown(&wall.name.0)) {
        let outline = rectangle(place(&wall.at), wall.turn_deg.0, wall.width.0.m, [-wall.thickness.0.m, 0.0]);
        list.push(Shape::Area(outline, 0.85, 1.0));
    }
    for thing in yard.things.iter().filter(|thing| shown(&thing.name().0)) {
        list.push(of_thing(thing));
    }
    for form in yard.forms.iter().filter(|form| shown(&form.name().0)) {
        let (at, radius) = match form {
            Form::Figure(figure) => (&figure.at, 0.15 * figure.height.0.m),
            Form::Bag(bag) => (&bag.at, 0.5 * bag.width.0.m),
            Form::Gourd(gourd) => (&gourd.at, 0.5 * gourd.width.0.m),
            Form::Globe(globe) => (&globe.at, 0.5 * globe.diameter.0.m),
            Form::Turned(turned) => (&turned.at, turned.profile.iter().map(|p| p.radius.m).fold(0.1, f64::max)),
        };
        list.push(Shape::Area(ring(place(at), radius), 0.75, 0.8));
    }
    let hung = yard.cloths.iter().map(|c| &c.name).chain(yard.films.iter().map(|f| &f.name));
    for name in hung.chain(yard.mirrors.iter().map(|m| &m.name)).filter(|name| shown(&name.0)) {
        if let Some(Quad { corner, u, .. }) = night.place(&name.0).and_then(|place| place.face) {
            list.push(Shape::Line([corner.as_dvec3(), (corner + u).as_dvec3()], 2.2));
        }
    }
    list
}

fn of_thing(thing: &Thing) -> Shape {
    let outline = match thing {
        Thing::Block(n) => rectangle(place(&n.at), n.turn_deg.0, n.width.0.m, [-0.5 * n.depth.0.m, 0.5 * n.depth.0.m]),
        Thing::Steps(n) => {
            let deep = f64::from(n.count.0) * n.run.0.m;
            rectangle(place(&n.at), n.turn_deg.0, n.width.0.m, [-deep, 0.0])
        }
        Thing::Fence(n) => return Shape::Line([place(&n.from), place(&n.to)], 0.8),
        Thing::Post(n) => rectangle(place(&n.at), 0.0, n.width.0.m, [-0.5 * n.width.0.m, 0.5 * n.width.0.m]),
        Thing::Pergola(n) => {
            rectangle(place(&n.at), n.turn_deg.0, n.width.0.m, [-0.5 * n.depth.0.m, 0.5 * n.depth.0.m])
        }
        Thing::Porch(n) => rectangle(place(&n.at), n.turn_deg.0, n.width.0.m, [0.0, n.depth.0.m]),
        Thing::Bench(n) => rectangle(place(&n.at), n.turn_deg.0, n.width.0.m, [-0.25, 0.25]),
    };
    Shape::Area(outline, 1.0, 0.6)
}

/// A frame on paper that a part of a plan is drawn into.
struct Frame<'a> {
    sketch: Sketch,
    scale: Scale,
    datum: &'a Datum,
    at: [f64; 2],
    size: [f64; 2],
    /// Middles and radii of the numbers that stand already.
    numbers: Vec<([f64; 2], f64)>,
}

/// A sign on a plan.
#[derive(Clone, Copy)]
enum Sign<'a> {
    /// The number of a station.
    Station(&'a str),
    /// What a mark is called.
    Mark(&'a str),
}

impl Frame<'_> {
    fn on(&self, point: DVec3) -> [f64; 2] {
        self.scale.at(flat(self.datum, point))
    }

    fn line(&mut self, a: DVec3, b: DVec3, width: f64, dash: Option<[f64; 2]>) {
        if let Some(part) = clipped(self.on(a), self.on(b), self.at, self.size) {
            match dash {
                Some(dash) => self.sketch.dashed(&part, width, 0.0, dash),
                None => self.sketch.line(&part, width, 0.0),
            }
        }
    }

    fn ground(&mut self, yard: &Yard, night: &Night) {
        for shape in shapes(yard, night) {
            match shape {
                Shape::Area(points, grey, width) => {
                    let on: Vec<[f64; 2]> = points.iter().map(|point| self.on(*point)).collect();
                    let cut = within(&on, self.at, self.size);
                    if cut.len() > 2 {
                        self.sketch.area(&cut, grey);
                    }
                    for (i, a) in on.iter().enumerate() {
                        if let Some(part) = clipped(*a, on[(i + 1) % on.len()], self.at, self.size) {
                            self.sketch.line(&part, width, 0.35);
                        }
                    }
                }
                Shape::Line([a, b], width) => self.line(a, b, width, None),
            }
        }
    }

    fn is_within(&self, p: [f64; 2], by: f64) -> bool {
        (0..2).all(|i| p[i] >= self.at[i] + by && p[i] <= self.at[i] + self.size[i] - by)
    }

    /// A number near a point, where none stands yet; a thin line leads to it.
    fn sign(&mut self, point: DVec3, sign: Sign, first: [f64; 2]) {
        let at = self.on(point);
        if !self.is_within(at, 0.0) {
            return;
        }
        let radius = match sign {
            Sign::Station(_) => 7.5,
            Sign::Mark(says) => 0.5 * Sketch::tag(says)[0] + 1.0,
        };
        let far = first[0].hypot(first[1]).max(1.0);
        let tries = (0..40).map(|i| {
            let (turn, out) = (f64::from(i % 8) * std::f64::consts::FRAC_PI_4, far * (1.0 + 0.8 * f64::from(i / 8)));
            let start = first[1].atan2(first[0]);
            [at[0] + out * (start + turn).cos(), at[1] + out * (start + turn).sin()]
        });
        let free = |p: &[f64; 2]| {
            self.is_within(*p, radius)
                && self.numbers.iter().all(|(q, r)| (p[0] - q[0]).hypot(p[1] - q[1]) > radius + r)
        };
        let Some(found) = tries.into_iter().find(free) else { return };
        self.numbers.push((found, radius));
        self.sketch.line(&[at, found], 0.4, 0.0);
        match sign {
            Sign::Station(says) => self.sketch.numbered(found, says),
            Sign::Mark(says) => {
                // The point itself, so that its sign beside it is not taken for it.
                self.sketch.area(&Sketch::ring(at, 1.8), 0.0);
                self.sketch.tagged(found, says);
            }
        }
    }

    /// Where the street's side faces a known way: an arrow to the north.
    fn north(&mut self, yard: &Yard) {
        let Some(when) = &yard.evening.when else { return };
        let (sin, cos) = when.faces_deg.0.to_radians().sin_cos();
        // The street side, +z, faces that bearing; +x, its left as one looks out, is a quarter turn before it.
        let way = self.datum.turned(DVec3::new(sin, 0.0, cos));
        let [x, y] = [way.x, -way.z];
        let middle = [self.at[0] + self.size[0] - 16.0, self.at[1] + 20.0];
        let on = |along: f64, aside: f64| [middle[0] + along * x - aside * y, middle[1] - along * y - aside * x];
        self.sketch.area(&Sketch::ring(middle, 14.0), 1.0);
        self.sketch.line(&[on(-11.0, 0.0), on(4.0, 0.0)], 1.0, 0.0);
        self.sketch.area(&[on(12.0, 0.0), on(3.0, 3.2), on(3.0, -3.2)], 0.0);
        let n = on(-11.0, 0.0);
        self.sketch.area(&Sketch::ring(n, 5.0), 1.0);
        self.sketch.text([n[0], n[1] + 2.9], 8.0, Weight::Bold, Stand::Middle, "N");
        self.numbers.push((middle, 15.0));
    }

    /// The bar of the scale in the lower left corner.
    fn bar(&mut self, digits: Digits) {
        let at = [self.at[0] + 6.0, self.at[1] + self.size[1] - 6.0];
        self.sketch.bar(&self.scale, digits, at);
        self.numbers.push(([at[0] + 40.0, at[1] - 3.0], 24.0));
    }

    /// Lamps, as suns.
    fn lamps(&mut self, yard: &Yard) {
        for lamp in yard.lamps.iter().filter(|lamp| lamp.on && !yard.is_hidden(&lamp.name.0)) {
            for at in std::iter::once(&lamp.at).chain(&lamp.to) {
                let p = self.on(place(at));
                if self.is_within(p, 7.0) {
                    for turn in 0..8 {
                        let (sin, cos) = (f64::from(turn) * std::f64::consts::FRAC_PI_4).sin_cos();
                        let ray = [3.4, 6.0].map(|out| [p[0] + out * cos, p[1] + out * sin]);
                        self.sketch.line(&ray, 0.7, 0.0);
                    }
                    self.sketch.outline(&Sketch::ring(p, 2.4), 0.7, 0.0);
                    self.numbers.push((p, 6.0));
                }
            }
        }
    }

    /// A ladder: two rails with rungs between, from its foot to what is reached from it.
    fn ladder(&mut self, ladder: &Ladder) {
        let [foot, head] = [ladder.foot, ladder.reaches].map(|at| self.on(at));
        let (x, y) = (head[0] - foot[0], head[1] - foot[1]);
        let long = x.hypot(y);
        if long < 1.0 || !self.is_within(foot, 4.0) || !self.is_within(head, 4.0) {
            return;
        }
        let (along, aside) = ([x / long, y / long], [-y / long, x / long]);
        let on = |far: f64, by: f64| [0, 1].map(|i| foot[i] + far * along[i] + by * aside[i]);
        for by in [-2.6, 2.6] {
            self.sketch.line(&[on(0.0, by), on(long, by)], 1.0, 0.0);
        }
        let rungs = ((long / 4.0) as u32).max(2);
        for rung in 0..=rungs {
            let far = long * f64::from(rung) / f64::from(rungs);
            self.sketch.line(&[on(far, -2.6), on(far, 2.6)], 0.6, 0.0);
        }
        self.numbers.push(([0, 1].map(|i| 0.5 * (foot[i] + head[i])), 5.0));
    }

    fn caption(&mut self, says: &str) {
        let at = [self.at[0] + 0.5 * self.size[0], self.at[1] + self.size[1] + 11.0];
        self.sketch.text(at, SMALL, Weight::Regular, Stand::Middle, says);
        self.sketch.outline(&Sketch::rectangle(self.at, self.size), 0.5, 0.5);
    }

    fn lens(&mut self, pose: &PoseSheet, middle: Option<DVec3>) {
        let at = self.on(pose.lens);
        if !self.is_within(at, 0.0) {
            return;
        }
        let to = middle.map(|middle| self.on(middle)).unwrap_or([at[0], at[1] - 1.0]);
        let length = (to[0] - at[0]).hypot(to[1] - at[1]).max(1e-6);
        let way = [(to[0] - at[0]) / length, (to[1] - at[1]) / length];
        let side = [-way[1], way[0]];
        let point = |along: f64, aside: f64| {
            [at[0] + along * way[0] + aside * side[0], at[1] + along * way[1] + aside * side[1]]
        };
        self.sketch.area(&[point(1.5, 0.0), point(-7.0, 4.0), point(-7.0, -4.0)], 0.0);
    }
}

/// A point on the plan: along to the right, out downwards.
fn flat(datum: &Datum, point: DVec3) -> [f64; 2] {
    let [along, _, out] = datum.coordinates(point);
    [along, -out]
}

/// Where the middle of a picture lands.
pub(super) fn middle(landed: Option<&Landed>) -> Option<DVec3> {
    landed?.middle()?.lands.on.as_ref().map(|(_, at)| *at)
}

/// The whole yard with its stations by their numbers.
pub(super) fn site(
    (yard, night, datum): (&Yard, &Night, &Datum),
    (listed, worked): (&Listed, &[Worked]),
    digits: Digits,
    at: [f64; 2],
    size: [f64; 2],
) -> Sketch {
    let mut points: Vec<[f64; 2]> = Vec::new();
    for worked in worked {
        points.push(flat(datum, worked.pose.lens));
        points.extend(middle(worked.landed.as_ref()).map(|middle| flat(datum, middle)));
    }
    points.extend(yard.spots.iter().map(|spot| flat(datum, place(&spot.at))));
    for house in &yard.houses {
        let outline = rectangle(place(&house.at), house.turn_deg.0, house.width.0.m, [-house.depth.0.m, 0.0]);
        points.extend(outline.into_iter().map(|corner| flat(datum, corner)));
    }
    points.push([0.0, 0.0]);
    let Some((low, high)) = around(&points, 0.04, 0.6) else { return Sketch::default() };
    let inner = [size[0], size[1] - 16.0];
    let scale = Scale::fitted(low, high, at, inner);
    let mut frame = Frame { sketch: Sketch::default(), scale, datum, at, size: inner, numbers: Vec::new() };
    frame.ground(yard, night);
    if let Some(house) = yard.houses.iter().find(|house| house.at.0[1].m.abs() < 0.05) {
        let outline = rectangle(place(&house.at), house.turn_deg.0, house.width.0.m, [-house.depth.0.m, 0.0]);
        let [a, b] = [outline[0], outline[1]].map(|corner| frame.on(corner));
        if frame.is_within(a, 10.0) && frame.is_within(b, 10.0) {
            frame.sketch.dimension([a[0], a[1] - 8.0], [b[0], b[1] - 8.0], &digits.drawn(house.width.0.m));
        }
    }
    for cable in yard.cables.iter().filter(|cable| !yard.is_hidden(&cable.name.0)) {
        let way = power::way(yard, cable).unwrap_or_default();
        for pair in way.windows(2) {
            frame.line(pair[0], pair[1], 0.6, Some([1.0, 1.6]));
        }
    }
    for supply in yard.supplies.iter().filter(|supply| !yard.is_hidden(&supply.name.0)) {
        let [x, y] = frame.on(place(&supply.at));
        if frame.is_within([x, y], 3.0) {
            frame.sketch.area(&Sketch::rectangle([x - 2.5, y - 2.5], [5.0, 5.0]), 0.0);
        }
    }
    for spot in &yard.spots {
        let p = frame.on(place(&spot.at));
        frame.sketch.outline(&Sketch::ring(p, 3.0), 0.9, 0.0);
        frame.sketch.area(&Sketch::ring(p, 1.2), 0.0);
    }
    for worked in worked {
        if let Some(to) = middle(worked.landed.as_ref()) {
            frame.line(worked.pose.lens, to, 0.7, Some([4.0, 2.0]));
        }
        frame.lens(&worked.pose, middle(worked.landed.as_ref()));
    }
    frame.lamps(yard);
    frame.north(yard);
    frame.bar(digits);
    for (index, worked) in worked.iter().enumerate() {
        frame.sign(worked.pose.lens, Sign::Station(&(index + 1).to_string()), [9.0, 7.0]);
    }
    for (sign, mark) in listed.each() {
        frame.sign(mark.at, Sign::Mark(&sign), [0.0, -9.0]);
    }
    let cables = if yard.cables.is_empty() { "" } else { " Dotted: cables. Squares: supplies." };
    let says = format!(
        "From above, the street below; {}. Arrows: lenses. Rings: viewing spots. Suns: lamps.{cables}",
        frame.scale.says()
    );
    frame.caption(&says);
    frame.sketch
}

/// The surroundings of one station, with the marks that its lens is taped from.
pub(super) fn station(
    (yard, night, datum): (&Yard, &Night, &Datum),
    listed: &Listed,
    worked: &Worked,
    digits: Digits,
    at: [f64; 2],
    size: [f64; 2],
) -> Sketch {
    let pose = &worked.pose;
    let middle = middle(worked.landed.as_ref()).filter(|middle| middle.distance(pose.lens) < 30.0);
    let mut points = vec![flat(datum, pose.lens)];
    points.extend(middle.map(|middle| flat(datum, middle)));
    points.extend(pose.marks().map(|mark| flat(datum, listed.mark(mark).at)));
    points.extend(worked.ladders.iter().map(|ladder| flat(datum, ladder.foot)));
    let Some((low, high)) = around(&points, 0.12, 0.5) else { return Sketch::default() };
    let inner = [size[0], size[1] - 16.0];
    let scale = Scale::fitted(low, high, at, inner);
    let mut frame = Frame { sketch: Sketch::default(), scale, datum, at, size: inner, numbers: Vec::new() };
    frame.ground(yard, night);
    if let Some(landed) = &worked.landed {
        for spot in landed.spots.iter().take(4) {
            if let Some((_, to)) = spot.lands.on.as_ref().filter(|_| spot.lands.hits) {
                frame.line(pose.lens, *to, 0.5, Some([1.5, 1.5]));
            }
        }
    }
    for mark in pose.marks() {
        frame.line(pose.lens, listed.mark(mark).at, 0.9, Some([6.0, 2.5]));
    }
    if let Some(to) = middle {
        let [a, b] = [frame.on(pose.lens), frame.on(to)];
        let level = (to - pose.lens).with_y(0.0).length();
        if (a[0] - b[0]).hypot(a[1] - b[1]) > 40.0 && worked.pose.mirrors.is_empty() {
            let half = 0.5 * (a[0] + b[0]);
            frame.numbers.push(([half, 0.5 * (a[1] + b[1])], 22.0));
            frame.sketch.dimension(a, b, &digits.drawn(level));
        }
    }
    frame.lens(pose, middle);
    for ladder in &worked.ladders {
        frame.ladder(ladder);
    }
    frame.lamps(yard);
    frame.north(yard);
    frame.bar(digits);
    let taped = pose.marks().chain(worked.landed.iter().flat_map(Landed::marks));
    let mut shown: Vec<usize> = taped.collect();
    shown.sort_unstable();
    shown.dedup();
    for mark in shown {
        frame.sign(listed.mark(mark).at, Sign::Mark(&listed.sign(mark)), [0.0, -9.0]);
    }
    let ladders = if worked.ladders.is_empty() { "" } else { "; ladders" };
    let says = format!("From above, {}; long dashes: tapes{ladders}", frame.scale.says());
    frame.caption(&says);
    frame.sketch
}
