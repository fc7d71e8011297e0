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
    let map2 = lights[base + 10u];
    let level = log2(max(blur * b.z / (lens.w * depth), map2.w));
    let bend = dot(map2.xyz, vec3(u, v, 1.0));
    let s = dot(map0.xyz, vec3(u, v, 1.0)) / bend;
    let t = dot(map1.xyz, vec3(u, v, 1.0)) / bend;
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
            let table = view.spread_base + bitcast<u32>(at.w);
            let intensity = spread(table, -toward, lights[record + 1u], lights[record + 2u]);
            square = lights[record + 3u].xyz * (intensity / squared);
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
