//! The night as the shader's records. Strides and rows are those in `night/head.wgsl`.

use bytemuck::Zeroable;
use gauzelight::{
    frames,
    geometry::{Node, Outline},
    light::{Beam, Glow, LightPoint, Night, Optic, Rgb, SKY_VALUES, VeilSort},
    optics::{Curve, Over, STEPS, Spread},
};
use glam::{Vec3, Vec4};
use std::{collections::BTreeMap, sync::Arc};

const GAIN_ROW: usize = 256;
const VEIL_STRIDE: usize = 45;
/// No tree, no skip.
pub const NONE: u32 = u32::MAX;

/// What changes only when the yard is rebuilt.
pub struct ScenePack {
    /// Nodes of both trees, four rows each: the boxes of both children and the words that name them.
    pub nodes: Vec<Vec4>,
    /// Triangles: corners with their sky shares, reflectance.
    pub solids: Vec<Vec4>,
    /// See-through things and mirrors.
    pub veils: Vec<Vec4>,
    /// Angular tables, then the spreads of lamps.
    pub tables: Vec<Vec4>,
    /// Word of the opaque tree's root.
    pub solid_root: u32,
    /// Word of the see-through tree's root.
    pub veil_root: u32,
    /// Where the spreads begin.
    pub spread_base: u32,
    /// Where each veil of the night stands in `veils`.
    place: Vec<u32>,
    /// Rows of the opaque tree, which comes first.
    solid_rows: usize,
    /// The lamps' distributions that are in the tables.
    spreads: Vec<Arc<Spread>>,
    /// Where each of them begins after `spread_base`; lamps that share one share its rows.
    spread_rows: Vec<u32>,
    /// Whether the sky is that of the open.
    open: bool,
}

/// Lights: what changes when a station is moved or switched.
pub struct LightPack {
    /// Beams, lamps, bright bodies.
    pub lights: Vec<Vec4>,
    /// How many of each.
    pub counts: Counts,
}

/// How many lights there are, and where they begin.
#[derive(Clone, Copy, Debug, Default)]
pub struct Counts {
    /// Beams.
    pub beams: u32,
    /// Lamp points.
    pub lamps: u32,
    /// Bright bodies.
    pub glows: u32,
    /// First record of the lamps.
    pub lamp_base: u32,
    /// First record of the bright bodies.
    pub glow_base: u32,
}

/// All pictures' pyramids, one after another.
pub struct TexelPack {
    /// Linear RGB in half floats, two to a word.
    pub texels: Vec<[u32; 2]>,
    /// Each picture by its address; held here so that no other picture can come to lie there.
    offsets: BTreeMap<usize, Packed>,
}

/// A packed picture.
struct Packed {
    frame: Arc<frames::Frame>,
    /// Its first texel.
    first: u32,
    /// Its finest level that is packed.
    finest: usize,
}

fn bits(value: u32) -> f32 {
    f32::from_bits(value)
}

impl ScenePack {
    /// Packs surfaces, trees and tables. Where `open`, the sky is not asked for: all gets what its slope sees in the open.
    pub fn of(night: &Night, open: bool) -> Self {
        if !open {
            night.gather();
        }
        let (solid_nodes, solid_order) = night.opaque_tree();
        if night.leaves_crowds_out() {
            eprintln!(
                "gauzelight: too many triangles for the live picture: forms of which more than four are alike are left out; a still has them"
            );
        }
        let mut nodes = Vec::new();
        let solid_root = push_tree(&mut nodes, &solid_nodes);
        let mut solids = Vec::with_capacity(solid_order.len() * 4);
        for &i in &solid_order {
            let solid = night.solid(i);
            let [a, b, c] = solid.corners;
            let sky = match open {
                true => [in_the_open((b - a).cross(c - a).normalize_or_zero()); 3],
                false => night.corner_sky(i).map(|share| f32::from(share) / 65535.0),
            };
            solids.extend(solid.corners.iter().zip(sky).map(|(corner, sky)| corner.extend(sky)));
            solids.push(solid.reflectance.extend(0.0));
        }
        keep_one(&mut solids);
        let mut pack = Self {
            solid_rows: nodes.len(),
            spreads: Vec::new(),
            spread_rows: Vec::new(),
            nodes,
            solids,
            veils: Vec::new(),
            tables: Vec::new(),
            solid_root,
            veil_root: NONE,
            spread_base: 0,
            place: Vec::new(),
            open,
        };
        pack.hang(night);
        pack
    }

