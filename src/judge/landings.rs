//! A station's raster followed to where it lands: cell by cell, figure and ground apart, parted where an edge runs through a cell.

use super::{
    Landing, RASTER,
    landing::landed,
    meant::{Meant, ONE_SIDE},
};
use crate::light::{Area, Beam, Drawn, Night, Rgb, cells, luma, usual};
use rayon::prelude::*;
use std::cmp::Reverse;

/// From one cell to the next a face that is turned more than this, by its cosine, is looked at more closely: areas grow by the slant.
const BEND: f32 = 0.98;

/// A raster as it lands.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Landings {
    /// Its cells, row by row, each followed from its middle.
    pub cells: Vec<Landing>,
    /// What the figure has of the cells, by where it lands.
    pub figure: Vec<Part>,
    /// What it leaves of them where some of a cell is figure or lands elsewhere, and what else is drawn.
    ground: Vec<Part>,
    /// Light of black over that of white.
    black: f32,
}

/// A part of a cell, figure or ground, that lands on one thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// Its light, followed from a place that stands for it.
    pub landing: Landing,
    /// Share of the cell that it covers.
    pub share: f32,
    /// What is sent there on average, as a share of white: black level and picture.
    pub light: Rgb,
    /// What is sent on average over what is sent at that place.
    pub times: f32,
    /// Mean area of its places on the target over that of this one, where an edge or a bend runs through its cell; else 1.
    pub spread: f32,
    /// The box around it in the raster, its least and its greatest corner: the whole cell's, where no edge runs through that.
    pub reach: [[f32; 2]; 2],
}

impl Part {
    /// Its light, in the raster's measure.
    pub fn lumens(&self) -> f64 {
        f64::from(self.landing.white * luma(self.light))
    }

    /// Where it stands among others: the brightest first, and of those that are alike within 1 in 64 neighbours together, along the
    /// rows there and back.
    pub(super) fn order(&self) -> (Reverse<u32>, usize) {
        let (row, column) = (self.landing.cell as usize / RASTER.0, self.landing.cell as usize % RASTER.0);
        let along = if row % 2 == 0 { column } else { RASTER.0 - 1 - column };
        (Reverse(luma(self.light).to_bits() >> 17), row * RASTER.0 + along)
    }
}

impl Landings {
    /// Follows a station's raster. `beam` is the one that has met all of the station's mirrors.
    pub fn of(night: &Night, beam: &Beam, targets: &[u32]) -> Self {
        let meant = Meant::of(night, beam, targets);
        let following = Following::by(night, beam, &meant);
        let mut cells: Vec<Landing> =
            (0..RASTER.0 * RASTER.1).into_par_iter().map(|cell| following.middle(cell)).collect();
        let edges: Vec<bool> = (0..cells.len())
            .map(|cell| cells::beside(cell).any(|other| !cells[other].lands_with(&cells[cell], BEND)))
            .collect();
        cells.iter_mut().zip(edges).for_each(|(cell, edge)| cell.edge = edge);
        let parts: Vec<[Vec<Part>; 2]> = cells.par_iter_mut().map(|cell| following.parts(cell)).collect();
        let mut landings = Self { cells, black: beam.black, ..Self::default() };
        for [figure, ground] in parts {
            landings.figure.extend(figure);
            landings.ground.extend(ground);
        }
        landings
    }

    /// All of its light when it is white; cells through which an edge of anything runs are cut into equal parts.
    pub fn white(&self, night: &Night, beam: &Beam, targets: &[u32]) -> Vec<Landing> {
        let meant = Meant::of(night, beam, targets);
        let following = &Following::by(night, beam, &meant);
        let parts = |cell: Landing| {
            let index = cell.cell as usize;
            let whole = !cell.edge && cells::beside(index).all(|other| self.cells[other].ends_with(&cell));
            let white = cell.white / cells::POINTS as f32;
            let cut = cells::points(index).map(move |uv| following.landed(Landing { uv, white, ..cell }));
            whole.then_some(cell).into_iter().chain((!whole).then_some(cut).into_iter().flatten())
        };
        self.cells.par_iter().copied().flat_map_iter(parts).collect()
    }

    /// What of the figure lands on a target.
    pub fn figure_on_target(&self) -> impl Iterator<Item = &Part> + Clone {
        self.figure.iter().filter(|part| part.landing.target.is_some())
    }

    /// What of the ground lands on a target: what the figure leaves, and cells that it has nothing of.
    pub fn ground_on_target(&self) -> impl Iterator<Item = Part> {
        let mut told = vec![false; self.cells.len()];
        self.ground.iter().for_each(|part| told[part.landing.cell as usize] = true);
        let whole = self.cells.iter().filter(move |landing| !told[landing.cell as usize] && landing.is_ground());
        let whole = whole.map(|landing| Part {
            landing: *landing,
            share: 1.0,
            light: Rgb::splat(self.black),
            times: 1.0,
            spread: 1.0,
            reach: reach_of(landing.cell),
        });
        self.ground.iter().copied().chain(whole).filter(|part| part.landing.target.is_some())
    }

    /// The same as it lands on one target alone.
    #[must_use]
    pub fn only(&self, target: u32) -> Self {
        let own = |mut landing: Landing| {
            landing.target = landing.target.filter(|touch| touch.owner == target);
            landing
        };
        let landings = |list: &[Landing]| list.iter().copied().map(own).collect();
        let parts = |list: &[Part]| list.iter().map(|part| Part { landing: own(part.landing), ..*part }).collect();
        Self {
            cells: landings(&self.cells),
            figure: parts(&self.figure),
            ground: parts(&self.ground),
            black: self.black,
        }
    }
}

