//! A picture as linear light.

use super::level::{Level, Plane};
use super::{Extent, FrameError, Outline, Response, srgb};
use glam::{Vec2, Vec3};

/// The most texels a frame may have.
pub(super) const MOST_TEXELS: u64 = 64_000_000;

/// Texels along the longer side that are kept: more than any projector of the catalogue has of its own.
pub(super) const LONGEST_SIDE: u32 = 2048;

/// The part of the peak above which a texel counts as figure rather than as ground.
const FIGURE_SHARE: f32 = 0.1;

/// A picture as linear light, with its smaller copies and what a light budget asks of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// The picture, then each time half of it, down to a single texel.
    pub levels: Vec<Level>,
    /// Mean luminance, full white being 1.
    pub mean: f32,
    /// Luminance of the brightest texel, full white being 1.
    pub peak: f32,
    /// The box around every texel brighter than a tenth of the peak; none in a black picture.
    pub figure: Option<Extent>,
    /// The outline of every texel brighter than a tenth of the peak; none in a black picture.
    pub outline: Option<Outline>,
    /// Whether it stands in for a picture that could not be had.
    pub stand_in: bool,
    /// For each texel whether it is brighter than a tenth of the peak.
    pub(super) lit: Vec<bool>,
}

impl Frame {
    /// A frame from eight-bit codes with straight alpha, which is laid over black in linear light.
    pub fn from_rgba8(width: u32, height: u32, codes: &[u8], response: Response) -> Result<Frame, FrameError> {
        let texels = check_size(width, height)?;
        if codes.len() != texels * 4 {
            return Err(FrameError::Length { width, height, given: codes.len(), wanted: texels * 4 });
        }
        let table = response.transfer.table();
        let linear = |code: u8| table[usize::from(code)];
        let light = codes
            .chunks_exact(4)
            .map(|code| {
                let rgb = Vec3::new(linear(code[0]), linear(code[1]), linear(code[2]));
                response.colour(rgb) * (f32::from(code[3]) / 255.0)
            })
            .collect();
        Ok(Self::assemble(Plane { width, height, light }))
    }

    /// A frame from linear RGB. What lies outside 0 to 1 is cut off, as a projector's input cuts it off.
    pub fn from_linear(width: u32, height: u32, mut light: Vec<Vec3>) -> Result<Frame, FrameError> {
        let texels = check_size(width, height)?;
        if light.len() != texels {
            return Err(FrameError::Length { width, height, given: light.len(), wanted: texels });
        }
        if let Some(at) = light.iter().position(|rgb| !rgb.is_finite()) {
            let across = width as usize;
            return Err(FrameError::NotFinite { column: (at % across) as u32, row: (at / across) as u32 });
        }
        for rgb in &mut light {
            *rgb = rgb.clamp(Vec3::ZERO, Vec3::ONE);
        }
        Ok(Self::assemble(Plane { width, height, light }))
    }

    /// What a projector makes of this linear light: its colour light output alone, as no curve touches it.
    pub(super) fn answered(&self, response: Response) -> Frame {
        let Level { width, height, texels } = &self.levels[0];
        let light = texels.iter().map(|[r, g, b, _]| response.colour(Vec3::new(r.to_f32(), g.to_f32(), b.to_f32())));
        Self::assemble(Plane { width: *width, height: *height, light: light.collect() })
    }

    /// A frame from a picture that is known to have a size and only good numbers.
    pub(super) fn assemble(mut plane: Plane) -> Frame {
        // Larger than any projector's raster: the card would have to hold what is never thrown.
        while plane.width.max(plane.height) > LONGEST_SIDE {
            let Some(smaller) = plane.halved() else { break };
            plane = smaller;
        }
        let (mut sum, mut peak) = (0.0f64, 0.0f32);
        for rgb in &plane.light {
            let luminance = srgb::luminance(*rgb);
            sum += f64::from(luminance);
            peak = peak.max(luminance);
        }
        let mean = (sum / plane.light.len() as f64) as f32;
        let figure = figure_extent(&plane, peak * FIGURE_SHARE);
        let lit: Vec<bool> = plane.light.iter().map(|rgb| srgb::luminance(*rgb) > peak * FIGURE_SHARE).collect();
        let outline = Outline::of(&lit, plane.width as usize);
        let mut levels = vec![plane.level()];
        let mut next = plane.halved();
        while let Some(smaller) = next {
            levels.push(smaller.level());
            next = smaller.halved();
        }
        Frame { levels, mean, peak, figure, outline, stand_in: false, lit }
    }

    /// Texels across and down at full size.
    pub fn size(&self) -> (u32, u32) {
        (self.levels[0].width, self.levels[0].height)
    }

