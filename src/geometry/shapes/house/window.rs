//! Windows: the glass, and the frame and bars that hold it.

use super::body::Body;
use super::hole::{Hole, glass_depth, has_pane};
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::lattice::Lattice;
use crate::geometry::{Built, Mesh, Outline, Veil, VeilKind};
use crate::scene::{Ref, Window};
use glam::{Vec2, Vec3};

/// The paint of frames and bars.
const PAINT: &str = "painted boards, pale";

/// How far the frame reaches into the wall around it, m, so that no light passes between the two.
const LET_IN: f32 = 0.005;

/// Furthest that frame and bars reach behind the glass, m: a rear film hangs 3 cm behind it.
const BEHIND: f32 = 0.02;

/// Builds a window into its hole; the answer is its owner.
pub fn build(window: &Window, hole: &Hole, body: &Body, frame: &Frame, built: &mut Built) -> u32 {
    let wall = frame.nest(&hole.wall);
    let glass = glass_depth(body.wall);
    let clear = wall.upright(hole.lo, hole.hi, -glass);
    let owner = built.enter(&window.name, clear.middle(), Some(clear));
    if !hole.is_cut() {
        return owner;
    }
    if has_pane(window) {
        let screen = window.screen.as_ref().map(|s| s.0.clone());
        let kind = VeilKind::Pane(window.glazing, screen);
        built.veils.push(Veil { owner, outline: Outline::Flat(clear), kind });
    }
    if has_pane(window) || window.bars.0.0 > 1 || window.bars.1.0 > 1 {
        built.solid(owner, wall.place(bars(window, hole, glass)), &Ref::to(PAINT));
    }
    owner
}

/// Frame and glazing bars as one body, in the axes of the wall.
fn bars(window: &Window, hole: &Hole, glass: f32) -> Mesh {
    let bar = window.bar.f32().min(0.25 * (hole.hi - hole.lo).min_element());
    let across = spans(hole.lo.x, hole.hi.x, window.bars.0.0, bar);
    let up = spans(hole.lo.y, hole.hi.y, window.bars.1.0, bar);
    let outer = Bounds {
        lo: (hole.lo - Vec2::splat(LET_IN)).extend(-glass - (0.5 * bar).min(BEHIND)),
        hi: (hole.hi + Vec2::splat(LET_IN)).extend(-glass + (0.5 * bar).min(glass)),
    };
    let ends = |spans: &[[f32; 2]]| spans.as_flattened().to_vec();
    let within = |spans: &[[f32; 2]], v: f32| spans.iter().any(|s| s[0] <= v && v <= s[1]);
    Lattice::new(outer, [&ends(&across), &ends(&up), &[]], OUTDOORS)
        .keep(|p: Vec3| within(&across, p.x) || within(&up, p.y))
        .surface()
}

/// From where to where each bar reaches between `lo` and `hi`, the two sides of the frame included.
fn spans(lo: f32, hi: f32, panes: u32, bar: f32) -> Vec<[f32; 2]> {
    // More bars than leave half of the opening free would be a board.
    let panes = panes.min((0.5 * (hi - lo) / bar) as u32).max(1);
    let inner = (1..panes).map(|i| {
        let middle = lo + (hi - lo) * i as f32 / panes as f32;
        [middle - 0.5 * bar, middle + 0.5 * bar]
    });
    let sides = [[lo - LET_IN, lo + bar], [hi - bar, hi + LET_IN]];
    sides.into_iter().chain(inner).collect()
}