    /// Whether the tables hold the distributions of the night's lamps.
    pub fn holds_lamps(&self, night: &Night) -> bool {
        let pairs = self.spreads.iter().zip(&night.lamps);
        self.spreads.len() == night.lamps.len() && pairs.into_iter().all(|(held, lamp)| Arc::ptr_eq(held, &lamp.spread))
    }

    /// Packs what is see-through, and the tables, anew; the opaque stays.
    pub fn hang(&mut self, night: &Night) {
        if !self.open {
            night.gather();
        }
        let (veil_nodes, veil_order) = night.veil_tree.binary();
        self.nodes.truncate(self.solid_rows);
        self.veil_root = push_tree(&mut self.nodes, &veil_nodes);
        self.place = vec![NONE; night.veils.len()];
        for (at, &veil) in veil_order.iter().enumerate() {
            self.place[veil as usize] = at as u32;
        }
        let mut tables = Vec::new();
        let optic_base: Vec<u32> = night.optics.iter().map(|optic| push_optic(&mut tables, optic)).collect();
        let record = |&i: &u32| veil_record(night, i, &optic_base, self.open);
        self.veils = veil_order.iter().flat_map(record).collect();
        self.spread_base = tables.len() as u32;
        self.spreads = night.lamps.iter().map(|lamp| Arc::clone(&lamp.spread)).collect();
        self.spread_rows = Vec::with_capacity(self.spreads.len());
        for (index, spread) in self.spreads.iter().enumerate() {
            let row = match self.spreads[..index].iter().position(|held| Arc::ptr_eq(held, spread)) {
                Some(first) => self.spread_rows[first],
                None => {
                    let row = tables.len() as u32 - self.spread_base;
                    tables.extend(spread.table.iter().map(|&v| Vec4::new(v, 0.0, 0.0, 0.0)));
                    row
                }
            };
            self.spread_rows.push(row);
        }
        self.tables = tables;
        for list in [&mut self.veils, &mut self.tables, &mut self.nodes] {
            keep_one(list);
        }
    }
}

/// Words that name a child: the row of its own node, or a run of items with its count in the high byte.
const COUNT_SHIFT: u32 = 24;

/// Appends a tree as nodes that hold both children's boxes, so that a walk reads each box once. Returns its root's word.
fn push_tree(rows: &mut Vec<Vec4>, tree: &[Node]) -> u32 {
    let Some(root) = tree.first() else { return NONE };
    // The place of each inner node among the rows, four apiece, in the order they stand.
    let start = rows.len() as u32;
    let mut place = vec![0u32; tree.len()];
    let mut inner = 0;
    for (node, place) in tree.iter().zip(&mut place) {
        if node.count == 0 {
            *place = start + 4 * inner;
            inner += 1;
        }
    }
    let word = |index: usize| match tree[index].count {
        0 => place[index],
        count => tree[index].first | count << COUNT_SHIFT,
    };
    for node in tree.iter().filter(|node| node.count == 0) {
        for child in [node.first as usize, node.first as usize + 1] {
            rows.push(Vec3::from(tree[child].min).extend(bits(word(child))));
            rows.push(Vec3::from(tree[child].max).extend(0.0));
        }
    }
    if root.count == 0 { start } else { word(0) }
}

/// A buffer must hold something.
fn keep_one<T: Zeroable>(list: &mut Vec<T>) {
    if list.is_empty() {
        list.push(T::zeroed());
    }
}

