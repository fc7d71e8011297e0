//! A point by tape: as far from this corner, as far from that one.
//!
//! With the points at `O`, `d` along `e₁`, and `(i, j)` in the plane of `e₁ e₂`, three lengths give
//! `x = (r₁² − r₂² + d²) / 2d`, `y = (r₁² − r₃² + i² + j² − 2 i x) / 2j`, `z = ±√(r₁² − x² − y²)`: the usual trilateration, as in
//! B. T. Fang, "Trilateration and extension to Global Positioning System navigation", J. Guidance, Control and Dynamics 9, 1986
//! (cited from memory; derived again here). Two lengths and a height are the same in the level plane at that height.
//!
//! A tape length changes by `u · dp` where the point moves by `dp`, with `u` the direction of the tape. So for small errors
//! `dp = J⁻¹ dr`, with the directions as rows of `J`, and the point moves by at most the largest singular value of `J⁻¹` for each
//! unit of error (root of the sum of squares of all three).

mod fault;
mod sphere;

pub use fault::TapeFault;

use glam::{DMat3, DVec3};
use std::f64::consts::TAU;

/// A point that is known and has a name: a corner, a nail, the foot of a post.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// What people call it.
    pub name: String,
    /// Where it is, m.
    pub at: DVec3,
}

/// A tape from a known point.
#[derive(Clone, Debug, PartialEq)]
pub struct Tape {
    /// Where its end is held.
    pub from: Known,
    /// What it reads, m.
    pub m: f64,
}

/// Which of the two mirror-image places is meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Side {
    /// The one further along this direction, of any length: before the plane of the points, left of a line.
    Toward(DVec3),
    /// The one above the ground, which is at this height, m.
    AboveGround(f64),
}

impl Side {
    /// On the side of the street.
    pub const FRONT: Self = Self::Toward(DVec3::Z);
    /// On the side of the house.
    pub const BACK: Self = Self::Toward(DVec3::NEG_Z);
    /// To the left as seen from the street.
    pub const LEFT: Self = Self::Toward(DVec3::NEG_X);
    /// To the right as seen from the street.
    pub const RIGHT: Self = Self::Toward(DVec3::X);
}

/// A point placed by tapes.
#[derive(Clone, Debug, PartialEq)]
pub struct Taped {
    /// Where it is, m.
    pub at: DVec3,
    /// Its mirror image, which the same tapes reach, m.
    pub mirrored: DVec3,
    /// How far it moves for each unit of tape error, at most: 2 means 2 cm for each cm.
    pub moves: f64,
    /// For each tape beyond those that place it: what it reads over what it should, m.
    pub misses: Vec<f64>,
}

/// Tapes of which the point would move by more than this for each unit of error place nothing.
pub const MOST_MOVES: f64 = 10.0;
/// Known points that are nearer than this are one point, m.
const ONE_POINT: f64 = 0.005;
/// A triangle that is flatter than this, height over longest side, is a line.
const FLAT: f64 = 0.005;
/// Places that are nearer to each other than this are one place, m.
const ONE_PLACE: f64 = 1e-6;
/// Longer tapes, and points further off, are slips of the pen, m.
const FARTHEST: f64 = 1000.0;

/// The point that three tapes reach. Further tapes place nothing, but tell how well they agree: [`Taped::misses`].
pub fn by_tapes(tapes: &[Tape; 3], more: &[Tape], side: Side) -> Result<Taped, TapeFault> {
    for tape in tapes.iter().chain(more) {
        sane(tape)?;
    }
    let [a, b, c] = tapes;
    for (one, other) in [(a, b), (a, c), (b, c)] {
        apart(&one.from, &other.from, one.from.at.distance(other.from.at))?;
    }
    let frame = sphere::Frame::of(tapes.each_ref().map(|tape| tape.from.at));
    if frame.flatness() < FLAT {
        return Err(TapeFault::OnALine { names: tapes.each_ref().map(|tape| tape.from.name.clone()) });
    }
    for (one, other) in [(a, b), (a, c), (b, c)] {
        reach(one, other, one.from.at.distance(other.from.at), [one.m, other.m])?;
    }
    let places = frame.meet(tapes.each_ref().map(|tape| tape.m)).map_err(|by| TapeFault::NoMeeting { by })?;
    let (at, mirrored) = choose(places, side)?;
    let moves = settled(tapes.each_ref().map(|tape| at - tape.from.at))?;
    let misses = more.iter().map(|tape| tape.m - tape.from.at.distance(at)).collect();
    Ok(Taped { at, mirrored, moves, misses })
}

