//! Built things, plants and forms: sizes that must fit each other.

use super::known::Known;
use super::range::{MOST_BALLAST_KG, unless, within};
use crate::scene::{Fault, Faults, Fence, Form, Pergola, Plant, Point, Thing, Tree, Turned};
use crate::units::decimals;

/// Boards of a fence, steps and rafters beyond these would be thousands of boxes.
const MOST_BOARDS: f64 = 2_000.0;
const MOST_PARTS: f64 = 200.0;
const MOST_PROFILE_POINTS: usize = 1_000;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("things", &known.yard.things, |faults, thing| {
        known.surface("surface", thing.surface(), faults);
        self::thing(thing, faults);
    });
    faults.in_each("plants", &known.yard.plants, |faults, plant| {
        known.surface("surface", plant.surface(), faults);
        match plant {
            Plant::Hedge(hedge) => apart(&hedge.from, &hedge.to, "hedge", faults),
            Plant::Tree(tree) => self::tree(tree, faults),
        }
    });
    faults.in_each("forms", &known.yard.forms, |faults, form| {
        known.surface("surface", form.surface(), faults);
        within(faults, "ballast_kg", form.ballast_kg(), 0.0..=MOST_BALLAST_KG, "from 0 to 500 kg");
        match form {
            Form::Gourd(gourd) => within(faults, "ribs", f64::from(gourd.ribs.0), 1.0..=60.0, "at most 60 ribs"),
            Form::Turned(turned) => profile(turned, faults),
            Form::Figure(_) | Form::Bag(_) | Form::Globe(_) => {}
        }
    });
}

fn thing(thing: &Thing, faults: &mut Faults) {
    match thing {
        Thing::Fence(noun) => fence(noun, faults),
        Thing::Pergola(noun) => pergola(noun, faults),
        Thing::Steps(steps) => {
            within(faults, "count", f64::from(steps.count.0), 1.0..=MOST_PARTS, "at most 200 steps");
        }
        Thing::Porch(porch) => {
            let what = format!("a deck of {} reaches the roof at {}", porch.deck.0, porch.height.0);
            unless(porch.deck.0.m < porch.height.0.m, faults, "deck", what, "the roof stands above the deck");
            let fits = 2.0 * porch.post.0.m <= porch.width.0.m && porch.post.0.m <= porch.depth.0.m;
            unless(fits, faults, "post", "posts this thick do not fit on the deck", "make them thinner");
        }
        Thing::Block(_) | Thing::Post(_) | Thing::Bench(_) => {}
    }
}

fn fence(fence: &Fence, faults: &mut Faults) {
    apart(&fence.from, &fence.to, "fence", faults);
    unless(fence.gap.m >= 0.0, faults, "gap", format!("{} is no gap", fence.gap), "from 0, which makes it solid");
    let length = (fence.to.vec3() - fence.from.vec3()).length();
    let boards = f64::from(length) / (fence.board.0.m + fence.gap.m.max(0.0));
    let what = format!("this fence would have {} boards", decimals(boards, 0));
    unless(boards <= MOST_BOARDS, faults, "board", what, "wider boards, or a shorter fence; at most 2000");
}

fn pergola(pergola: &Pergola, faults: &mut Faults) {
    within(faults, "rafters", f64::from(pergola.rafters.0), 1.0..=MOST_PARTS, "at most 200 rafters");
    let narrowest = pergola.width.0.m.min(pergola.depth.0.m);
    let fits = 2.0 * pergola.post.0.m <= narrowest && pergola.post.0.m < pergola.height.0.m;
    unless(fits, faults, "post", "posts this thick do not fit under the pergola", "make them thinner");
}

fn tree(tree: &Tree, faults: &mut Faults) {
    let what = format!("a crown that begins at {} has no height in a tree of {}", tree.clear.0, tree.height.0);
    unless(tree.clear.0.m < tree.height.0.m, faults, "clear", what, "begin the crown below the top of the tree");
    let what = format!("a trunk of {} is as wide as its crown", tree.trunk.0);
    unless(tree.trunk.0.m < tree.crown.0.m, faults, "trunk", what, "both are radii; the crown's is the greater");
}

fn apart(from: &Point, to: &Point, word: &str, faults: &mut Faults) {
    let between = to.vec3() - from.vec3();
    let long_enough = between.x.hypot(between.z) > 1e-3;
    unless(long_enough, faults, "to", format!("both ends of this {word} stand at one place"), "move one end");
}

fn profile(turned: &Turned, faults: &mut Faults) {
    let points = &turned.profile;
    let enough = (2..=MOST_PROFILE_POINTS).contains(&points.len());
    unless(
        enough,
        faults,
        "profile",
        format!("a profile of {} points", points.len()),
        "from 2 to 1000 points, foot first",
    );
    if !enough {
        return;
    }
    let mut below = f64::NEG_INFINITY;
    faults.in_each("profile", points, |faults, point| {
        let (radius, height) = (&point.radius, &point.height);
        if radius.m < 0.0 {
            faults.push(Fault::new(format!("a radius of {radius}")).remedy("from 0, which closes the form"));
        }
        if height.m < below {
            let what = format!("{height} is lower than the point before");
            faults.push(Fault::new(what).remedy("heights never fall from foot to top"));
        }
        if radius.m > 500.0 || height.m.abs() > 500.0 {
            faults.push(Fault::new("this point is too far out").remedy("at most 500 m"));
        }
        below = height.m;
    });
    let has_volume =
        points.iter().any(|point| point.radius.m > 0.0) && points[points.len() - 1].height.m > points[0].height.m;
    unless(has_volume, faults, "profile", "this profile encloses nothing", "give it a radius and a height");
}