/// Fifteen rows: two faces of five, through, κ, gain (two rows), means. Returns where the block begins.
fn push_optic(tables: &mut Vec<Vec4>, optic: &Optic) -> u32 {
    let base = tables.len() as u32;
    let mut row = |curve: &Curve| tables.extend(curve.at.iter().map(|v| v.extend(0.0)));
    for (face, mirror) in optic.sheet.faces.iter().zip(&optic.mirror) {
        for curve in [&face.reflect, &face.diffuse, &face.reflect_shape, &face.exit_shape, mirror] {
            row(curve);
        }
    }
    row(&optic.sheet.through);
    row(&optic.kappa);
    let gain = |i: usize| Vec4::new(optic.gain.get(i).copied().unwrap_or(0.0), 0.0, 0.0, 0.0);
    tables.extend((0..GAIN_ROW).map(gain));
    let mut means = vec![Vec4::ZERO; STEPS];
    means[0] = optic.diffuse_mean[0].extend(0.0);
    means[1] = optic.diffuse_mean[1].extend(0.0);
    tables.extend(means);
    base
}

fn outline_rows(outline: &Outline) -> (u32, [Vec3; 3]) {
    match outline {
        Outline::Flat(quad) => (0, [quad.corner, quad.u, quad.v]),
        Outline::Egg { middle, radii } => (1, [*middle, *radii, Vec3::ZERO]),
        Outline::Crate { middle, half, turn } => (2, [*middle, *half, Vec3::new(turn[0], turn[1], 0.0)]),
    }
}

/// Share of the sky that a slope sees where nothing stands before it, (1 + n·y) / 2.
fn in_the_open(normal: Vec3) -> f32 {
    0.5 + 0.5 * normal.y
}

fn veil_record(night: &Night, index: u32, optic_base: &[u32], open: bool) -> Vec<Vec4> {
    let (veil, optics) = (&night.veils[index as usize], &night.optics);
    let (kind, [a, b, c]) = outline_rows(&veil.outline);
    let sort = match veil.sort {
        VeilSort::Cloth => 0,
        VeilSort::Film => 1,
        VeilSort::Pane => 2,
        VeilSort::Crown => 3,
        VeilSort::Mirror => 4,
    };
    let scatters = veil.sort != VeilSort::Mirror && optics[veil.optic as usize].scatters;
    let mut record = vec![
        Vec4::new(bits(kind), bits(sort), bits(optic_base[veil.optic as usize]), veil.mirror),
        a.extend(f32::from(scatters)),
        b.extend(0.0),
        c.extend(0.0),
    ];
    let mut sky = [0.0; (VEIL_STRIDE - 4) * 4];
    let sides = match &veil.outline {
        Outline::Flat(quad) if open => {
            let normal = quad.u.cross(quad.v).normalize_or_zero();
            Some([normal, -normal].map(|normal| [in_the_open(normal); SKY_VALUES]))
        }
        _ => night.sheet_sky(index),
    };
    if let Some(sides) = sides {
        for (side, values) in sides.iter().enumerate() {
            sky[side * SKY_VALUES..][..SKY_VALUES].copy_from_slice(values);
        }
    }
    record.extend(sky.chunks_exact(4).map(Vec4::from_slice));
    record
}

impl TexelPack {
    /// Packs the pictures of all stations, each once: at most so many texels in all, so that the largest leave out their
    /// finest levels where a card binds no more.
    pub fn of(night: &Night, most: usize) -> Self {
        let mut offsets: BTreeMap<usize, Packed> = BTreeMap::new();
        for beam in &night.beams {
            let packed = || Packed { frame: Arc::clone(&beam.frame), first: 0, finest: 0 };
            offsets.entry(address(&beam.frame)).or_insert_with(packed);
        }
        let size =
            |packed: &Packed| -> usize { packed.frame.levels[packed.finest..].iter().map(|l| l.texels.len()).sum() };
        while offsets.values().map(size).sum::<usize>() > most {
            let Some(largest) = offsets.values_mut().max_by_key(|packed| size(packed)) else { break };
            if largest.finest + 1 >= largest.frame.levels.len() {
                break;
            }
            largest.finest += 1;
        }
        if offsets.values().any(|packed| packed.finest > 0) {
            eprintln!(
                "gauzelight: this graphics driver holds fewer pixels than these pictures have; some look coarser"
            );
        }
        let mut texels = Vec::new();
        for packed in offsets.values_mut() {
            packed.first = texels.len() as u32;
            for level in &packed.frame.levels[packed.finest..] {
                let halves: &[[u32; 2]] = bytemuck::cast_slice(&level.texels);
                texels.extend_from_slice(halves);
            }
        }
        keep_one(&mut texels);
        Self { texels, offsets }
    }

