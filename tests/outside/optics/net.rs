//! Nets and insect screens.

use std::f64::consts::FRAC_PI_2;

use gauzelight::optics::net::transmittance;
use gauzelight::optics::{Net, Rgb, Sheet};

use super::{at, grey, near};

fn degrees(ratio: f64, theta: f64, phi: f64) -> f64 {
    transmittance(ratio, theta.to_radians(), phi.to_radians())
}

fn black_net(ratio: f32) -> Sheet {
    Net { ratio, reflect: Rgb::ZERO, transmit: Rgb::ZERO }.sheet().unwrap()
}

/// LBNL Windows-CalcEngine unit tests, WovenCell1-3 (γ = 1/3).
#[test]
fn woven_cell_of_a_third() {
    let third = 1.0 / 3.0;
    near(degrees(third, 0.0, 0.0), 0.444444, 1e-6);
    near(degrees(third, 45.0, 0.0), 0.352397, 1e-6);
    near(degrees(third, 78.0, 45.0), 0.0, 0.0);
}

/// Insect screens of the EnergyPlus data set WindowScreenMaterials: spacing and wire in mm, openness, cut-off in
/// degrees.
const SCREENS: [(f32, f32, f64, f64); 5] = [
    (1.57, 0.381, 0.5735, 75.96),
    (1.67, 0.381, 0.5958, 76.81),
    (1.55, 0.406, 0.5447, 74.82),
    (1.54, 0.254, 0.6973, 80.51),
    (1.64, 0.254, 0.7142, 81.09),
];

#[test]
fn real_screens() {
    for (spacing, wire, openness, cut_off) in SCREENS {
        let net = Net { ratio: wire / spacing, reflect: grey(0.08), transmit: Rgb::ZERO };
        near(f64::from(net.openness()), openness, 5e-5);
        near(f64::from(net.cut_off()).to_degrees(), cut_off, 5e-3);
        near(degrees(f64::from(net.ratio), cut_off + 0.01, 0.0), 0.0, 0.0);
        assert!(degrees(f64::from(net.ratio), cut_off - 0.1, 0.0) > 0.0);
        near(at(&net.sheet().unwrap().through, 0.0), openness, 5e-5);
    }
}

/// The law for insect screens of ASHRAE 1311-RP (IS_BEAM): a fit to measurements, so only near the geometry.
#[test]
fn measured_screens() {
    for (spacing, wire, openness, cut_off) in SCREENS {
        let through = black_net(wire / spacing).through;
        for theta in [0.0, 15.0, 30.0, 45.0, 60.0] {
            let power = -0.45 * openness.ln() + 0.1;
            let fit = openness * (FRAC_PI_2 * theta / cut_off).cos().powf(power);
            near(at(&through, theta), fit, 0.02);
        }
    }
}

/// LBNL Windows-CalcEngine, WovenCell1-3 with threads of τ 0.08, ρ 0.9: how threads share scattered light between the
/// two sides depends on their model, but what they scatter in all is what does not pass. Their (direct-direct,
/// direct-diffuse through, direct-diffuse back).
#[test]
fn threads_scatter_what_does_not_pass() {
    let net = Net { ratio: 1.0 / 3.0, reflect: grey(0.9), transmit: grey(0.08) }.sheet().unwrap();
    for (theta, through, back) in [(0.0, 0.045908, 0.478783), (45.0, 0.114759, 0.501635), (78.0, 0.109392, 0.870608)] {
        let ours = at(&net.faces[0].reflect, theta) + at(&net.faces[0].diffuse, theta);
        near(ours / (through + back), 1.0, 0.04);
    }
}
