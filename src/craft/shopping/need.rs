//! What stations, cloths, mirrors and forms take.

use super::{Asked, Cut, Run, leads::leads};
use crate::{
    craft::{
        cautions::{self, Caution},
        is_outdoors,
        money::lamps_needed,
        shelter::fitting,
        wind::{Air, ClothWind, Rules},
    },
    scene::{Cloth, GoodsKind, Mount, Station, Yard, limits},
};

/// Something needed.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A projector of this class, a piece.
    Projector(String),
    /// A fabric, m².
    Fabric(String),
    /// Goods of this kind, as they are sold.
    Goods(GoodsKind),
    /// These goods, by their name in the catalogue.
    Named(String),
    /// Wire for low voltage with at least this conductor, mm²; metres of it.
    Cable(f64),
    /// Goods of this kind that no shop has: of this conductor, mm², and as long as that, m.
    Unsold(GoodsKind, f64, f64),
    /// A fuse for so many amperes, a piece.
    Fuse(f64),
    /// A lamp for this class, a piece.
    Lamp(String),
}

/// So much of it, for something.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// What is needed.
    pub what: What,
    /// How much of it.
    pub amount: f64,
    /// Name of the thing that it is for; empty for the yard as a whole.
    pub of: String,
}

impl Need {
    /// So much of it for a thing of this name.
    pub fn new(what: What, amount: f64, of: &str) -> Self {
        Self { what, amount, of: of.to_owned() }
    }
}

/// Stations to a roll of tape and to a spare memory stick.
const TO_A_ROLL: f64 = 4.0;
/// Black cloth around a lens and box outdoors, m².
const WRAP_M2: f64 = 0.25;

/// A connector at either end of a wire for low voltage.
const ENDS: u32 = 2;
/// Sockets of a block that says no number.
const WAYS: u32 = 3;
/// More of a guy than its way is long, m: knots and what goes round a stake. Common practice, no source.
const KNOTS_M: f64 = 1.0;

/// All needs of a yard.
pub(super) fn all(asked: Asked, cuts: &[Cut]) -> Vec<Need> {
    let yard = asked.yard;
    let shown = |name: &str| !yard.is_hidden(name);
    let mut needs = Vec::new();
    let stations: Vec<&Station> = yard.stations.iter().filter(|station| shown(&station.name.0)).collect();
    for station in &stations {
        of_station(asked, station, &mut needs);
    }
    needs.extend(cuts.iter().map(|cut| Need::new(What::Fabric(cut.fabric.clone()), cut.area_m2, &cut.of)));
    for cloth in yard.cloths.iter().filter(|cloth| shown(&cloth.name.0)) {
        of_cloth(asked, cloth, &mut needs);
    }
    for mirror in yard.mirrors.iter().filter(|mirror| shown(&mirror.name.0)) {
        let area = mirror.width.0.m * mirror.height.0.m;
        needs.push(Need::new(What::Goods(GoodsKind::Mirror), area, &mirror.name.0));
    }
    for form in yard.forms.iter().filter(|form| form.ballast_kg() > 0.0 && shown(&form.name().0)) {
        needs.push(Need::new(What::Goods(GoodsKind::Ballast), form.ballast_kg(), &form.name().0));
    }
    let count = stations.len() as f64;
    if count > 0.0 {
        for kind in [GoodsKind::GafferTape, GoodsKind::MemoryStick] {
            needs.push(Need::new(What::Goods(kind), (count / TO_A_ROLL).ceil(), ""));
        }
    }
    films(yard, cuts, &mut needs);
    if cautions::of_yard(yard, asked.catalogue).contains(&Caution::Ladder) {
        needs.push(Need::new(What::Goods(GoodsKind::Ladder), 1.0, ""));
    }
    for run in asked.runs {
        of_run(asked, run, &mut needs);
    }
    needs.extend(asked.more.iter().cloned());
    needs
}

/// What fixes films: tape around the edge, and a frame of battens where no window holds it.
fn films(yard: &Yard, cuts: &[Cut], needs: &mut Vec<Need>) {
    for film in yard.films.iter().filter(|film| !yard.is_hidden(&film.name.0)) {
        let Some(cut) = cuts.iter().find(|cut| cut.of == film.name.0) else { continue };
        let around = 2.0 * (cut.width_m + cut.height_m);
        needs.push(Need::new(What::Goods(GoodsKind::FilmTape), around, &film.name.0));
        if film.window.is_none() {
            needs.push(Need::new(What::Goods(GoodsKind::FilmFrame), around, &film.name.0));
        }
    }
}

/// What a way is bought as.
pub(super) fn of_way(asked: Asked, run: &Run) -> Vec<What> {
    if run.mains { leads(asked.yard, asked.catalogue, run.mm2, run.metres) } else { vec![What::Cable(run.mm2)] }
}

