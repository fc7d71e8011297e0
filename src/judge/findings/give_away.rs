//! Cloths, and posts that they hang between, that give themselves away: how they stand out, all stations dark, from what is
//! seen behind them.

pub(super) mod day;
pub(super) mod lamplight;

use super::{Case, Finding, Level, Matter, finding::Bound, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::Sight as Ray,
    judge::{
        compare::{OVERCAST_LX, black_by_day},
        spot,
    },
    light::{EyeRay, Night, SKIN, Source, luma},
    scene::{Cloth, FabricKind, Item, Post, Ref, Thing, limits},
    units::two_digits,
};
use glam::Vec3;

/// Points across and down a cloth, and up a post, that are looked at.
const CLOTH: usize = 5;
const POST: usize = 8;
/// A post so near a side edge of a cloth, m over the ground, is taken to hold it.
const HOLDS: f32 = 0.6;
/// What an eye cannot tell from black beside the rest of a night, cd/m²: the light of stars on grass.
const BLACK: f64 = 2e-4;

/// Under which light.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Light {
    /// An overcast sky alone.
    Day,
    /// Everything of the night but the stations.
    Lamplight,
}

impl Light {
    fn counts(self, night: &Night, source: usize) -> bool {
        match self {
            Self::Day => matches!(night.sources[source], Source::Sky),
            Self::Lamplight => !matches!(night.sources[source], Source::Station(..)),
        }
    }

    /// Luminance along a ray by this light, cd/m².
    fn along(self, night: &Night, from: Vec3, along: Vec3) -> f64 {
        let lights = night.surfaces_by_source(EyeRay { from, along, width: 0.0 });
        let sum: f64 =
            lights.iter().enumerate().filter(|(i, _)| self.counts(night, *i)).map(|(_, light)| f64::from(*light)).sum();
        match self {
            // Tonight's sky as bright as an overcast day's.
            Self::Day => sum * f64::from(OVERCAST_LX) / f64::from(luma(night.sky_lx)).max(f64::MIN_POSITIVE),
            Self::Lamplight => sum,
        }
    }

    /// What an eye cannot tell from black, cd/m².
    fn black(self) -> f64 {
        match self {
            Self::Day => black_by_day(),
            Self::Lamplight => BLACK,
        }
    }

    fn matter(self) -> (Matter, &'static str, &'static str) {
        match self {
            Self::Day => (Matter::ShowsByDay, limits::SHOWS_BY_DAY, "By day"),
            Self::Lamplight => {
                (Matter::ShowsByLamplight, limits::SHOWS_BY_LAMPLIGHT, "By lamplight, unlit by its station,")
            }
        }
    }
}

/// How something stands out at a point from what is behind it, as a ratio of at least 1; `None` where it is hidden.
/// `depth` takes the eye past it, m.
fn ratio(night: &Night, light: Light, eye: Vec3, point: Vec3, depth: f32) -> Option<f64> {
    let along = (point - eye).normalize_or_zero();
    let before = Ray::between(eye, point - 4.0 * SKIN * along);
    if night.blocked(before) || (light == Light::Day && luma(night.sky_lx) <= 0.0) {
        return None;
    }
    let left = f64::from(luma(night.through(before, [u32::MAX; 2])));
    let seen = light.along(night, eye, along) + light.black();
    let behind = left * light.along(night, point + depth * along, along) + light.black();
    Some((seen / behind).max(behind / seen))
}

/// The middle one of the ratios at some points, where most of them are in sight.
fn typical(night: &Night, light: Light, eye: Vec3, points: &[Vec3], depth: f32) -> Option<f64> {
    let mut list: Vec<f64> = points.iter().filter_map(|at| ratio(night, light, eye, *at, depth)).collect();
    list.sort_by(f64::total_cmp);
    (2 * list.len() > points.len()).then(|| list[list.len() / 2])
}

/// Hanging cloths with points on them.
fn cloths<'a>(case: &Case<'a>) -> Vec<(&'a Cloth, Vec<Vec3>)> {
    let at = |i: usize| (i as f32 + 0.5) / CLOTH as f32;
    let hung = case.yard.cloths.iter().filter(|cloth| !case.yard.is_hidden(&cloth.name.0));
    let face = |cloth: &'a Cloth| {
        let quad = case.night.place(&cloth.name.0)?.face?;
        Some((cloth, (0..CLOTH * CLOTH).map(|i| quad.point(at(i % CLOTH), at(i / CLOTH))).collect()))
    };
    hung.filter_map(face).collect()
}

