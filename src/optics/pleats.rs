//! Fullness: cloth that hangs in gathers.
//!
//! Two pleats stand in for the gather. Straight light meets triangular ones, whose facets lean by acos(1/F) to either
//! side. What the facets scatter goes on in rectangular ones, as diffuse light among their faces (after Farber et al.
//! 1963), until it leaves to the front or the back.

use std::f64::consts::FRAC_PI_2;

use glam::DVec2;

use super::curve::{cosine, weight};
use super::pile::Slab;
use super::solve::solve;
use super::{Curve, STEPS, Sheet};

/// Bearings of the light against the folds over which the straight part is averaged, within a quarter of a turn.
const BEARINGS: u32 = 64;

/// The smallest cos θ that is followed through the folds; below it the number of crossings has no bound.
const GRAZING: f64 = 1e-4;

/// A sheet gathered to `fullness` F: width of the cloth over width of the hanging, 1 being flat (and anything less,
/// or not finite, is taken as flat).
///
/// At normal incidence the straight part is the flat cloth's at cos θ = 1/F.
pub fn gathered(sheet: &Sheet, fullness: f32) -> Sheet {
    if !fullness.is_finite() || fullness <= 1.0 {
        return sheet.clone();
    }
    let fullness = f64::from(fullness);
    let flipped = sheet.flipped();
    let channels = [0, 1, 2].map(|channel| {
        let mut sides = [sheet, &flipped].map(|sheet| side(sheet, fullness, channel));
        agree(&mut sides);
        sides
    });
    let curve =
        |law: fn(&[Side; 2], usize) -> f64| Curve::from_samples(|step| [0, 1, 2].map(|c| law(&channels[c], step)));
    let mut gathered = Sheet::new(
        curve(|sides, step| sides[0].reflect[step]),
        curve(|sides, step| sides[1].reflect[step]),
        curve(|sides, step| sides[0].diffuse[step]),
        curve(|sides, step| sides[1].diffuse[step]),
        curve(|sides, step| sides[0].through[step]),
    );
    gathered.scaled = sheet.scaled;
    gathered
}

/// One channel of the gathered sheet, for light on one face, sample by sample.
struct Side {
    reflect: Vec<f64>,
    diffuse: Vec<f64>,
    through: Vec<f64>,
}

fn side(sheet: &Sheet, fullness: f64, channel: usize) -> Side {
    let ends = Pocket::new(fullness - 1.0).ends(&diffuse_slab(sheet, channel));
    let mut side = Side { reflect: Vec::new(), diffuse: Vec::new(), through: Vec::new() };
    for step in 0..STEPS {
        let met = first_meeting(sheet, fullness, cosine(step).max(GRAZING), channel);
        side.reflect.push(met.thrown[0] * ends[0][0] + met.thrown[1] * ends[1][0]);
        side.diffuse.push(met.thrown[0] * ends[0][1] + met.thrown[1] * ends[1][1]);
        side.through.push(met.through);
    }
    side
}

/// Makes both sides pass the same share of light from everywhere, as reciprocity demands.
///
/// Two unlike pleats in one model miss this by a little where the faces of the cloth differ. The smaller share is
/// taken for both; the rest is thrown back, so no angle gains or loses light.
fn agree(sides: &mut [Side; 2]) {
    let mean = |side: &Side| (0..STEPS).map(|step| weight(step) * side.diffuse[step]).sum::<f64>();
    let means = [mean(&sides[0]), mean(&sides[1])];
    let least = means[0].min(means[1]);
    for (side, mean) in sides.iter_mut().zip(means) {
        let keep = if mean > 0.0 { least / mean } else { 1.0 };
        for (reflect, diffuse) in side.reflect.iter_mut().zip(&mut side.diffuse) {
            *reflect += *diffuse * (1.0 - keep);
            *diffuse *= keep;
        }
    }
}

/// The flat sheet for light from everywhere, straight part included.
fn diffuse_slab(sheet: &Sheet, channel: usize) -> Slab {
    let straight = sheet.through.mean_channels()[channel];
    Slab {
        through: [0, 1].map(|face: usize| straight + sheet.faces[face].diffuse.mean_channels()[channel]),
        reflect: [0, 1].map(|face: usize| sheet.faces[face].reflect.mean_channels()[channel]),
    }
}

/// What becomes of a beam on its straight way through the folds.
#[derive(Default)]
struct Met {
    /// Share scattered towards the front side of the cloth, towards its back side.
    thrown: DVec2,
    /// Share that gets through.
    through: f64,
}

/// Follows a beam from the front through triangular pleats, averaged over its bearing.
fn first_meeting(sheet: &Sheet, fullness: f64, cos: f64, channel: usize) -> Met {
    let sin = (1.0 - cos * cos).max(0.0).sqrt();
    let lean = (1.0 - 1.0 / (fullness * fullness)).sqrt();
    let mut mean = Met::default();
    for bearing in 0..BEARINGS {
        let across = sin * (FRAC_PI_2 * (f64::from(bearing) + 0.5) / f64::from(BEARINGS)).cos() * lean;
        let (facing, averted) = (cos / fullness + across, cos / fullness - across);
        // Meetings of a ray with averted facets; with the facing ones it has the rest to 1, or one more than with
        // these.
        let meetings = 0.5 * fullness * averted.abs() / cos;
        let toward = Facet::new(sheet, facing, channel, 0);
        if averted >= 0.0 {
            let away = Facet::new(sheet, averted, channel, 0);
            mean.add(1.0 - meetings, &toward.alone());
            mean.add(meetings, &away.alone());
        } else {
            // Steep light meets the averted facets from behind, between two facing ones.
            let away = Facet::new(sheet, -averted, channel, 1);
            let fewest = meetings.floor();
            mean.add(fewest + 1.0 - meetings, &toward.with_between(&away, fewest));
            mean.add(meetings - fewest, &toward.with_between(&away, fewest + 1.0));
        }
    }
    mean.scaled(1.0 / f64::from(BEARINGS))
}

