//! Layers and their inter-reflection.

use gauzelight::optics::layers::unite;
use gauzelight::optics::pile::{Mixed, Slab, irradiances, pile, pile_mixed};
use gauzelight::optics::{Curve, Glazing, Pane, Sheet, stack};

use super::{at, grey, matt, near};

fn slab(front: (f64, f64), back: (f64, f64)) -> Slab {
    Slab { through: [front.0, back.0], reflect: [front.1, back.1] }
}

fn published() -> [Slab; 3] {
    [slab((0.46, 0.52), (0.64, 0.22)), slab((0.56, 0.34), (0.49, 0.39)), slab((0.12, 0.47), (0.33, 0.63))]
}

/// LBNL Windows-CalcEngine unit test DoubleLayerSingleComponent.
#[test]
fn two_layers_one_component() {
    let whole = pile(&published()[..2]);
    near(whole.through[0], 0.278426286, 1e-8);
    near(whole.reflect[0], 0.6281885, 1e-7);
    near(1.0 - whole.through[0] - whole.reflect[0], 0.093385214, 1e-8);
    near(whole.through[1], 0.33895374, 1e-8);
    near(whole.reflect[1], 0.455248595, 1e-8);
    near(1.0 - whole.through[1] - whole.reflect[1], 0.205797665, 1e-8);
}

/// The same numbers as cloth whose laws are constant in angle, through the tables.
#[test]
fn two_sheets_one_component() {
    let sheet = |slab: &Slab| {
        let [rf, rb, tf, tb] = [slab.reflect[0], slab.reflect[1], slab.through[0], slab.through[1]]
            .map(|share| Curve::constant(grey(share)));
        Sheet::new(rf, rb, tf, tb, Curve::constant(grey(0.0)))
    };
    let [first, second, _] = published().map(|slab| sheet(&slab));
    let [front, back] = stack(&[&first, &second]).faces;
    for theta in [0.0, 50.0, 90.0] {
        near(at(&front.diffuse, theta), 0.278426286, 1e-6);
        near(at(&front.reflect, theta), 0.6281885, 1e-6);
        near(at(&back.diffuse, theta), 0.33895374, 1e-6);
        near(at(&back.reflect, theta), 0.455248595, 1e-6);
    }
}

/// LBNL Windows-CalcEngine unit test MultilayerInterreflectances_1.
#[test]
fn three_layers_irradiances() {
    let dark = [[0.0; 2]; 3];
    let forward = irradiances(&published(), [1.0, 0.0], &dark);
    let backward = irradiances(&published(), [0.0, 1.0], &dark);
    let wanted_forward = [[1.0, 0.25721592], [0.516587502, 0.166481977], [0.354216972, 0.0]];
    let wanted_backward = [[0.0, 0.222348154], [0.048916594, 0.419829616], [0.191126843, 1.0]];
    for layer in 0..3 {
        for side in 0..2 {
            near(forward[layer][side], wanted_forward[layer][side], 1e-8);
            near(backward[layer][side], wanted_backward[layer][side], 1e-8);
        }
    }
}

/// LBNL Windows-CalcEngine unit test EquivalentLayerWithScattering1.
#[test]
fn direct_and_diffuse() {
    let layers = [
        Mixed {
            beam: slab((0.08, 0.05), (0.13, 0.25)),
            scatter: slab((0.46, 0.23), (0.38, 0.19)),
            diffuse: slab((0.46, 0.52), (0.64, 0.22)),
        },
        Mixed {
            beam: slab((0.10, 0.05), (0.15, 0.0)),
            scatter: slab((0.48, 0.26), (0.38, 0.19)),
            diffuse: slab((0.56, 0.34), (0.49, 0.39)),
        },
    ];
    let whole = pile_mixed(&layers);
    near(whole.beam.through[0], 0.008101266, 1e-8);
    near(whole.beam.reflect[0], 0.050526582, 1e-8);
    near(whole.scatter.through[0], 0.32058299, 1e-8);
    near(whole.scatter.reflect[0], 0.354479119, 1e-8);
    near(whole.diffuse.through[0], 0.278426286, 1e-8);
    near(whole.diffuse.reflect[0], 0.6281885, 1e-7);
    near(whole.beam.through[1], 0.019746835, 1e-8);
    near(whole.beam.reflect[1], 0.003797468, 1e-8);
    near(whole.scatter.through[1], 0.334201295, 1e-8);
    near(whole.scatter.reflect[1], 0.27761223, 1e-8);
    near(whole.diffuse.through[1], 0.33895374, 1e-8);
    near(whole.diffuse.reflect[1], 0.455248595, 1e-8);
}

/// LBNL Windows-CalcEngine unit test MultiPaneBSDF_102_PerfectDiffuseVisible: 3 mm clear glass before a perfect
/// diffuser. Directional-hemispherical T and R square on, then diffuse-diffuse T and R.
const GLASS_AND_DIFFUSER: [f64; 4] = [0.372037, 0.233908, 0.336579, 0.302714];

#[test]
fn glass_before_a_diffuser() {
    let glass = Glazing::clear_float(1).pane().unwrap();
    let whole = unite(&[&glass, &Pane::from(&matt(0.4, 0.2))]);
    let (face, mirror) = (&whole.sheet.faces[0], &whole.mirror[0]);
    let [through, reflect, ..] = GLASS_AND_DIFFUSER;
    near(at(&face.diffuse, 0.0) / through, 1.0, 0.01);
    near((at(&face.reflect, 0.0) + at(mirror, 0.0)) / reflect, 1.0, 0.01);
}

/// Their diffuse light is a sum over five rings of the hemisphere, too coarse near grazing angles. With the same rings
/// the glass gives their numbers; the exact mean is 1.3 % above in T and 3.7 % below in R.
#[test]
fn glass_before_a_diffuser_in_diffuse_light() {
    let glass = Glazing::clear_float(1).pane().unwrap();
    let [.., through, reflect] = GLASS_AND_DIFFUSER;
    let rings = [(0.0, 0.0, 9.0), (18.0, 9.0, 27.0), (36.0, 27.0, 45.0), (54.0, 45.0, 63.0), (76.5, 63.0, 90.0_f64)];
    let mean = |curve: &Curve| {
        let share = |from: f64, to: f64| to.to_radians().sin().powi(2) - from.to_radians().sin().powi(2);
        rings.iter().map(|&(theta, from, to)| share(from, to) * at(curve, theta)).sum::<f64>()
    };
    let diffuser = Slab::even(0.4, 0.2);
    let coarse = pile(&[Slab::even(mean(&glass.sheet.through), mean(&glass.mirror[0])), diffuser]);
    near(coarse.through[0] / through, 1.0, 0.01);
    near(coarse.reflect[0] / reflect, 1.0, 0.01);
    let [passed, mirrored] = [&glass.sheet.through, &glass.mirror[0]].map(|curve| f64::from(curve.mean().x));
    let exact = pile(&[Slab::even(passed, mirrored), diffuser]);
    let whole = unite(&[&glass, &Pane::from(&matt(0.4, 0.2))]);
    near(f64::from(whole.sheet.faces[0].diffuse.mean().x), exact.through[0], 1e-6);
    near(f64::from((whole.sheet.faces[0].reflect.mean() + whole.mirror[0].mean()).x), exact.reflect[0], 1e-6);
    near(exact.through[0] / through, 1.0, 0.02);
    near(exact.reflect[0] / reflect, 1.0, 0.04);
}
