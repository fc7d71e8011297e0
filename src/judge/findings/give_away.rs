//! Cloths, and posts that they hang between, that give themselves away: how they stand out, all stations dark, from what is
//! seen behind them, by the rule that comparing has as well.

pub(super) mod day;
pub(super) mod lamplight;

use super::{Case, Finding, Level, Matter, finding::Bound, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::Sight as Ray,
    judge::{
        day::{self as rule, Glance},
        spot,
    },
    light::{EyeRay, Night, SKIN, Source, luma},
    scene::{Cloth, FabricKind, Item, Post, Ref, Spot, Thing, limits},
    units::two_digits,
};
use glam::Vec3;

/// Points up a post that are looked at.
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
    /// Luminance along a ray by this light, cd/m².
    fn along(self, night: &Night, ray: EyeRay) -> f64 {
        match self {
            Self::Day => rule::by_day(night, ray, None),
            Self::Lamplight => {
                let lights = night.surfaces_by_source(ray);
                let counts = |source: &Source| !matches!(source, Source::Station(..));
                lights.iter().zip(&night.sources).filter(|(_, s)| counts(s)).map(|(light, _)| f64::from(*light)).sum()
            }
        }
    }

    /// What an eye cannot tell from black, cd/m².
    fn black(self) -> f64 {
        match self {
            Self::Day => rule::black_by_day(),
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

/// Something with the light of what is behind it: the eye goes on `depth` m past the end of its ray.
fn glance(night: &Night, light: Light, ray: EyeRay, point: Vec3, depth: f32, weight: f64) -> Glance {
    let left = f64::from(luma(night.through(Ray::between(ray.from, point - 4.0 * SKIN * ray.along), [u32::MAX; 2])));
    let beyond = EyeRay { from: point + depth * ray.along, ..ray };
    Glance { seen: light.along(night, ray), behind: left * light.along(night, beyond), weight }
}

/// How a cloth stands out to an eye.
fn of_cloth(night: &Night, light: Light, cloth: &Cloth, eye: Vec3) -> Option<f64> {
    let place = night.place(&cloth.name.0)?;
    if light == Light::Day {
        return rule::contrast(night, place.owner, eye);
    }
    let face = place.face?;
    let (rays, places) = rule::places(night, &face, eye);
    let glance = |(ray, weight): &(EyeRay, f64)| {
        let distance = (face.corner - eye).dot(face.normal()) / ray.along.dot(face.normal());
        glance(night, light, *ray, eye + distance * ray.along, SKIN, *weight)
    };
    rule::stands_out(&rays.iter().map(glance).collect::<Vec<_>>(), places, light.black())
}

/// How a post, by points up its middle, stands out to an eye; `half` takes the points to its face, m.
fn of_post(night: &Night, light: Light, points: &[Vec3], half: f32, eye: Vec3) -> Option<f64> {
    let look = |middle: &Vec3| {
        let point = *middle - half * (*middle - eye).with_y(0.0).normalize_or_zero();
        let ray = EyeRay { from: eye, along: (point - eye).normalize_or_zero(), width: 0.0 };
        let weight = f64::from(1.0 / (point - eye).length_squared().max(1e-6));
        let free = !night.blocked(Ray::between(eye, point - 4.0 * SKIN * ray.along));
        free.then(|| glance(night, light, ray, point, 3.0 * half, weight))
    };
    rule::stands_out(&points.iter().filter_map(look).collect::<Vec<_>>(), points.len(), light.black())
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
fn most<'a>(case: &Case<'a>, stands_out: impl Fn(Vec3) -> Option<f64>) -> Option<(f64, &'a str)> {
    let from = |spot: &'a Spot| Some((stands_out(spot::eye(spot))?, spot.name.0.as_str()));
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
    for cloth in case.yard.cloths.iter().filter(|cloth| !case.yard.is_hidden(&cloth.name.0)) {
        let most = most(case, |eye| of_cloth(case.night, light, cloth, eye));
        list.extend(most.and_then(|most| find(&cloth.name.0, most, true)));
    }
    for (post, points) in posts(case) {
        let half = 0.71 * post.width.f32();
        let most = most(case, |eye| of_post(case.night, light, &points, half, eye));
        list.extend(most.and_then(|most| find(&post.name.0, most, false)));
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
            Proposal { says: format!("Cover “{}” with {surface}", post.name.0), edit }
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
        Proposal { says: format!("Hang “{}” of {name} alone", cloth.name.0), edit }
    };
    let now = |(name, _): &&(&str, f64)| *name != cloth.fabric.0 || !cloth.behind.is_empty();
    nets.iter().filter(now).map(proposal).take(5).collect()
}
