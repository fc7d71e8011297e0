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
    for (var turn = 0u; turn < 2u * (MOST_CROSSINGS + 1u); turn++) {
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
        let scatters = !at_end && veils[base + 1u].w != 0.0;
        var count = select(0u, lamps, scatters);
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
            if (scatters) {
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
