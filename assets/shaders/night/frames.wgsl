// ---- pictures: frames::Frame::sample ----

fn texel(offset: u32, width: u32, x: u32, y: u32) -> vec3<f32> {
    let word = texels[offset + y * width + x];
    return vec3(unpack2x16float(word.x), unpack2x16float(word.y).x);
}

fn bilinear(offset: u32, size: vec2<u32>, u: f32, v: f32) -> vec3<f32> {
    let x = clamp(u * f32(size.x) - 0.5, 0.0, f32(size.x - 1u));
    let y = clamp(v * f32(size.y) - 0.5, 0.0, f32(size.y - 1u));
    let x0 = u32(x);
    let y0 = u32(y);
    let x1 = min(x0 + 1u, size.x - 1u);
    let y1 = min(y0 + 1u, size.y - 1u);
    let fx = x - f32(x0);
    let fy = y - f32(y0);
    let above = mix(texel(offset, size.x, x0, y0), texel(offset, size.x, x1, y0), fx);
    let below = mix(texel(offset, size.x, x0, y1), texel(offset, size.x, x1, y1), fx);
    return mix(above, below, fy);
}

fn sample_frame(offset: u32, finest: vec2<u32>, u: f32, v: f32, level: f32) -> vec3<f32> {
    var at = offset;
    var size = finest;
    var depth = max(level, 0.0);
    // Down the pyramid: each level halves, rounding up.
    while (depth >= 1.0 && (size.x > 1u || size.y > 1u)) {
        at += size.x * size.y;
        size = (size + vec2(1u)) / 2u;
        depth -= 1.0;
    }
    let fine = bilinear(at, size, u, v);
    if (depth <= 0.0 || (size.x == 1u && size.y == 1u)) {
        return fine;
    }
    let coarse = bilinear(at + size.x * size.y, (size + vec2(1u)) / 2u, u, v);
    return mix(fine, coarse, depth);
}
