//! The power plan of a yard, in numbers.

use super::{
    ampacity::ampacity_a,
    choose,
    draw::{ADAPTER, Draw},
    net::{Carried, Net, nets},
    place::{is_indoors, outdoors_m},
    trouble::Problem,
    troubles,
};
use crate::{
    craft::{cautions::Caution, money::Running},
    scene::{Catalogue, Gauge, SupplyKind, Yard, limits},
    units::border,
};
use glam::DVec3;
use serde::Serialize;

/// Everything about a yard's power.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PowerReport {
    /// Its supplies.
    pub supplies: Vec<SupplyPower>,
    /// Its cables, by supply, as far as something feeds them.
    pub cables: Vec<CablePower>,
    /// Its stations.
    pub stations: Vec<StationPower>,
    /// What it takes.
    pub energy: Energy,
    /// What is wrong, the gravest first.
    pub problems: Vec<Problem>,
    /// What is not known, or left out.
    pub notes: Vec<String>,
    /// What a person must heed, whatever the numbers say.
    pub cautions: Vec<Caution>,
}

/// What a supply is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Feed {
    /// An outlet of the mains.
    #[serde(rename = "mains")]
    Mains,
    /// A supply of low voltage that is fed by the mains.
    #[serde(rename = "12 V supply")]
    LowVoltage,
    /// A battery.
    #[serde(rename = "battery")]
    Battery,
}

impl Feed {
    const fn name(self) -> &'static str {
        match self {
            Self::Mains => "mains",
            Self::LowVoltage => "12 V supply",
            Self::Battery => "battery",
        }
    }
}

impl std::fmt::Display for Feed {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.name())
    }
}

/// A supply with what it gives.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SupplyPower {
    /// Its name.
    pub supply: String,
    /// What it is.
    pub kind: Feed,
    /// Volts.
    pub volts: f64,
    /// What it can give, W; a battery says no such number.
    #[serde(serialize_with = "border::light")]
    pub rated_w: Option<f64>,
    /// What it gives, all running, W, losses included.
    #[serde(serialize_with = "border::light")]
    pub running_w: f64,
    /// The same as a current, A.
    #[serde(serialize_with = "border::light")]
    pub running_a: f64,
    /// What it gives while all start at once, W.
    #[serde(serialize_with = "border::light")]
    pub starting_w: f64,
    /// What is left of what it may give for hours, W; less than nothing where that is too little.
    #[serde(serialize_with = "border::light")]
    pub headroom_w: Option<f64>,
    /// The fuse at its output, A.
    pub fuse_a: Option<f64>,
    /// The fuse to buy, A, for a supply of low voltage.
    pub fuse_to_buy_a: Option<f64>,
    /// What ends an overload.
    pub trips: String,
    /// Whether rain falls on it.
    pub outdoors: bool,
    /// Its IP code.
    pub ip: String,
    /// How long it lasts, h, where it is a battery.
    #[serde(serialize_with = "border::light")]
    pub lasts_h: Option<f64>,
    /// What frost leaves it of its charge, where it is a battery outdoors and nights get below 0 °C; counted.
    #[serde(serialize_with = "border::light")]
    pub frost_leaves: Option<f64>,
}

impl SupplyPower {
    /// Words for what frost does to it; empty where it does nothing.
    pub fn frost(&self) -> String {
        self.frost_leaves.map_or(String::new(), |share| format!(" in frost, which leaves it {:.0} %", 100.0 * share))
    }
}

/// What frost leaves of what a battery gives: common practice, no source.
const FROST_LEAVES: f64 = 0.7;

