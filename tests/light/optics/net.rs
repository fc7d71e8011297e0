//! Nets by plain geometry.

use gauzelight::optics::net::transmittance;
use gauzelight::optics::{Net, Rgb, Sheet};

use super::near;

fn degrees(ratio: f64, theta: f64, phi: f64) -> f64 {
    transmittance(ratio, theta.to_radians(), phi.to_radians())
}

fn black_net(ratio: f32) -> Sheet {
    Net { ratio, reflect: Rgb::ZERO, transmit: Rgb::ZERO }.sheet().unwrap()
}

/// Geometry of a square mesh; the weave repeats every quarter turn.
#[test]
fn square_mesh() {
    let third = 1.0 / 3.0;
    near(degrees(third, 30.0, 0.0), 0.410067, 1e-6);
    near(degrees(third, 60.0, 0.0), 0.222222, 1e-6);
    near(degrees(third, 45.0, 45.0), 0.350170, 1e-6);
    near(degrees(third, 54.0, 270.0), 0.288600, 1e-6);
    for phi in [0.0, 17.0, 40.0] {
        near(degrees(third, 54.0, phi), degrees(third, 54.0, phi + 90.0), 1e-12);
    }
}

/// Hemispherical means by geometry.
#[test]
fn light_from_everywhere() {
    near(f64::from(black_net(1.0 / 3.0).through.mean().x), 0.2977, 5e-5);
    near(f64::from(black_net(2.0 / 3.0).through.mean().x), 0.0388, 5e-5);
}

#[test]
fn impossible_nets_are_refused() {
    for (ratio, reflect, transmit) in [(1.1, 0.5, 0.0), (f32::NAN, 0.5, 0.0), (0.3, 0.8, 0.3), (0.3, -0.1, 0.0)] {
        let net = Net { ratio, reflect: Rgb::splat(reflect), transmit: Rgb::splat(transmit) };
        assert!(net.sheet().is_err(), "{net:?}");
    }
}
