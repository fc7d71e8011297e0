//! Where a station's picture lands, by distances that a tape measures on what it lands on.

use super::{Datum, Mark, TapedPoint, marks::face_corners, pose::level, taped::by_best_pair};
use crate::{
    geometry::{Quad, Sight},
    judge::{Aimed, Touch, leave},
    light::{Beam, Night, VeilSort},
};
use glam::{DVec3, Vec3};

/// An edge of a flat target, named as somebody sees it who stands at the projector and looks along its light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Above.
    Top,
    /// Below.
    Bottom,
}

impl Edge {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Top => "top",
            Self::Bottom => "bottom",
        }
    }
}

/// The edges of a flat target, as seen from the projector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edges {
    /// The face, its left edge at `s` = 0 as seen from the projector.
    pub face: Quad,
}

impl Edges {
    /// Its corners: lower left, lower right, upper left, upper right, m.
    pub fn corners(&self) -> [DVec3; 4] {
        face_corners(&self.face)
    }
}

/// A distance from the nearer edge: inwards, or past it where it is negative, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Across {
    /// From which edge.
    pub edge: Edge,
    /// How far inwards.
    pub m: f64,
}

/// Where a point of the picture lands.
#[derive(Clone, Debug, PartialEq)]
pub struct Lands {
    /// On a flat target, or on its plane beside it: from the left or right edge, and from the top or bottom edge.
    pub edges: Option<[Across; 2]>,
    /// Where the light ends: the thing's name, and the place, m; `None` where it leaves the yard.
    pub on: Option<(String, DVec3)>,
    /// Whether that is a target.
    pub hits: bool,
    /// That place by tapes, where no edges say it.
    pub taped: Option<TapedPoint>,
}

/// What the points of a picture are called on paper: its corners, its middle, top and foot of its figure.
pub const SIGNS: [&str; 7] = ["A", "B", "C", "D", "E", "F", "G"];

/// A point of the picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// What it is called, as it lands.
    pub name: &'static str,
    /// Where in the raster.
    pub uv: [f32; 2],
    /// Where it lands.
    pub lands: Lands,
}

/// How far the middle of the picture may stray on the target before the figure leaves it, m, as the projector looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fine {
    /// To the left.
    pub left: f64,
    /// To the right.
    pub right: f64,
    /// Upwards.
    pub up: f64,
    /// Downwards.
    pub down: f64,
}

/// Where a station's picture lands.
#[derive(Clone, Debug, PartialEq)]
pub struct Landed {
    /// Names of its targets.
    pub targets: Vec<String>,
    /// The target's edges, where there is one and it is flat.
    pub edges: Option<Edges>,
    /// Four corners, the middle, head and feet of the figure.
    pub spots: Vec<Spot>,
    /// What is still fine.
    pub fine: Option<Fine>,
    /// Angle between the light's way and square on, degrees, for a flat target.
    pub off_square_deg: Option<f64>,
}

/// The place of the middle among the points; those of the figure follow it.
const MIDDLE: usize = 4;

impl Landed {
    /// The middle of the picture.
    pub fn middle(&self) -> Option<&Spot> {
        self.spots.get(MIDDLE)
    }

    /// Head and feet of the figure, where it has one.
    pub fn figure(&self) -> &[Spot] {
        self.spots.get(MIDDLE + 1..).unwrap_or_default()
    }

    /// The marks that it names, by index.
    pub fn marks(&self) -> impl Iterator<Item = usize> {
        let taped = self.spots.iter().filter_map(|spot| spot.lands.taped.as_ref());
        taped.flat_map(|taped| taped.tapes.map(|(mark, _)| mark))
    }
}

/// Names of the corners as they land: the upper ones, then the lower ones, left before right.
const CORNERS: [&str; 4] = ["upper left corner", "upper right corner", "lower left corner", "lower right corner"];
/// A surface this near to a flat target's face is that face, m.
const ON_FACE: f64 = 0.02;

/// Follows the points of a station's picture that a person sets it by; `None` where the station has no beam.
pub fn landed(night: &Night, known: &[Mark], datum: &Datum, index: usize, aimed: &Aimed) -> Option<Landed> {
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32)?;
    let targets: Vec<String> = aimed.targets.iter().map(|target| night.names[*target as usize].clone()).collect();
    let edges = match aimed.targets.as_slice() {
        [only] => edges(night, beam, *only),
        _ => None,
    };
    let mut spots: Vec<Spot> = points(beam)
        .into_iter()
        .map(|(name, uv)| Spot { name, uv, lands: lands(night, beam, uv, &aimed.targets, edges.as_ref()) })
        .collect();
    if edges.is_none() {
        let ends: Vec<DVec3> = spots.iter().filter_map(|spot| spot.lands.on.as_ref().map(|(_, at)| *at)).collect();
        let together = by_best_pair(night, known, datum, &ends);
        let mut taped = together.into_iter().flatten();
        for spot in spots.iter_mut().filter(|spot| spot.lands.on.is_some()) {
            let alone = || {
                let at = spot.lands.on.as_ref().map(|(_, at)| *at)?;
                by_best_pair(night, known, datum, &[at])?.into_iter().next()
            };
            spot.lands.taped = taped.next().or_else(alone);
        }
    }
    let fine = aimed.slack.map(|slack| {
        let on_target = |deg: f64| aimed.throw_m * deg.to_radians().tan();
        Fine {
            left: on_target(slack.left_deg),
            right: on_target(slack.right_deg),
            up: on_target(slack.up_deg),
            down: on_target(slack.down_deg),
        }
    });
    let off_square_deg = edges
        .as_ref()
        .map(|edges| f64::from(beam.lens.forward.dot(edges.face.normal()).abs().min(1.0)).acos().to_degrees());
    Some(Landed { targets, edges, spots, fine, off_square_deg })
}

