// From luminance to display values: picture::Develop, with the palette that the core made.

struct Bath {
    quick: vec2<u32>,
    fine: vec2<u32>,
    shown: vec2<u32>,
    low: f32,
    high: f32,
    // 0 a fixed exposure, 1 false colour, 2 an adapted eye.
    mode: u32,
    // Rows of the fine picture that are taken; below them the quick one shows.
    fine_rows: u32,
    pad: vec2<u32>,
    palette: array<vec4<f32>, 64>,
}

// No uniform, for the reason that stands at the head of the night's shader.
@group(0) @binding(0) var<storage, read> bath: Bath;
@group(0) @binding(1) var<storage, read> quick: array<vec4<f32>>;
@group(0) @binding(2) var<storage, read> fine: array<vec4<f32>>;

const SHOULDER: f32 = 0.8;

@vertex
fn cover(@builtin(vertex_index) index: u32) -> @builtin(position) vec4<f32> {
    // One triangle over the whole target.
    return vec4(f32(i32(index & 1u) * 4 - 1), f32(i32(index >> 1u) * 4 - 1), 0.0, 1.0);
}

fn at(is_fine: bool, x: u32, y: u32) -> vec3<f32> {
    if (is_fine) {
        return fine[min(y, bath.fine.y - 1u) * bath.fine.x + min(x, bath.fine.x - 1u)].xyz;
    }
    return quick[min(y, bath.quick.y - 1u) * bath.quick.x + min(x, bath.quick.x - 1u)].xyz;
}

// Adapted::linear up to its exposure: colour goes with the cones, and what is below the threshold is black.
fn seen_by_eye(luminance: vec3<f32>) -> vec3<f32> {
    let y = dot(luminance, vec3(0.2126, 0.7152, 0.0722));
    let cones = clamp(0.7670 + 0.3334 * log(max(y, 1.0e-9)) / log(10.0), 0.0, 1.0);
    return mix(vec3(y), luminance, cones) * (max(y - bath.low, 0.0) / max(y, 1.0e-9));
}

fn developed(scene: vec3<f32>) -> vec3<f32> {
    var luminance = scene;
    if (bath.mode == 2u) {
        luminance = seen_by_eye(scene);
    }
    if (bath.mode == 1u) {
        let y = dot(luminance, vec3(0.2126, 0.7152, 0.0722));
        let share = log(max(y, 1.0e-9) / bath.low) / log(bath.high / bath.low);
        if (share < 0.0) {
            return vec3(0.0);
        }
        if (share > 1.0) {
            return vec3(1.0);
        }
        let x = share * 63.0;
        let i = min(u32(x), 62u);
        return mix(bath.palette[i].xyz, bath.palette[i + 1u].xyz, x - f32(i));
    }
    let value = luminance / bath.high;
    let peak = max(value.x, max(value.y, value.z));
    if (peak <= SHOULDER) {
        return value;
    }
    let room = 1.0 - SHOULDER;
    let eased = SHOULDER + room * (1.0 - exp(-(peak - SHOULDER) / room));
    let pale = clamp(1.0 - 1.0 / (1.0 + 0.15 * (peak - SHOULDER)), 0.0, 1.0);
    return mix(value * (eased / peak), vec3(eased), pale);
}

@fragment
fn develop(@builtin(position) position: vec4<f32>) -> @location(0) vec4<f32> {
    // A picture taken smaller is developed first and stretched then, so that a lamp does not bleed over its edge.
    let is_fine = position.y * f32(bath.fine.y) < f32(bath.fine_rows) * f32(bath.shown.y);
    let scale = vec2<f32>(select(bath.quick, bath.fine, is_fine)) / vec2<f32>(bath.shown);
    let place = max(position.xy * scale - 0.5, vec2(0.0));
    let corner = vec2<u32>(place);
    let f = place - vec2<f32>(corner);
    let above = mix(developed(at(is_fine, corner.x, corner.y)), developed(at(is_fine, corner.x + 1u, corner.y)), f.x);
    let below = mix(developed(at(is_fine, corner.x, corner.y + 1u)), developed(at(is_fine, corner.x + 1u, corner.y + 1u)), f.x);
    return vec4(mix(above, below, f.y), 1.0);
}
