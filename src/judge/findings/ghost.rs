//! The figure shows a second time, on what stands behind its see-through target.

use super::{
    Case, Finding, Level, Matter, glimpse, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::{Edit, fresh},
    judge::{Landing, Sight, StationReading, band::Scale, eye},
    scene::{Aim, Angle, Cloth, FabricKind, Item, Point, Ref, Size, Spot, Station, limits},
    units::two_digits,
};
use glam::Vec3;

/// The second picture as one spot sees it.
pub(in crate::judge) struct Ghost {
    /// The thing that it is on.
    pub owner: u32,
    /// Its mean luminance divided by the figure's, of the places that are in sight on both.
    pub times: f64,
    /// Its mean luminance as it comes to the eye through what is before it, cd/m².
    luminance: f64,
    /// What is not known of that.
    scale: Scale,
    /// How far behind the target, m.
    gap: f64,
    /// Where it is.
    landings: Vec<Landing>,
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::GHOST);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        for (spot, sight, _) in case.seen_from(reading) {
            let Some(ghost) = brightest(case, index, reading, spot, sight) else { continue };
            if ghost.times <= bound.value || !case.shows(spot, sight, ghost.luminance) {
                continue;
            }
            let level = if ghost.times > 4.0 * bound.value { Level::Fix } else { Level::Check };
            let says = format!(
                "“{}” shows again on “{}”, {} behind “{}”: from “{}” {} times as bright as the figure",
                reading.station,
                case.night.names[ghost.owner as usize],
                moves::length(case, ghost.gap),
                reading.quoted_onto(),
                spot.name.0,
                two_digits(ghost.times),
            );
            let finding = Finding::new(Matter::Ghost, level, &reading.station, Some(&spot.name.0));
            let unsure = ghost.times * ghost.scale.low <= bound.value;
            list.push(finding.against(ghost.times, &bound, says).unsure(unsure));
        }
    }
    list
}

