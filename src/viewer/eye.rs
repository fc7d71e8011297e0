//! The camera as a person moves it: about a point, or on foot.

use gauzelight::picture::Camera;
use glam::{Quat, Vec3};

/// Widest and narrowest vertical field of view, rad.
const FIELDS: (f32, f32) = (0.09, 1.6);

/// An eye, the point it looks at, and its field of view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eye {
    /// Where it is.
    pub at: Vec3,
    /// What it looks at.
    pub target: Vec3,
    /// Vertical field of view, rad.
    pub field: f32,
}

impl Eye {
    /// The camera there.
    pub fn camera(&self) -> Camera {
        Camera::looking(self.at, self.target, self.field)
    }

    /// Turns about what it looks at, by angles to the left and upwards; never under the ground or over the top.
    pub fn turn_about(&mut self, left: f32, up: f32) {
        let arm = turned(self.at - self.target, left, -up);
        let at = self.target + arm;
        self.at = Vec3::new(at.x, at.y.max(0.1), at.z);
    }

    /// Looks elsewhere from where it is.
    pub fn look(&mut self, left: f32, up: f32) {
        self.target = self.at + turned(self.target - self.at, left, up);
    }

    /// Goes to the right, up and forwards, m.
    pub fn walk(&mut self, [right, up, forwards]: [f32; 3]) {
        let ahead = (self.target - self.at).with_y(0.0).normalize_or(Vec3::NEG_Z);
        let step = right * ahead.cross(Vec3::Y) + up * Vec3::Y + forwards * ahead;
        let step = step.with_y(step.y.max(0.1 - self.at.y));
        self.at += step;
        self.target += step;
    }

    /// Comes closer to what it looks at; up close the field of view narrows instead.
    pub fn approach(&mut self, factor: f32) {
        let arm = self.at - self.target;
        let length = arm.length();
        let wanted = (length * factor).clamp(0.6, 80.0);
        self.at = self.target + arm * (wanted / length.max(1e-3));
        self.at.y = self.at.y.max(0.1);
        if wanted <= 0.6 {
            self.field = (self.field * factor).clamp(FIELDS.0, FIELDS.1);
        }
    }
}

/// A way turned to the left and upwards, kept 5° off the vertical.
fn turned(way: Vec3, left: f32, up: f32) -> Vec3 {
    let around = Quat::from_rotation_y(left) * way;
    let side = around.cross(Vec3::Y).normalize_or(Vec3::X);
    let height = (around.y / around.length().max(1e-6)).clamp(-1.0, 1.0).asin();
    let steepest = 85f32.to_radians();
    let up = (height + up).clamp(-steepest, steepest) - height;
    Quat::from_axis_angle(side, up) * around
}
