//! A station's raster followed to where it lands: cell by cell, figure and ground apart, parted where an edge runs through a cell.

use super::{
    Landing, RASTER,
    landing::landed,
    meant::{Meant, ONE_SIDE},
};
use crate::light::{Area, Beam, Drawn, Night, Rgb, cells, luma, typical_place};
use rayon::prelude::*;
use std::cmp::Reverse;

/// From one cell to the next a face that is turned more than this, by its cosine, is looked at more closely: areas grow by the slant.
const BEND: f32 = 0.98;

/// One turned no more than this is flat.
const FLAT: f32 = 0.999_999;

/// By more than this what arrives past things before the target differs only where one of them ends.
const BEFORE: f32 = 0.02;

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
    /// The luma of the same as sharp as the projector's pixels allow, wherever it lands or misses.
    pub drawn: f32,
    /// What is sent there on average over what is sent at that place.
    pub times: f32,
    /// The box around the places that it was told by, within its cell, by its least and its greatest corner in the raster; the whole
    /// cell's, where no edge runs through that.
    pub reach: [[f32; 2]; 2],
}

impl Part {
    /// Its light as it is drawn, in the raster's measure.
    pub fn lumens(&self) -> f64 {
        f64::from(self.landing.white * self.drawn)
    }

    /// Where it stands among others: the brightest first, and of those that are alike within 1 in 8 neighbours together, along the
    /// rows there and back.
    pub(super) fn order(&self) -> (Reverse<u32>, usize) {
        let (row, column) = (self.landing.cell as usize / RASTER.0, self.landing.cell as usize % RASTER.0);
        let along = if row % 2 == 0 { column } else { RASTER.0 - 1 - column };
        (Reverse(luma(self.light).to_bits() >> 20), row * RASTER.0 + along)
    }
}