/// The point at a known height, m, that two tapes reach. Its height is taken to be as doubtful as a tape. Further tapes
/// tell how well they agree.
pub fn by_tapes_and_height(tapes: &[Tape; 2], height: f64, more: &[Tape], side: Side) -> Result<Taped, TapeFault> {
    for tape in tapes.iter().chain(more) {
        sane(tape)?;
    }
    if height.is_nan() || height.abs() > FARTHEST {
        return Err(TapeFault::Height { height });
    }
    let [a, b] = tapes;
    let level = |point: DVec3| point.with_y(height);
    let [foot_a, foot_b] = [level(a.from.at), level(b.from.at)];
    let between = foot_a.distance(foot_b);
    apart(&a.from, &b.from, between)?;
    let mut along = [0.0; 2];
    for (tape, along) in tapes.iter().zip(&mut along) {
        let rise = (height - tape.from.at.y).abs();
        if rise > tape.m {
            return Err(TapeFault::Rise { name: tape.from.name.clone(), by: rise - tape.m });
        }
        *along = (tape.m * tape.m - rise * rise).sqrt();
    }
    reach(a, b, between, along)?;
    let e1 = (foot_b - foot_a) / between;
    let x = (along[0] * along[0] - along[1] * along[1] + between * between) / (2.0 * between);
    let aside = (along[0] * along[0] - x * x).max(0.0).sqrt() * e1.cross(DVec3::Y);
    let middle = foot_a + x * e1;
    let (at, mirrored) = choose([middle + aside, middle - aside], side)?;
    let moves = settled([at - a.from.at, at - b.from.at, DVec3::Y])?;
    let misses = more.iter().map(|tape| tape.m - tape.from.at.distance(at)).collect();
    Ok(Taped { at, mirrored, moves, misses })
}

/// What tapes from known points to a point read, m: for the paper that goes up the ladder.
pub fn tapes_to(point: DVec3, known: &[Known]) -> Vec<Tape> {
    known.iter().map(|known| Tape { from: known.clone(), m: known.at.distance(point) }).collect()
}

fn sane(tape: &Tape) -> Result<(), TapeFault> {
    let name = || tape.from.name.clone();
    if !(tape.m > 0.0 && tape.m <= FARTHEST) {
        return Err(TapeFault::Length { name: name(), m: tape.m });
    }
    if !(tape.from.at.abs().max_element() <= FARTHEST && tape.from.at.is_finite()) {
        return Err(TapeFault::Place { name: name() });
    }
    Ok(())
}

fn apart(one: &Known, other: &Known, distance: f64) -> Result<(), TapeFault> {
    let names = || [one.name.clone(), other.name.clone()];
    if distance < ONE_POINT { Err(TapeFault::OnePoint { names: names() }) } else { Ok(()) }
}

/// Whether two lengths meet whose ends are so far apart.
fn reach(one: &Tape, other: &Tape, distance: f64, [r, s]: [f64; 2]) -> Result<(), TapeFault> {
    let names = || [one.from.name.clone(), other.from.name.clone()];
    // A rounding of the last digit keeps nobody from a point that lies right between.
    let slack = 1e-12 * distance;
    if r + s < distance - slack {
        return Err(TapeFault::TooShort { names: names(), by: distance - r - s });
    }
    if (r - s).abs() > distance + slack {
        let [long, short] = if r > s { names() } else { [other.from.name.clone(), one.from.name.clone()] };
        return Err(TapeFault::TooLong { long, short, by: (r - s).abs() - distance });
    }
    Ok(())
}

/// The place that is meant, and the other.
fn choose([one, other]: [DVec3; 2], side: Side) -> Result<(DVec3, DVec3), TapeFault> {
    if one.distance(other) < ONE_PLACE {
        return Ok((one, other));
    }
    let first = match side {
        Side::Toward(direction) => {
            let lead = (one - other).normalize_or_zero().dot(direction.normalize_or_zero());
            // Within about half a degree of level, neither is meant.
            if lead.is_nan() || lead.abs() < 0.01 {
                return Err(TapeFault::NeitherSide { places: [one, other] });
            }
            lead > 0.0
        }
        Side::AboveGround(ground) => match [one, other].map(|place| place.y >= ground - ONE_PLACE) {
            [true, false] => true,
            [false, true] => false,
            [true, true] => return Err(TapeFault::BothAbove { places: [one, other] }),
            [false, false] => return Err(TapeFault::BothBelow { ground, places: [one, other] }),
        },
    };
    Ok(if first { (one, other) } else { (other, one) })
}

/// How far the point moves for each unit of error along these ways, at most; a fault where that is too much.
fn settled(ways: [DVec3; 3]) -> Result<f64, TapeFault> {
    let [a, b, c] = ways.map(DVec3::normalize_or_zero);
    let moves = 1.0 / least_singular(DMat3::from_cols(a, b, c));
    if moves <= MOST_MOVES { Ok(moves) } else { Err(TapeFault::Loose { moves }) }
}

/// The least singular value of a matrix with columns of length 1: the root of the least eigenvalue of `A = MᵀM`, whose trace
/// is 3, in closed form (O. K. Smith, "Eigenvalues of a symmetric 3 × 3 matrix", Communications of the ACM 4, 1961; cited from memory).
fn least_singular(m: DMat3) -> f64 {
    let rest = m.transpose() * m - DMat3::IDENTITY;
    let square_sum: f64 = rest.to_cols_array().iter().map(|value| value * value).sum();
    let p = (square_sum / 6.0).sqrt();
    if p < 1e-15 {
        return 1.0;
    }
    let angle = (0.5 * (rest * (1.0 / p)).determinant()).clamp(-1.0, 1.0).acos() / 3.0;
    (1.0 + 2.0 * p * (angle + TAU / 3.0).cos()).max(0.0).sqrt()
}
