// The night as an eye sees it: luminance of every pixel, cd/m² per channel.
//
// Every kind of loop stands here once, and what differs is chosen inside it: a software driver runs both sides of every
// branch, and a card waits for its slowest lane, so that a second copy of a walk through a tree costs as much as a second
// walk.
//
// Mirrors the core, function by function; each names the Rust it must stay in step with. All angular behaviour is read
// from tables that the core made. A test holds the two against each other, pixel by pixel, on every yard.

struct View {
    eye: vec3<f32>,
    half_height: f32,
    right: vec3<f32>,
    pixel: f32,
    up: vec3<f32>,
    beams: u32,
    forward: vec3<f32>,
    lamps: u32,
    sky_lx: vec3<f32>,
    glows: u32,
    moon_toward: vec3<f32>,
    moon: u32,
    moon_square: vec3<f32>,
    lamp_base: u32,
    size: vec2<u32>,
    origin: vec2<u32>,
    jitter: vec2<f32>,
    glow_base: u32,
    spread_base: u32,
    solid_root: u32,
    veil_root: u32,
    blend: f32,
    pad: u32,
}

@group(0) @binding(0) var<uniform> view: View;
@group(0) @binding(1) var<storage, read> nodes: array<vec4<f32>>;
@group(0) @binding(2) var<storage, read> solids: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> veils: array<vec4<f32>>;
@group(0) @binding(4) var<storage, read> lights: array<vec4<f32>>;
@group(0) @binding(5) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(6) var<storage, read> texels: array<vec2<u32>>;
@group(0) @binding(7) var<storage, read_write> picture: array<vec4<f32>>;

const INV_PI: f32 = 0.31830988618;
const FAR: f32 = 3.0e38;
const NONE: u32 = 0xffffffffu;

// light.rs: SKIN, LEAST_LX, MOST_CROSSINGS
const SKIN: f32 = 1.0e-3;
const LEAST_LX: f32 = 5.0e-4;
const MOST_CROSSINGS: u32 = 32u;

// Strides of the packed records: viewer/gpu/pack.rs
const SOLID: u32 = 4u;
const VEIL: u32 = 45u;
const BEAM: u32 = 10u;
const LAMP: u32 = 3u;
const GLOW: u32 = 5u;
const ROW: u32 = 128u;
const SPREAD: u32 = 256u;
const SKY_GRID: u32 = 9u;
const SKY_SIDE: u32 = 81u;

// Rows of an optic's block of tables.
const REFLECT: u32 = 0u;
const DIFFUSE: u32 = 1u;
const REFLECT_SHAPE: u32 = 2u;
const EXIT_SHAPE: u32 = 3u;
const MIRROR: u32 = 4u;
const FACE: u32 = 5u;
const THROUGH: u32 = 10u;
const KAPPA: u32 = 11u;
const GAIN: u32 = 12u;
const MEANS: u32 = 14u;

// light/matter.rs: VeilSort
const FILM: u32 = 1u;
const PANE: u32 = 2u;
const LOOKING_GLASS: u32 = 4u;
// Not a veil at all: the opaque thing that ends a ray.
const OPAQUE: u32 = 9u;

fn luma(colour: vec3<f32>) -> f32 {
    return dot(colour, vec3(0.2126, 0.7152, 0.0722));
}

// ---- tables ----

// optics::Curve::sample
fn curve(row: u32, cos: f32) -> vec3<f32> {
    let x = clamp(cos, 0.0, 1.0) * f32(ROW - 1u);
    let i = min(u32(x), ROW - 2u);
    let a = tables[row + i].xyz;
    return a + (tables[row + i + 1u].xyz - a) * (x - f32(i));
}

// light/look.rs: sample_gain
fn gain(row: u32, bend: f32) -> f32 {
    let x = clamp(bend, 0.0, 1.0) * f32(SPREAD - 1u);
    let i = min(u32(x), SPREAD - 2u);
    let a = tables[row + i].x;
    return a + (tables[row + i + 1u].x - a) * (x - f32(i));
}

// optics::Spread::sample
fn spread(row: u32, cos: f32) -> f32 {
    return gain(row, 0.5 * cos + 0.5);
}

