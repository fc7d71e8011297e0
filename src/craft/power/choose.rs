//! What to buy: a cable that is thick enough, a fuse that fits.

use super::{
    ampacity::{ampacity_a, fuse_a, sizes},
    conductor::area_mm2,
    net::Net,
    report::Limits,
};
use crate::scene::Gauge;

/// The thinnest size on sale with which everything beyond a line keeps its limits, those before it on the way brought up to the same;
/// `None` where even the thickest does not.
pub(super) fn gauge(net: &mut Net, line: usize, limits: &Limits) -> Option<Gauge> {
    let own: Vec<Gauge> = net.lines.iter().map(|line| line.gauge).collect();
    let found = sizes(own[line]).iter().copied().find(|size| {
        for (index, now) in own.iter().enumerate() {
            let thinner = area_mm2(*now) < area_mm2(*size) * (1.0 - 1e-9);
            net.lines[index].gauge = if thinner && net.leads_to(index, line) { *size } else { *now };
        }
        area_mm2(*size) >= area_mm2(own[line]) * (1.0 - 1e-9) && keeps(net, line, limits)
    });
    for (line, own) in net.lines.iter_mut().zip(own) {
        line.gauge = own;
    }
    found
}

/// Whether a line may carry what it carries, and all that hangs on it gets its volts.
fn keeps(net: &Net, line: usize, limits: &Limits) -> bool {
    let carried = net.carried();
    let volts = net.supply.kind.volts();
    let most = limits.drop(&net.supply.kind);
    let gets = |index: usize| (volts - carried.flows[index].volts) / volts <= most;
    let cable = &net.lines[line];
    let bears =
        ampacity_a(cable.gauge, cable.cable.cord).unwrap_or(0.0) * limits.continuous >= carried.flows[line].amps;
    carried.holds[line] && bears && (0..net.lines.len()).filter(|end| net.leads_to(line, *end)).all(gets)
}

/// The least that any cable of a net may carry, A; of none, nothing is known.
pub(super) fn thinnest_a(net: &Net) -> Option<f64> {
    let each = net.lines.iter().map(|line| ampacity_a(line.gauge, line.cable.cord).unwrap_or(0.0));
    each.reduce(f64::min)
}

/// The fuse to buy for a net that gives so many watts, A; `None` where no fuse both carries the load and keeps the thinnest cable.
pub(super) fn fuse(net: &Net, running_w: f64, limits: &Limits) -> Option<f64> {
    fuse_a(running_w / net.supply.kind.volts(), limits.fuse_over, thinnest_a(net)?)
}
