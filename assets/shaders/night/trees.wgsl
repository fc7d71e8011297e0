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
    let shear = shear_of(d);
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
            let met = triangle(i, o, shear);
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
