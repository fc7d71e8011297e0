//! Weather boxes: how warm a projector gets inside, how cold, what its fan must move, what dew, rain and insects do, and what
//! the window takes of the light.
//!
//! Heat comes in as watts and leaves by the walls, `U A ΔT` (ISO 6946), and with the air, `ρ cp Q ΔT`. What is not known of walls,
//! openings and sun is computed at three values, so that every temperature has a range.

pub mod air;
mod balance;
pub mod dew;
pub mod draught;
mod ease;
mod fitting;
mod page;
mod pane;
mod verdict;
mod verdicts;
mod walls;

pub use balance::{Outdoors, flow, rise};
pub use ease::{Ease, Span};
pub use fitting::{fitting, small_fan};
pub use pane::{BEHIND_PANE, WindowLoss, loss as window_loss, passes};
pub use verdict::{Grade, Verdict};
pub use walls::{loss, sun, transmittance};

use crate::{
    scene::{Catalogue, LoadKind, PaneKind, ProjectorClass, Shelter, Station, Yard, limits},
    units::border,
};
use serde::Serialize;

/// Relative humidity of a cold clear night, and of the evening before it: common practice, no source.
const NIGHT: f64 = 0.9;
const EVENING: f64 = 0.8;
/// How much colder than the air a surface under a clear night sky gets, K: common practice, no source.
const SKY: f64 = 3.0;

/// What is known of a station's box. Temperatures of the air inside, once they stand still.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ShelterReport {
    /// Name of the station.
    pub station: String,
    /// Heat that projector, fan and whatever else is inside give, W.
    #[serde(serialize_with = "border::light")]
    pub heat_w: f64,
    /// Air that the projector may run in, coldest and warmest, °C.
    pub runs_c: (f64, f64),
    /// The yard's coldest night and its warmest hour, °C.
    pub outdoors_c: (f64, f64),
    /// Density of the air at the warmest hour, kg/m³.
    #[serde(serialize_with = "border::light")]
    pub air_kg_m3: f64,
    /// Heat through the walls for each kelvin, W/K.
    pub walls_w_per_k: Span,
    /// Air through the box at the warmest hour, m³/h.
    pub flow_m3_h: Span,
    /// What the openings leave of the fan's rating; `None` without a fan.
    pub fan_left: Option<Span>,
    /// Running at the warmest hour, no sun, °C.
    pub warmest_c: Span,
    /// The same with its fan stopped, which goes on taking what it takes; what its blades keep back is left out. `None` without a
    /// fan.
    pub stopped_c: Option<Span>,
    /// Running on the coldest night, °C.
    pub coldest_c: Span,
    /// Running by day in the sun at the warmest hour, °C.
    pub sunny_c: Span,
    /// Closed and off by day in the sun, °C.
    pub closed_c: Span,
    /// The air that it needs.
    pub wanted: Wanted,
    /// Dew.
    pub dew: Dew,
    /// Its window; `None` where that is a hole.
    pub window: Option<WindowLoss>,
    /// What is to be said of it, the gravest first.
    pub verdicts: Vec<Verdict>,
}

/// The air that a box needs so that it gets no warmer than a chosen rise, were its walls to let nothing out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Wanted {
    /// The rise, K: that of the limits, or less where the projector stands less.
    #[serde(serialize_with = "border::light")]
    pub rise_k: f64,
    /// Air through the box, m³/h.
    #[serde(serialize_with = "border::light")]
    pub flow_m3_h: f64,
    /// The same, cubic feet a minute.
    #[serde(serialize_with = "border::light")]
    pub flow_cfm: f64,
    /// Free-air rating of the fan that brings it through these openings, m³/h; `None` where none of its pressure does.
    #[serde(serialize_with = "border::light")]
    pub rating_m3_h: Option<f64>,
}

/// Dew on the coldest night.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Dew {
    /// Dew point of the air outside, below 0 °C its frost point, °C.
    #[serde(serialize_with = "border::light")]
    pub point_c: f64,
    /// A box under the open sky that is off, °C.
    #[serde(serialize_with = "border::light")]
    pub off_c: f64,
    /// The inner face of its walls or pane, whichever is colder, once it runs, °C.
    #[serde(serialize_with = "border::light")]
    pub running_c: f64,
    /// Heat that keeps the box free of dew while it is off, W.
    #[serde(serialize_with = "border::light")]
    pub dry_w: f64,
    /// Water that the evening's air leaves inside a box with no openings as it cools, g; 0 with openings.
    #[serde(serialize_with = "border::light")]
    pub trapped_g: f64,
}

