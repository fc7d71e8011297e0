//! Stations and what they throw, fold mirrors, viewing spots and meters.

use super::known::Known;
use super::power;
use super::range::{MOST_BALLAST_KG, above_ground, band_within, unless, within};
use super::{entry, shelter, window};
use crate::files::leads_out;
use crate::scene::{Aim, Band, Content, Fault, Faults, Keystone, Point, Pose, Station};

/// An aim this near to a lens or an eye is one place given twice rather than something to light or to see, m.
const ONE_PLACE: f32 = 0.05;

/// A light path that is bent more often is nothing that can be set up by hand.
const MOST_MIRRORS: usize = 2;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("stations", &known.yard.stations, |faults, noun| station(known, noun, faults));
    faults.in_each("mirrors", &known.yard.mirrors, |faults, mirror| {
        within(faults, "tilt_deg", mirror.tilt_deg.0, -90.0..=90.0, "from -90 (up) to 90 (down) degrees");
    });
    faults.in_each("spots", &known.yard.spots, |faults, spot| {
        within(faults, "age", f64::from(spot.age.0), 1.0..=120.0, "from 1 to 120 years");
        within(faults, "eye", spot.eye.0.m, 0.0..=20.0, "at most 20 m above their feet");
        let [x, y, z] = &spot.at.0;
        let eyes = Point::metres(x.m, y.m + spot.eye.0.m, z.m);
        aim(known, "look", &spot.look, &eyes, faults);
    });
    faults.in_each("meters", &known.yard.meters, |faults, meter| {
        within(faults, "tilt_deg", meter.tilt_deg.0, -90.0..=90.0, "from -90 (down) to 90 (up) degrees");
        above_ground(faults, "at", meter.at.0[1].m, "this meter", "the second number is its height above the ground");
    });
}

/// Checks one station, of whatever arrangement.
pub(super) fn station(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    known.projector("projector", &station.projector, faults);
    aim(known, "aim", &station.aim, &station.at, faults);
    above_ground(faults, "at", station.at.0[1].m, "this lens", "the second number is its height above the ground");
    window::takes_light(known, station, faults);
    targets(known, station, faults);
    mirrors(known, station, faults);
    faults.in_field("content", |faults| content(known, &station.content, faults));
    if let Some(lumens) = station.lumens {
        band_within(faults, "lumens", lumens, 0.1..=100_000.0, "from 0.1 to 100000 lm");
        doubted(known, station, lumens, faults);
    }
    if let Some(ratio) = station.throw_ratio {
        within(faults, "throw_ratio", ratio.0, 0.1..=20.0, "distance over picture width, from 0.1 to 20");
    }
    keystone(known, station, faults);
    if let Some(curve) = station.gamma {
        entry::gamma(curve, faults);
    }
    if let Some(focus) = &station.focus {
        let sane = focus.m > 0.0 && focus.m <= 500.0;
        unless(sane, faults, "focus", format!("{focus} is out of range"), "greater than 0 and at most 500 m");
    }
    shelter::check(known, station, faults);
    within(faults, "hours", station.hours, 0.0..=200_000.0, "from 0 to 200000 hours");
    power::loads(&station.loads, faults);
    within(faults, "ballast_kg", station.ballast_kg, 0.0..=MOST_BALLAST_KG, "from 0 to 500 kg");
}

fn targets(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    let targets = &station.target.0;
    for (index, target) in targets.iter().enumerate() {
        let field = if targets.len() == 1 { "target".to_owned() } else { format!("target[{index}]") };
        known.target(&field, target, faults);
        let first = !targets[..index].contains(target);
        unless(first, faults, &field, format!("“{}” is among its targets already", target.0), "name each once");
    }
}

/// What is printed on a box is easily taken for what a projector gives; what has a band has been thought about.
fn doubted(known: &Known<'_>, station: &Station, lumens: Band, faults: &mut Faults) {
    let lm = lumens.typical;
    if lumens != Band::exact(lm) {
        return;
    }
    let class = known.yard.projector(known.catalogue, &station.projector.0);
    let Some(class) = class.filter(|class| !class.may_give(lm) && class.may_claim(lm) && lm > class.lumens.high) else {
        return;
    };
    let what = format!(
        "{lm} lm measured is implausible for a “{}”: such projectors give {} to {} lm, and their boxes claim about {}",
        class.name.0, class.lumens.low, class.lumens.high, class.claimed.0
    );
    let remedy =
        "write what was measured; leave lumens out where only those on the box are known, or name another class";
    faults.push_in("lumens", Fault::warning(what).remedy(remedy));
}

