//! Glass and mirrors: Fresnel's formulas once more, and what follows from them by hand.

use gauzelight::optics::fresnel::{plate, reflectance, silvered};
use gauzelight::optics::{Glazing, Screen};

use super::{at, grey, near};

fn unpolarised(pair: [f64; 2]) -> f64 {
    0.5 * (pair[0] + pair[1])
}

/// Degrees, R of one surface at n = 1.52, T and R of a lossless slab at n = 1.52, T at n = 1.49; Fresnel's formulas,
/// `T = ½Σ(1−r)²/(1−r²)`.
const SLAB: [(f64, f64, f64, f64, f64); 7] = [
    (0.0, 0.042580, 0.91832, 0.08168, 0.92544),
    (30.0, 0.04414, 0.91596, 0.08404, 0.92311),
    (45.0, 0.05305, 0.90253, 0.09747, 0.90975),
    (60.0, 0.09248, 0.84347, 0.15653, 0.85050),
    (70.0, 0.17471, 0.72471, 0.27529, 0.73081),
    (75.0, 0.25672, 0.61481, 0.38519, 0.61993),
    (80.0, 0.39095, 0.45604, 0.54396, 0.45979),
];

#[test]
fn lossless_slab() {
    for (theta, surface, through, reflect, acrylic) in SLAB {
        let cos = theta.to_radians().cos();
        near(unpolarised(reflectance(cos, 1.52)), surface, 6e-6);
        near(unpolarised(plate(cos, 1.52, 1.0).map(|slab| slab.through[0])), through, 6e-6);
        near(unpolarised(plate(cos, 1.52, 1.0).map(|slab| slab.reflect[0])), reflect, 6e-6);
        near(unpolarised(plate(cos, 1.49, 1.0).map(|slab| slab.through[1])), acrylic, 6e-6);
    }
}

/// Bounce by bounce, with the longer way of slanting light through glass that absorbs.
#[test]
fn absorbing_plate() {
    for theta in [0.0, 40.0, 60.0, 80.0_f64] {
        let cos = theta.to_radians().cos();
        let inside = (theta.to_radians().sin() / 1.52).asin();
        let passed = 0.9_f64.powf(1.0 / inside.cos());
        for (r, slab) in reflectance(cos, 1.52).into_iter().zip(plate(cos, 1.52, 0.9)) {
            let (mut through, mut back) = (0.0, r);
            let mut light = (1.0 - r) * passed;
            for _ in 0..200 {
                through += light * (1.0 - r);
                light *= r * passed;
                back += light * (1.0 - r);
                light *= r * passed;
            }
            near(slab.through[0], through, 1e-12);
            near(slab.reflect[0], back, 1e-12);
        }
    }
}

/// Algebra: square on, a lossless slab passes (1 − R)/(1 + R) of its one-surface reflectance.
#[test]
fn normal_incidence() {
    for index in [1.33, 1.49, 1.52, 1.9] {
        let r = unpolarised(reflectance(1.0, index));
        near(r, ((index - 1.0) / (index + 1.0)).powi(2), 1e-12);
        near(plate(1.0, index, 1.0)[0].through[0], (1.0 - r) / (1.0 + r), 1e-12);
    }
}

/// By how much two panes, composed per polarisation, pass more than the plain product of two unpolarised panes says,
/// for glass that absorbs nothing (Fresnel's formulas). Glass that absorbs a little leaves a little less to miss.
#[test]
fn product_of_panes_is_too_dark() {
    let more = |internal: f32, theta: f64| {
        let [one, two] = [1, 2]
            .map(|panes| at(&Glazing { internal, ..Glazing::clear_float(panes) }.pane().unwrap().sheet.through, theta));
        two / (one * one) - 1.0
    };
    for (theta, published) in [(0.0, 0.007), (45.0, 0.021), (60.0, 0.069), (70.0, 0.15)] {
        near(more(1.0, theta) / published, 1.0, 0.05);
        let real = more(0.98, theta) / more(1.0, theta);
        assert!(real < 1.0 && real > 0.9, "{real}");
    }
}

/// A lossless unit of any number of panes passes or mirrors everything.
#[test]
fn lossless_units() {
    for panes in 0..=3 {
        let pane = Glazing { internal: 1.0, ..Glazing::clear_float(panes) }.pane().unwrap();
        for (through, mirror) in pane.sheet.through.at.iter().zip(&pane.mirror[0].at) {
            near(f64::from((*through + *mirror).x), 1.0, 1e-6);
        }
    }
}

/// An insect screen dims the way through once, what the glass mirrors to the street twice, and to the room not at all.
#[test]
fn insect_screen() {
    let bare = Glazing::clear_float(2);
    let screened = Glazing { screen: Some(Screen { ratio: 0.24, reflect: grey(0.08) }), ..bare };
    let (bare, screened) = (bare.pane().unwrap(), screened.pane().unwrap());
    let open = 0.76_f64 * 0.76;
    near(at(&screened.sheet.through, 0.0), open * at(&bare.sheet.through, 0.0), 1e-6);
    near(at(&screened.mirror[0], 0.0), open * open * at(&bare.mirror[0], 0.0), 1e-6);
    near(at(&screened.mirror[1], 0.0), at(&bare.mirror[1], 0.0), 1e-6);
    // What the threads throw back, and a little that comes back by way of the glass.
    let threads = 0.08 * (1.0 - open);
    let thrown = at(&screened.sheet.faces[0].reflect, 0.0);
    assert!(thrown > threads && thrown < 1.2 * threads, "{thrown}");
    let means = [0, 1].map(|face: usize| f64::from(screened.sheet.faces[face].diffuse.mean().x));
    near(means[0], means[1], 1e-6);
    assert!(means[0] > 0.0);
}

/// Household mirrors: Fresnel, silver 0.95, two passes of glass of 0.97 to 0.985 each.
#[test]
fn second_surface_mirror() {
    near(silvered(1.0, 1.52, 0.97, 0.95), 0.894, 0.001);
    near(silvered(1.0, 1.52, 0.985, 0.95), 0.922, 0.001);
    // All of it, if nothing is lost.
    for cos in [0.0, 0.3, 0.7, 1.0] {
        near(silvered(cos, 1.52, 1.0, 1.0), 1.0, 1e-12);
    }
}
