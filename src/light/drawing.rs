//! What a picture has of the cells of its raster: strokes are finer than cells, so figure and ground are told apart, share and light.

use super::{
    Rgb,
    cells::{self, GOLDEN, PLASTIC, RASTER},
    luma,
};
use crate::frames::Frame;
use glam::{DMat3, DVec2, Mat3, Vec3};
use std::{
    ops::Range,
    sync::{Arc, OnceLock},
};

/// What a picture has of a cell of its raster.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Drawn {
    /// What the figure has of it: texels that as drawn are brighter than a tenth of the picture's peak. Neither pixels nor focus change that.
    pub figure: Option<Area>,
    /// What it leaves.
    pub ground: Option<Area>,
}

impl Drawn {
    /// Mean light of the picture over the cell; full white is 1.
    pub fn light(&self) -> Rgb {
        [self.figure, self.ground].into_iter().flatten().map(|area| area.share * area.light).sum()
    }
}

/// A part of a cell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Share of the cell that it covers, above 0; where texels lie aslant, as near to that as whole texels come.
    pub share: f32,
    /// Mean light of the picture there, as coarse as its pixels and as blurred as its focus make it; full white is 1.
    pub light: Rgb,
    /// A place of it in the raster where about as much is thrown as there is on average.
    pub uv: [f32; 2],
}

/// Texels of a cell each way that are looked at one by one; of more, one in two, in three and so on, as no pixel is so fine.
const MOST: usize = 64;
/// Places each way of a cell that is smaller than a texel.
const PLACES: [usize; 2] = [6, 6];
/// What is thrown at a place that stands for others may differ so far from their mean, over that.
const NEAR: f32 = 0.1;
/// Places that are told of a part of a cell.
const TOLD: usize = 16;

/// A picture in its raster, cell by cell. It hangs on nothing but the picture and how that lies in the raster, so it is made once.
#[derive(Debug)]
pub struct Drawing {
    frame: Arc<Frame>,
    map: [Vec3; 3],
    picture_from_raster: DMat3,
    raster_from_picture: DMat3,
    /// The cells for each level of the picture's pyramid, made when first asked for.
    levels: Vec<OnceLock<Box<[OnceLock<Drawn>]>>>,
    /// Places of each cell, likewise.
    places: OnceLock<Box<[OnceLock<Places>]>>,
}

/// Places of a cell's figure and of its ground.
type Places = [Box<[[f32; 2]]>; 2];

/// Places of one kind in a cell.
#[derive(Default)]
struct Kind {
    /// Light of the picture, summed over the places by their weight.
    sum: Rgb,
    /// The weight of all places.
    weight: f32,
    /// The places in the raster, and the light there.
    places: Vec<([f32; 2], f32)>,
}

/// A place that is looked at.
struct Look {
    /// In the raster.
    uv: [f32; 2],
    /// In the picture; `None` beside that, where all is black.
    st: Option<[f32; 2]>,
    /// The share of the cell that it stands for.
    weight: f32,
    /// Whether it is the middle of a texel.
    is_texel: bool,
}

/// How a cell lies over the picture.
struct Lie {
    /// How far it reaches across and down, in texels.
    reach: [DVec2; 2],
    /// Texels from one that is looked at to the next.
    step: usize,
    /// Whether it is as large as a texel.
    is_coarse: bool,
}

impl Kind {
    fn take(&mut self, Look { uv, weight, .. }: Look, light: Rgb) {
        self.sum += weight * light;
        self.weight += weight;
        self.places.push((uv, luma(light)));
    }

    /// As a part of its cell, of which so much at most is left for it.
    fn area(&self, left: f32) -> Option<Area> {
        let light = self.sum / self.weight.max(f32::MIN_POSITIVE);
        let (uv, _) = self.places[typical_place(&self.places, luma(light))?];
        let share = self.weight.min(left);
        (share > 0.0).then_some(Area { share, light, uv })
    }
}

