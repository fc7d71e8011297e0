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

// Not a uniform: software drivers compile a shader anew for every value of a uniform that decides where it branches, and keep them all.
@group(0) @binding(0) var<storage, read> view: View;
@group(0) @binding(1) var<storage, read> nodes: array<vec4<f32>>;
@group(0) @binding(2) var<storage, read> solids: array<vec4<f32>>;
@group(0) @binding(3) var<storage, read> veils: array<vec4<f32>>;
@group(0) @binding(4) var<storage, read> lights: array<vec4<f32>>;
@group(0) @binding(5) var<storage, read> tables: array<vec4<f32>>;
@group(0) @binding(6) var<storage, read> texels: array<vec2<u32>>;
@group(0) @binding(7) var<storage, read_write> picture: array<vec4<f32>>;

const INV_PI: f32 = 0.31830988618;
const INV_TAU: f32 = 0.15915494309;
const SQRT_HALF: f32 = 0.70710678118;
const FAR: f32 = 3.0e38;
const NONE: u32 = 0xffffffffu;

// light.rs: SKIN, LEAST_LX, MOST_CROSSINGS
const SKIN: f32 = 1.0e-3;
const LEAST_LX: f32 = 5.0e-6;
const MOST_CROSSINGS: u32 = 32u;

// Strides of the packed records: viewer/gpu/pack.rs
const SOLID: u32 = 4u;
const VEIL: u32 = 45u;
const BEAM: u32 = 11u;
const LAMP: u32 = 4u;
const GLOW: u32 = 5u;
const ROW: u32 = 128u;
const GAIN_STEPS: u32 = 256u;
const SPREAD: u32 = 1024u;
const HALF_SPREAD: u32 = 512u;
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

// optics::sample_gain
fn gain(row: u32, bend: f32) -> f32 {
    return between(row, bend, GAIN_STEPS);
}

fn between(row: u32, part: f32, steps: u32) -> f32 {
    let x = clamp(part, 0.0, 1.0) * f32(steps - 1u);
    let i = min(u32(x), steps - 2u);
    let a = tables[row + i].x;
    return a + (tables[row + i + 1u].x - a) * (x - f32(i));
}

// optics::Spread::toward; `axis.w` is how many planes there are, `side.w` whether they are over the angle.
fn spread(base: u32, along: vec3<f32>, axis: vec4<f32>, side: vec4<f32>) -> f32 {
    let cos = dot(along, axis.xyz);
    if (bitcast<u32>(side.w) == 0u) {
        // optics::Spread::sample
        return between(base, 0.5 * cos + 0.5, SPREAD);
    }
    let planes = bitcast<u32>(axis.w);
    let behind = cos < 0.0;
    let pole = select(axis.xyz, -axis.xyz, behind);
    let x = min(length(along - pole) * SQRT_HALF, 1.0) * f32(HALF_SPREAD - 1u);
    let step = min(u32(x), HALF_SPREAD - 2u);
    let share = x - f32(step);
    let aside = vec2(dot(along, side.xyz), dot(along, cross(side.xyz, axis.xyz)));
    // On the axis every azimuth is as good, and an arc tangent has none.
    let on_axis = max(abs(aside.x), abs(aside.y)) < 1.0e-6;
    let turn = atan2(select(aside.y, 0.0, on_axis), select(aside.x, 1.0, on_axis)) * INV_TAU;
    let around = (turn - floor(turn)) * f32(planes);
    let plane = min(u32(around), planes - 1u);
    let next = select(plane + 1u, 0u, plane + 1u == planes);
    let row = base + select(0u, HALF_SPREAD, behind) + step;
    let a = row + plane * SPREAD;
    let b = row + next * SPREAD;
    let first = tables[a].x + (tables[a + 1u].x - tables[a].x) * share;
    let second = tables[b].x + (tables[b + 1u].x - tables[b].x) * share;
    return first + (second - first) * (around - f32(plane));
}
