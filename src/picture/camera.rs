//! A pinhole camera: an eye, what it looks at, and how wide.

use crate::light::EyeRay;
use glam::Vec3;

/// A pinhole camera without roll.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// The eye.
    pub eye: Vec3,
    /// Unit vector to the right.
    pub right: Vec3,
    /// Unit vector upwards in the picture.
    pub up: Vec3,
    /// Unit vector along the view.
    pub forward: Vec3,
    /// Tangent of half the vertical field of view.
    pub half_height: f32,
}

impl Camera {
    /// A camera at `eye` that looks at `target` with a vertical field of view in radians.
    pub fn looking(eye: Vec3, target: Vec3, field: f32) -> Self {
        let forward = (target - eye).try_normalize().unwrap_or(Vec3::NEG_Z);
        let right = forward.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
        Self { eye, right, up: right.cross(forward), forward, half_height: (0.5 * field).tan() }
    }

    /// Angle that one pixel of a picture `height` pixels high covers at its middle, rad.
    pub fn pixel(&self, height: u32) -> f32 {
        2.0 * self.half_height / height as f32
    }

    /// The ray through a place of a picture in pixels from its left upper corner, whose size is given.
    pub fn ray(&self, x: f32, y: f32, width: u32, height: u32) -> EyeRay {
        let (w, h) = (width as f32, height as f32);
        let across = (2.0 * x - w) / h * self.half_height;
        let upwards = (1.0 - 2.0 * y / h) * self.half_height;
        let along = (self.forward + across * self.right + upwards * self.up).normalize();
        EyeRay { from: self.eye, along, width: self.pixel(height) }
    }

    /// Where a point appears, in pixels from the left upper corner; `None` behind the eye.
    pub fn project(&self, point: Vec3, width: f32, height: f32) -> Option<(f32, f32)> {
        let way = point - self.eye;
        let depth = way.dot(self.forward);
        (depth > 1e-3).then(|| {
            let scale = 0.5 * height / (depth * self.half_height);
            (0.5 * width + way.dot(self.right) * scale, 0.5 * height - way.dot(self.up) * scale)
        })
    }
}
