//! Light that goes back and forth between layers: a pile of plates, by net radiation.

/// One layer and one component of light (a beam of one polarisation, or diffuse light): shares of what arrives on its
/// front and on its back.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Slab {
    /// Share that comes through, arriving on the front, on the back.
    pub through: [f64; 2],
    /// Share that is thrown back, arriving on the front, on the back.
    pub reflect: [f64; 2],
}

impl Slab {
    /// A layer whose two sides are alike.
    pub fn even(through: f64, reflect: f64) -> Self {
        Self { through: [through; 2], reflect: [reflect; 2] }
    }
}

/// One layer with beam and diffuse light, where a beam may turn diffuse but diffuse light never forms a beam.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Mixed {
    /// Beam to beam.
    pub beam: Slab,
    /// Beam to diffuse.
    pub scatter: Slab,
    /// Diffuse to diffuse.
    pub diffuse: Slab,
}

/// What arrives on the front and on the back of each layer.
///
/// `outside` is what comes from before the first layer and from behind the last; `emitted` is what each layer gives off
/// by itself to the front and to the back, one entry a layer.
pub fn irradiances(slabs: &[Slab], outside: [f64; 2], emitted: &[[f64; 2]]) -> Vec<[f64; 2]> {
    // Going down the pile, what falls on the layer below is written `fixed + returned · (what rises from below)`.
    let mut down = Vec::with_capacity(slabs.len());
    let (mut fixed, mut returned) = (outside[0], 0.0);
    for (slab, own) in slabs.iter().zip(emitted) {
        let rounds = bounces(returned * slab.reflect[0]);
        // What falls on this layer, as the same kind of sum over what rises on its back.
        let front = rounds * (fixed + returned * own[0]);
        let lift = rounds * returned * slab.through[1];
        down.push((front, lift));
        fixed = slab.through[0] * front + own[1];
        returned = slab.through[0] * lift + slab.reflect[1];
    }
    let mut back = outside[1];
    let mut found = vec![[0.0; 2]; slabs.len()];
    for (k, slab) in slabs.iter().enumerate().rev() {
        let front = down[k].0 + down[k].1 * back;
        found[k] = [front, back];
        back = slab.through[1] * back + slab.reflect[0] * front + emitted[k][0];
    }
    found
}

/// What leaves the pile to the front and to the back, `arriving` being what [`irradiances`] answered for the same pile.
pub fn leaving(slabs: &[Slab], outside: [f64; 2], emitted: &[[f64; 2]], arriving: &[[f64; 2]]) -> [f64; 2] {
    let gives = |k: usize, side: usize| {
        let (slab, light) = (slabs[k], arriving[k]);
        slab.reflect[side] * light[side] + slab.through[1 - side] * light[1 - side] + emitted[k][side]
    };
    match slabs.len() {
        // Without a layer the light of one side simply goes over to the other.
        0 => [outside[1], outside[0]],
        n => [gives(0, 0), gives(n - 1, 1)],
    }
}

/// The whole pile as one layer, for one component of light.
pub fn pile(slabs: &[Slab]) -> Slab {
    let dark = vec![[0.0; 2]; slabs.len()];
    let mut whole = Slab::default();
    for side in 0..2 {
        let outside = from_side(side);
        let out = leaving(slabs, outside, &dark, &irradiances(slabs, outside, &dark));
        whole.reflect[side] = out[side];
        whole.through[side] = out[1 - side];
    }
    whole
}

/// The whole pile as one layer, for beam and diffuse light.
pub fn pile_mixed(layers: &[Mixed]) -> Mixed {
    let beams: Vec<Slab> = layers.iter().map(|layer| layer.beam).collect();
    let diffuse: Vec<Slab> = layers.iter().map(|layer| layer.diffuse).collect();
    let dark = vec![[0.0; 2]; layers.len()];
    let mut whole = Mixed { beam: pile(&beams), scatter: Slab::default(), diffuse: pile(&diffuse) };
    for side in 0..2 {
        let met = irradiances(&beams, from_side(side), &dark);
        let emitted: Vec<[f64; 2]> = layers
            .iter()
            .zip(&met)
            .map(|(layer, light)| {
                let Slab { through, reflect } = layer.scatter;
                [reflect[0] * light[0] + through[1] * light[1], reflect[1] * light[1] + through[0] * light[0]]
            })
            .collect();
        let out = leaving(&diffuse, [0.0; 2], &emitted, &irradiances(&diffuse, [0.0; 2], &emitted));
        whole.scatter.reflect[side] = out[side];
        whole.scatter.through[side] = out[1 - side];
    }
    whole
}

/// Light of 1 from before the pile (side 0) or from behind it (side 1).
pub(super) fn from_side(side: usize) -> [f64; 2] {
    if side == 0 { [1.0, 0.0] } else { [0.0, 1.0] }
}

/// The sum `1 + q + q² + …` of light that bounces between two faces. Between perfect mirrors it has no end, but
/// neither has any light got in.
fn bounces(q: f64) -> f64 {
    if q < 1.0 { 1.0 / (1.0 - q) } else { 0.0 }
}