/// What is known of the box that a station stands in; `None` where it has none, or its class is not known.
pub fn report(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<ShelterReport> {
    let shelter = station.shelter.as_ref()?;
    let class = yard.projector(catalogue, &station.projector.0)?;
    let climate = &yard.climate;
    let pressure = air::pressure(climate.above_sea.m);
    let (cold, warm) = [climate.coldest_c, climate.warmest_c].map(|celsius| Outdoors { celsius, pressure }).into();
    let heat_w = heat(class, station, shelter);
    let inside = |outdoors: Outdoors, watts: f64, fan_runs: bool, sunny: bool| {
        Span::of(|ease| {
            let sun = if sunny { walls::sun(shelter, ease) } else { 0.0 };
            outdoors.celsius + rise(shelter, watts + sun, fan_runs, outdoors, ease)
        })
    };
    let warmest_c = inside(warm, heat_w, true, false);
    let coldest_c = inside(cold, heat_w, true, false);
    let flow_m3_h = Span::of(|ease| {
        let watts = rise(shelter, heat_w, true, warm, ease);
        air::per_hour(flow(shelter, true, warm, watts, ease))
    });
    let rated = shelter.fan.as_ref().map(|fan| fan.flow_m3_h.0);
    let over = |rated: f64| Span {
        low: flow_m3_h.low / rated,
        typical: flow_m3_h.typical / rated,
        high: flow_m3_h.high / rated,
    };
    let window = (shelter.window.pane != PaneKind::Open).then(|| pane::loss(station, class, &shelter.window));
    let mut report = ShelterReport {
        station: station.name.0.clone(),
        heat_w,
        runs_c: class.runs_c,
        outdoors_c: (climate.coldest_c, climate.warmest_c),
        air_kg_m3: warm.density(),
        walls_w_per_k: Span::of(|ease| walls::loss(shelter, ease)),
        flow_m3_h,
        fan_left: rated.map(over),
        warmest_c,
        stopped_c: shelter.fan.as_ref().map(|_| inside(warm, heat_w, false, false)),
        coldest_c,
        sunny_c: inside(warm, heat_w, true, true),
        closed_c: inside(warm, 0.0, false, true),
        wanted: wanted(yard, catalogue, class, shelter, heat_w, warm),
        dew: dew(shelter, [cold, warm], coldest_c.typical),
        window,
        verdicts: Vec::new(),
    };
    report.verdicts = verdicts::all(yard, catalogue, station, class, shelter, &report);
    Some(report)
}

/// Heat inside, W. What leaves as light is below a watt of a small projector's and counts as heat; a lamp of the station's own
/// shines elsewhere.
fn heat(class: &ProjectorClass, station: &Station, shelter: &Shelter) -> f64 {
    let beside = station.loads.iter().filter(|load| load.kind != LoadKind::Lamp);
    let fan = shelter.fan.as_ref().map_or(0.0, |fan| fan.watts.0);
    class.watts.0 + beside.map(|load| load.watts.0).sum::<f64>() + shelter.also_w + fan
}

/// A limit of the yard or of the catalogue.
fn limit(yard: &Yard, catalogue: &Catalogue, name: &str) -> f64 {
    yard.limit(catalogue, name).map_or(f64::NAN, |limit| limit.value)
}

fn wanted(
    yard: &Yard,
    catalogue: &Catalogue,
    class: &ProjectorClass,
    shelter: &Shelter,
    heat_w: f64,
    warm: Outdoors,
) -> Wanted {
    let room = class.runs_c.1 - limit(yard, catalogue, limits::BOX_ROOM) - warm.celsius;
    let rise_k = limit(yard, catalogue, limits::BOX_RISE).min(room.max(1.0));
    let flow = air::flow(heat_w, rise_k, warm.density());
    let pressure = shelter.fan.as_ref().map_or(fitting::PRESSURE, |fan| fan.pressure_pa.0);
    let resistance = draught::resistance(shelter, true, Ease::Typical);
    let rating = draught::rating(flow, pressure, resistance, warm.density());
    Wanted { rise_k, flow_m3_h: air::per_hour(flow), flow_cfm: air::cfm(flow), rating_m3_h: rating.map(air::per_hour) }
}

fn dew(shelter: &Shelter, [cold, warm]: [Outdoors; 2], running_inside: f64) -> Dew {
    let point_c = dew::point(cold.celsius, NIGHT);
    let off_c = cold.celsius - SKY;
    let running_c = running_inside - walls::coldest_face(shelter, Ease::Typical) * (running_inside - cold.celsius);
    let closed = shelter.inlet_cm2 <= 0.0 && shelter.outlet_cm2 <= 0.0;
    let volume = shelter.width.0.m * shelter.height.0.m * shelter.depth.0.m;
    let holds = dew::water(off_c, off_c);
    let evening = dew::water(dew::point(warm.celsius, EVENING), warm.celsius);
    Dew {
        point_c,
        off_c,
        running_c,
        dry_w: walls::loss(shelter, Ease::Typical) * (point_c - off_c).max(0.0),
        trapped_g: if closed { (volume * (evening - holds)).max(0.0) } else { 0.0 },
    }
}
