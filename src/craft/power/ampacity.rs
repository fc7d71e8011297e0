//! What a cord may carry, the sizes that are sold, and the fuses that go before them.

use super::conductor::area_mm2;
use crate::scene::Gauge;

/// Conductor, A with two of them carrying, A with three: flexible cord after NEC Table 400.5(A), 16 to 10 AWG as a secondary page quotes
/// it, 18 AWG from a consumer guide and from memory; 0.75 mm² is the 6 A that its cord sets are sold for (IEC 60799, from memory).
const CORDS: [(Gauge, f64, f64); 6] = [
    (Gauge::Awg(10), 30.0, 25.0),
    (Gauge::Awg(12), 25.0, 20.0),
    (Gauge::Awg(14), 18.0, 15.0),
    (Gauge::Awg(16), 13.0, 10.0),
    (Gauge::Awg(18), 10.0, 7.0),
    (Gauge::Mm2(0.75), 6.0, 6.0),
];

/// Sizes to buy, thinnest first.
const AWG: [Gauge; 6] = [Gauge::Awg(18), Gauge::Awg(16), Gauge::Awg(14), Gauge::Awg(12), Gauge::Awg(10), Gauge::Awg(8)];
const MM2: [Gauge; 7] = [
    Gauge::Mm2(0.75),
    Gauge::Mm2(1.0),
    Gauge::Mm2(1.5),
    Gauge::Mm2(2.5),
    Gauge::Mm2(4.0),
    Gauge::Mm2(6.0),
    Gauge::Mm2(10.0),
];

/// Fuses to buy, A: blade fuses of vehicles (ISO 8820-3, from memory).
const FUSES: [f64; 13] = [1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0];

/// What a cable may carry, A: that of the next thinner conductor listed, never a value between; of one that does not lie open the lower
/// column. `None` for one thinner than all.
pub fn ampacity_a(gauge: Gauge, cord: bool) -> Option<f64> {
    let area = area_mm2(gauge);
    let row = CORDS.iter().find(|(listed, ..)| area_mm2(*listed) <= area * (1.0 + 1e-9))?;
    Some(if cord { row.1 } else { row.2 })
}

/// The sizes that are sold in the notation of one, thinnest first.
pub fn sizes(like: Gauge) -> &'static [Gauge] {
    match like {
        Gauge::Awg(_) => &AWG,
        Gauge::Mm2(_) => &MM2,
    }
}

/// The fuse to buy for `amps`, A: the least that `over` times as much does not blow, if the cable behind it carries that.
pub fn fuse_a(amps: f64, over: f64, cable_a: f64) -> Option<f64> {
    FUSES.into_iter().find(|fuse| *fuse >= over * amps).filter(|fuse| *fuse <= cable_a)
}