/// A way of the mains takes leads with their plugs and sockets; one of low voltage takes wire and connectors.
fn of_run(asked: Asked, run: &Run, needs: &mut Vec<Need>) {
    let Asked { yard, catalogue, .. } = asked;
    let mut goods = |kind: GoodsKind, amount: u32| {
        needs.push(Need::new(What::Goods(kind), f64::from(amount), &run.of));
    };
    if !run.mains {
        goods(GoodsKind::Connector, ENDS + run.joints);
        needs.extend(of_way(asked, run).into_iter().map(|wire| Need::new(wire, run.metres, &run.of)));
        return;
    }
    let leads = of_way(asked, run);
    let ways = yard.all_goods(catalogue).find(|goods| goods.kind == GoodsKind::SocketBlock);
    let ways = ways.and_then(|block| block.ways).map_or(WAYS, |ways| ways.0).max(2);
    goods(GoodsKind::SocketBlock, run.plugs.saturating_sub(1).div_ceil(ways - 1));
    let between = leads.len() as u32 - 1;
    goods(GoodsKind::PlugCover, if run.in_the_wet { run.joints.max(between) + u32::from(!run.ends_dry) } else { 0 });
    needs.extend(leads.into_iter().map(|lead| Need::new(lead, 1.0, &run.of)));
}

fn of_station(asked: Asked, station: &Station, needs: &mut Vec<Need>) {
    let Asked { yard, catalogue, .. } = asked;
    let name = &station.name.0;
    let mut goods = |kind: GoodsKind, amount: f64| needs.push(Need::new(What::Goods(kind), amount, name));
    goods(mount(station.mount), 1.0);
    goods(GoodsKind::MemoryStick, 1.0);
    let above = yard.limit(catalogue, limits::ABOVE_HEADS).is_some_and(|limit| station.at.0[1].m > limit.value);
    let hangs = matches!(station.mount, Mount::Wall | Mount::Hung | Mount::Tree);
    if station.second_tie || (hangs && above) {
        goods(GoodsKind::SecondTie, 1.0);
    }
    let outdoors = is_outdoors(yard, station);
    if outdoors || station.shelter.is_some() {
        goods(GoodsKind::WeatherBox, 1.0);
    }
    // One that has no box yet takes the fan that its box will want.
    let fitted = || fitting(yard, catalogue, station).filter(|_| outdoors);
    if station.shelter.clone().or_else(fitted).is_some_and(|shelter| shelter.fan.is_some()) {
        goods(GoodsKind::Fan, 1.0);
    }
    if outdoors {
        goods(GoodsKind::BlackCloth, WRAP_M2);
    }
    let powers =
        |need: &Need| matches!(need.what, What::Goods(GoodsKind::MainsLead | GoodsKind::Supply)) && need.of == *name;
    if !asked.more.iter().any(powers) && !asked.runs.iter().any(|run| run.of == *name) {
        goods(GoodsKind::MainsLead, 1.0);
    }
    if station.ballast_kg > 0.0 {
        goods(GoodsKind::Ballast, station.ballast_kg);
    }
    let class = &station.projector.0;
    needs.push(Need::new(What::Projector(class.clone()), 1.0, name));
    if let Some(entry) = yard.projector(catalogue, class).filter(|class| class.lamp_hours.is_some()) {
        // One in the cupboard at least: lamps go on the night that counts.
        let lamps = lamps_needed(entry, station.hours, asked.hours).max(1);
        needs.push(Need::new(What::Lamp(class.clone()), f64::from(lamps), name));
    }
}

fn of_cloth(asked: Asked, cloth: &Cloth, needs: &mut Vec<Need>) {
    let Asked { yard, catalogue, .. } = asked;
    let wind = ClothWind::of(yard, catalogue, cloth, Air::of(yard), Rules::of(yard, catalogue));
    let ties = f64::from(cloth.ties.0);
    let hem = cloth.hem_kg_m * cloth.width.0.m;
    let stakes = f64::from(wind.stakes);
    // Guys run at 45°, from the top edge down to their stakes.
    let guy_m = cloth.at.0[1].m.max(0.0) * std::f64::consts::SQRT_2 + KNOTS_M;
    let list = [
        (GoodsKind::Tie, ties),
        (GoodsKind::Hook, ties),
        (GoodsKind::Stake, stakes),
        (GoodsKind::Rope, stakes * guy_m),
        (GoodsKind::Tensioner, stakes),
        (GoodsKind::HemWeight, hem),
    ];
    let list = list.into_iter().filter(|(_, amount)| *amount > 0.0);
    needs.extend(list.map(|(kind, amount)| Need::new(What::Goods(kind), amount, &cloth.name.0)));
}

fn mount(mount: Mount) -> GoodsKind {
    match mount {
        Mount::Ground => GoodsKind::GroundMount,
        Mount::Stand => GoodsKind::Stand,
        Mount::Shelf => GoodsKind::Shelf,
        Mount::Wall => GoodsKind::Bracket,
        Mount::Hung => GoodsKind::Hanger,
        Mount::Tree => GoodsKind::TreeMount,
    }
}

/// The station that a need goes with: its own, or the first that lights or uses the thing that it is for.
pub(super) fn station_of<'a>(yard: &'a Yard, of: &str) -> Option<&'a str> {
    let names = |station: &Station| {
        station.name.0 == of || station.lights(of) || station.mirrors.iter().any(|mirror| mirror.0 == of)
    };
    let mut shown = yard.stations.iter().filter(|station| !yard.is_hidden(&station.name.0));
    shown.find(|station| names(station)).map(|station| station.name.0.as_str())
}
