//! Square posts.

use super::add_box;
use crate::geometry::{Built, Mesh};
use crate::scene::Post;
use glam::Vec3;

/// Builds a post.
pub fn build(post: &Post, built: &mut Built) {
    let (at, half, height) = (post.at.vec3(), 0.5 * post.width.f32(), post.height.f32());
    let owner = built.enter(&post.name, at + 0.5 * height * Vec3::Y, None);
    let mut mesh = Mesh::default();
    add_box(&mut mesh, [at.x - half, at.y, at.z - half], [at.x + half, at.y + height, at.z + half]);
    built.solid(owner, mesh, &post.surface);
}