    /// The light at a point, `u` to the right and `v` down, each from 0 to 1, at a level that may lie between two.
    ///
    /// Texel centres lie at `(i + 0.5) / width`; points past the outermost centres take the edge's light.
    pub fn sample(&self, u: f32, v: f32, level: f32) -> Vec3 {
        let level = level.clamp(0.0, (self.levels.len() - 1) as f32);
        let fine = level.floor();
        let light = self.levels[fine as usize].sample(u, v);
        match self.levels.get(fine as usize + 1) {
            Some(coarse) if level > fine => light.lerp(coarse.sample(u, v), level - fine),
            _ => light,
        }
    }

    /// Whether the texel at a point is figure: brighter than a tenth of the peak. Nothing outside the picture is.
    pub fn is_figure(&self, u: f32, v: f32) -> bool {
        if !(0.0..=1.0).contains(&u) || !(0.0..=1.0).contains(&v) {
            return false;
        }
        self.lit[self.levels[0].at(u, v)]
    }
}

/// The number of texels, if the size is one that a frame may have.
pub(super) fn check_size(width: u32, height: u32) -> Result<usize, FrameError> {
    let texels = u64::from(width) * u64::from(height);
    if texels == 0 {
        Err(FrameError::Empty { width, height })
    } else if texels > MOST_TEXELS {
        Err(FrameError::TooLarge { width, height })
    } else {
        Ok(texels as usize)
    }
}

