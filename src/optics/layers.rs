//! Layers that hang together: a sheer with a net over it, a cloth behind glass, glass with an insect screen.
//!
//! Straight and mirrored light keeps its angle from layer to layer; scattered light leaves each face with that face's
//! own shape over angle and then goes straight like any other. So each *outlet* (one way of scattering at one face)
//! needs a single unknown, how much it gives off, and the layers are solved exactly. For laws that are constant in
//! angle this is the net-radiation composition of [`super::pile`]. Unlike that, it stays reciprocal and keeps a stack
//! that loses nothing at exactly 1 in an even surround when the laws do vary.

use glam::DVec2;

use super::curve::weight;
use super::pile::{Slab, from_side, irradiances, leaving};
use super::solve::solve;
use super::{Curve, Pane, STEPS, Sheet};

/// Sheets that hang close together, the first in front, as one sheet.
pub fn stack(sheets: &[&Sheet]) -> Sheet {
    let panes: Vec<Pane> = sheets.iter().map(|&sheet| Pane::from(sheet)).collect();
    unite(&panes.iter().collect::<Vec<_>>()).sheet
}

/// Panes and sheets that stand close together, the first in front, as one pane.
pub fn unite(panes: &[&Pane]) -> Pane {
    let channels = [0, 1, 2].map(|channel| Pile::new(panes, channel).laws());
    let curve = |law: fn(&Laws) -> &[f64]| Curve::from_samples(|step| [0, 1, 2].map(|c| law(&channels[c])[step]));
    let mut sheet = Sheet::new(
        curve(|laws| &laws.reflect[0]),
        curve(|laws| &laws.reflect[1]),
        curve(|laws| &laws.diffuse[0]),
        curve(|laws| &laws.diffuse[1]),
        curve(|laws| &laws.through),
    );
    sheet.scaled = panes.iter().filter_map(|pane| pane.sheet.scaled).max_by(|a, b| a.sum.total_cmp(&b.sum));
    Pane { sheet, mirror: [curve(|laws| &laws.mirror[0]), curve(|laws| &laws.mirror[1])] }
}

/// What one channel of the united layers does, sample by sample.
struct Laws {
    reflect: [Vec<f64>; 2],
    diffuse: [Vec<f64>; 2],
    mirror: [Vec<f64>; 2],
    through: Vec<f64>,
}

/// One way in which one layer scatters light.
struct Outlet<'a> {
    layer: usize,
    /// The face that must be lit.
    lit: usize,
    /// The face by which the scattered light leaves.
    leaves: usize,
    /// Share of arriving light that is scattered so, over its angle.
    share: &'a Curve,
    /// Shape over angle of what leaves.
    shape: &'a Curve,
}

/// The layers, for one channel.
struct Pile<'a> {
    channel: usize,
    /// What each layer does to a beam, for each sample of angle.
    beams: Vec<Vec<Slab>>,
    outlets: Vec<Outlet<'a>>,
}

/// A beam of 1 set off at one angle: what it brings to each face, and what leaves at the two ends.
struct Beam {
    arriving: Vec<[f64; 2]>,
    leaving: [f64; 2],
}

impl<'a> Pile<'a> {
    fn new(panes: &[&'a Pane], channel: usize) -> Self {
        let slab = |pane: &Pane, step| Slab {
            through: [pane.sheet.through.value(step, channel); 2],
            reflect: [pane.mirror[0].value(step, channel), pane.mirror[1].value(step, channel)],
        };
        let beams = (0..STEPS).map(|step| panes.iter().map(|pane| slab(pane, step)).collect()).collect();
        let mut outlets = Vec::with_capacity(4 * panes.len());
        for (layer, pane) in panes.iter().enumerate() {
            for leaves in 0..2 {
                let (face, other) = (&pane.sheet.faces[leaves], &pane.sheet.faces[1 - leaves]);
                outlets.push(Outlet { layer, lit: leaves, leaves, share: &face.reflect, shape: &face.reflect_shape });
                outlets.push(Outlet { layer, lit: 1 - leaves, leaves, share: &other.diffuse, shape: &face.exit_shape });
            }
        }
        Self { channel, beams, outlets }
    }

    /// A beam from outside, from the front (0) or the back (1).
    fn beam_from(&self, step: usize, side: usize) -> Beam {
        self.beam(step, from_side(side), &vec![[0.0; 2]; self.beams[step].len()])
    }

    /// A beam that sets off from a face within the pile.
    fn beam_off(&self, step: usize, layer: usize, face: usize) -> Beam {
        let mut emitted = vec![[0.0; 2]; self.beams[step].len()];
        emitted[layer][face] = 1.0;
        self.beam(step, [0.0; 2], &emitted)
    }

    fn beam(&self, step: usize, outside: [f64; 2], emitted: &[[f64; 2]]) -> Beam {
        let slabs = &self.beams[step];
        let arriving = irradiances(slabs, outside, emitted);
        let leaving = leaving(slabs, outside, emitted, &arriving);
        Beam { arriving, leaving }
    }

    /// How much an outlet scatters of what a beam at this angle brings to its face.
    fn caught(&self, outlet: &Outlet, step: usize, beam: &Beam) -> f64 {
        outlet.share.value(step, self.channel) * beam.arriving[outlet.layer][outlet.lit]
    }

    /// For each outlet: how much of 1 given off by it leaves the pile at last to the front and to the back, all further
    /// scattering included.
    fn fates(&self) -> Vec<DVec2> {
        let size = self.outlets.len();
        // Row = giving outlet, column = outlet that scatters again.
        let mut system: Vec<Vec<f64>> =
            (0..size).map(|row| (0..size).map(|column| f64::from(u8::from(row == column))).collect()).collect();
        let mut direct = vec![DVec2::ZERO; size];
        for step in 0..STEPS {
            for (row, giver) in self.outlets.iter().enumerate() {
                let amount = weight(step) * giver.shape.value(step, self.channel);
                let beam = self.beam_off(step, giver.layer, giver.leaves);
                direct[row] += amount * DVec2::from(beam.leaving);
                for (column, taker) in self.outlets.iter().enumerate() {
                    system[row][column] -= amount * self.caught(taker, step, &beam);
                }
            }
        }
        solve(system, direct)
    }

    fn laws(&self) -> Laws {
        let fates = self.fates();
        let zero = || vec![0.0; STEPS];
        let two = || [zero(), zero()];
        let mut laws = Laws { reflect: two(), diffuse: two(), mirror: two(), through: zero() };
        for step in 0..STEPS {
            for side in 0..2 {
                let beam = self.beam_from(step, side);
                laws.mirror[side][step] = beam.leaving[side];
                laws.through[step] = beam.leaving[1 - side];
                for (outlet, fate) in self.outlets.iter().zip(&fates) {
                    let caught = self.caught(outlet, step, &beam);
                    laws.reflect[side][step] += caught * fate[side];
                    laws.diffuse[side][step] += caught * fate[1 - side];
                }
            }
        }
        laws
    }
}
