//! What each thing gets that a station is meant to light.

use super::{
    Banded, Extent, Landing, SpotReading,
    band::Scale,
    extent::{self, Plane},
    mean,
    piece::Piece,
};
use crate::{
    light::{Beam, Night},
    units::border,
};
use glam::Vec3;
use serde::Serialize;

/// What one of a station's targets gets of its light.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OnTarget {
    /// Name of the target.
    pub target: String,
    /// Share of the whole raster's light, when it is white, that is sent there.
    #[serde(serialize_with = "border::light")]
    pub share: f64,
    /// Share of the figure's light that is sent there.
    #[serde(serialize_with = "border::light")]
    pub figure_share: f64,
    /// Mean on the target: white by this station alone, lumens that land over the area where they land, lx.
    pub mean_on_target_lx: Banded,
    /// The part of the picture that lands there.
    pub lit: Extent,
    /// The figure there.
    pub figure: Extent,
    /// The middle of the figure there, m; `None` where nothing of it lands there.
    #[serde(serialize_with = "border::lengths")]
    pub figure_at: Option<[f64; 3]>,
    /// What each viewing spot gets of the figure there.
    pub spots: Vec<SpotReading>,
}

/// Of every target; `landings` and `pieces` are of them all.
pub(super) fn each(
    night: &Night,
    beam: &Beam,
    targets: &[u32],
    (landings, pieces): (&[Landing], &[Piece]),
    flux: Scale,
) -> Vec<OnTarget> {
    let whole = sum(landings.iter().map(|l| f64::from(l.white)));
    let figure = sum(landings.iter().map(|l| f64::from(l.figure_light())));
    let of = |target: &u32| {
        let own = only(landings, *target);
        let pieces: Vec<Piece> = pieces.iter().filter(|piece| piece.touch.owner == *target).copied().collect();
        let plane = Plane::of(beam, &pieces);
        let told = |extent: &dyn Fn(&Plane) -> Extent| plane.as_ref().map_or_else(Extent::default, extent);
        OnTarget {
            target: night.names[*target as usize].clone(),
            share: sum(pieces.iter().map(|piece| f64::from(piece.white))) / whole.max(1e-12),
            figure_share: figure_light(landings, &pieces) / figure.max(1e-12),
            mean_on_target_lx: mean::white(beam, pieces.iter(), flux),
            lit: told(&|plane| extent::on_target(beam, plane, pieces.iter())),
            figure: told(&|plane| extent::figure(beam, plane, own.iter())),
            figure_at: middle(own.iter().filter(|l| l.figure.is_some()).filter_map(|l| l.target.map(|t| t.point))),
            spots: Vec::new(),
        }
    };
    targets.iter().map(of).collect()
}

/// A raster as it lands on one target alone.
pub(super) fn only(landings: &[Landing], target: u32) -> Vec<Landing> {
    let own = |landing: &Landing| Landing { target: landing.target.filter(|touch| touch.owner == target), ..*landing };
    landings.iter().map(own).collect()
}

/// The figure's light that is sent to pieces, in the raster's measure.
pub(super) fn figure_light(landings: &[Landing], pieces: &[Piece]) -> f64 {
    let of = |piece: &Piece| {
        let landing = &landings[piece.cell];
        f64::from(landing.figure_light() * piece.white / landing.white)
    };
    sum(pieces.iter().map(of))
}

pub(super) fn sum(parts: impl Iterator<Item = f64>) -> f64 {
    parts.sum()
}

/// The middle of the box around points, m.
pub(super) fn middle(points: impl Iterator<Item = Vec3>) -> Option<[f64; 3]> {
    let grown =
        |span: Option<(Vec3, Vec3)>, p: Vec3| Some(span.map_or((p, p), |(low, high)| (low.min(p), high.max(p))));
    points.fold(None, grown).map(|(low, high)| (0.5 * (low + high)).as_dvec3().to_array())
}