/// The box around every texel brighter than the threshold.
fn figure_extent(plane: &Plane, threshold: f32) -> Option<Extent> {
    let size = Vec2::new(plane.width as f32, plane.height as f32);
    let mut found: Option<Extent> = None;
    for (row, line) in plane.light.chunks_exact(plane.width as usize).enumerate() {
        let bright = |rgb: &Vec3| srgb::luminance(*rgb) > threshold;
        let (Some(first), Some(last)) = (line.iter().position(bright), line.iter().rposition(bright)) else {
            continue;
        };
        let min = Vec2::new(first as f32, row as f32) / size;
        let max = Vec2::new((last + 1) as f32, (row + 1) as f32) / size;
        found = Some(match found {
            Some(box_) => Extent { min: box_.min.min(min), max: box_.max.max(max) },
            None => Extent { min, max },
        });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A picture of odd sides with something everywhere.
    fn odd() -> Frame {
        let light = (0..37 * 21)
            .map(|at| Vec3::new((at % 37) as f32 / 36.0, (at % 5) as f32 / 4.0, (at % 11) as f32 / 10.0))
            .collect();
        Frame::from_linear(37, 21, light).unwrap()
    }

    fn mean(level: &Level) -> Vec3 {
        let sum: Vec3 = (0..level.height)
            .flat_map(|row| (0..level.width).map(move |column| (column, row)))
            .map(|(column, row)| level.texel(column.into(), row.into()))
            .sum();
        sum / level.texels.len() as f32
    }

    #[test]
    fn every_level_has_the_mean_of_the_first_and_the_last_is_one_texel() {
        let frame = odd();
        let sizes: Vec<_> = frame.levels.iter().map(|level| (level.width, level.height)).collect();
        assert_eq!(sizes, [(37, 21), (19, 11), (10, 6), (5, 3), (3, 2), (2, 1), (1, 1)]);
        for level in &frame.levels {
            assert!(mean(level).abs_diff_eq(mean(&frame.levels[0]), 1e-3), "{} wide", level.width);
        }
        assert!((srgb::luminance(mean(&frame.levels[0])) - frame.mean).abs() < 1e-3);
    }

    #[test]
    fn sampling_at_a_centre_gives_the_texel_and_past_the_edge_gives_the_edge() {
        let frame = odd();
        let full = &frame.levels[0];
        assert!(frame.sample(5.5 / 37.0, 3.5 / 21.0, 0.0).abs_diff_eq(full.texel(5, 3), 1e-4));
        assert_eq!(frame.sample(-1.0, -1.0, 0.0), full.texel(0, 0));
        assert_eq!(frame.sample(2.0, 2.0, -3.0), full.texel(36, 20));
        let last = frame.levels.last().unwrap().texel(0, 0);
        assert!(frame.sample(0.3, 0.9, 99.0).abs_diff_eq(last, 1e-6));
    }

    /// What is opened of a level has the light of the level.
    #[test]
    fn an_opened_part_is_its_level() {
        let frame = odd();
        for level in &frame.levels {
            for (low, high) in [
                ([0.0, 0.0], [1.0, 1.0]),
                ([-0.2, 0.3], [0.1, 0.5]),
                ([0.4, 0.6], [0.6, 1.3]),
                ([0.5, 0.5], [0.5, 0.5]),
            ] {
                let opened = level.opened(low, high);
                for i in 0..=100 {
                    let at = [0, 1].map(|axis: usize| {
                        low[axis] + (high[axis] - low[axis]) * (i * [1, 37][axis] % 101) as f32 / 100.0
                    });
                    assert_eq!(
                        opened.sample(at[0], at[1]),
                        level.sample(at[0], at[1]),
                        "{} wide at {at:?}",
                        level.width
                    );
                }
            }
        }
    }

    #[test]
    fn sampling_between_texels_and_between_levels_is_a_blend() {
        let light = vec![Vec3::ZERO, Vec3::ONE];
        let frame = Frame::from_linear(2, 1, light).unwrap();
        assert!(frame.sample(0.5, 0.5, 0.0).abs_diff_eq(Vec3::splat(0.5), 1e-6));
        // The far texel is 1 and the single texel of the next level a half.
        assert!(frame.sample(0.75, 0.5, 0.5).abs_diff_eq(Vec3::splat(0.75), 1e-3));
    }

    #[test]
    fn the_figure_is_boxed_and_told_from_the_ground() {
        let mut codes = vec![0u8; 10 * 8 * 4];
        for at in [2 * 10 + 3, 5 * 10 + 6] {
            codes[at * 4..at * 4 + 4].copy_from_slice(&[200, 200, 200, 255]);
        }
        let frame = Frame::from_rgba8(10, 8, &codes, Response::SRGB).unwrap();
        let figure = frame.figure.unwrap();
        assert!(figure.min.abs_diff_eq(Vec2::new(0.3, 0.25), 1e-6));
        assert!(figure.max.abs_diff_eq(Vec2::new(0.7, 0.75), 1e-6));
        assert!(frame.is_figure(0.35, 0.3) && !frame.is_figure(0.5, 0.5) && !frame.is_figure(1.2, 0.3));
        assert!((frame.peak - srgb::decode8(200)).abs() < 1e-5);
    }

    #[test]
    fn alpha_lies_over_black_in_linear_light() {
        let frame = Frame::from_rgba8(1, 1, &[255, 255, 255, 128], Response::SRGB).unwrap();
        assert!((frame.mean - 128.0 / 255.0).abs() < 1e-5);
    }

    #[test]
    fn a_black_picture_has_no_figure() {
        let frame = Frame::from_rgba8(3, 3, &[0; 36], Response::SRGB).unwrap();
        assert_eq!((frame.figure, frame.peak, frame.mean), (None, 0.0, 0.0));
        assert!(!frame.is_figure(0.5, 0.5));
    }

    #[test]
    fn bad_pictures_are_refused_by_name() {
        let of = |width, height, codes: &[u8]| Frame::from_rgba8(width, height, codes, Response::SRGB);
        assert!(matches!(of(0, 4, &[]), Err(FrameError::Empty { .. })));
        assert!(matches!(of(9000, 9000, &[]), Err(FrameError::TooLarge { .. })));
        assert!(matches!(of(1, 1, &[0; 3]), Err(FrameError::Length { .. })));
        let holed = vec![Vec3::ZERO, Vec3::new(0.0, f32::NAN, 0.0)];
        let error = Frame::from_linear(1, 2, holed).unwrap_err();
        assert!(matches!(error, FrameError::NotFinite { column: 0, row: 1 }));
    }

    /// A bar is as wide as it is at whatever slant, but for its ends; a disc half its diameter.
    #[test]
    fn strokes_are_as_wide_as_twice_area_over_outline() {
        let drawn = |lit: &dyn Fn(f32, f32) -> bool| {
            let light =
                (0..256 * 256).map(|i| if lit((i % 256) as f32, (i / 256) as f32) { Vec3::ONE } else { Vec3::ZERO });
            Frame::from_linear(256, 256, light.collect()).unwrap().outline.map(|of| of.stroke(Vec2::X, Vec2::Y))
        };
        let near = |found: Option<f32>, wanted: f32| assert!((found.unwrap() / wanted - 1.0).abs() < 0.02, "{found:?}");
        near(drawn(&|x, _| (100.0..108.0).contains(&x)), 8.0 * 256.0 / 264.0);
        near(drawn(&|x, y| (x - 128.0).hypot(y - 128.0) < 60.0), 60.0);
        near(drawn(&|x, y| (x + y - 255.0).abs() < 8.0 * std::f32::consts::SQRT_2), 16.0 * 362.0 / 370.0);
        assert_eq!(drawn(&|_, _| false), None);
    }
}
