//! Board fences.

use super::add_box;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Mesh};
use crate::scene::Fence;
use glam::Vec3;

/// Thickness of a board, m.
const BOARD: f32 = 0.02;

/// Depth and height of a rail, m, and how high the two stand as shares of the fence.
const RAIL: [f32; 2] = [0.04, 0.07];
const RAILS: [f32; 2] = [0.2, 0.8];

/// Most boards in one fence. A longer one has wider boards and gaps in the same proportion.
const MOST: f32 = 1000.0;

/// Builds a fence: upright boards on two rails, the boards on the right hand of somebody who walks from end to end.
pub fn build(fence: &Fence, built: &mut Built) {
    let (from, to) = (fence.from.vec3(), fence.to.vec3());
    let height = fence.height.f32();
    let owner = built.enter(&fence.name, 0.5 * (from + to) + 0.5 * height * Vec3::Y, None);
    let Some(frame) = Frame::along(from, to) else { return };
    let length = (to - from).dot(frame.right);
    let mut mesh = Mesh::default();
    for [left, right] in boards(length, fence.board.f32(), fence.gap.f32()) {
        add_box(&mut mesh, [left, 0.0, -BOARD], [right, height, 0.0]);
    }
    let [depth, tall] = RAIL;
    let tall = tall.min(0.2 * height);
    for y in RAILS.map(|share| share * height) {
        add_box(&mut mesh, [0.0, y - 0.5 * tall, -BOARD - depth], [length, y + 0.5 * tall, -BOARD]);
    }
    // Along sloping ground everything follows the slope, with its sides upright.
    let slope = (to.y - from.y) / length;
    for p in &mut mesh.points {
        p.y += slope * p.x;
    }
    built.solid(owner, frame.place(mesh), &fence.surface);
}

/// From where to where each board reaches: a board at either end, and gaps as near to the wanted as that allows.
fn boards(length: f32, board: f32, gap: f32) -> Vec<[f32; 2]> {
    let gap = gap.max(0.0);
    if gap <= 0.0 || board >= length {
        return vec![[0.0, length]];
    }
    let wider = (length / ((board + gap) * MOST)).max(1.0);
    let (board, gap) = (board * wider, gap * wider);
    let spaces = ((length - board) / (board + gap)).round().max(1.0);
    let pitch = (length - board) / spaces;
    (0..=spaces as u32).map(|i| i as f32 * pitch).map(|left| [left, left + board.min(pitch)]).collect()
}

#[cfg(test)]
mod tests {
    use super::boards;

    #[test]
    fn boards_fill_the_length() {
        let b = boards(3.0, 0.09, 0.06);
        assert_eq!(b.len(), 20);
        assert_eq!(b[0][0], 0.0);
        assert!((b[19][1] - 3.0).abs() < 1e-5);
        assert!(b.windows(2).all(|w| (0.04..0.08).contains(&(w[1][0] - w[0][1]))));
        assert_eq!(boards(3.0, 0.09, 0.0), [[0.0, 3.0]]);
        assert!(boards(500.0, 1e-3, 1e-3).len() < 1100);
    }
}