/// Of places with their light the index of the one next to their middle that has about this mean.
pub fn typical_place(places: &[([f32; 2], f32)], mean: f32) -> Option<usize> {
    let off = |(_, light): &([f32; 2], f32)| (light - mean).abs();
    let least = places.iter().map(off).min_by(f32::total_cmp)?;
    let middle = [0, 1].map(|axis| places.iter().map(|(uv, _)| uv[axis]).sum::<f32>() / places.len() as f32);
    let apart = |(uv, _): &&([f32; 2], f32)| (uv[0] - middle[0]).powi(2) + (uv[1] - middle[1]).powi(2);
    let near = (0..places.len()).filter(|at| off(&places[*at]) <= least.max(NEAR * mean));
    near.min_by(|a, b| apart(&&places[*a]).total_cmp(&apart(&&places[*b])))
}

impl Drawing {
    /// A picture in a raster; the rows of `map` take `(u, v, 1)` of the raster to the picture's own coordinates, projectively.
    pub fn of(frame: Arc<Frame>, map: [Vec3; 3]) -> Self {
        let [a, b, c] = map;
        let picture_from_raster = Mat3::from_cols(a, b, c).transpose().as_dmat3();
        let levels = frame.levels.iter().map(|_| OnceLock::new()).collect();
        Self {
            frame,
            map,
            picture_from_raster,
            raster_from_picture: picture_from_raster.inverse(),
            levels,
            places: OnceLock::new(),
        }
    }

    /// Whether it is that picture, lying that way.
    pub fn is_of(&self, frame: &Arc<Frame>, map: [Vec3; 3]) -> bool {
        Arc::ptr_eq(&self.frame, frame) && self.map == map
    }

    /// What the picture has of a cell where it is blurred so far as this level of its pyramid says. Light between two levels is a blend,
    /// so means are too.
    pub fn drawn(&self, cell: usize, level: f32) -> Drawn {
        let level = level.clamp(0.0, (self.levels.len() - 1) as f32);
        let (fine, part) = (level.floor(), level.fract());
        let here = self.at(cell, fine as usize);
        if part == 0.0 {
            return here;
        }
        let coarse = self.at(cell, fine as usize + 1);
        let blend = |here: Option<Area>, coarse: Option<Area>| {
            here.map(|area| Area {
                light: coarse.map_or(area.light, |other| area.light.lerp(other.light, part)),
                ..area
            })
        };
        Drawn { figure: blend(here.figure, coarse.figure), ground: blend(here.ground, coarse.ground) }
    }

    /// Places of a cell's figure and of its ground, spread evenly over each: so many that an edge through the cell cuts them as it cuts
    /// the whole.
    pub fn places(&self, cell: usize) -> &Places {
        self.places.get_or_init(empty)[cell].get_or_init(|| self.spread(cell))
    }

    fn spread(&self, cell: usize) -> Places {
        let mut kinds: [Vec<Look>; 2] = Default::default();
        self.each(cell, &self.lie(cell), &mut |look| {
            let is_figure = look.st.is_some_and(|[s, t]| self.frame.is_figure(s, t));
            kinds[usize::from(!is_figure)].push(look);
        });
        kinds.map(|all| {
            let whole: f64 = all.iter().map(|look| f64::from(look.weight)).sum();
            // As many stretches of rows, and of each one place, at all its parts and at all parts of a texel in turn; in each cell other
            // ones, so that along an edge the cells make up for each other.
            let (mut at, mut passed) = (0, 0.0);
            let mut place = |i: usize| {
                let [along, across, down] =
                    [GOLDEN, PLASTIC[0], PLASTIC[1]].map(|step| ((i + cell) as f64 * step).fract());
                let wanted = (i as f64 + along) / TOLD as f64 * whole;
                while at + 1 < all.len() && passed + f64::from(all[at].weight) < wanted {
                    passed += f64::from(all[at].weight);
                    at += 1;
                }
                self.within(&all[at], [across, down])
            };
            if all.is_empty() { Box::default() } else { (0..TOLD).map(&mut place).collect() }
        })
    }

