//! What each thing gets that a station is meant to light.

use super::{
    Banded, Extent, Landings, SpotReading,
    band::Scale,
    beyond::whole,
    extent::{self, Plane},
    landings::Part,
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

impl OnTarget {
    /// One of which nothing is known but its name.
    pub(super) fn of(night: &Night, target: u32) -> Self {
        Self { target: night.names[target as usize].clone(), ..Self::default() }
    }
}

/// Of every target; `landings` and `pieces` are of them all.
pub(super) fn each(
    night: &Night,
    beam: &Beam,
    targets: &[u32],
    (landings, pieces): (&Landings, &[Piece]),
    flux: Scale,
) -> Vec<OnTarget> {
    let whole = whole(landings);
    let figure = sum(landings.figure.iter().map(Part::lumens));
    let of = |target: &u32| {
        let own = landings.only(*target);
        let pieces: Vec<Piece> = pieces.iter().filter(|piece| piece.touch.owner == *target).copied().collect();
        let plane = Plane::of(beam, &pieces);
        let told = |extent: &dyn Fn(&Plane) -> Extent| plane.as_ref().map_or_else(Extent::default, extent);
        OnTarget {
            share: sum(pieces.iter().map(|piece| f64::from(piece.white))) / whole,
            figure_share: sum(own.figure_on_target().map(Part::lumens)) / figure.max(1e-12),
            mean_on_target_lx: mean::white(beam, pieces.iter(), flux),
            lit: told(&|plane| extent::on_target(beam, plane, pieces.iter())),
            figure: told(&|plane| extent::figure(beam, plane, own.figure_on_target())),
            figure_at: middle(own.figure_on_target()),
            ..OnTarget::of(night, *target)
        }
    };
    targets.iter().map(of).collect()
}

pub(super) fn sum(parts: impl Iterator<Item = f64>) -> f64 {
    parts.sum()
}

/// The middle of the box around a figure, m.
pub(super) fn middle<'a>(figure: impl Iterator<Item = &'a Part>) -> Option<[f64; 3]> {
    let points = figure.filter_map(|part| part.landing.target).map(|touch| touch.point);
    let grown =
        |span: Option<(Vec3, Vec3)>, p: Vec3| Some(span.map_or((p, p), |(low, high)| (low.min(p), high.max(p))));
    points.fold(None, grown).map(|(low, high)| (0.5 * (low + high)).as_dvec3().to_array())
}
