//! The guardian's sleeves and folded hands, which bear the lantern.

use glam::{Vec2, vec2};

use super::curve::Curve;
use super::field::Field;
use super::guardian::AXIS;
use super::tone::ramp;

/// Height of the surface the hands lie on.
const LAP: f32 = 176.0;

/// A finger or a hand's back: from one end to the other, its radius at each.
struct Limb {
    from: Vec2,
    to: Vec2,
    radii: [f32; 2],
    /// How far it stands above the lap.
    rise: f32,
}

impl Limb {
    const fn new(from: [f32; 2], to: [f32; 2], radii: [f32; 2], rise: f32) -> Self {
        Self { from: Vec2::from_array(from), to: Vec2::from_array(to), radii, rise }
    }

    /// How far inside the limb a place is, and how thick the limb is there.
    fn inside(&self, at: Vec2) -> (f32, f32) {
        let line = self.to - self.from;
        let along = ((at - self.from).dot(line) / line.length_squared()).clamp(0.0, 1.0);
        let radius = self.radii[0] + (self.radii[1] - self.radii[0]) * along;
        (radius - at.distance(self.from + line * along), radius)
    }

    fn height(&self, at: Vec2) -> f32 {
        let (inside, radius) = self.inside(at);
        if inside <= 0.0 {
            return 0.0;
        }
        let off = radius - inside;
        LAP + self.rise + (radius * radius - off * off).sqrt() * 1.15
    }
}

/// The hands, the axis at zero: backs, then fingers laced from either side, then thumbs.
const LIMBS: [Limb; 14] = [
    Limb::new([-84.0, 672.0], [-46.0, 690.0], [36.0, 34.0], -10.0),
    Limb::new([84.0, 672.0], [46.0, 690.0], [36.0, 34.0], -10.0),
    Limb::new([-52.0, 662.0], [13.0, 668.0], [13.0, 10.5], 17.0),
    Limb::new([52.0, 671.0], [-13.0, 680.0], [13.0, 10.5], 19.0),
    Limb::new([-54.0, 683.0], [14.0, 692.0], [13.0, 10.5], 21.0),
    Limb::new([54.0, 691.0], [-14.0, 703.0], [13.0, 10.5], 20.0),
    Limb::new([-54.0, 703.0], [13.0, 714.0], [12.5, 10.0], 19.0),
    Limb::new([52.0, 710.0], [-13.0, 724.0], [12.5, 10.0], 17.0),
    Limb::new([-50.0, 721.0], [10.0, 733.0], [11.0, 8.5], 14.0),
    Limb::new([48.0, 727.0], [-10.0, 741.0], [11.0, 8.5], 12.0),
    Limb::new([-66.0, 652.0], [-40.0, 636.0], [15.0, 13.0], 20.0),
    Limb::new([66.0, 652.0], [40.0, 636.0], [15.0, 13.0], 20.0),
    Limb::new([-40.0, 636.0], [-12.0, 640.0], [12.5, 9.5], 25.0),
    Limb::new([40.0, 636.0], [12.0, 640.0], [12.5, 9.5], 25.0),
];

/// The hands' heights, zero where there is no hand.
pub(super) fn height(at: Vec2) -> f32 {
    let place = at - vec2(AXIS, 0.0);
    if sleeve_end(place) {
        return 0.0;
    }
    LIMBS.iter().map(|limb| limb.height(place)).fold(0.0, f32::max)
}

/// How far a place belongs to a hand.
pub(super) fn skin(at: Vec2) -> f32 {
    let place = at - vec2(AXIS, 0.0);
    if sleeve_end(place) {
        return 0.0;
    }
    LIMBS.iter().map(|limb| ramp(-0.5, 1.5, limb.inside(place).0)).fold(0.0, f32::max)
}

/// Whether a place lies behind the sleeve's mouth.
fn sleeve_end(place: Vec2) -> bool {
    place.x.abs() > 92.0 - 0.10 * (place.y - 672.0)
}

/// Where the sleeves are: wide, hanging from the forearms.
pub(super) fn sleeves(size: (u32, u32)) -> Field {
    let hang = [
        [88.0, 622.0],
        [150.0, 568.0],
        [216.0, 520.0],
        [262.0, 560.0],
        [266.0, 690.0],
        [238.0, 800.0],
        [186.0, 846.0],
        [132.0, 832.0],
        [102.0, 776.0],
        [84.0, 720.0],
    ];
    let mut both = Field::inside(size, &Curve::closed(&hang).moved(|at| at + vec2(AXIS, 0.0)));
    let left = Curve::closed(&hang).moved(|at| vec2(AXIS - at.x, at.y));
    both.merge(&Field::inside(size, &left), f32::max);
    both
}

/// The gilded edge of the sleeve's mouth.
pub(super) fn cuff_band(at: Vec2) -> f32 {
    let place = vec2((at.x - AXIS).abs(), at.y);
    ramp(20.0, 18.0, place.x - mouth(place.y)) * ramp(-3.0, 0.0, place.x - mouth(place.y))
}

/// Where the sleeve's mouth runs, from the axis, at a height.
fn mouth(y: f32) -> f32 {
    84.0 + 50.0 * ramp(716.0, 838.0, y) + 10.0 * ramp(700.0, 610.0, y)
}

/// Folds that swing from the elbow down to the sleeve's mouth.
pub(super) fn sleeve_folds(place: Vec2) -> f32 {
    let from = place - vec2(258.0, 548.0);
    let angle = from.y.atan2(-from.x);
    7.0 * (angle * 15.0).sin() * ramp(50.0, 150.0, from.length()) * ramp(104.0, 140.0, place.x)
}