    /// A place of a texel that is looked at, by its part across and down, 0 to 1; of what is larger than a cell its place.
    fn within(&self, look: &Look, part: [f64; 2]) -> [f32; 2] {
        let Some(st) = look.st.filter(|_| look.is_texel) else { return look.uv };
        let (width, height) = self.frame.size();
        let off = [(part[0] - 0.5) / f64::from(width), (part[1] - 0.5) / f64::from(height)];
        let st = DVec2::new(f64::from(st[0]) + off[0], f64::from(st[1]) + off[1]);
        through(self.raster_from_picture, st).as_vec2().to_array()
    }

    fn at(&self, cell: usize, level: usize) -> Drawn {
        *self.levels[level].get_or_init(empty)[cell].get_or_init(|| self.cell(cell, level))
    }

    fn cell(&self, cell: usize, level: usize) -> Drawn {
        let lie = self.lie(cell);
        if self.is_black(cell, &lie, level) {
            return Drawn {
                figure: None,
                ground: Some(Area { share: 1.0, light: Rgb::ZERO, uv: cells::middle(cell) }),
            };
        }
        let (mut figure, mut ground) = (Kind::default(), Kind::default());
        let texels = &self.frame.levels[level];
        let corners = cells::corners(cell).map(|uv| through(self.picture_from_raster, DVec2::from(uv.map(f64::from))));
        // A texel that lies aslant may have its middle beside the cell.
        let margin = 1.0 / DVec2::new(f64::from(texels.width), f64::from(texels.height));
        let low = corners.into_iter().fold(DVec2::MAX, DVec2::min) - margin;
        let high = corners.into_iter().fold(DVec2::MIN, DVec2::max) + margin;
        let coarse = (level > 0).then(|| texels.opened(low.as_vec2().into(), high.as_vec2().into()));
        self.each(cell, &lie, &mut |look| match look.st {
            Some([s, t]) => {
                let light = match &coarse {
                    Some(texels) => texels.sample(s, t),
                    None if lie.is_coarse => texels.nearest(s, t),
                    None => texels.sample(s, t),
                };
                let kind = if self.frame.is_figure(s, t) { &mut figure } else { &mut ground };
                kind.take(look, light);
            }
            None => ground.take(look, Rgb::ZERO),
        });
        let figure = figure.area(f32::MAX);
        let left = 1.0 - figure.map_or(0.0, |area| area.share);
        // What rounding leaves is no ground.
        Drawn { figure, ground: ground.area(if left > 1e-4 { left } else { 0.0 }) }
    }

    fn lie(&self, cell: usize) -> Lie {
        let [u, v] = cells::middle(cell).map(f64::from);
        let half = [0.5 / RASTER.0 as f64, 0.5 / RASTER.1 as f64];
        let from = |u: f64, v: f64| self.texel_at(DVec2::new(u, v));
        let reach = [from(u + half[0], v) - from(u - half[0], v), from(u, v + half[1]) - from(u, v - half[1])];
        Lie {
            reach,
            step: (reach[0].length().max(reach[1].length()) as usize).div_ceil(MOST).max(1),
            is_coarse: reach[0].abs().max(reach[1].abs()).min_element() >= 1.0,
        }
    }

    fn texel_at(&self, uv: DVec2) -> DVec2 {
        let (width, height) = self.frame.size();
        through(self.picture_from_raster, uv) * DVec2::new(f64::from(width), f64::from(height))
    }