/// The corners by the names that they have where they land, the middle, and head and feet of the figure.
fn points(beam: &Beam) -> Vec<(&'static str, [f32; 2])> {
    let (right, up) = level(beam.lens.forward);
    let middle = beam.bent([0.5, 0.5]);
    let mut corners: Vec<([f32; 2], f32, f32)> = beam
        .used()
        .into_iter()
        .map(|uv: [f32; 2]| {
            let way = beam.lens.direction(uv[0], uv[1]) - beam.lens.direction(middle[0], middle[1]);
            (uv, way.dot(right), way.dot(up))
        })
        .collect();
    corners.sort_by(|a, b| b.2.total_cmp(&a.2));
    for pair in corners.chunks_mut(2) {
        pair.sort_by(|a, b| a.1.total_cmp(&b.1));
    }
    let mut list: Vec<(&str, [f32; 2])> = CORNERS.into_iter().zip(corners.into_iter().map(|corner| corner.0)).collect();
    list.push(("middle", middle));
    if let Some([head, feet]) = figure_ends(beam) {
        list.push(("top of the figure", head));
        list.push(("foot of the figure", feet));
    }
    list
}

/// The middles of the upper and the lower edge of the figure's box, in the raster; `None` for a black picture and for a figure
/// that is outside the raster.
pub(super) fn figure_ends(beam: &Beam) -> Option<[[f32; 2]; 2]> {
    let figure = beam.frame.figure?;
    let middle = figure.centre().x;
    let ends = [[middle, figure.min.y], [middle, figure.max.y]].map(|st| beam.raster_of(st));
    let [Some(head), Some(feet)] = ends else { return None };
    let inside = |uv: [f32; 2]| uv.iter().all(|at| (0.0..=1.0).contains(at));
    (inside(head) && inside(feet)).then_some([head, feet])
}

/// The edges of a target whose lit face is flat and upright.
fn edges(night: &Night, beam: &Beam, owner: u32) -> Option<Edges> {
    let face = night.places[owner as usize].face?;
    if face.normal().y.abs() > 0.8 {
        return None;
    }
    // A house may be lit on another side than the one that its edges belong to.
    let (from, along) = leave(night, beam, [0.5, 0.5])?;
    let touch = night.touches(Sight::endless(from, along)).into_iter().find(|touch| touch.owner == owner);
    let off = touch.map(|touch| f64::from((touch.point - face.corner).dot(face.normal()).abs()));
    if off.is_some_and(|off| off > ON_FACE) {
        return None;
    }
    // Seen from behind, what is left from the front is right.
    if (beam.lens.at - face.corner).dot(face.normal()) >= 0.0 {
        return Some(Edges { face });
    }
    let turned = Quad { corner: face.corner + face.u, u: -face.u, v: face.v };
    Some(Edges { face: turned })
}

fn lands(night: &Night, beam: &Beam, uv: [f32; 2], targets: &[u32], edges: Option<&Edges>) -> Lands {
    let Some((from, along)) = leave(night, beam, uv) else {
        return Lands { edges: None, on: None, hits: false, taped: None };
    };
    let touches = night.touches(Sight::endless(from, along));
    let is_thing = |touch: &&Touch| touch.veil.is_none_or(|veil| night.veils[veil as usize].sort != VeilSort::Pane);
    let on_target = touches.iter().find(|touch| targets.contains(&touch.owner));
    let end = on_target.or_else(|| touches.iter().find(is_thing));
    let on = end.map(|touch| (night.names[touch.owner as usize].clone(), touch.point.as_dvec3()));
    let edges = edges.and_then(|edges| on_plane(&edges.face, from, along));
    Lands { edges, on, hits: on_target.is_some(), taped: None }
}

/// Where a ray meets the plane of a face, from that face's nearer edges.
fn on_plane(face: &Quad, from: Vec3, along: Vec3) -> Option<[Across; 2]> {
    let [corner, u, v, from, along] = [face.corner, face.u, face.v, from, along].map(Vec3::as_dvec3);
    let normal = u.cross(v);
    let steep = along.dot(normal);
    let far = (corner - from).dot(normal) / steep;
    if !(far > 0.0 && far < 1e3) {
        return None;
    }
    let way = from + far * along - corner;
    let place = |axis: DVec3, [low, high]: [Edge; 2]| {
        let (at, length) = (way.dot(axis.normalize_or_zero()), axis.length());
        if at <= 0.5 * length { Across { edge: low, m: at } } else { Across { edge: high, m: length - at } }
    };
    Some([place(u, [Edge::Left, Edge::Right]), place(v, [Edge::Bottom, Edge::Top])])
}
