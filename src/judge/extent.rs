//! How large a picture is on its target, and where its corners land.

use super::{RASTER, Touch, landing::touch_on, landings::Part, meant::Meant, piece::Piece};
use crate::{
    light::{Beam, Night},
    units::border,
};
use glam::Vec3;
use serde::Serialize;

/// The upright box around something on its plane, m.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Extent {
    /// Across.
    #[serde(serialize_with = "border::lengths")]
    pub width_m: f64,
    /// Along the plane upwards.
    #[serde(serialize_with = "border::lengths")]
    pub height_m: f64,
    /// Lowest point above the ground.
    #[serde(serialize_with = "border::lengths")]
    pub bottom_m: f64,
    /// Highest point above the ground.
    #[serde(serialize_with = "border::lengths")]
    pub top_m: f64,
}

impl Extent {
    /// Around points on a plane; nothing where there are none.
    fn around(plane: &Plane, points: impl Iterator<Item = Vec3>) -> Self {
        let axes = plane.axes();
        let spans = |p: Vec3| [p.dot(axes[0]), p.dot(axes[1]), p.y];
        let grown = |span: Option<[[f32; 2]; 3]>, p: Vec3| {
            let at = spans(p);
            let span = span.unwrap_or(at.map(|v| [v, v]));
            Some([0, 1, 2].map(|i| [span[i][0].min(at[i]), span[i][1].max(at[i])]))
        };
        let Some([across, along, up]) = points.fold(None, grown) else { return Self::default() };
        let long = |[low, high]: [f32; 2]| f64::from(high - low);
        Self { width_m: long(across), height_m: long(along), bottom_m: f64::from(up[0]), top_m: f64::from(up[1]) }
    }
}

/// The plane on which a picture's size is told.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plane {
    at: Vec3,
    /// Unit normal towards the light.
    pub normal: Vec3,
    /// Whether all that is lit of the targets lies in it.
    pub flat: bool,
}

/// Points this near to a plane lie in it, m, where their normals agree to this cosine.
const IN_PLANE: (f32, f32) = (2e-3, 0.9998);

impl Plane {
    /// That of the targets, where all that is lit of them lies in one; else the plane square to the lens axis through the lit place
    /// that is next to the middle of the picture. `None` where nothing lands.
    pub fn of(beam: &Beam, pieces: &[Piece]) -> Option<Self> {
        let plane = Self::through(&next_to_middle(pieces)?.touch, pieces.iter().map(|piece| piece.touch));
        Some(if plane.flat { plane } else { Self { normal: -beam.lens.forward, ..plane } })
    }

    /// That of a target's face at a place; flat where all these places that are lit lie in it.
    pub fn through(place: &Touch, mut lit: impl Iterator<Item = Touch>) -> Self {
        let Touch { point: at, normal, .. } = *place;
        let in_it =
            |touch: Touch| (touch.point - at).dot(normal).abs() < IN_PLANE.0 && touch.normal.dot(normal) > IN_PLANE.1;
        Self { at, normal, flat: lit.all(in_it) }
    }

    /// Where a point of the raster meets it; `None` where that runs along it or away from it.
    pub fn met(&self, beam: &Beam, uv: [f32; 2]) -> Option<Vec3> {
        // A mirrored lens sends the same ray, as far as it has come.
        let (from, along) = (beam.lens.at, beam.lens.direction(uv[0], uv[1]));
        let steep = along.dot(self.normal);
        let depth = (self.at - from).dot(self.normal) / steep;
        (steep < 0.0 && depth > 0.0 && depth < 1e3).then(|| from + depth * along)
    }

    /// Across and upwards in it.
    fn axes(&self) -> [Vec3; 2] {
        let across = self.normal.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
        [across, across.cross(self.normal)]
    }
}

/// The piece that lands next to the middle of the picture.
pub(super) fn next_to_middle(pieces: &[Piece]) -> Option<&Piece> {
    let off = |piece: &Piece| (piece.uv[0] - 0.5).powi(2) + (piece.uv[1] - 0.5).powi(2);
    pieces.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
}