    /// Looks at a cell: texel by texel, or where texels are larger than it, at places all over it.
    fn each(&self, cell: usize, lie: &Lie, take: &mut impl FnMut(Look)) {
        let inside = |st: DVec2| st.cmpge(DVec2::ZERO).all() && st.cmple(DVec2::ONE).all();
        let corners = cells::corners(cell).map(|uv| DVec2::from(uv.map(f64::from)));
        // A cell that is hardly larger than a texel and lies aslant may hold the middle of none.
        let mut is_told = false;
        if lie.is_coarse {
            self.texels(cell, lie, &mut |look| {
                is_told = true;
                take(look);
            });
            if is_told && corners.iter().all(|uv| inside(through(self.picture_from_raster, *uv))) {
                return;
            }
        }
        let weight = 1.0 / (PLACES[0] * PLACES[1]) as f32;
        for uv in cells::grid(cell, PLACES) {
            let st = through(self.picture_from_raster, DVec2::from(uv.map(f64::from)));
            let st = inside(st).then(|| st.to_array().map(|at| at as f32));
            if st.is_none() || !is_told {
                take(Look { uv, st, weight, is_texel: false });
            }
        }
    }

    /// The texels of a cell. Where rows of texels lie along rows of cells a texel counts by its part in the cell, else it lies in the
    /// one cell that has its middle.
    fn texels(&self, cell: usize, lie: &Lie, take: &mut impl FnMut(Look)) {
        let (width, height) = self.frame.size();
        let corners = cells::corners(cell).map(|uv| self.texel_at(DVec2::from(uv.map(f64::from))));
        let (low, high) =
            corners.iter().fold((DVec2::MAX, DVec2::MIN), |(low, high), at| (low.min(*at), high.max(*at)));
        let range = |low: f64, high: f64, count: u32| -> Range<usize> {
            low.floor().max(0.0) as usize..high.ceil().clamp(0.0, f64::from(count)) as usize
        };
        let Lie { reach: [across, down], step, .. } = *lie;
        let whole = across.perp_dot(down).abs() / (step * step) as f64;
        let turned = |way: DVec2| way.abs().min_element() > 1e-6 * way.length();
        let cut = step == 1 && !turned(across) && !turned(down);
        let part = |at: usize, low: f64, high: f64| (high.min(at as f64 + 1.0) - low.max(at as f64)).max(0.0);
        for row in range(low.y, high.y, height).filter(|row| row % step == 0) {
            for column in range(low.x, high.x, width).filter(|column| column % step == 0) {
                let st = [(column as f64 + 0.5) / f64::from(width), (row as f64 + 0.5) / f64::from(height)];
                let uv = through(self.raster_from_picture, DVec2::from(st)).to_array();
                let weight = if cut {
                    part(column, low.x, high.x) * part(row, low.y, high.y)
                } else {
                    f64::from(u8::from(cells::cell_at(uv) == Some(cell)))
                };
                if weight > 1e-6 {
                    let st = Some(st.map(|at| at as f32));
                    let weight = (weight / whole) as f32;
                    take(Look { uv: uv.map(|at| at as f32), st, weight, is_texel: true });
                }
            }
        }
    }

    /// Whether nothing is thrown in a cell at a level: most of a picture is black, and one look tells so.
    fn is_black(&self, cell: usize, Lie { reach: [across, down], .. }: &Lie, level: usize) -> bool {
        // Texels twice as large as the cell, of which the four around its middle are blended, cover it however it lies.
        let of_cell = (across.length().max(down.length()).max(1.0) as f32).log2().ceil() + 1.0;
        let level = of_cell.max(level as f32 + 2.0);
        let [s, t] = through(self.picture_from_raster, DVec2::from(cells::middle(cell).map(f64::from))).to_array();
        self.frame.sample(s as f32, t as f32, level) == Rgb::ZERO
    }
}

/// A place in a list for each cell.
fn empty<T>() -> Box<[OnceLock<T>]> {
    (0..RASTER.0 * RASTER.1).map(|_| OnceLock::new()).collect()
}

/// A place by a projective map.
fn through(map: DMat3, at: DVec2) -> DVec2 {
    let at = map * at.extend(1.0);
    at.truncate() / at.z
}