// ---- crossings: geometry/crossing.rs ----

struct Met {
    t: f32,
    weights: vec3<f32>,
}

fn triangle(index: u32, o: vec3<f32>, d: vec3<f32>) -> Met {
    let base = index * SOLID;
    let a = solids[base].xyz - o;
    let b = solids[base + 1u].xyz - o;
    let c = solids[base + 2u].xyz - o;
    let u = dot(d, cross(c, b));
    let v = dot(d, cross(a, c));
    let w = dot(d, cross(b, a));
    if ((u < 0.0 || v < 0.0 || w < 0.0) && (u > 0.0 || v > 0.0 || w > 0.0)) {
        return Met(FAR, vec3(0.0));
    }
    let sum = u + v + w;
    if (sum == 0.0) {
        return Met(FAR, vec3(0.0));
    }
    let normal = cross(b - a, c - a);
    let t = dot(a, normal) / dot(d, normal);
    return Met(select(FAR, t, t > 0.0 && t < FAR), vec3(u, v, w) / sum);
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

// ---- ray trees: geometry/tree.rs ----
//
// A node holds the boxes of both its children and a word for each: the number of its own node, or with a count in the
// high byte a run of items.

const COUNT_SHIFT: u32 = 24u;
const FIRST_MASK: u32 = 0xffffffu;

fn safe_inverse(d: vec3<f32>) -> vec3<f32> {
    let tiny = vec3(1.1920929e-7);
    let guarded = select(tiny, -tiny, d < vec3(0.0));
    return 1.0 / select(d, guarded, abs(d) <= tiny);
}

struct Children {
    near: u32,
    far: u32,
}

// The children that a ray meets within reach, nearer first; NONE for one that it misses.
fn children(node: u32, o: vec3<f32>, inverse: vec3<f32>, reach: f32) -> Children {
    let a = nodes[node];
    let b = nodes[node + 1u];
    let c = nodes[node + 2u];
    let d = nodes[node + 3u];
    let a0 = (a.xyz - o) * inverse;
    let a1 = (b.xyz - o) * inverse;
    let c0 = (c.xyz - o) * inverse;
    let c1 = (d.xyz - o) * inverse;
    let al = min(a0, a1);
    let ah = max(a0, a1);
    let cl = min(c0, c1);
    let ch = max(c0, c1);
    let left = max(max(al.x, al.y), max(al.z, 0.0));
    let right = max(max(cl.x, cl.y), max(cl.z, 0.0));
    let meets_left = left <= min(min(ah.x, ah.y), min(ah.z, reach));
    let meets_right = right <= min(min(ch.x, ch.y), min(ch.z, reach));
    let one = select(NONE, bitcast<u32>(a.w), meets_left);
    let two = select(NONE, bitcast<u32>(c.w), meets_right);
    let swap = !meets_left || (meets_right && right < left);
    return Children(select(one, two, swap), select(two, one, swap));
}

struct Hit {
    t: f32,
    solid: u32,
    weights: vec3<f32>,
}

// Night::nearest_solid; with `any` whatever is met first within reach, as Night::blocked asks.
fn nearest_solid(o: vec3<f32>, d: vec3<f32>, reach: f32, any: bool) -> Hit {
    var hit = Hit(reach, NONE, vec3(0.0));
    let inverse = safe_inverse(d);
    var stack: array<u32, 40>;
    var top = 0u;
    var current = select(NONE, view.solid_root, reach > 0.0);
    loop {
        // Down to a leaf.
        loop {
            if (current == NONE || (current >> COUNT_SHIFT) != 0u) {
                break;
            }
            let next = children(current, o, inverse, hit.t);
            if (next.far != NONE) {
                stack[top] = next.far;
                top++;
            }
            current = next.near;
            if (current == NONE && top > 0u) {
                top--;
                current = stack[top];
            }
        }
        if (current == NONE) {
            break;
        }
        let first = current & FIRST_MASK;
        let end = first + (current >> COUNT_SHIFT);
        for (var i = first; i < end; i++) {
            let met = triangle(i, o, d);
            if (met.t < hit.t) {
                hit = Hit(met.t, i, met.weights);
            }
        }
        if (top == 0u || (any && hit.solid != NONE)) {
            break;
        }
        top--;
        current = stack[top];
    }
    return hit;
}

// Night::through
fn through(o: vec3<f32>, d: vec3<f32>, reach: f32, skip: vec2<u32>) -> vec3<f32> {
    var left = vec3(1.0);
    let inverse = safe_inverse(d);
    let shortness = inverseSqrt(dot(d, d));
    var stack: array<u32, 20>;
    var top = 0u;
    var current = select(NONE, view.veil_root, reach > 0.0);
    loop {
        loop {
            if (current == NONE || (current >> COUNT_SHIFT) != 0u) {
                break;
            }
            let next = children(current, o, inverse, reach);
            if (next.far != NONE) {
                stack[top] = next.far;
                top++;
            }
            current = next.near;
            if (current == NONE && top > 0u) {
                top--;
                current = stack[top];
            }
        }
        if (current == NONE) {
            break;
        }
        let first = current & FIRST_MASK;
        let end = first + (current >> COUNT_SHIFT);
        for (var i = first; i < end; i++) {
            let crossing = veil_crossing(i, o, d);
            if (i == skip.x || i == skip.y) {
                continue;
            }
            for (var k = 0u; k < 2u; k++) {
                let t = select(crossing.y, crossing.x, k == 0u);
                if (t > 0.0 && t < reach) {
                    let base = i * VEIL;
                    let cos = abs(dot(veil_normal(i, o + t * d), d)) * shortness;
                    let passed = curve(bitcast<u32>(veils[base].z) + THROUGH * ROW, cos);
                    left *= select(passed, vec3(0.0), bitcast<u32>(veils[base].y) == LOOKING_GLASS);
                }
                if (crossing.y >= reach) {
                    break;
                }
            }
        }
        if (top == 0u) {
            break;
        }
        top--;
        current = stack[top];
    }
    return left;
}

struct Meeting {
    t: f32,
    veil: u32,
}

// Night::meetings, one at a time: the nearest after the last.
fn next_meeting(o: vec3<f32>, d: vec3<f32>, reach: f32, last: Meeting) -> Meeting {
    var best = Meeting(reach, NONE);
    let inverse = safe_inverse(d);
    var stack: array<u32, 20>;
    var top = 0u;
    var current = view.veil_root;
    loop {
        loop {
            if (current == NONE || (current >> COUNT_SHIFT) != 0u) {
                break;
            }
            let next = children(current, o, inverse, best.t);
            if (next.far != NONE) {
                stack[top] = next.far;
                top++;
            }
            current = next.near;
            if (current == NONE && top > 0u) {
                top--;
                current = stack[top];
            }
        }
        if (current == NONE) {
            break;
        }
        let first = current & FIRST_MASK;
        let end = first + (current >> COUNT_SHIFT);
        for (var i = first; i < end; i++) {
            let crossing = veil_crossing(i, o, d);
            for (var k = 0u; k < 2u; k++) {
                let t = select(crossing.y, crossing.x, k == 0u);
                let after = t > last.t || (t == last.t && i > last.veil && last.veil != NONE);
                let before = t < best.t || (t == best.t && i < best.veil && t < reach);
                if (t > 0.0 && after && before) {
                    best = Meeting(t, i);
                }
            }
        }
        if (top == 0u) {
            break;
        }
        top--;
        current = stack[top];
    }
    return best;
}

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

// ---- lights ----

struct Square {
    lx: vec3<f32>,
    toward: vec3<f32>,
}

// Beam::square
fn beam_square(base: u32, point: vec3<f32>, footprint: f32) -> Square {
    let dark = Square(vec3(0.0), vec3(0.0));
    let lens = lights[base];
    let right = lights[base + 1u];
    let up = lights[base + 2u];
    let forward = lights[base + 3u];
    let p = point - lens.xyz;
    let depth = dot(p, forward.xyz);
    if (depth <= 1.0e-4) {
        return dark;
    }
    let u = dot(p, right.xyz) / (depth * lens.w) + 0.5 - up.w;
    let v = 0.5 - dot(p, up.xyz) / (depth * right.w) + forward.w;
    if (u < 0.0 || u > 1.0 || v < 0.0 || v > 1.0) {
        return dark;
    }
    let a = lights[base + 4u];
    let b = lights[base + 5u];
    let map0 = lights[base + 6u];
    let map1 = lights[base + 7u];
    let distance = length(p);
    let blur = max(b.x * abs(depth - b.y) / b.y, footprint);
    let level = log2(max(blur * b.z / (lens.w * depth), 1.0));
    let s = dot(map0.xyz, vec3(u, v, 1.0));
    let t = dot(map1.xyz, vec3(u, v, 1.0));
    var shown = vec3(0.0);
    if (s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0) {
        let packed = bitcast<u32>(map1.w);
        shown = sample_frame(bitcast<u32>(map0.w), vec2(packed & 0xffffu, packed >> 16u), s, t, level);
    }
    let content = vec3(a.y) + (1.0 - a.y) * shown;
    let x = 2.0 * u - 1.0;
    let y = 2.0 * v - 1.0;
    let even = a.z * (1.0 - a.w * 0.5 * (x * x + y * y));
    return Square((a.x * even * distance / (depth * depth * depth)) * content, -p / distance);
}

struct Gathered {
    back: vec3<f32>,
    on: vec3<f32>,
    film: vec3<f32>,
}

// Night::arrivals with Beam::transmittance and Night::way, and what Night::veil_light makes of each arrival; for an opaque
// surface `back` is its illuminance. `count` lights are asked.
fn gather(
    point: vec3<f32>,
    near: vec3<f32>,
    optic: u32,
    sort: u32,
    front: bool,
    along: vec3<f32>,
    footprint: f32,
    count: u32,
) -> Gathered {
    var sum = Gathered(vec3(0.0), vec3(0.0), vec3(0.0));
    let near_face = optic + select(FACE, 0u, front) * ROW;
    let far_face = optic + select(0u, FACE, front) * ROW;
    for (var i = 0u; i < count; i++) {
        var square = view.moon_square;
        var toward = view.moon_toward;
        var to_point = point + 2000.0 * view.moon_toward;
        var relays = 0u;
        let base = i * BEAM;
        if (i < view.beams) {
            let light = beam_square(base, point, footprint);
            square = light.lx;
            toward = light.toward;
            to_point = lights[base].xyz;
            relays = bitcast<u32>(lights[base + 5u].w);
        } else if (i < view.beams + view.lamps) {
            // LightPoint::square
            let record = view.lamp_base + (i - view.beams) * LAMP;
            let at = lights[record];
            to_point = at.xyz;
            let d = to_point - point;
            let squared = max(dot(d, d), 1.0e-6);
            toward = d * inverseSqrt(squared);
            let intensity = spread(view.spread_base + bitcast<u32>(at.w) * SPREAD, -dot(toward, lights[record + 1u].xyz));
            square = lights[record + 2u].xyz * (intensity / squared);
        }
        let cos = dot(near, toward);
        if ((sort == OPAQUE && cos <= 0.0) || luma(square) < LEAST_LX) {
            continue;
        }
        var at = point + SKIN * near * select(-1.0, 1.0, cos >= 0.0);
        var left = vec3(1.0);
        var skip = vec2(NONE);
        // From mirror to mirror, and to the lens.
        for (var s = 0u; s <= relays; s++) {
            var stop = to_point;
            var onward = to_point;
            if (s < relays) {
                let relay = lights[base + 8u + s];
                let record = bitcast<u32>(relay.w) * VEIL;
                let corner = veils[record + 1u].xyz;
                let u = veils[record + 2u].xyz;
                let v = veils[record + 3u].xyz;
                let normal = cross(u, v);
                let t = flat_crossing(corner, u, v, at, to_point - at);
                let faces = dot(at - corner, normal) > 0.0 && dot(relay.xyz - corner, normal) > SKIN * length(normal);
                if (!(faces && t > 0.0 && t < 1.0)) {
                    left = vec3(0.0);
                }
                stop = at + t * (to_point - at);
                onward = relay.xyz;
                skip.y = bitcast<u32>(relay.w);
            } else {
                skip.y = NONE;
            }
            let way = stop - at;
            let reach = select(0.0, 1.0, any(left > vec3(0.0)));
            left *= through(at, way, reach, skip);
            let open = select(0.0, 1.0, any(left > vec3(0.0)));
            left *= select(0.0, 1.0, nearest_solid(at, way, open, true).solid == NONE);
            at = stop;
            to_point = onward;
            skip.x = skip.y;
            if (all(left == vec3(0.0))) {
                break;
            }
        }
        let lit = left * square * abs(cos);
        if (sort == OPAQUE) {
            sum.back += lit;
        } else if (cos > 0.0) {
            sum.back += curve(near_face + REFLECT * ROW, cos) * lit;
        } else if (sort == FILM) {
            let bend = 0.5 * length(toward - along);
            sum.film += curve(optic + KAPPA * ROW, -cos) * gain(optic + GAIN * ROW, bend) * lit;
        } else {
            sum.on += curve(far_face + DIFFUSE * ROW, -cos) * lit;
        }
    }
    return sum;
}

// SkyGrid::at
fn veil_sky(index: u32, front: bool, point: vec3<f32>, normal: vec3<f32>) -> f32 {
    let base = index * VEIL;
    if (bitcast<u32>(veils[base].x) != 0u) {
        return 0.5 + 0.5 * normal.y;
    }
    let u = veils[base + 2u].xyz;
    let v = veils[base + 3u].xyz;
    let across = cross(u, v);
    let scale = 1.0 / dot(across, across);
    let away = point - veils[base + 1u].xyz;
    let x = clamp(dot(cross(away, v), across) * scale, 0.0, 1.0) * f32(SKY_GRID - 1u);
    let y = clamp(dot(cross(u, away), across) * scale, 0.0, 1.0) * f32(SKY_GRID - 1u);
    let i = min(u32(x), SKY_GRID - 2u);
    let j = min(u32(y), SKY_GRID - 2u);
    let at = select(SKY_SIDE, 0u, front) + j * SKY_GRID + i;
    let a = grid_value(base, at) + (grid_value(base, at + 1u) - grid_value(base, at)) * (x - f32(i));
    let b = grid_value(base, at + SKY_GRID) + (grid_value(base, at + SKY_GRID + 1u) - grid_value(base, at + SKY_GRID)) * (x - f32(i));
    return a + (b - a) * (y - f32(j));
}

fn grid_value(base: u32, at: u32) -> f32 {
    return veils[base + 4u + at / 4u][at % 4u];
}

// Night::luminance: one turn of the loop for everything that the ray meets, a second leg after a mirror or a pane, and the
// light of each thing by Night::veil_light or Night::solid_light.
fn luminance(eye: vec3<f32>, first: vec3<f32>) -> vec3<f32> {
    var total = vec3(0.0);
    var weight = vec3(1.0);
    var before = 0.0;
    var o = eye;
    var d = first;
    var may_mirror = true;
    var onward = vec3(0.0);
    var onward_o = vec3(0.0);
    var onward_d = vec3(0.0);
    var onward_before = 0.0;
    var last = Meeting(0.0, NONE);
    var crossings = 0u;
    var hit = Hit(FAR, NONE, vec3(0.0));
    var glow = NONE;
    var end = 0.0;
    var fresh = true;
    let lamps = view.beams + view.lamps + view.moon;
    for (var turn = 0u; turn < 2u * MOST_CROSSINGS; turn++) {
        if (fresh) {
            fresh = false;
            hit = nearest_solid(o, d, FAR, false);
            end = hit.t;
            glow = NONE;
            for (var i = 0u; i < view.glows; i++) {
                let base = view.glow_base + i * GLOW;
                let a = lights[base + 1u].xyz;
                let b = lights[base + 2u].xyz;
                let flat = bitcast<u32>(lights[base].x) == 0u;
                var t = egg_crossing(a, b, o, d).x;
                if (flat) {
                    t = flat_crossing(a, b, lights[base + 3u].xyz, o, d);
                }
                if (t > 0.0 && t < end) {
                    end = t;
                    glow = i;
                }
            }
            last = Meeting(0.0, NONE);
            crossings = 0u;
        }
        var meeting = Meeting(end, NONE);
        if (crossings < MOST_CROSSINGS) {
            meeting = next_meeting(o, d, end, last);
        }
        last = meeting;
        crossings++;
        let at_end = meeting.veil == NONE;
        let base = select(meeting.veil, 0u, at_end) * VEIL;
        let record = veils[base];
        let optic = bitcast<u32>(record.z);
        var sort = bitcast<u32>(record.y);
        let point = o + meeting.t * d;
        var normal = veil_normal(select(meeting.veil, 0u, at_end), point);
        var count = select(0u, lamps, veils[base + 1u].w != 0.0);
        var sky = 0.0;
        var reflectance = vec3(0.0);
        if (at_end) {
            sort = OPAQUE;
            count = 0u;
            if (glow == NONE && hit.solid != NONE) {
                count = lamps;
                let solid = hit.solid * SOLID;
                let a = solids[solid];
                let b = solids[solid + 1u];
                let c = solids[solid + 2u];
                normal = normalize(cross(b.xyz - a.xyz, c.xyz - a.xyz));
                sky = dot(vec3(a.w, b.w, c.w), hit.weights);
                reflectance = solids[solid + 3u].xyz;
            }
        }
        let steep = dot(normal, d);
        let front = steep < 0.0;
        let near = select(-normal, normal, front);
        let cos = abs(steep);
        let distance = before + meeting.t;
        let sum = gather(point, near, optic, sort, front, d, distance * view.pixel, count);
        if (at_end) {
            var seen = select(vec3(0.0), view.sky_lx * INV_PI, d.y > 0.0);
            if (glow != NONE) {
                seen = lights[view.glow_base + glow * GLOW + 4u].xyz;
            } else if (hit.solid != NONE) {
                seen = reflectance * (sum.back + view.sky_lx * sky) * INV_PI;
            }
            total += weight * seen;
            weight = vec3(0.0);
        } else {
            let near_face = optic + select(FACE, 0u, front) * ROW;
            if (count != 0u) {
                let exit_shape = curve(near_face + EXIT_SHAPE * ROW, cos);
                let mean = tables[optic + MEANS * ROW + select(0u, 1u, front)].xyz;
                let by_sky = curve(near_face + REFLECT * ROW, cos) * view.sky_lx * veil_sky(meeting.veil, front, point, near)
                    + exit_shape * mean * view.sky_lx * veil_sky(meeting.veil, !front, point, -near);
                let scattered = curve(near_face + REFLECT_SHAPE * ROW, cos) * sum.back + exit_shape * sum.on + sum.film;
                total += weight * (scattered + by_sky) * INV_PI;
            }
            if ((sort == LOOKING_GLASS || sort == PANE) && may_mirror) {
                may_mirror = false;
                let silvered = vec3(select(0.0, record.w, front));
                onward = weight * select(curve(near_face + MIRROR * ROW, cos), silvered, sort == LOOKING_GLASS);
                onward_o = point + SKIN * near;
                onward_d = d - 2.0 * steep * normal;
                onward_before = distance;
            }
            weight *= select(curve(optic + THROUGH * ROW, cos), vec3(0.0), sort == LOOKING_GLASS);
        }
        if (all(weight == vec3(0.0))) {
            if (all(onward == vec3(0.0))) {
                break;
            }
            weight = onward;
            onward = vec3(0.0);
            o = onward_o;
            d = onward_d;
            before = onward_before;
            fresh = true;
        }
    }
    return total;
}

// picture::Camera::ray
@compute @workgroup_size(8, 8)
fn expose(@builtin(global_invocation_id) id: vec3<u32>) {
    let pixel = id.xy + view.origin;
    if (pixel.x >= view.size.x || pixel.y >= view.size.y) {
        return;
    }
    let size = vec2<f32>(view.size);
    let at = vec2<f32>(pixel) + view.jitter;
    let across = (2.0 * at.x - size.x) / size.y * view.half_height;
    let upwards = (1.0 - 2.0 * at.y / size.y) * view.half_height;
    let along = normalize(view.forward + across * view.right + upwards * view.up);
    let seen = vec4(luminance(view.eye, along), 1.0);
    let index = pixel.y * view.size.x + pixel.x;
    picture[index] = select(mix(picture[index], seen, view.blend), seen, view.blend >= 1.0);
}
