//! One size of a picture, and the step to the next smaller one.

use glam::{Vec2, Vec3};
use half::{f16, slice::HalfFloatSliceExt};
use rayon::prelude::*;

/// One size of a picture: linear RGB in half floats, row by row from the top.
#[derive(Debug, Clone, PartialEq)]
pub struct Level {
    /// Texels across.
    pub width: u32,
    /// Texels down.
    pub height: u32,
    /// Red, green and blue as linear light; the fourth is zero, there for the card's alignment.
    pub texels: Vec<[f16; 4]>,
}

impl Level {
    /// The light at a texel; past the edge, the edge's.
    #[cfg(test)]
    pub(super) fn texel(&self, column: i64, row: i64) -> Vec3 {
        let column = column.clamp(0, i64::from(self.width) - 1) as usize;
        let row = row.clamp(0, i64::from(self.height) - 1) as usize;
        self.light(row * self.width as usize + column)
    }

    fn light(&self, at: usize) -> Vec3 {
        // At once: that is quicker than one by one.
        let mut light = [0.0; 4];
        self.texels[at].convert_to_f32_slice(&mut light);
        Vec3::from_slice(&light)
    }

    /// The light of the texel at a point.
    pub fn nearest(&self, u: f32, v: f32) -> Vec3 {
        self.light(self.at(u, v))
    }

    /// Index of the texel at a point; past the edge, of the edge's.
    pub fn at(&self, u: f32, v: f32) -> usize {
        let [column, row] =
            [(u, self.width), (v, self.height)].map(|(at, count)| ((at * count as f32) as u32).min(count - 1));
        row as usize * self.width as usize + column as usize
    }

    /// The light at a point, from the four nearest texels.
    pub fn sample(&self, u: f32, v: f32) -> Vec3 {
        blend([self.width, self.height], [u, v], |column, row| self.light(row * self.width as usize + column))
    }

    /// A part of it that is looked at many times: all that a point of this box is blended from, its corners 0 to 1.
    pub fn opened(&self, low: [f32; 2], high: [f32; 2]) -> Opened {
        let [columns, rows] = [0, 1].map(|axis| {
            let count = [self.width, self.height][axis];
            let cut = |at: f32| (at * count as f32).clamp(0.0, count as f32) as usize;
            cut(low[axis]).saturating_sub(1)..(cut(high[axis]) + 2).min(count as usize)
        });
        let row = |row: usize| columns.clone().map(move |column| self.light(row * self.width as usize + column));
        Opened {
            size: [self.width, self.height],
            from: [columns.start, rows.start],
            across: columns.len(),
            light: rows.flat_map(row).collect(),
        }
    }
}

/// A part of a level in full floats.
pub struct Opened {
    /// Texels of the whole level.
    size: [u32; 2],
    /// Its first column and row.
    from: [usize; 2],
    /// Its columns.
    across: usize,
    light: Vec<Vec3>,
}

impl Opened {
    /// The light at a point of its box, as the level has it.
    pub fn sample(&self, u: f32, v: f32) -> Vec3 {
        let [left, top] = self.from;
        blend(self.size, [u, v], |column, row| self.light[(row - top) * self.across + column - left])
    }
}

/// The light at a point of a picture so large, from the four nearest texels by column and row; past the edge, the edge's.
#[inline]
fn blend([width, height]: [u32; 2], [u, v]: [f32; 2], light: impl Fn(usize, usize) -> Vec3) -> Vec3 {
    // The half takes texel centres, not corners, to whole numbers.
    let at = Vec2::new(u * width as f32, v * height as f32) - 0.5;
    let corner = at.floor();
    let part = at - corner;
    let cut = |at: f32, count: u32| at.clamp(0.0, (count - 1) as f32) as usize;
    let [left, right] = [corner.x, corner.x + 1.0].map(|column| cut(column, width));
    let [above, below] = [corner.y, corner.y + 1.0].map(|row| cut(row, height));
    let upper = light(left, above).lerp(light(right, above), part.x);
    let lower = light(left, below).lerp(light(right, below), part.x);
    upper.lerp(lower, part.y)
}

/// A picture in full floats, as it is while the levels are being made.
pub(super) struct Plane {
    pub width: u32,
    pub height: u32,
    pub light: Vec<Vec3>,
}

impl Plane {
    /// A picture by its texels, given by column and row.
    pub fn of(width: u32, height: u32, texel: impl Fn(u32, u32) -> Vec3 + Sync) -> Plane {
        let texel = &texel;
        let light =
            (0..height).into_par_iter().flat_map_iter(|row| (0..width).map(move |column| texel(column, row))).collect();
        Plane { width, height, light }
    }

    /// The same, halved, without ever holding the whole: of a large picture that would be most of the memory.
    pub fn halved_of(width: u32, height: u32, texel: impl Fn(u32, u32) -> Vec3 + Sync) -> Plane {
        let (short, low) = (width.div_ceil(2), height.div_ceil(2));
        Plane::of(short, low, |column, row| {
            let mut sum = Vec3::ZERO;
            for (from_row, tall) in cover(row, low, height) {
                for (from_column, wide) in cover(column, short, width) {
                    sum += texel(from_column, from_row) * (tall * wide);
                }
            }
            sum
        })
    }

    /// The picture as it will be kept.
    pub fn level(&self) -> Level {
        let texels = self
            .light
            .par_iter()
            .map(|rgb| [f16::from_f32(rgb.x), f16::from_f32(rgb.y), f16::from_f32(rgb.z), f16::ZERO])
            .collect();
        Level { width: self.width, height: self.height, texels }
    }

    /// The next smaller picture, each side halved and rounded up; nothing once it is a single texel.
    pub fn halved(&self) -> Option<Plane> {
        if self.width <= 1 && self.height <= 1 {
            return None;
        }
        let across = self.width as usize;
        Some(Plane::halved_of(self.width, self.height, |column, row| {
            self.light[row as usize * across + column as usize]
        }))
    }
}

/// The texels of a longer row that lie under texel `index` of a shorter one, with the share of it each makes up.
///
/// With an odd length the boxes cut texels in two; sharing a cut texel by area is what keeps the mean.
fn cover(index: u32, short: u32, long: u32) -> impl Iterator<Item = (u32, f32)> {
    let (index, short, long) = (u64::from(index), u64::from(short), u64::from(long));
    // In units of one long texel over `short`, so that every edge is a whole number.
    let (start, end) = (index * long, (index + 1) * long);
    (start / short..end.div_ceil(short)).map(move |texel| {
        let shared = end.min((texel + 1) * short) - start.max(texel * short);
        (texel as u32, shared as f32 / long as f32)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_even_row_is_paired_off() {
        assert_eq!(cover(1, 2, 4).collect::<Vec<_>>(), [(2, 0.5), (3, 0.5)]);
    }

    #[test]
    fn an_odd_row_shares_the_texels_it_cuts() {
        let shares: Vec<_> = (0..3).flat_map(|index| cover(index, 3, 5)).collect();
        assert_eq!(shares, [(0, 0.6), (1, 0.4), (1, 0.2), (2, 0.6), (3, 0.2), (3, 0.4), (4, 0.6)]);
    }

    #[test]
    fn a_row_of_one_stays_one() {
        assert_eq!(cover(0, 1, 1).collect::<Vec<_>>(), [(0, 1.0)]);
    }
}