impl Landings {
    /// Follows a station's raster. `beam` is the one that has met all of the station's mirrors.
    pub fn of(night: &Night, beam: &Beam, targets: &[u32]) -> Self {
        let meant = Meant::of(night, beam, targets);
        let following = Following { night, beam, meant: &meant };
        let mut cells: Vec<Landing> =
            (0..RASTER.0 * RASTER.1).into_par_iter().map(|cell| following.middle(cell)).collect();
        let all_beside =
            |cell: usize, turned: f32| cells::beside(cell).all(|other| cells[other].lands_with(&cells[cell], turned));
        let lie: Vec<Lie> = (0..cells.len())
            .map(|cell| match (all_beside(cell, BEND), all_beside(cell, FLAT)) {
                (false, _) => Lie::Edge,
                (true, false) => Lie::Bent,
                (true, true) => Lie::Flat,
            })
            .collect();
        let parts: Vec<[Vec<Part>; 2]> =
            cells.par_iter_mut().zip(lie).map(|(cell, lie)| following.parts(cell, lie)).collect();
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
        let following = &Following { night, beam, meant: &meant };
        let parts = |cell: Landing| {
            let index = cell.cell as usize;
            let alike = |other: &Landing| other.ends_with(&cell) && (other.arrives - cell.arrives).abs() <= BEFORE;
            let whole = !cell.edge && cells::beside(index).all(|other| alike(&self.cells[other]));
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
        let whole = self.cells.iter().filter(|landing| landing.is_plain()).map(|landing| Part {
            landing: *landing,
            share: 1.0,
            light: Rgb::splat(self.black),
            drawn: self.black,
            times: 1.0,
            reach: reach_of(landing.cell),
        });
        self.ground.iter().copied().chain(whole).filter(|part| part.landing.target.is_some())
    }

    /// The same as it lands on one target alone.
    #[must_use]
    pub fn only(&self, target: u32) -> Self {
        let is_own = |landing: &Landing| landing.target.is_some_and(|touch| touch.owner == target);
        let cell = |landing: &Landing| Landing { target: landing.target.filter(|_| is_own(landing)), ..*landing };
        let parts = |list: &[Part]| list.iter().filter(|part| is_own(&part.landing)).copied().collect();
        Self {
            cells: self.cells.iter().map(cell).collect(),
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

/// How the target lies that a cell lands on.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Lie {
    /// Flat, as far as the cells beside it reach.
    Flat,
    /// Bent a little.
    Bent,
    /// It ends there, or bends much.
    Edge,
}

/// What a raster is followed by.
struct Following<'a> {
    night: &'a Night,
    beam: &'a Beam,
    meant: &'a Meant<'a>,
}

impl Following<'_> {
    fn landed(&self, landing: Landing) -> Landing {
        landed(self.night, self.beam, self.meant, landing)
    }

    /// Light that leaves by another place of a cell whose target is flat: it lands where it meets that plane.
    fn beside(&self, mut landing: Landing) -> Landing {
        let [u, v] = landing.uv;
        let (from, along) = (self.beam.lens.at, self.beam.lens.direction(u, v).normalize_or_zero());
        if let Some(touch) = &mut landing.target {
            // A mirrored lens sends the same ray, as far as it has come.
            let far = (touch.point - from).dot(touch.normal) / along.dot(touch.normal);
            (touch.point, touch.along) = (from + far * along, along);
        }
        landing
    }

    /// A cell by its middle.
    fn middle(&self, cell: usize) -> Landing {
        let (beam, uv) = (self.beam, cells::middle(cell));
        self.landed(Landing {
            uv,
            cell: cell as u32,
            edge: false,
            astray: false,
            picture: 0.0,
            figure: 0.0,
            white: beam.evenness(uv[0], uv[1]) / (RASTER.0 * RASTER.1) as f32,
            target: None,
            beyond: None,
            left: 0.0,
            arrives: 1.0,
        })
    }

    /// What figure and ground have of a cell. Ground that is a whole cell, black and without an edge, is that cell.
    fn parts(&self, cell: &mut Landing, lie: Lie) -> [Vec<Part>; 2] {
        cell.edge = lie == Lie::Edge;
        let drawn = self.beam.drawing.drawn(cell.cell as usize, self.level(cell));
        cell.figure = drawn.figure.map_or(0.0, |area| area.share);
        cell.picture = luma(drawn.light());
        let areas = [drawn.figure, drawn.ground];
        if cell.is_plain() {
            return Default::default();
        }
        if lie == Lie::Edge {
            let places = self.beam.drawing.places(cell.cell as usize);
            return [0, 1]
                .map(|kind| self.by_thing(cell, kind, areas[kind].map_or(0.0, |area| area.share), &places[kind]));
        }
        [0, 1].map(|kind| {
            let whole = |area: Area| {
                let landing = Landing { white: cell.white * area.share, uv: area.uv, ..*cell };
                let landing = if lie == Lie::Flat { self.beside(landing) } else { self.landed(landing) };
                self.part(landing, kind, area.share, reach_of(cell.cell))
            };
            areas[kind].map(whole).into_iter().collect()
        })
    }

    /// A share of a cell by the things that its places land on.
    fn by_thing(&self, cell: &Landing, kind: usize, share: f32, places: &[[f32; 2]]) -> Vec<Part> {
        let places = if share > 0.0 { places } else { &[] };
        let landed: Vec<Landing> = places.iter().map(|uv| self.landed(Landing { uv: *uv, ..*cell })).collect();
        let alike = |one: &Landing, other: &Landing| {
            one.lands_with(other, ONE_SIDE) && (one.target.is_some() || one.ends_with(other))
        };
        let mut groups: Vec<Vec<&Landing>> = Vec::new();
        for landing in &landed {
            match groups.iter_mut().find(|group| alike(group[0], landing)) {
                Some(group) => group.push(landing),
                None => groups.push(vec![landing]),
            }
        }
        let [floor, roof] = reach_of(cell.cell);
        let part = |group: Vec<&Landing>| {
            let level = self.level(group[0]);
            let light = self.light(cell.cell, kind, level);
            let lights: Vec<_> = group.iter().map(|landing| (landing.uv, self.read(landing.uv, level))).collect();
            let landing = *group[typical_place(&lights, luma(light))?];
            let share = share * group.len() as f32 / landed.len() as f32;
            let span = |axis: usize, end: fn(f32, f32) -> f32| {
                group.iter().map(|landing| landing.uv[axis]).fold(landing.uv[axis], end)
            };
            let low = [0, 1].map(|axis| span(axis, f32::min).max(floor[axis]));
            let high = [0, 1].map(|axis| span(axis, f32::max).min(roof[axis]));
            let landing = Landing { white: cell.white * share, ..landing };
            Some(self.part(landing, kind, share, [low, high]))
        };
        groups.into_iter().filter_map(part).collect()
    }

    fn part(&self, landing: Landing, kind: usize, share: f32, reach: [[f32; 2]; 2]) -> Part {
        let black = self.beam.black;
        let sent = |picture: f32| black + (1.0 - black) * picture;
        let (level, cell) = (self.level(&landing), landing.cell);
        let light = self.light(cell, kind, level);
        let read = if light == Rgb::ZERO { 0.0 } else { self.read(landing.uv, level) };
        Part {
            landing,
            share,
            light: Rgb::splat(black) + (1.0 - black) * light,
            drawn: sent(luma(self.light(cell, kind, self.beam.grain.log2()))),
            times: sent(luma(light)) / sent(read).max(f32::MIN_POSITIVE),
            reach,
        }
    }

    /// The level of the picture's pyramid as it is blurred where light lands; as sharp as it can be where it meets nothing.
    fn level(&self, landing: &Landing) -> f32 {
        let beam = landing.sent_by(self.night, self.beam);
        let depth = landing.target.or(landing.beyond).map_or(beam.focus, |touch| beam.depth(touch.point));
        self.beam.level(self.beam.blur_at(depth), depth)
    }

    /// Mean light of the picture over what a cell has of a kind: 0 is figure, 1 ground.
    fn light(&self, cell: u32, kind: usize, level: f32) -> Rgb {
        let Drawn { figure, ground } = self.beam.drawing.drawn(cell as usize, level);
        [figure, ground][kind].map_or(Rgb::ZERO, |area| area.light)
    }

    /// The picture at a place.
    fn read(&self, [u, v]: [f32; 2], level: f32) -> f32 {
        luma(self.beam.picture(u, v, level))
    }
}
