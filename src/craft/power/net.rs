//! A supply with the tree of cables that it feeds.

use super::{
    conductor::{WORKING_C, ohms_per_m},
    draw::{ADAPTER, Draw},
    flow::{Branch, Flow, constant_current, constant_power},
    place,
};
use crate::scene::{Cable, Catalogue, Gauge, Supply, SupplyKind, Yard};
use glam::DVec3;

/// A cable in its tree.
pub(super) struct Line<'a> {
    pub cable: &'a Cable,
    /// The line that it begins at the end of; the supply where `None`.
    pub parent: Option<usize>,
    /// Every corner of its way.
    pub way: Vec<DVec3>,
    pub length_m: f64,
    /// What is drawn at its end, W, running and starting.
    pub watts: [f64; 2],
    pub gauge: Gauge,
}

/// A supply with what it feeds.
pub(super) struct Net<'a> {
    pub supply: &'a Supply,
    /// Parents before children.
    pub lines: Vec<Line<'a>>,
    /// What is plugged straight into it, W, running and starting.
    pub direct: [f64; 2],
}

/// What a net carries.
pub(super) struct Carried {
    /// By line, as devices that keep their watts settle; the usual figure where they cannot.
    pub flows: Vec<Flow>,
    /// By line, the usual figure.
    pub simple: Vec<Flow>,
    /// By line, whether it can hand over what is drawn.
    pub holds: Vec<bool>,
}

/// Every net of a yard, those fed by another before that.
pub(super) fn nets<'a>(yard: &'a Yard, catalogue: &Catalogue) -> Vec<Net<'a>> {
    let stands = |supply: &&Supply| !yard.is_hidden(&supply.name.0);
    let (outlets, low): (Vec<_>, Vec<_>) =
        yard.supplies.iter().filter(stands).partition(|supply| supply.kind.is_mains());
    let mut all: Vec<Net> = Vec::new();
    for supply in low.into_iter().chain(outlets) {
        let net = Net::of(yard, catalogue, supply, &all);
        all.push(net);
    }
    all
}

impl<'a> Net<'a> {
    fn of(yard: &'a Yard, catalogue: &Catalogue, supply: &'a Supply, done: &[Net<'_>]) -> Self {
        let plugged = done.iter().filter(|low| match &low.supply.kind {
            SupplyKind::TwelveVolt(one) => one.from.as_ref().is_some_and(|from| from.0 == supply.name.0),
            _ => false,
        });
        let direct = plugged.map(Net::mains_w).fold([0.0; 2], |a, b| [a[0] + b[0], a[1] + b[1]]);
        let mut net = Self { supply, lines: Vec::new(), direct };
        let mut begins: Vec<(Option<usize>, &str)> = vec![(None, supply.name.0.as_str())];
        while let Some((parent, at)) = begins.pop() {
            for cable in yard.cables.iter().filter(|cable| cable.from.0 == at && !yard.is_hidden(&cable.name.0)) {
                let Some(way) = place::way(yard, cable) else { continue };
                if net.lines.iter().any(|line| line.cable.name == cable.name) {
                    continue;
                }
                let watts = drawn(yard, catalogue, &cable.to.0, &supply.kind, done);
                let length_m = place::length(&way, cable);
                net.lines.push(Line { cable, parent, way, length_m, watts, gauge: cable.gauge });
                let index = Some(net.lines.len() - 1);
                begins.push((index, &cable.name.0));
                // What leaves a supply of its own is another net.
                if !yard.supplies.iter().any(|other| other.name.0 == cable.to.0) {
                    begins.push((index, &cable.to.0));
                }
            }
        }
        net
    }

    /// What a supply of low voltage draws from the mains, W, running and starting.
    fn mains_w(&self) -> [f64; 2] {
        [self.running_w(), self.starting_w()].map(|watts| watts / ADAPTER)
    }

    fn tree(&self) -> Vec<Branch> {
        let branch = |line: &Line| Branch {
            parent: line.parent,
            ohms: 2.0 * line.length_m * ohms_per_m(line.gauge, line.cable.solid, WORKING_C),
            watts: line.watts[0],
        };
        self.lines.iter().map(branch).collect()
    }

    /// What it carries, all running.
    pub fn carried(&self) -> Carried {
        let (volts, tree) = (self.supply.kind.volts(), self.tree());
        let simple = constant_current(volts, &tree);
        let (mut flows, mut holds) = (simple.clone(), vec![true; tree.len()]);
        // The supply keeps its volts, so that what one cable from it cannot hand over is nothing to the next.
        for root in (0..tree.len()).filter(|line| tree[*line].parent.is_none()) {
            let own: Vec<usize> = (0..tree.len()).filter(|end| self.leads_to(root, *end)).collect();
            let place = |line: usize| own.iter().position(|one| *one == line);
            let branch = |line: &usize| Branch { parent: tree[*line].parent.and_then(place), ..tree[*line] };
            let settled = constant_power(volts, &own.iter().map(branch).collect::<Vec<_>>());
            for (at, line) in own.iter().enumerate() {
                match &settled {
                    Some(settled) => flows[*line] = settled[at],
                    None => holds[*line] = false,
                }
            }
        }
        Carried { flows, simple, holds }
    }

    /// What it gives, all running, W; what its cables lose included.
    pub fn running_w(&self) -> f64 {
        let carried = self.carried();
        let roots = self.lines.iter().zip(&carried.flows).filter(|(line, _)| line.parent.is_none());
        self.direct[0] + self.supply.kind.volts() * roots.map(|(_, flow)| flow.amps).sum::<f64>()
    }

    /// What it gives while all start at once, as they do when power comes back, W; without what cables lose.
    pub fn starting_w(&self) -> f64 {
        self.direct[1] + self.lines.iter().map(|line| line.watts[1]).sum::<f64>()
    }

    /// Whether a line lies on the way to another, or is it.
    pub fn leads_to(&self, line: usize, end: usize) -> bool {
        std::iter::successors(Some(end), |at| self.lines[*at].parent).any(|at| at == line)
    }
}

/// What is drawn at a cable's end, W, running and starting.
fn drawn(yard: &Yard, catalogue: &Catalogue, name: &str, supply: &SupplyKind, done: &[Net]) -> [f64; 2] {
    if yard.is_hidden(name) {
        return [0.0; 2];
    }
    if let Some(station) = yard.stations.iter().find(|station| station.name.0 == name) {
        return if station.on { Draw::of(yard, catalogue, station).at(supply) } else { [0.0; 2] };
    }
    if let Some(low) = done.iter().find(|net| net.supply.name.0 == name) {
        return low.mains_w();
    }
    let lamp = yard.lamps.iter().find(|lamp| lamp.name.0 == name);
    let watts = lamp.and_then(|lamp| lamp.watts).map_or(0.0, |watts| watts.0);
    [watts; 2]
}
