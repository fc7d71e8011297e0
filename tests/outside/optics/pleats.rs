//! Fullness.

use gauzelight::optics::gathered;

use super::{matt, near};

/// The rectangular-pleat radiosity of ASHRAE 1311-RP (PD_DIFF, after Farber et al. 1963), run for three cloths:
/// fullness, ρ, τ of the cloth; τ, ρ of the drape.
#[test]
fn rectangular_pleats() {
    for (fullness, reflect, through, drape_through, drape_reflect) in
        [(2.0, 0.50, 0.40, 0.34403, 0.47712), (1.5, 0.50, 0.40, 0.37692, 0.48142), (2.0, 0.65, 0.25, 0.25011, 0.57246)]
    {
        let drape = gathered(&matt(through, reflect), fullness);
        for face in &drape.faces {
            near(f64::from(face.diffuse.mean().x), drape_through, 6e-6);
            near(f64::from(face.reflect.mean().x), drape_reflect, 6e-6);
        }
    }
}