    /// Whether every picture of the night is in here.
    pub fn holds(&self, night: &Night) -> bool {
        night.beams.iter().all(|beam| self.offsets.contains_key(&address(&beam.frame)))
    }
}

/// A picture is known by where it lies.
fn address(frame: &Arc<frames::Frame>) -> usize {
    Arc::as_ptr(frame) as usize
}

impl LightPack {
    /// Packs beams, lamps and bright bodies.
    pub fn of(night: &Night, scene: &ScenePack, texels: &TexelPack) -> Self {
        let mut lights = Vec::new();
        for beam in &night.beams {
            push_beam(&mut lights, beam, scene, texels);
        }
        let lamp_base = lights.len() as u32;
        for (index, lamp) in night.lamps.iter().enumerate() {
            push_lamp(&mut lights, lamp, scene.spread_rows[index]);
        }
        let glow_base = lights.len() as u32;
        for glow in &night.glows {
            push_glow(&mut lights, glow);
        }
        let counts = Counts {
            beams: night.beams.len() as u32,
            lamps: night.lamps.len() as u32,
            glows: night.glows.len() as u32,
            lamp_base,
            glow_base,
        };
        keep_one(&mut lights);
        Self { lights, counts }
    }
}

fn push_beam(lights: &mut Vec<Vec4>, beam: &Beam, scene: &ScenePack, texels: &TexelPack) {
    let lens = &beam.lens;
    let packed = texels.offsets.get(&address(&beam.frame));
    let (first, skipped) = packed.map_or((0, 0), |packed| (packed.first, packed.finest));
    let finest = &beam.frame.levels[skipped];
    // A level halves the texels across.
    let coarser = 0.5f32.powi(skipped as i32);
    let relay = |i: usize| {
        beam.relays.get(i).map_or(Vec4::ZERO, |relay| relay.lens.extend(bits(scene.place[relay.veil as usize])))
    };
    lights.extend([
        lens.at.extend(lens.w1),
        lens.right.extend(lens.h1),
        lens.up.extend(lens.shift.x),
        lens.forward.extend(lens.shift.y),
        Vec4::new(beam.power, beam.black, beam.even, beam.droop),
        Vec4::new(beam.aperture, beam.focus, beam.texels_across() * coarser, bits(beam.relays.len() as u32)),
        beam.map[0].extend(bits(first)),
        beam.map[1].extend(bits(finest.width | finest.height << 16)),
        relay(0),
        relay(1),
        beam.map[2].extend((beam.grain * coarser).max(1.0)),
    ]);
}

/// `row` is where its distribution begins among the spreads.
fn push_lamp(lights: &mut Vec<Vec4>, lamp: &LightPoint, row: u32) {
    let is_over_angle = u32::from(lamp.spread.over == Over::Angle);
    lights.extend([
        lamp.at.extend(bits(row)),
        lamp.axis.extend(bits(lamp.spread.planes as u32)),
        lamp.side.extend(bits(is_over_angle)),
        rgb(lamp.lumens),
    ]);
}

fn push_glow(lights: &mut Vec<Vec4>, glow: &Glow) {
    let (kind, [a, b, c]) = outline_rows(&glow.outline);
    lights.extend([
        Vec4::new(bits(kind), 0.0, 0.0, 0.0),
        a.extend(0.0),
        b.extend(0.0),
        c.extend(0.0),
        rgb(glow.luminance),
    ]);
}

fn rgb(colour: Rgb) -> Vec4 {
    colour.extend(0.0)
}