/// A cable with what it carries.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CablePower {
    /// Its name.
    pub cable: String,
    /// The supply that feeds it.
    pub supply: String,
    /// What it feeds.
    pub to: String,
    /// How thick it is.
    pub gauge: String,
    /// How much of it is needed, slack and all, m.
    #[serde(serialize_with = "border::lengths")]
    pub length_m: f64,
    /// What it carries, all running, A.
    #[serde(serialize_with = "border::light")]
    pub amps: f64,
    /// What it may carry, A; `None` for one that no table lists.
    pub ampacity_a: Option<f64>,
    /// Volts lost between the supply and its end; `None` where the line cannot hand over what is drawn.
    #[serde(serialize_with = "border::light")]
    pub drop_v: Option<f64>,
    /// The same as a share of the supply's volts.
    #[serde(serialize_with = "border::light")]
    pub drop_share: Option<f64>,
    /// Volts lost by the usual figure, which takes the current at full volts.
    #[serde(serialize_with = "border::light")]
    pub simple_drop_v: f64,
    /// The greatest share that may be lost.
    pub limit: f64,
    /// The thinnest size that keeps the limits where this one does not.
    pub gauge_to_buy: Option<Gauge>,
    /// Whether any of it lies outdoors.
    pub outdoors: bool,
    /// How much of its way lies outdoors, m.
    #[serde(serialize_with = "border::lengths")]
    pub outdoors_m: f64,
    /// Plugs and couplings along it.
    pub joints: u32,
}

impl CablePower {
    /// What its joints want; `None` where it has none or lies indoors.
    pub fn joined(&self) -> Option<String> {
        (self.outdoors && self.joints > 0).then(|| match self.joints {
            1 => "a joint, off the ground in a closed box made for rain".to_owned(),
            n => format!("{n} joints, off the ground and each in a closed box made for rain"),
        })
    }
}

/// A station with what it draws.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StationPower {
    /// Its name.
    pub station: String,
    /// The supply that feeds it; `None` where nothing of the yard does.
    pub supply: Option<String>,
    /// Volts that arrive.
    #[serde(serialize_with = "border::light")]
    pub volts: Option<f64>,
    /// What it draws where it is plugged in, W.
    #[serde(serialize_with = "border::light")]
    pub watts: f64,
    /// What it draws there while it starts, W.
    #[serde(serialize_with = "border::light")]
    pub starting_w: f64,
    /// What its projector's USB outlet gives, W.
    #[serde(serialize_with = "border::light")]
    pub usb_w: f64,
    /// Electricity of a season, kWh.
    #[serde(serialize_with = "border::light")]
    pub kwh_season: f64,
}

/// What all of it takes: what outlets give, and stations that nothing feeds yet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Energy {
    /// All running, W.
    #[serde(serialize_with = "border::light")]
    pub watts: f64,
    /// How long it runs.
    pub running: Running,
    /// A night, kWh.
    #[serde(serialize_with = "border::light")]
    pub kwh_night: f64,
    /// A season, kWh.
    #[serde(serialize_with = "border::light")]
    pub kwh_season: f64,
    /// A night, in your money.
    #[serde(serialize_with = "border::light")]
    pub cost_night: Option<f64>,
    /// A season, in your money.
    #[serde(serialize_with = "border::light")]
    pub cost_season: Option<f64>,
}

/// The limits that a plan is held against.
pub(super) struct Limits {
    mains_drop: f64,
    low_drop: f64,
    pub continuous: f64,
    pub fuse_over: f64,
    pub rain: f64,
    pub guard_ma: f64,
    pub low_wire_v: f64,
    pub indoor_lead_m: f64,
    pub outdoor_mm2: f64,
    pub usb_w: f64,
    pub volts_off: f64,
}

impl Limits {
    fn of(yard: &Yard, catalogue: &Catalogue) -> Self {
        // A test proves that the catalogue has every one.
        let value = |name| yard.limit(catalogue, name).map_or(f64::NAN, |limit| limit.value);
        Self {
            mains_drop: value(limits::DROP_MAINS),
            low_drop: value(limits::DROP_LOW),
            continuous: value(limits::CONTINUOUS),
            fuse_over: value(limits::FUSE_OVER),
            rain: value(limits::RAIN_CODE),
            guard_ma: value(limits::GUARD),
            low_wire_v: value(limits::MADE_FOR),
            indoor_lead_m: value(limits::INDOOR_LEAD),
            outdoor_mm2: value(limits::OUTDOOR_MM2),
            usb_w: value(limits::USB),
            volts_off: value(limits::VOLTS_OFF),
        }
    }

