//! Fullness: by crossings, and ray by ray.

use gauzelight::optics::{Cloth, Curve, Sheet, gathered};

use super::{at, grey, matt, near};

/// "Fuller is darker" is false for dense pale cloth.
#[test]
fn fuller_may_be_brighter() {
    let flat = matt(0.25, 0.65);
    assert!(gathered(&flat, 2.0).faces[0].diffuse.mean().x > flat.faces[0].diffuse.mean().x);
}

/// Straight light square on meets triangular pleats at cos θ = 1/F.
#[test]
fn straight_part() {
    let cloth = Cloth { through: grey(0.4), diffuse: grey(0.2), reflect: grey(0.3) }.sheet().unwrap();
    for fullness in [1.2, 1.5, 2.0, 3.0] {
        let wanted = f64::from(cloth.through.sample(1.0 / fullness).x);
        near(at(&gathered(&cloth, fullness).through, 0.0), wanted, 1e-6);
    }
}

/// By crossings: at cos θ and in the plane across the folds, a facet that passes a fixed share is met once by light
/// inside the facets' slope. So a cloth of constant laws looks flat to straight light near the normal.
#[test]
fn constant_cloth_near_the_normal() {
    let part = |share: f64| Curve::constant(grey(share));
    let cloth = Sheet::new(part(0.2), part(0.2), part(0.1), part(0.1), part(0.6));
    // tan of facet slope is √(F² − 1) = 0.663, its complement 56°.
    let drape = gathered(&cloth, 1.2);
    for theta in [0.0, 20.0, 40.0, 55.0] {
        near(at(&drape.through, theta), 0.6, 1e-6);
    }
    assert!(at(&drape.through, 70.0) < 0.59);
}

/// Straight light through triangular pleats, ray by ray.
#[test]
fn traced_pleats() {
    let law = |cos: f64| 0.2 + 0.7 * cos;
    let none = Curve::constant(grey(0.0));
    let through = Curve::of(|cos| [law(cos); 3]);
    let cloth = Sheet::new(none.clone(), none.clone(), none.clone(), none, through);
    for fullness in [1.5_f32, 2.5] {
        let drape = gathered(&cloth, fullness);
        for theta in [0.0, 30.0, 60.0, 75.0] {
            near(at(&drape.through, theta), trace(law, f64::from(fullness), theta), 2e-3);
        }
    }
}

/// Mean transmittance of pleats whose facets are 1 wide seen square on, over start points and bearings.
fn trace(law: impl Fn(f64) -> f64, fullness: f64, theta: f64) -> f64 {
    let (sin, cos) = theta.to_radians().sin_cos();
    let height = (fullness * fullness - 1.0).sqrt();
    let (bearings, starts) = (90, 400);
    let mut sum = 0.0;
    for bearing in 0..bearings {
        let across = sin * (90.0 * (f64::from(bearing) + 0.5) / f64::from(bearings)).to_radians().cos();
        for start in 0..starts {
            let x0 = 2.0 * (f64::from(start) + 0.5) / f64::from(starts);
            // From z = height at x0 down to z = 0, past every facet that begins at x = facet.
            let run = across / cos * height;
            let mut passed = 1.0;
            for facet in 0..=(x0 + run) as i32 {
                let rising = facet % 2 == 0;
                let (slope, foot) = if rising { (1.0, facet) } else { (-1.0, facet + 1) };
                // x0 + run (1 − z/height) = x on the ray; z/height = slope (x − foot) on the facet.
                let x = (x0 + run + run * slope * f64::from(foot)) / (1.0 + run * slope);
                if x >= f64::from(facet) && x < f64::from(facet + 1) && x >= x0.min(x0 + run) && x <= x0 + run {
                    passed *= law(((cos + slope * height * across) / fullness).abs());
                }
            }
            sum += passed;
        }
    }
    sum / f64::from(bearings * starts)
}

#[test]
fn flat_is_flat_and_fullness_sets_in_gently() {
    let cloth = Cloth { through: grey(0.4), diffuse: grey(0.2), reflect: grey(0.3) }.sheet().unwrap();
    assert_eq!(gathered(&cloth, 1.0), cloth);
    assert_eq!(gathered(&cloth, f32::NAN), cloth);
    let barely = gathered(&cloth, 1.0001);
    for theta in [0.0, 30.0, 60.0] {
        near(at(&barely.faces[0].reflect, theta), at(&cloth.faces[0].reflect, theta), 2e-3);
        near(at(&barely.faces[0].diffuse, theta), at(&cloth.faces[0].diffuse, theta), 2e-3);
        near(at(&barely.through, theta), at(&cloth.through, theta), 2e-3);
    }
}
