//! What a meter reads: illuminance of its face, by who sends it.

use super::{Banded, band::Scale};
use crate::{
    light::{Night, Source, luma, lumens},
    scene::{Catalogue, Meter, MeterKind, Yard},
    units::border,
};
use serde::Serialize;

/// What a meter reads.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MeterReading {
    /// Name of the meter.
    pub meter: String,
    /// Whether it stands for a neighbour's window.
    pub neighbour_window: bool,
    /// Illuminance of its face by everything, lx.
    pub lx: Banded,
    /// That by all stations together, lx.
    pub stations_lx: Banded,
    /// Share of the illuminance that is the stations'; 0 in the dark.
    #[serde(serialize_with = "border::light")]
    pub stations_share: f64,
    /// Who sends it, most first; those that send nothing are left out.
    pub sources: Vec<MeterShare>,
}

/// What one source sends a meter.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MeterShare {
    /// Name of the station or lamp; `moon` or `sky`.
    pub source: String,
    /// Whether it is a station.
    pub is_station: bool,
    /// Illuminance of the meter's face by it, lx.
    pub lx: Banded,
}

/// Readings of every meter that is not put away.
pub fn read_meters(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<MeterReading> {
    let shown = yard.meters.iter().filter(|meter| !yard.is_hidden(&meter.name.0));
    shown.map(|meter| read_meter(night, yard, catalogue, meter)).collect()
}

/// What one meter reads.
pub fn read_meter(night: &Night, yard: &Yard, catalogue: &Catalogue, meter: &Meter) -> MeterReading {
    let shares = night.illuminance(meter.at.vec3(), meter.facing());
    let mut sources: Vec<MeterShare> = night
        .sources
        .iter()
        .zip(&shares.lx)
        .map(|(source, lx)| (source, f64::from(luma(*lx))))
        .filter(|(_, lx)| *lx > 0.0)
        .map(|(source, lx)| MeterShare {
            source: source.name().to_owned(),
            is_station: matches!(source, Source::Station(..)),
            lx: Banded::of(lx, 0.0, flux(yard, catalogue, source)),
        })
        .collect();
    sources.sort_by(|a, b| b.lx.typical.total_cmp(&a.lx.typical));
    let sum = |only_stations: bool| {
        let counted = sources.iter().filter(|share| share.is_station || !only_stations);
        counted.fold(Banded::default(), |sum, share| Banded {
            low: sum.low + share.lx.low,
            typical: sum.typical + share.lx.typical,
            high: sum.high + share.lx.high,
        })
    };
    let (lx, stations_lx) = (sum(false), sum(true));
    MeterReading {
        meter: meter.name.0.clone(),
        neighbour_window: meter.kind == MeterKind::NeighbourWindow,
        lx,
        stations_lx,
        stations_share: if lx.typical > 0.0 { stations_lx.typical / lx.typical } else { 0.0 },
        sources,
    }
}

/// What is not known of a source's lumens: the band of a station, nothing of anything else.
fn flux(yard: &Yard, catalogue: &Catalogue, source: &Source) -> Scale {
    let Source::Station(index, _) = source else { return Scale::SURE };
    let station = yard.stations.get(*index as usize);
    let band = station.and_then(|station| lumens(yard, catalogue, station));
    band.map_or(Scale::SURE, |band| Scale::of(band.low, band.typical, band.high))
}