    /// The greatest share of a supply's volts that may be lost on the way.
    pub fn drop(&self, supply: &SupplyKind) -> f64 {
        if supply.is_mains() { self.mains_drop } else { self.low_drop }
    }
}

impl PowerReport {
    /// The power plan of a yard that runs for so long.
    pub fn of(yard: &Yard, catalogue: &Catalogue, running: Running) -> Self {
        let limits = Limits::of(yard, catalogue);
        let mut nets = nets(yard, catalogue);
        let supplies: Vec<SupplyPower> = nets.iter().map(|net| supply(yard, net, &limits)).collect();
        let carried: Vec<Carried> = nets.iter().map(Net::carried).collect();
        let mut cables = Vec::new();
        for (net, carried) in nets.iter_mut().zip(&carried) {
            cables.extend((0..net.lines.len()).map(|line| cable(yard, net, carried, line, &limits)));
        }
        let stands = |name: &str| !yard.is_hidden(name);
        let shown = yard.stations.iter().filter(|station| station.on && stands(&station.name.0));
        let stations: Vec<StationPower> = shown
            .map(|station| {
                let draw = Draw::of(yard, catalogue, station);
                let name = &station.name.0;
                let fed = cables.iter().find(|cable| cable.to == *name);
                let net = fed.and_then(|fed| nets.iter().find(|net| net.supply.name.0 == fed.supply));
                let [watts, starting_w] = net.map_or_else(|| draw.bare(), |net| draw.at(&net.supply.kind));
                StationPower {
                    station: name.clone(),
                    supply: fed.map(|fed| fed.supply.clone()),
                    volts: net.and_then(|net| Some(net.supply.kind.volts() - fed?.drop_v?)),
                    watts,
                    starting_w,
                    usb_w: draw.usb_w,
                    kwh_season: watts * f64::from(running.nights) * running.hours / 1000.0,
                }
            })
            .collect();
        let mut report = Self {
            energy: energy(yard, &supplies, &stations, running),
            problems: Vec::new(),
            notes: troubles::notes(yard, &supplies, &cables, &stations),
            cautions: troubles::cautions(&supplies, &cables),
            supplies,
            cables,
            stations,
        };
        report.problems = troubles::of(yard, catalogue, &nets, &report, &limits);
        report
    }
}

fn supply(yard: &Yard, net: &Net, limits: &Limits) -> SupplyPower {
    let kind = &net.supply.kind;
    let (volts, running_w, starting_w) = (kind.volts(), net.running_w(), net.starting_w());
    let (word, rated_w) = match kind {
        SupplyKind::Mains(one) => (Feed::Mains, Some(volts * one.breaker_a.0)),
        SupplyKind::TwelveVolt(one) => (Feed::LowVoltage, Some(one.watts.0)),
        SupplyKind::Battery(_) => (Feed::Battery, None),
    };
    let outdoors = !is_indoors(yard, at(net));
    let freezes = outdoors && yard.climate.coldest_c < 0.0 && matches!(kind, SupplyKind::Battery(_));
    let frost_leaves = freezes.then_some(FROST_LEAVES);
    let lasts_h = match kind {
        SupplyKind::Battery(one) if running_w > 0.0 => {
            Some(frost_leaves.unwrap_or(1.0) * one.amp_hours.0 * one.usable.0 * volts / running_w)
        }
        _ => None,
    };
    SupplyPower {
        supply: net.supply.name.0.clone(),
        kind: word,
        volts,
        rated_w,
        running_w,
        running_a: running_w / volts,
        starting_w,
        headroom_w: rated_w.map(|rated| rated * limits.continuous - running_w),
        fuse_a: kind.fuse_a(),
        fuse_to_buy_a: if kind.is_mains() { None } else { choose::fuse(net, running_w, limits) },
        trips: trips(kind),
        outdoors,
        ip: net.supply.ip.to_string(),
        lasts_h,
        frost_leaves,
    }
}

