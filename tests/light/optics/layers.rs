//! Layers: what algebra says of them.

use gauzelight::optics::pile::{Slab, irradiances};
use gauzelight::optics::{Cloth, Sheet, stack};

use super::{at, grey, matt, near};

/// Algebra: n like sheets.
#[test]
fn identical_sheets() {
    for (through, reflect, two, three) in
        [(0.25, 0.65, (0.10823, 0.72035), (0.05088, 0.73466)), (0.50, 0.35, (0.28490, 0.44972), (0.16906, 0.48343))]
    {
        let sheet = matt(through, reflect);
        for (stacked, (through, reflect)) in [(stack(&[&sheet; 2]), two), (stack(&[&sheet; 3]), three)] {
            near(at(&stacked.faces[0].diffuse, 33.0), through, 6e-6);
            near(at(&stacked.faces[1].reflect, 71.0), reflect, 6e-6);
        }
    }
}

/// Algebra: n like sheets that lose nothing pass `t/(t + n(1 − t))`.
#[test]
fn lossless_series() {
    for through in [0.25, 0.6] {
        let sheet = matt(through, 1.0 - through);
        for n in 1..=5_u32 {
            let stacked = stack(&vec![&sheet; n as usize]);
            near(at(&stacked.faces[0].diffuse, 10.0), through / (through + f64::from(n) * (1.0 - through)), 1e-6);
        }
    }
}

/// Algebra: light that a cloth lets onto the wall that it hangs before, `t/(1 − ρ_wall r)`.
#[test]
fn cloth_before_a_wall() {
    for (through, reflect, wall, wanted) in [(0.5, 0.3, 0.5, 0.588235), (0.25, 0.6, 0.8, 0.480769)] {
        let pile = [Slab::even(through, reflect), Slab::even(0.0, wall)];
        near(irradiances(&pile, [1.0, 0.0], &[[0.0; 2]; 2])[1][0], wanted, 1e-6);
    }
}

/// Which layer is in front matters, and a flipped stack is the stack of flipped sheets in the other order.
#[test]
fn order_matters() {
    let pale = Cloth { through: grey(0.3), diffuse: grey(0.3), reflect: grey(0.35) }.sheet().unwrap();
    let dark = Cloth { through: grey(0.5), diffuse: grey(0.05), reflect: grey(0.03) }.sheet().unwrap();
    let (one, other) = (stack(&[&pale, &dark]), stack(&[&dark, &pale]));
    assert!(at(&one.faces[0].reflect, 0.0) > 1.5 * at(&other.faces[0].reflect, 0.0));
    let turned = other.flipped();
    for theta in [0.0, 30.0, 60.0, 85.0] {
        near(at(&turned.faces[0].reflect, theta), at(&one.faces[0].reflect, theta), 1e-6);
        near(at(&turned.faces[1].diffuse, theta), at(&one.faces[1].diffuse, theta), 1e-6);
        near(at(&turned.through, theta), at(&one.through, theta), 1e-6);
    }
}

#[test]
fn clear_layers_change_nothing() {
    let cloth = Cloth { through: grey(0.2), diffuse: grey(0.3), reflect: grey(0.4) }.sheet().unwrap();
    let clear = Sheet::clear();
    let stacked = stack(&[&clear, &cloth, &clear]);
    for theta in [0.0, 45.0, 80.0] {
        near(at(&stacked.faces[0].reflect, theta), at(&cloth.faces[0].reflect, theta), 1e-6);
        near(at(&stacked.faces[1].diffuse, theta), at(&cloth.faces[1].diffuse, theta), 1e-6);
        near(at(&stacked.through, theta), at(&cloth.through, theta), 1e-6);
    }
}