/// The brightest of the second pictures that a spot sees, however faint; `None` where it has none in sight.
pub(in crate::judge) fn brightest(
    case: &Case,
    station: usize,
    reading: &StationReading,
    spot: &Spot,
    sight: &Sight,
) -> Option<Ghost> {
    let passes = |landing: &&Landing| !landing.is_ground() && landing.target.is_some_and(|touch| touch.through > 0.0);
    let landings: Vec<&Landing> = case.landings(station).cells.iter().filter(passes).collect();
    // Held against the figure where both are in sight.
    let landings = glimpse::in_sight(case, station, eye(spot), &landings);
    let patches = glimpse::patches(case, station, eye(spot), &landings, |landing| landing.beyond);
    let patch = patches.into_iter().max_by(|a, b| a.own.total_cmp(&b.own))?;
    let alone = glimpse::alone(case, station, eye(spot), &patch);
    if alone <= 0.0 {
        return None;
    }
    let between = |l: &Landing| Some(f64::from((l.beyond?.point - l.target?.point).length()));
    // The lumens are in both; what is not known of the target's answer and of the surface behind stays.
    let [mean, out] = [sight.mean, reading.lumens].map(|band| Scale::of(band.low, band.typical, band.high));
    let doubt = patch.seen.iter().find_map(|seen| seen.landing.beyond).map_or(0.0, |touch| f64::from(touch.doubt));
    let scale = Scale {
        low: (1.0 - doubt) * out.high / mean.high.max(1e-6),
        high: (1.0 + doubt) * out.low / mean.low.max(1e-6),
    };
    Some(Ghost {
        owner: patch.owner,
        times: patch.own / alone,
        luminance: patch.own,
        scale,
        gap: patch.mean(|seen| between(&seen.landing).unwrap_or(0.0)),
        landings: patch.seen.iter().map(|seen| seen.landing).collect(),
    })
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((index, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let seen = case.seen_from(reading).find(|(spot, ..)| Some(spot.name.0.as_str()) == finding.from());
    let Some(ghost) = seen.and_then(|(spot, sight, _)| brightest(case, index, reading, spot, sight)) else {
        return Vec::new();
    };
    // What passes is sent onto lawn, hedge or sky.
    let mut list = moves::round(case, station);
    if let Some(cloth) = case.yard.cloths.iter().find(|cloth| reading.lights(&cloth.name.0)) {
        list.extend(denser(case, cloth, finding).into_iter().map(Attempt::from));
        list.extend(nearer_the_lens(case, station, cloth, &ghost).into_iter().map(Attempt::from));
    }
    list.extend(black_behind(case, &ghost).map(Attempt::from));
    list
}

/// The cloth farther from what is behind it and the station with it, so that the picture stays.
fn nearer_the_lens(case: &Case, station: &Station, cloth: &Cloth, ghost: &Ghost) -> Vec<Proposal> {
    let lit_side = ghost.landings.iter().find_map(|l| l.target).map_or(Vec3::ZERO, |touch| touch.normal.with_y(0.0));
    let way = lit_side.normalize_or_zero();
    let proposal = |step: &f64| {
        let by = [0, 1, 2].map(|axis| (f64::from(way[axis]) * step * 100.0).round() / 100.0);
        let mut moved = Item::Station(station.clone()).moved(by);
        if let Aim::At(at) = &station.aim {
            moved = moved.aimed(Aim::At(Point([0, 1, 2].map(|axis| at.0[axis].changed(at.0[axis].m + by[axis])))));
        }
        let far = moves::length(case, *step);
        let (cloth_name, name) = (&cloth.name.0, &station.name.0);
        let thing = &case.night.names[ghost.owner as usize];
        Proposal {
            says: format!("Hang “{cloth_name}” {far} farther from “{thing}”, and set “{name}” as much farther"),
            edit: Edit::All(vec![Edit::Change(Item::Cloth(cloth.clone()).moved(by)), Edit::Change(moved)]),
        }
    };
    [0.5, 1.0, 2.0].iter().map(proposal).collect()
}

/// Denser fabrics that ought to help: what passes over what the eye gets, the one that passes most first.
fn denser(case: &Case, cloth: &Cloth, finding: &Finding) -> Vec<Proposal> {
    let shares =
        |name: &str| case.yard.fabric(case.catalogue, name).and_then(|fabric| passes_and_answers(&fabric.kind));
    let Some((passes, answers)) = shares(&cloth.fabric.0) else { return Vec::new() };
    let helps = 1.3 * finding.limit / finding.number * passes / answers.max(1e-3);
    let all = case.yard.all_fabrics(case.catalogue);
    let mut list: Vec<_> = all
        .filter_map(|fabric| Some((fabric, passes_and_answers(&fabric.kind)?)))
        .filter(|(_, (through, back))| *through < passes && *back > 0.5 * answers && through / back < helps)
        .collect();
    list.sort_by(|(_, a), (_, b)| b.0.total_cmp(&a.0));
    let proposal = |(fabric, _): &(&crate::scene::Fabric, _)| {
        let cloth = Cloth { fabric: Ref::to(&fabric.name.0), behind: Vec::new(), ..cloth.clone() };
        Proposal {
            says: format!("Hang “{}” of {}, which lets less through", cloth.name.0, fabric.name.0),
            edit: Edit::Change(Item::Cloth(cloth)),
        }
    };
    list.iter().take(3).map(proposal).collect()
}

/// What a fabric that hangs passes straight, and what it throws back or scatters at most.
fn passes_and_answers(kind: &FabricKind) -> Option<(f64, f64)> {
    match kind {
        FabricKind::Net { thread, reflect, diffuse } => {
            let open = (1.0 - thread.typical).powi(2);
            Some((open, (1.0 - open) * reflect.typical.max(diffuse.typical)))
        }
        FabricKind::Cloth { through, diffuse, reflect } => {
            Some((through.typical, reflect.typical.max(diffuse.typical)))
        }
        FabricKind::Film { .. } => None,
    }
}

/// Room around the second picture that a black cloth before it covers as well, m.
const MARGIN: f64 = 0.3;

/// A black cloth before what the second picture is on, where that is built and upright.
fn black_behind(case: &Case, ghost: &Ghost) -> Option<Proposal> {
    let name = &case.night.names[ghost.owner as usize];
    if !matches!(case.yard.item(name)?, Item::Wall(_) | Item::House(_) | Item::Thing(_)) {
        return None;
    }
    let touches: Vec<_> = ghost.landings.iter().filter_map(|l| l.beyond).collect();
    let normal = touches.first()?.normal;
    if normal.y.abs() > 0.2 || touches.iter().any(|touch| touch.normal.dot(normal) < 0.95) {
        return None;
    }
    let across = Vec3::Y.cross(normal).normalize_or_zero();
    let span = |axis: Vec3| {
        let along = touches.iter().map(|touch| f64::from(touch.point.dot(axis)));
        along.fold((f64::MAX, f64::MIN), |(low, high), at| (low.min(at), high.max(at)))
    };
    let ((left, right), (low, high)) = (span(across), span(Vec3::Y));
    let low = (low - MARGIN).max(0.05);
    let out = f64::from(touches.first()?.point.dot(normal.with_y(0.0).normalize_or_zero())) + 0.05;
    let face = normal.with_y(0.0).normalize_or_zero().as_dvec3();
    let middle = 0.5 * (left + right) * across.as_dvec3() + out * face;
    let Item::Cloth(usual) = fresh(case.yard, "hanging cloth", [0.0; 3], None)? else { return None };
    let to_cm = |m: f64| (m * 100.0).round() / 100.0;
    let cloth = Cloth {
        fabric: Ref::to("black cloth"),
        behind: Vec::new(),
        at: Point::metres(to_cm(middle.x), to_cm(high + MARGIN), to_cm(middle.z)),
        width: Size::metres(to_cm(right - left + 2.0 * MARGIN)),
        height: Size::metres(to_cm(high + MARGIN - low)),
        turn_deg: Angle((face.x.atan2(face.z).to_degrees() * 100.0).round() / 100.0),
        ..usual
    };
    Some(Proposal { says: format!("Hang black cloth before “{name}”"), edit: Edit::Add(Item::Cloth(cloth)) })
}
