// ---- crossings: geometry/crossing.rs ----

struct Met {
    t: f32,
    weights: vec3<f32>,
}

// crossing::Shear
struct Shear {
    axis: u32,
    lean: vec2<f32>,
    per_length: f32,
}

fn turned_to(p: vec3<f32>, axis: u32) -> vec3<f32> {
    return select(select(p, p.zxy, axis == 1u), p.yzx, axis == 0u);
}

fn shear_of(d: vec3<f32>) -> Shear {
    let size = abs(d);
    let axis = select(select(2u, 1u, size.y >= size.z), 0u, size.x >= size.y && size.x >= size.z);
    let along = turned_to(d, axis);
    return Shear(axis, along.xy / along.z, 1.0 / along.z);
}

fn sheared(corner: vec3<f32>, o: vec3<f32>, shear: Shear) -> vec3<f32> {
    let p = turned_to(corner - o, shear.axis);
    return vec3(p.xy - shear.lean * p.z, p.z);
}

fn triangle(index: u32, o: vec3<f32>, shear: Shear) -> Met {
    let base = index * SOLID;
    let a = sheared(solids[base].xyz, o, shear);
    let b = sheared(solids[base + 1u].xyz, o, shear);
    let c = sheared(solids[base + 2u].xyz, o, shear);
    let u = c.x * b.y - c.y * b.x;
    let v = a.x * c.y - a.y * c.x;
    let w = b.x * a.y - b.y * a.x;
    let sum = u + v + w;
    let beside = (u < 0.0 || v < 0.0 || w < 0.0) && (u > 0.0 || v > 0.0 || w > 0.0);
    let t = (u * a.z + v * b.z + w * c.z) / sum * shear.per_length;
    return Met(select(FAR, t, !beside && sum != 0.0 && t > 0.0 && t < FAR), vec3(u, v, w) / sum);
}

fn flat_crossing(corner: vec3<f32>, u: vec3<f32>, v: vec3<f32>, o: vec3<f32>, d: vec3<f32>) -> f32 {
    let normal = cross(u, v);
    let steep = dot(d, normal);
    if (steep == 0.0) {
        return FAR;
    }
    let away = o - corner;
    let turn = cross(away, d);
    let s = -dot(v, turn) / steep;
    let r = dot(u, turn) / steep;
    let inside = s >= 0.0 && s <= 1.0 && r >= 0.0 && r <= 1.0;
    return select(FAR, -dot(away, normal) / steep, inside);
}

fn egg_crossing(middle: vec3<f32>, radii: vec3<f32>, origin: vec3<f32>, direction: vec3<f32>) -> vec2<f32> {
    let o = (origin - middle) / radii;
    let d = direction / radii;
    let a = dot(d, d);
    let b = dot(o, d);
    let c = dot(o, o) - 1.0;
    let beside = o - d * (b / a);
    let left = 1.0 - dot(beside, beside);
    if (left <= 0.0) {
        return vec2(FAR);
    }
    let root = sqrt(a * left);
    let far = select(-root - b, root - b, b < 0.0);
    let t0 = c / far;
    let t1 = far / a;
    return vec2(min(t0, t1), max(t0, t1));
}

fn turned_in(v: vec3<f32>, turn: vec2<f32>) -> vec3<f32> {
    return vec3(turn.x * v.x - turn.y * v.z, v.y, turn.y * v.x + turn.x * v.z);
}

fn turned_out(v: vec3<f32>, turn: vec2<f32>) -> vec3<f32> {
    return vec3(turn.x * v.x + turn.y * v.z, v.y, turn.x * v.z - turn.y * v.x);
}

fn crate_crossing(
    middle: vec3<f32>,
    half: vec3<f32>,
    turn: vec2<f32>,
    origin: vec3<f32>,
    direction: vec3<f32>,
) -> vec2<f32> {
    let o = turned_in(origin - middle, turn);
    let d = turned_in(direction, turn);
    let one = (-half - o) / d;
    let two = (half - o) / d;
    let low = min(one, two);
    let high = max(one, two);
    let enter = max(low.x, max(low.y, low.z));
    let leave = min(high.x, min(high.y, high.z));
    return select(vec2(FAR), vec2(enter, leave), enter < leave);
}

fn veil_crossing(index: u32, o: vec3<f32>, d: vec3<f32>) -> vec2<f32> {
    let base = index * VEIL;
    let kind = bitcast<u32>(veils[base].x);
    let a = veils[base + 1u].xyz;
    let b = veils[base + 2u].xyz;
    let c = veils[base + 3u].xyz;
    if (kind == 0u) {
        return vec2(flat_crossing(a, b, c, o, d), FAR);
    }
    if (kind == 1u) {
        return egg_crossing(a, b, o, d);
    }
    return crate_crossing(a, b, c.xy, o, d);
}

fn veil_normal(index: u32, point: vec3<f32>) -> vec3<f32> {
    let base = index * VEIL;
    let kind = bitcast<u32>(veils[base].x);
    let a = veils[base + 1u].xyz;
    let b = veils[base + 2u].xyz;
    let c = veils[base + 3u].xyz;
    if (kind == 0u) {
        return normalize(cross(b, c));
    }
    if (kind == 1u) {
        return normalize((point - a) / (b * b));
    }
    let p = turned_in(point - a, c.xy) / b;
    let q = abs(p);
    var own = vec3(0.0, 0.0, select(-1.0, 1.0, p.z >= 0.0));
    if (q.x >= q.y && q.x >= q.z) {
        own = vec3(select(-1.0, 1.0, p.x >= 0.0), 0.0, 0.0);
    } else if (q.y >= q.z) {
        own = vec3(0.0, select(-1.0, 1.0, p.y >= 0.0), 0.0);
    }
    return turned_out(own, c.xy);
}
