//! Forms of which many stand alike are held once, and met, lit and shaded as if each had a body of its own.

use super::lab::{Lab, close, v};
use gauzelight::{
    geometry::Sight,
    light::{EyeRay, Night},
    scene::Yard,
};
use std::{collections::BTreeMap, f64::consts::PI};

/// Forms alike stand in each of their rows.
const MANY: usize = 7;

/// Two of the 64 rays by which a corner asks for its sky: of those that ask together another may speak in the axes of its body.
const RAYS: f64 = 2.0 / 64.0;

/// Three rows of forms before a wall, lit by a lamp, a station and the sky; with `apart` each form has a covering of its own, that reflects as
/// all others do, so that no two are alike.
pub fn yard(apart: bool) -> String {
    let surface = |row: usize, i: usize| if apart { format!("paint {row} {i}") } else { "paint 0 0".to_owned() };
    let row = |row: usize, one: &dyn Fn(String, usize) -> String| -> String {
        (0..MANY).map(|i| one(format!("name: \"{row} {i}\", surface: \"{}\"", surface(row, i)), i)).collect()
    };
    let at = |i: usize, z: f64| format!("at: ({}, 0, {})", 1.1 * i as f64 - 3.3, z + 0.13 * (i % 3) as f64);
    let figures =
        row(0, &|names, i| format!("Figure({names}, {}, height: 1.7, turn_deg: {}),", at(i, -1.0), 23 * i as i32 - 60));
    let gourds =
        row(1, &|names, i| format!("Gourd({names}, {}, width: 0.5, height: 0.4, turn_deg: {}),", at(i, 0.4), 51 * i));
    let globes = row(2, &|names, i| format!("Globe({names}, {}, diameter: 0.6),", at(i, 1.6)));
    let paints: String = (0..3)
        .flat_map(|row| (0..MANY).map(move |i| format!("(name: \"paint {row} {i}\", reflectance: 0.6, doubt: 0.1),")))
        .collect();
    format!(
        "Yard(name: \"crowd\", ground: (width: 30, depth: 30), evening: (sky_lx: 0.5),
            spots: [(name: \"path\", at: (1, 0, 9), look: (0, 1, 0))],
            things: [Block(name: \"wall\", at: (0, 0, -2.4), width: 9, height: 2.5, depth: 0.3)],
            lamps: [(name: \"lamp\", kind: \"porch lamp\", at: (2.3, 2.6, 3.1), lumens: 400)],
            stations: [(name: \"station\", projector: \"mini LED\", at: (-0.4, 0.9, 3.5), target: \"0 3\",
                aim: (0, 1.1, -1), content: (picture: \"white\"))],
            surfaces: [{paints}], forms: [{figures}{gourds}{globes}])"
    )
}

fn labs() -> (Lab, Lab) {
    (Lab::of(&yard(false), |_| ()), Lab::of(&yard(true), |_| ()))
}

/// Rays from above and before the yard all over it.
fn rays() -> Vec<EyeRay> {
    let part = |i: u32, step: f64| ((f64::from(i) + 0.5) * step).fract() as f32;
    let ray = |i: u32| {
        let from = v(8.0 * part(i, 0.819_172_5) - 4.0, 0.4 + 3.0 * part(i, 0.671_043_6), 7.0);
        let at = v(8.0 * part(i, 0.549_700_5) - 4.0, 1.9 * part(i, 0.754_877_7), 4.0 * part(i, 0.569_840_3) - 2.0);
        EyeRay { from, along: (at - from).normalize(), width: 0.001 }
    };
    (0..4000).map(ray).collect()
}

/// Of each triangle, by the bits of its corners, what of the sky these see.
fn skies(night: &Night) -> BTreeMap<[[u32; 3]; 3], [u16; 3]> {
    let of = |solid: u32| {
        // Nought and its negative are one place.
        let corners = night.solid(solid).corners.map(|corner| (corner + 0.0).to_array().map(f32::to_bits));
        (corners, night.corner_sky(solid))
    };
    (0..night.triangles()).map(of).collect()
}

#[test]
fn a_crowd_is_held_once_and_stands_to_the_bit_where_bodies_of_their_own_would() {
    let (crowd, apart) = labs();
    assert_eq!(crowd.night.triangles(), apart.night.triangles());
    assert_eq!(apart.night.solids.len(), apart.night.triangles() as usize);
    assert!(2 * crowd.night.solids.len() < apart.night.solids.len(), "{}", crowd.night.solids.len());
    let (ours, theirs) = (skies(&crowd.night), skies(&apart.night));
    // But for globes, whose middle is rounded once more where they have bodies of their own.
    let both: Vec<_> = theirs.iter().filter_map(|(at, sky)| Some((sky, ours.get(at)?))).collect();
    assert!(both.len() > 100_000, "{}", both.len());
    let pairs = || both.iter().flat_map(|(a, b)| a.iter().zip(b.iter())).map(|(a, b)| (f64::from(*a), f64::from(*b)));
    let off = pairs().filter(|(a, b)| (a - b).abs() > RAYS * 65535.0).count();
    assert!(off * 200 < 3 * both.len(), "{off} corners of {} triangles see another sky", both.len());
    let mean = pairs().map(|(a, b)| (a - b) / 65535.0).sum::<f64>() / (3 * both.len()) as f64;
    assert!(mean.abs() < 1e-3, "{mean} more sky");
}

#[test]
fn rays_meet_a_crowd_where_they_meet_bodies_of_their_own() {
    let (crowd, apart) = labs();
    let (mut members, mut astray) = (0, 0);
    for ray in rays() {
        let sight = Sight::endless(ray.from, ray.along);
        let met =
            |lab: &Lab| lab.night.nearest_solid(sight).map(|hit| (lab.night.solid(hit.solid).owner, hit.t, hit.normal));
        match (met(&crowd), met(&apart)) {
            (Some((one, t, normal)), Some((other, u, side))) => {
                let name = &crowd.night.names[one as usize];
                members += usize::from(name.contains(' '));
                let same =
                    *name == apart.night.names[other as usize] && (t - u).abs() < 1e-4 && normal.dot(side) > 0.999;
                astray += usize::from(!same);
                let reach = |t: f32, part: f32| Sight { reach: t * part, ..sight };
                assert!(crowd.night.blocked(reach(t, 1.001)) && !crowd.night.blocked(reach(t, 0.999)), "{ray:?}");
                assert_eq!(crowd.night.seen(ray, true).name, *name);
                let mut all = Vec::new();
                crowd.night.each_solid(sight, |owner, t| all.push((owner, t)));
                let nearest = all.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
                assert_eq!(nearest.map(|(owner, _)| owner), Some(one));
            }
            (None, None) => (),
            _ => astray += 1,
        }
    }
    assert!(members > 1000, "only {members} rays meet a form");
    assert!(astray <= 4, "{astray} rays go astray");
}

#[test]
fn a_crowd_is_lit_and_shades_as_bodies_of_their_own() {
    let (crowd, apart) = labs();
    let lights = |lab: &Lab, ray: &EyeRay| {
        let lights = lab.night.luminance_by_source(*ray);
        let sky = lights[lab.night.sky_source as usize];
        (f64::from(lights.iter().sum::<f32>() - sky), f64::from(sky))
    };
    let off = |ray: &EyeRay| {
        let ((lamps, sky), (other_lamps, other_sky)) = (lights(&crowd, ray), lights(&apart, ray));
        // What so many rays bring to open ground of half a lux.
        (lamps - other_lamps).abs() > 1e-3 * other_lamps.max(1e-3) || (sky - other_sky).abs() > RAYS * 0.5 / PI
    };
    let rays = rays();
    let differ = rays.iter().filter(|ray| off(ray)).count();
    assert!(differ * 200 < rays.len(), "{differ} of {} rays differ", rays.len());
    let (ours, theirs) = (crowd.reading(), apart.reading());
    assert_eq!(ours.target, theirs.target);
    assert!(theirs.mean_on_target_lx.typical > 1.0);
    for (ours, theirs) in [
        (ours.mean_on_target_lx.typical, theirs.mean_on_target_lx.typical),
        (ours.figure_lx.typical, theirs.figure_lx.typical),
        (ours.misses, theirs.misses),
    ] {
        close(ours, theirs, 2e-3);
    }
    let around = |lab: &Lab| {
        let target = lab.night.place("0 3").map(|place| place.owner).unwrap();
        let corners: Vec<_> = lab.night.corners_of(target).collect();
        let (low, high) =
            corners.iter().fold((corners[0], corners[0]), |(low, high), at| (low.min(*at), high.max(*at)));
        (corners.len(), (low + 0.0).to_array(), (high + 0.0).to_array())
    };
    assert_eq!(around(&crowd), around(&apart));
}

#[test]
fn one_of_a_crowd_can_be_hidden_and_the_rest_remember_their_sky() {
    let (crowd, _) = labs();
    let hidden = Lab::of(&yard(false).replace("Yard(", "Yard(hidden: [\"0 2\"], "), |_| ());
    let place = crowd.night.place("0 2").unwrap().middle;
    let owner = |lab: &Lab| {
        let hit = lab.night.nearest_solid(Sight::endless(place + v(0.0, 3.0, 0.0), v(0.0, -1.0, 0.0))).unwrap();
        lab.night.names[lab.night.solid(hit.solid).owner as usize].clone()
    };
    assert_eq!((owner(&crowd).as_str(), owner(&hidden).as_str()), ("0 2", "ground"));
    crowd.night.gather();
    let yard = Yard { hidden: hidden.yard.hidden.clone(), ..crowd.yard.clone() };
    let rebuilt = crowd.night.rebuilt(&yard, &crowd.catalogue, &crowd.pictures).unwrap();
    let (before, after) = (skies(&crowd.night), skies(&rebuilt));
    assert!(after.len() < before.len());
    assert!(after.iter().all(|(at, sky)| before.get(at) == Some(sky)));
}