impl Met {
    fn add(&mut self, share: f64, other: &Self) {
        self.thrown += share * other.thrown;
        self.through += share * other.through;
    }

    fn scaled(&self, factor: f64) -> Self {
        Self { thrown: self.thrown * factor, through: self.through * factor }
    }
}

/// One facet as a beam meets it.
struct Facet {
    /// Share scattered towards the front side of the cloth, towards its back side.
    thrown: DVec2,
    through: f64,
}

impl Facet {
    /// `face` is the face of the cloth that the beam meets.
    fn new(sheet: &Sheet, cos: f64, channel: usize, face: usize) -> Self {
        let lit = &sheet.faces[face];
        let mut thrown = DVec2::ZERO;
        thrown[face] = lit.reflect.channel(cos, channel);
        thrown[1 - face] = lit.diffuse.channel(cos, channel);
        Self { thrown, through: sheet.through.channel(cos, channel) }
    }

    fn alone(&self) -> Met {
        Met { thrown: self.thrown, through: self.through }
    }

    /// A beam that meets this facet, then `times` times an averted one and this one again.
    fn with_between(&self, averted: &Self, times: f64) -> Met {
        let pair = self.through * averted.through;
        let left = pair.powf(times);
        // 1 + pair + … + pair^(times − 1)
        let rounds = if pair < 1.0 { (1.0 - left) / (1.0 - pair) } else { times };
        let thrown = self.thrown * (rounds + left) + averted.thrown * self.through * rounds;
        Met { thrown, through: self.through * left }
    }
}

/// One fold of the rectangular pleat, as wide as 1: opening, bottom, and two sides.
struct Pocket {
    /// View factor from the opening to the bottom, and back.
    opening_to_bottom: f64,
    /// From one side to the other.
    side_to_side: f64,
    /// From a side to the opening; to the bottom it is the same.
    side_to_opening: f64,
    /// From the opening, or the bottom, to both sides.
    opening_to_sides: f64,
}

impl Pocket {
    /// View factors by Hottel's crossed strings, `depth` being the depth over the width.
    fn new(depth: f64) -> Self {
        let diagonal = 1.0_f64.hypot(depth);
        let opening_to_bottom = diagonal - depth;
        let side_to_side = (diagonal - 1.0) / depth;
        Self {
            opening_to_bottom,
            side_to_side,
            side_to_opening: 0.5 * (1.0 - side_to_side),
            opening_to_sides: 1.0 - opening_to_bottom,
        }
    }

    /// Where scattered light ends. Light that falls evenly on the front of the pleats and is wholly thrown to the front
    /// (back) side of the cloth where it first meets it, leaves by `[0]` (`[1]`): the shares to the front and to the
    /// back.
    ///
    /// A period of the pleat is a strip in front and a strip behind, each 1 wide, and two sides. The front pocket opens
    /// beside the front strip and has the back strip for its bottom; the back pocket the other way round.
    fn ends(&self, cloth: &Slab) -> [[f64; 2]; 2] {
        let [sides_front, sides_back, bottom_front, bottom_back] = [0, 1, 2, 3];
        let (side, bottom) = (self.side_to_opening, self.opening_to_sides);
        // What each face inside the pockets sends out, per area, as shares of what the others send out.
        let mut system = vec![vec![0.0; 4]; 4];
        for (face, mine, others) in [(0, sides_front, sides_back), (1, sides_back, sides_front)] {
            let own_bottom = if face == 0 { bottom_front } else { bottom_back };
            let far_bottom = if face == 0 { bottom_back } else { bottom_front };
            // Sides are lit in both pockets, and pass light from one into the other.
            system[mine][mine] += 1.0 - cloth.reflect[face] * self.side_to_side;
            system[mine][own_bottom] -= cloth.reflect[face] * side;
            system[mine][others] -= cloth.through[1 - face] * self.side_to_side;
            system[mine][far_bottom] -= cloth.through[1 - face] * side;
            system[own_bottom][own_bottom] += 1.0;
            system[own_bottom][mine] -= cloth.reflect[face] * bottom;
        }
        // First meetings: 1 on the front strip, and in the front pocket what its opening sees.
        let mut thrown = vec![DVec2::ZERO; 4];
        thrown[sides_front][0] = side;
        thrown[bottom_front][0] = self.opening_to_bottom;
        thrown[sides_back][1] = side;
        thrown[bottom_back][1] = 1.0;
        let sent = solve(system, thrown);
        [0, 1].map(|cause: usize| {
            let from = |face: usize| sent[face][cause];
            let opening = |sides, own| from(sides) * bottom + from(own) * self.opening_to_bottom;
            let strip = |face: usize, sides| cloth.through[face] * bottom * from(sides);
            // Thrown to the front, the front strip sends its 1 out at once; thrown to the back, the back strip its
            // part.
            let at_once = if cause == 0 { [1.0, 0.0] } else { [0.0, self.opening_to_bottom] };
            [
                0.5 * (at_once[0] + opening(sides_front, bottom_front) + strip(1, sides_back)),
                0.5 * (at_once[1] + opening(sides_back, bottom_back) + strip(0, sides_front)),
            ]
        })
    }
}
