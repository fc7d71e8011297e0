//! What to buy first: what decides most.

use super::{
    Cut, Group, Line, What,
    measure::{Measure, shown},
};
use crate::{
    craft::wind::openness,
    scene::{Band, Catalogue, Fabric, FabricKind, Station, Yard, limits},
    units::two_digits,
};

/// From so much cloth on, m², two samples come before it: common practice, no source.
const SAMPLES_FROM_M2: f64 = 3.0;
/// How much a share of holes counts against what is thrown back, where fabrics are called alike.
const WEAVE: f64 = 40.0;
/// A line that makes more than this of what is to be bought is said.
const LARGE_SHARE: f64 = 0.3;
/// How many sentences are enough.
const ENOUGH: usize = 5;

/// What nobody measured yet, as a ratio of its most over its least.
struct Doubt {
    ratio: f64,
    about: What,
    says: String,
}

/// Sentences, what decides most first: what a station's light hangs on and nobody measured, samples before much cloth, then what
/// costs most.
pub(super) fn advice(yard: &Yard, catalogue: &Catalogue, lines: &[Line], cuts: &[Cut]) -> Vec<String> {
    let least = yard.limit(catalogue, limits::UNMEASURED).map_or(f64::INFINITY, |limit| limit.value);
    let to_buy = |name: &str| lines.iter().find(|line| line.what == name).filter(|line| line.to_buy > 0.0);
    let mut doubts: Vec<Doubt> = Vec::new();
    let shown = yard.stations.iter().filter(|station| station.on && !yard.is_hidden(&station.name.0));
    for station in shown {
        doubts.extend(of_projector(yard, catalogue, station, to_buy(&station.projector.0)));
        doubts.extend(of_fabric(yard, catalogue, station, to_buy, cuts));
    }
    doubts.retain(|doubt| doubt.ratio > least);
    doubts.sort_by(|a, b| b.ratio.total_cmp(&a.ratio));
    let mut known: Vec<Doubt> = Vec::new();
    for doubt in doubts {
        if !known.iter().any(|one| one.about == doubt.about) {
            known.push(doubt);
        }
    }
    let mut says: Vec<String> = known.into_iter().map(|doubt| doubt.says).collect();
    // Not all of it: what is in doubt, then samples, then what costs most.
    says.truncate(ENOUGH - 2);
    says.extend(samples(yard, catalogue, lines));
    says.extend(dearest(lines));
    says
}

fn ratio(band: Band) -> f64 {
    if band.low > 0.0 { band.high / band.low } else { f64::INFINITY }
}

fn of_projector(yard: &Yard, catalogue: &Catalogue, station: &Station, line: Option<&Line>) -> Option<Doubt> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let line = line.filter(|_| station.lumens.is_none())?;
    let ratio = ratio(class.lumens);
    let name = &class.name.0;
    let others = match line.to_buy as u32 {
        0 | 1 => String::new(),
        n => format!(" of the {n}"),
    };
    let factor = shown_ratio(ratio);
    let says = format!(
        "Buy one {name}{others} first and read lux with a phone at nine places of a white picture: what such a projector gives is known \
         only {factor}"
    );
    Some(Doubt { ratio, about: What::Projector(name.clone()), says })
}

fn shown_ratio(ratio: f64) -> String {
    if ratio.is_finite() { format!("to a factor of {}", two_digits(ratio)) } else { "by its most".to_owned() }
}

fn of_fabric<'a>(
    yard: &Yard,
    catalogue: &Catalogue,
    station: &Station,
    to_buy: impl Fn(&str) -> Option<&'a Line>,
    cuts: &[Cut],
) -> Option<Doubt> {
    let cut = cuts.iter().find(|cut| station.lights(&cut.of))?;
    let fabric = yard.fabric(catalogue, &cut.fabric)?;
    to_buy(&fabric.name.0)?;
    let ratio = answer(fabric);
    let name = &fabric.name.0;
    let says = format!(
        "Buy a sample of {name} before all of it: what it does with light is known only {}",
        shown_ratio(ratio)
    );
    Some(Doubt { ratio, about: What::Fabric(name.clone()), says })
}

/// How far the ends of what a fabric answers with stand apart: what threads throw back over the share that they cover; what a
/// cloth throws back; a film's gain.
fn answer(fabric: &Fabric) -> f64 {
    match fabric.kind {
        FabricKind::Net { thread, reflect, .. } => {
            let met = |thread: f64, reflect: f64| reflect * (1.0 - (1.0 - thread).powi(2));
            ratio(Band { low: met(thread.low, reflect.low), typical: 0.0, high: met(thread.high, reflect.high) })
        }
        FabricKind::Cloth { diffuse, reflect, .. } => ratio(reflect).max(ratio(diffuse)),
        FabricKind::Film { gain, .. } => ratio(gain),
    }
}

/// Two samples before much cloth of one fabric.
fn samples(yard: &Yard, catalogue: &Catalogue, lines: &[Line]) -> Option<String> {
    let least = Measure::of_fabric(yard.units).count(SAMPLES_FROM_M2);
    let much = lines.iter().filter(|line| line.group == Group::Fabrics && line.to_buy > least);
    let line = much.max_by(|a, b| a.to_buy.total_cmp(&b.to_buy))?;
    let fabric = yard.fabric(catalogue, &line.what)?;
    let alike = |other: &&Fabric| {
        other.name != fabric.name && std::mem::discriminant(&other.kind) == std::mem::discriminant(&fabric.kind)
    };
    // One of much the same weave, which throws back most nearly as much: the choice that light decides.
    let off = |other: &Fabric| {
        let weave = (openness(other).typical - openness(fabric).typical).abs();
        WEAVE * weave + (answer_typical(other) / answer_typical(fabric)).ln().abs()
    };
    let other = yard.all_fabrics(catalogue).filter(alike).min_by(|a, b| off(a).total_cmp(&off(b)));
    let and = other.map_or_else(String::new, |other| format!(" and of {}", other.name.0));
    Some(format!(
        "Hang samples of {}{and} side by side on a dark evening before you buy {} of it",
        line.what,
        shown(line.to_buy, line.unit)
    ))
}

fn answer_typical(fabric: &Fabric) -> f64 {
    match fabric.kind {
        FabricKind::Net { thread, reflect, .. } => reflect.typical * (1.0 - (1.0 - thread.typical).powi(2)),
        FabricKind::Cloth { reflect, .. } => reflect.typical,
        FabricKind::Film { gain, .. } => gain.typical,
    }
    .max(1e-6)
}

/// What makes most of the cost.
fn dearest(lines: &[Line]) -> Option<String> {
    let all: f64 = lines.iter().filter_map(|line| line.cost).map(|cost| cost.typical).sum();
    let cost = |line: &Line| line.cost.map_or(0.0, |cost| cost.typical);
    let line = lines.iter().max_by(|a, b| cost(a).total_cmp(&cost(b)))?;
    let share = cost(line) / all;
    (share > LARGE_SHARE).then(|| {
        format!(
            "{} makes {} % of what is to be bought: look for it used, or to borrow, before anything else",
            line.what,
            two_digits(100.0 * share)
        )
    })
}