/// Where the middle of the picture lands on a target; where it misses them, the lit place next to it.
pub(super) fn middle(night: &Night, beam: &Beam, targets: &[u32], pieces: &[Piece]) -> Option<Touch> {
    let meant = Meant::of(night, beam, targets);
    touch_on(night, beam, beam.bent([0.5, 0.5]), &meant).or_else(|| next_to_middle(pieces).map(|piece| piece.touch))
}

/// How far a place is from the lens, by way of the mirrors, and how far along the lens axis, m.
pub(super) fn throw(beam: &Beam, touch: &Touch) -> [f64; 2] {
    // A mirrored lens is as far from what it lights as the light has come.
    let way = touch.point - beam.lens.at;
    [way.length(), way.dot(beam.lens.forward)].map(f64::from)
}

/// The corners of a box in the raster.
const CORNERS: [[usize; 2]; 4] = [[0, 0], [1, 0], [0, 1], [1, 1]];

/// Where the corners of the picture, bent or not, meet the plane, as the raster names them: left upper, right upper, left lower, right lower.
pub(super) fn corners(beam: &Beam, plane: &Plane) -> [Option<Vec3>; 4] {
    beam.used().map(|corner| plane.met(beam, corner))
}

/// The whole picture on the plane; where part of it never meets that, what lies on the targets.
pub(super) fn picture(beam: &Beam, plane: &Plane, pieces: &[Piece]) -> Extent {
    let corners = corners(beam, plane);
    if corners.iter().any(Option::is_none) {
        return on_target(beam, plane, pieces.iter());
    }
    Extent::around(plane, corners.into_iter().flatten())
}

/// Pieces on their targets.
pub(super) fn on_target<'a>(beam: &Beam, plane: &Plane, pieces: impl Iterator<Item = &'a Piece>) -> Extent {
    let points = pieces.flat_map(|piece| {
        // On a form a cell's corners may lie beside it.
        let whole = (piece.whole && plane.flat).then(|| cell(piece.uv).map(|uv| plane.met(beam, uv)));
        let corners = whole.into_iter().flatten().flatten();
        corners.chain((!(piece.whole && plane.flat)).then_some(piece.touch.point)).collect::<Vec<_>>()
    });
    Extent::around(plane, points)
}

/// The corners of a cell.
pub(super) fn cell(uv: [f32; 2]) -> [[f32; 2]; 4] {
    let half = [0.5 / RASTER.0 as f32, 0.5 / RASTER.1 as f32];
    CORNERS.map(|corner| [0, 1].map(|i| uv[i] + half[i] * (2.0 * corner[i] as f32 - 1.0)))
}

/// The figure on its targets: its cells, cut to the box that the picture's own pixels give it.
pub(super) fn figure<'a>(beam: &Beam, plane: &Plane, figure: impl Iterator<Item = &'a Part>) -> Extent {
    let [low, high] = figure_box(beam);
    let touches = figure.filter_map(|part| Some((part.reach, part.landing.target?)));
    let points = touches.flat_map(|(reach, touch)| {
        let on = if plane.flat { *plane } else { Plane { at: touch.point, normal: -beam.lens.forward, flat: false } };
        let corner =
            move |corner: [usize; 2]| [0, 1].map(|axis| reach[corner[axis]][axis].clamp(low[axis], high[axis]));
        CORNERS.into_iter().filter_map(move |at| on.met(beam, corner(at)))
    });
    Extent::around(plane, points)
}

/// The box of the figure in the raster; the whole raster for a picture without one.
fn figure_box(beam: &Beam) -> [[f32; 2]; 2] {
    let corners = beam.frame.figure.map(|figure| {
        CORNERS.map(|[i, j]| beam.raster_of([[figure.min.x, figure.max.x][i], [figure.min.y, figure.max.y][j]]))
    });
    let mut span = [[f32::MAX; 2], [f32::MIN; 2]];
    for corner in corners.into_iter().flatten().flatten() {
        for axis in 0..2 {
            (span[0][axis], span[1][axis]) = (span[0][axis].min(corner[axis]), span[1][axis].max(corner[axis]));
        }
    }
    let inside = |at: f32| at.clamp(0.0, 1.0);
    if span[0][0] > span[1][0] { [[0.0; 2], [1.0; 2]] } else { span.map(|corner| corner.map(inside)) }
}