/// Posts that hold a cloth, with points up their middle.
fn posts<'a>(case: &Case<'a>) -> Vec<(&'a Post, Vec<Vec3>)> {
    let edges: Vec<Vec3> = case
        .yard
        .cloths
        .iter()
        .filter_map(|cloth| case.night.place(&cloth.name.0)?.face)
        .flat_map(|quad| [quad.point(0.0, 0.5), quad.point(1.0, 0.5)])
        .collect();
    let holds = |post: &&Post| {
        let foot = post.at.vec3();
        edges.iter().any(|edge| (*edge - foot).with_y(0.0).length() < HOLDS)
    };
    let post = |thing: &'a Thing| if let Thing::Post(post) = thing { Some(post) } else { None };
    let stand =
        case.yard.things.iter().filter_map(post).filter(holds).filter(|post| !case.yard.is_hidden(&post.name.0));
    let up = |post: &Post| {
        let at = |i: usize| post.at.vec3() + (i as f32 + 0.5) / POST as f32 * post.height.f32() * Vec3::Y;
        (0..POST).map(at).collect()
    };
    stand.map(|post| (post, up(post))).collect()
}

/// How much something stands out, from the spot where it does most.
fn most<'a>(case: &Case<'a>, light: Light, points: &[Vec3], half: f32) -> Option<(f64, &'a str)> {
    let from = |spot: &'a crate::scene::Spot| {
        let eye = spot::eye(spot);
        // The face of a post on the eye's side.
        let nearer = |at: &Vec3| *at - half * (*at - eye).with_y(0.0).normalize_or_zero();
        let points: Vec<Vec3> = points.iter().map(nearer).collect();
        let depth = if half > 0.0 { 3.0 * half } else { SKIN };
        Some((typical(case.night, light, eye, &points, depth)?, spot.name.0.as_str()))
    };
    case.yard.spots.iter().filter_map(from).max_by(|a, b| a.0.total_cmp(&b.0))
}

fn look(case: &Case, light: Light) -> Vec<Finding> {
    let (matter, name, when) = light.matter();
    let bound: Bound = case.limit(name);
    let find = |name: &str, (number, spot): (f64, &str), fabric: bool| {
        let what = if fabric { "stands out from what is behind it" } else { "stands out beside its cloth" };
        let says = format!("{when} “{name}” {what}: {} : 1, most from “{spot}”", two_digits(number));
        (number > bound.value).then(|| Finding::new(matter, Level::Check, name, None).against(number, &bound, says))
    };
    let mut list = Vec::new();
    for (cloth, points) in cloths(case) {
        list.extend(most(case, light, &points, 0.0).and_then(|most| find(&cloth.name.0, most, true)));
    }
    for (post, points) in posts(case) {
        let half = 0.71 * post.width.f32();
        list.extend(most(case, light, &points, half).and_then(|most| find(&post.name.0, most, false)));
    }
    list
}

/// Other cloths, the least conspicuous kind first, and other coverings of a post.
fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let named = |post: &&Post| post.name.0 == finding.of;
    let post =
        case.yard.things.iter().filter_map(|t| if let Thing::Post(post) = t { Some(post) } else { None }).find(named);
    if let Some(post) = post {
        let covered = |surface: &&str| {
            let edit = Edit::Change(Item::Thing(Thing::Post(Post { surface: Ref::to(surface), ..post.clone() })));
            Proposal { says: format!("Cover {} with {surface}", post.name.0), edit }
        };
        let surfaces = ["black paint", "wood, dark", "bark", "leaves, evergreen", "painted boards, pale"];
        return surfaces.iter().filter(|surface| **surface != post.surface.0).map(covered).collect();
    }
    let Some(cloth) = case.yard.cloths.iter().find(|cloth| cloth.name.0 == finding.of) else { return Vec::new() };
    let nets = case.yard.all_fabrics(case.catalogue).filter_map(|fabric| match &fabric.kind {
        FabricKind::Net { reflect, .. } if !fabric.screen => Some((fabric.name.0.as_str(), reflect.typical)),
        _ => None,
    });
    let mut nets: Vec<(&str, f64)> = nets.collect();
    // What shows the picture best comes first.
    nets.sort_by(|a, b| b.1.total_cmp(&a.1));
    let proposal = |(name, _): &(&str, f64)| {
        let edit = Edit::Change(Item::Cloth(Cloth { fabric: Ref::to(name), behind: Vec::new(), ..cloth.clone() }));
        Proposal { says: format!("Hang {} of {name} alone", cloth.name.0), edit }
    };
    let now = |(name, _): &&(&str, f64)| *name != cloth.fabric.0 || !cloth.behind.is_empty();
    nets.iter().filter(now).map(proposal).take(5).collect()
}