fn mirrors(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    let count = station.mirrors.len();
    if count > MOST_MIRRORS {
        let fault = Fault::new(format!("{count} fold mirrors")).remedy("at most two bend one throw");
        return faults.push_in("mirrors", fault);
    }
    for (index, mirror) in station.mirrors.iter().enumerate() {
        let field = format!("mirrors[{index}]");
        known.mirror(&field, mirror, faults);
        let first = !station.mirrors[..index].contains(mirror);
        unless(first, faults, &field, format!("“{}” bends this throw already", mirror.0), "name each mirror once");
    }
}

/// Angles that a projector corrects, and a plane that all of its raster meets: a ray `(x, y, 1)` of the frame of the lens does
/// where `cos H cos V > x sin H + y cos H sin V`.
fn keystone(known: &Known<'_>, station: &Station, faults: &mut Faults) {
    let Keystone { vertical_deg, horizontal_deg } = station.keystone;
    for (field, angle) in [("keystone.vertical_deg", vertical_deg), ("keystone.horizontal_deg", horizontal_deg)] {
        let range = -Keystone::MOST_DEG..=Keystone::MOST_DEG;
        within(faults, field, angle.0, range, "from -40 to 40 degrees; stand squarer on instead");
    }
    let Some(class) = known.yard.projector(known.catalogue, &station.projector.0) else { return };
    let (wide, high, [right, up]) = station.raster(class);
    let (sin_v, cos_v) = vertical_deg.0.to_radians().sin_cos();
    let (sin_h, cos_h) = horizontal_deg.0.to_radians().sin_cos();
    let meets = [(-0.5, -0.5), (0.5, -0.5), (-0.5, 0.5), (0.5, 0.5)].into_iter().all(|(across, upwards)| {
        let (x, y) = ((right + across) * wide, (up + upwards) * high);
        let (x, y) = match station.pose {
            Pose::Table => (x, y),
            Pose::Ceiling => (-x, -y),
            Pose::Upright => (y, -x),
        };
        cos_h * cos_v > x * sin_h + y * cos_h * sin_v
    });
    let what = "some of this picture never meets a surface so far off square";
    unless(meets, faults, "keystone", what, "a lesser angle, or a narrower throw");
}

fn aim(known: &Known<'_>, field: &str, aim: &Aim, from: &Point, faults: &mut Faults) {
    match aim {
        Aim::Thing(name) => known.thing(field, name, faults),
        Aim::At(point) => {
            let apart = (point.vec3() - from.vec3()).length() > ONE_PLACE;
            let remedy = "aim at something else, more than 5 cm away";
            unless(apart, faults, field, "this aim is where it looks from", remedy);
        }
    }
}

fn content(known: &Known<'_>, content: &Content, faults: &mut Faults) {
    let ([left, top], [right, bottom]) = (content.from.0, content.to.0);
    let inside = [left, top, right, bottom].iter().all(|part| (0.0..=1.0).contains(part));
    unless(inside, faults, "from", "the box of this picture leaves the raster", "from and to are each from 0 to 1");
    let ordered = left < right && top < bottom;
    unless(ordered, faults, "from", "the box of this picture has no extent", "from is left of and above to");
    picture(known, &content.picture, faults);
}

/// A missing picture keeps nobody from planning: a test card stands in.
fn picture(known: &Known<'_>, picture: &str, faults: &mut Faults) {
    let builtin = known.catalogue.pictures.iter().map(String::as_str);
    let is_file_name = picture.contains('.');
    let found = match known.folder {
        // What leads out of the folder is not even looked for here.
        Some(folder) => leads_out(picture) || folder.join(picture).exists(),
        None => is_file_name,
    };
    if picture.trim().is_empty() {
        faults.push_in(
            "picture",
            Fault::new("no picture is named").remedy("name a file beside the yard, or a built-in picture"),
        );
    } else if !found && !builtin.clone().any(|name| name == picture) {
        let what = format!("there is no picture “{}”; a test card stands in", crate::scene::tree::clipped(picture));
        let names: Vec<&str> = builtin.clone().collect();
        let remedy = if is_file_name {
            "put the file beside the yard".to_owned()
        } else {
            format!("a file beside the yard, or one of the built-in pictures: {}", names.join(", "))
        };
        faults.push_in("picture", Fault::warning(what).remedy(remedy).nearest_of(picture, builtin));
    }
}