/// The box of a cell in the raster.
fn reach_of(cell: u32) -> [[f32; 2]; 2] {
    let [low, .., high] = cells::corners(cell as usize);
    [low, high]
}

/// What a raster is followed by.
struct Following<'a> {
    night: &'a Night,
    beam: &'a Beam,
    meant: &'a Meant<'a>,
    /// How far half a texel of the picture reaches over the raster each way.
    half_texel: [f32; 2],
}

impl<'a> Following<'a> {
    fn by(night: &'a Night, beam: &'a Beam, meant: &'a Meant) -> Self {
        let [across, down] = beam.texel();
        Self { night, beam, meant, half_texel: [0, 1].map(|axis| 0.5 * (across[axis].abs() + down[axis].abs())) }
    }

    fn landed(&self, landing: Landing) -> Landing {
        landed(self.night, self.beam, self.meant, landing)
    }

    /// A cell by its middle.
    fn middle(&self, cell: usize) -> Landing {
        let (beam, uv) = (self.beam, cells::middle(cell));
        self.landed(Landing {
            uv,
            cell: cell as u32,
            edge: false,
            picture: 0.0,
            figure: 0.0,
            white: beam.evenness(uv[0], uv[1]) / (RASTER.0 * RASTER.1) as f32,
            target: None,
            beyond: None,
            left: 0.0,
        })
    }

    /// What figure and ground have of a cell. Ground that is a whole cell, black and without an edge, is that cell.
    fn parts(&self, cell: &mut Landing) -> [Vec<Part>; 2] {
        let depth = cell.target.map_or(self.beam.focus, |touch| self.beam.depth(touch.point));
        let level = self.beam.level(self.beam.blur_at(depth), depth);
        let drawn = self.beam.drawing.drawn(cell.cell as usize, level);
        let Drawn { figure, ground } = drawn;
        cell.figure = figure.map_or(0.0, |area| area.share);
        cell.picture = luma(drawn.light());
        let is_plain = figure.is_none() && cell.picture == 0.0;
        if !cell.edge {
            let whole = |area: Area| {
                let landing = Landing { white: cell.white * area.share, uv: area.uv, ..*cell };
                let landing = if area.uv == cell.uv { landing } else { self.landed(landing) };
                self.part(landing, area, level, (reach_of(cell.cell), 1.0))
            };
            let list = |area: Option<Area>| area.map(whole).into_iter().collect();
            return [list(figure), list(ground.filter(|_| !is_plain))];
        }
        let by_thing = |area: Option<Area>, places: &[[f32; 2]]| {
            area.map_or_else(Vec::new, |area| self.by_thing(cell, area, places, level))
        };
        if is_plain {
            let places: Vec<[f32; 2]> = cells::points(cell.cell as usize).collect();
            return [Vec::new(), by_thing(ground, &places)];
        }
        let places = self.beam.drawing.places(cell.cell as usize);
        [by_thing(figure, &places[0]), by_thing(ground, &places[1])]
    }

    /// An area of a cell by the targets that its places land on.
    fn by_thing(&self, cell: &Landing, area: Area, places: &[[f32; 2]], level: f32) -> Vec<Part> {
        let landed: Vec<Landing> = places.iter().map(|uv| self.landed(Landing { uv: *uv, ..*cell })).collect();
        let mut groups: Vec<Vec<&Landing>> = Vec::new();
        for landing in &landed {
            match groups.iter_mut().find(|group| group[0].lands_with(landing, ONE_SIDE)) {
                Some(group) => group.push(landing),
                None => groups.push(vec![landing]),
            }
        }
        let part = |group: Vec<&Landing>| {
            let light = |uv: [f32; 2]| if area.light == Rgb::ZERO { 0.0 } else { self.read(uv, level) };
            let lights: Vec<_> = group.iter().map(|landing| (landing.uv, light(landing.uv))).collect();
            let uv = usual(&lights, luma(area.light))?;
            let share = area.share * group.len() as f32 / landed.len() as f32;
            let landing = **group.iter().find(|landing| landing.uv == uv)?;
            let landing = Landing { white: cell.white * share, ..landing };
            // Places are middles of texels.
            let reach = group.iter().fold([uv; 2], |[low, high], Landing { uv, .. }| {
                [
                    [0, 1].map(|axis| low[axis].min(uv[axis] - self.half_texel[axis])),
                    [0, 1].map(|axis| high[axis].max(uv[axis] + self.half_texel[axis])),
                ]
            });
            let patch = |landing: &Landing| {
                landing.target.map_or(1.0, |touch| self.beam.patch(touch.point, touch.normal, RASTER.0 * RASTER.1))
            };
            let mean = group.iter().map(|landing| patch(landing)).sum::<f32>() / group.len() as f32;
            Some(self.part(landing, Area { share, ..area }, level, (reach, mean / patch(&landing))))
        };
        groups.into_iter().filter_map(part).collect()
    }

    fn part(&self, landing: Landing, area: Area, level: f32, (reach, spread): ([[f32; 2]; 2], f32)) -> Part {
        let black = self.beam.black;
        let sent = |picture: f32| black + (1.0 - black) * picture;
        let read = if area.light == Rgb::ZERO { 0.0 } else { self.read(landing.uv, level) };
        Part {
            landing,
            share: area.share,
            light: Rgb::splat(black) + (1.0 - black) * area.light,
            times: sent(luma(area.light)) / sent(read).max(f32::MIN_POSITIVE),
            spread,
            reach,
        }
    }

    /// The picture at a place.
    fn read(&self, [u, v]: [f32; 2], level: f32) -> f32 {
        luma(self.beam.picture(u, v, level))
    }
}