/// Where a supply is, m.
fn at(net: &Net) -> DVec3 {
    DVec3::from_array([0, 1, 2].map(|axis| net.supply.at.0[axis].m))
}

/// What ends an overload of a supply.
fn trips(kind: &SupplyKind) -> String {
    match kind {
        SupplyKind::Mains(one) if one.gfci => format!("its breaker of {} A; its GFCI or RCD", one.breaker_a.0),
        SupplyKind::Mains(one) => format!("its breaker of {} A, and nothing before that", one.breaker_a.0),
        SupplyKind::TwelveVolt(one) => {
            let most = one.watts.0 / one.volts.0;
            match one.fuse_a {
                Some(fuse) if fuse.0 < most => format!("its fuse of {} A", fuse.0),
                _ => format!("the supply itself, beyond {most:.1} A"),
            }
        }
        SupplyKind::Battery(one) => match one.fuse_a {
            Some(fuse) => format!("its fuse of {} A", fuse.0),
            None => "nothing: the thinnest cable burns".to_owned(),
        },
    }
}

fn cable(yard: &Yard, net: &mut Net, carried: &Carried, line: usize, limits: &Limits) -> CablePower {
    let volts = net.supply.kind.volts();
    let limit = limits.drop(&net.supply.kind);
    let drop_v = carried.holds[line].then(|| volts - carried.flows[line].volts);
    let drop_share = drop_v.map(|drop| drop / volts);
    let amps = carried.flows[line].amps;
    let one = &net.lines[line];
    let ampacity = ampacity_a(one.gauge, one.cable.cord);
    let bears = ampacity.is_some_and(|most| amps <= most * limits.continuous) || amps == 0.0;
    let fits = bears && drop_share.is_some_and(|share| share <= limit);
    let outdoors = one.way.iter().any(|corner| !is_indoors(yard, *corner));
    let gauge_to_buy = if fits { None } else { choose::gauge(net, line, limits) };
    let one = &net.lines[line];
    CablePower {
        cable: one.cable.name.0.clone(),
        supply: net.supply.name.0.clone(),
        to: one.cable.to.0.clone(),
        gauge: one.gauge.to_string(),
        length_m: one.length_m,
        amps,
        ampacity_a: ampacity,
        drop_v,
        drop_share,
        simple_drop_v: volts - carried.simple[line].volts,
        limit,
        gauge_to_buy,
        outdoors,
        outdoors_m: outdoors_m(yard, &one.way),
        joints: one.cable.joints,
    }
}

fn energy(yard: &Yard, supplies: &[SupplyPower], stations: &[StationPower], running: Running) -> Energy {
    let outlets = supplies.iter().filter(|supply| supply.kind == Feed::Mains).map(|supply| supply.running_w);
    // What nothing in the yard feeds yet will be; a battery is charged from the mains.
    let unfed = stations.iter().filter(|station| station.supply.is_none()).map(|station| station.watts);
    let fed_by_mains = |supply: &SupplyPower| {
        yard.cables.iter().any(|cable| cable.to.0 == supply.supply)
            || yard.supplies.iter().any(|one| {
                one.name.0 == supply.supply && matches!(&one.kind, SupplyKind::TwelveVolt(low) if low.from.is_some())
            })
    };
    let others = supplies.iter().filter(|supply| supply.kind != Feed::Mains && !fed_by_mains(supply));
    let watts = outlets.chain(unfed).sum::<f64>() + others.map(|supply| supply.running_w / ADAPTER).sum::<f64>();
    let kwh_night = watts * running.hours / 1000.0;
    let kwh_season = kwh_night * f64::from(running.nights);
    let cost = |kwh: f64| yard.tariff.map(|price| price.0 * kwh);
    Energy { watts, running, kwh_night, kwh_season, cost_night: cost(kwh_night), cost_season: cost(kwh_season) }
}
