//! The lantern at the guardian's chest.

use glam::{Vec2, Vec3, vec2, vec3};

use super::canvas::Canvas;
use super::curve::Curve;
use super::guardian::AXIS;

/// The middle of the flame.
pub(super) const FLAME: Vec2 = Vec2::new(AXIS, 566.0);

const IRON: Vec3 = Vec3::new(0.10, 0.075, 0.06);
const BRASS: Vec3 = Vec3::new(0.78, 0.52, 0.22);
const FIRE: Vec3 = Vec3::new(1.0, 0.58, 0.16);
const HEART: Vec3 = Vec3::new(1.0, 0.95, 0.78);

/// Draws it lit, with the light it throws around itself.
pub(super) fn draw(canvas: &mut Canvas) {
    let shape = |half: &[[f32; 2]]| Curve::mirrored(0.0, half).moved(|at| at + vec2(AXIS, 0.0));
    glass(canvas, &straight(&[[-37.0, 508.0], [37.0, 508.0], [42.0, 614.0], [-42.0, 614.0]]));
    flame(canvas);
    for x in [-40.0, -14.0, 14.0, 40.0] {
        let bar = [vec2(AXIS + x * 0.94, 504.0), vec2(AXIS + x * 1.06, 618.0)];
        stick(canvas, bar, 4.6, IRON);
        stick(canvas, bar.map(|at| at + vec2(if x < 0.0 { 1.6 } else { -1.6 }, 0.0)), 1.3, BRASS * 1.2);
    }
    for y in [546.0, 582.0] {
        stick(canvas, [vec2(AXIS - 40.0, y), vec2(AXIS + 40.0, y)], 2.6, IRON);
    }
    let metal =
        [(0.0, BRASS * 0.5, 1.0), (0.3, vec3(1.0, 0.84, 0.52), 1.0), (0.55, BRASS, 1.0), (1.0, BRASS * 0.28, 1.0)];
    let (left, right) = (vec2(AXIS - 54.0, 0.0), vec2(AXIS + 54.0, 0.0));
    canvas.fade(
        &shape(&[[0.0, 446.0], [10.0, 450.0], [16.0, 466.0], [34.0, 484.0], [54.0, 506.0], [0.0, 514.0]]),
        left,
        right,
        &metal,
    );
    canvas.fade(
        &shape(&[[0.0, 610.0], [48.0, 612.0], [54.0, 624.0], [48.0, 634.0], [0.0, 638.0]]),
        left,
        right,
        &metal,
    );
    for step in -2..=2 {
        // Slots in the roof that let a little light out.
        let x = step as f32 * 13.0;
        let slot = [vec2(AXIS + x * 0.72, 480.0), vec2(AXIS + x, 498.0)];
        stick(canvas, slot, 4.2, IRON);
        stick(canvas, slot, 2.4, FIRE);
    }
    for x in [-19.0, 19.0] {
        let cord = Curve::open(&[[AXIS + x, 382.0], [AXIS + 0.4 * x, 410.0], [AXIS, 426.0]]);
        canvas.line(&cord, 4.4, IRON, 0.9);
        canvas.line(&cord, 2.2, BRASS * 0.9, 1.0);
    }
    let ring =
        Curve::closed(&[[0.0, 418.0], [13.0, 426.0], [15.0, 440.0], [0.0, 450.0], [-15.0, 440.0], [-13.0, 426.0]]);
    let ring = ring.moved(|at| at + vec2(AXIS, 0.0));
    canvas.line(&ring, 5.0, BRASS * 0.6, 1.0);
    canvas.line(&ring, 1.8, vec3(1.0, 0.86, 0.55), 0.8);
    canvas.glow(
        FLAME,
        150.0,
        &[(0.0, vec3(1.0, 0.60, 0.20), 0.52), (0.45, vec3(0.8, 0.34, 0.08), 0.18), (1.0, Vec3::ZERO, 0.0)],
    );
}

/// Panes that glow from within, brightest low down by the flame.
fn glass(canvas: &mut Canvas, panes: &[Vec2; 4]) {
    canvas.polygon(panes, vec3(0.94, 0.46, 0.10), 1.0);
    canvas.patch(
        FLAME + vec2(0.0, 4.0),
        62.0,
        &[
            (0.0, HEART, 1.0),
            (0.30, vec3(1.0, 0.93, 0.66), 1.0),
            (0.5, vec3(1.0, 0.78, 0.36), 0.9),
            (0.7, FIRE, 0.5),
            (1.0, FIRE, 0.0),
        ],
    );
}

fn flame(canvas: &mut Canvas) {
    for (size, colour, opacity) in
        [(1.25, vec3(1.0, 0.74, 0.30), 0.6), (1.0, vec3(1.0, 0.90, 0.58), 0.9), (0.66, Vec3::new(1.0, 0.99, 0.93), 1.0)]
    {
        let half = [[0.0, -34.0], [5.0, -16.0], [11.0, 2.0], [9.0, 18.0], [0.0, 24.0]];
        let tongue = Curve::mirrored(0.0, &half).moved(|at| FLAME + vec2(0.0, 8.0) + at * size);
        canvas.fill(&tongue, colour, opacity);
    }
}

fn stick(canvas: &mut Canvas, [from, to]: [Vec2; 2], width: f32, colour: Vec3) {
    canvas.line(&Curve::open(&[from.to_array(), to.to_array()]), width, colour, 1.0);
}

fn straight(corners: &[[f32; 2]; 4]) -> [Vec2; 4] {
    corners.map(|corner| Vec2::from(corner) + vec2(AXIS, 0.0))
}
