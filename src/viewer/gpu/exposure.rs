//! The pass that fills a buffer with luminance.

use super::{LightPack, ScenePack, TexelPack};
use bytemuck::{Pod, Zeroable};
use gauzelight::{light::Night, picture::Camera};
use wgpu::util::DeviceExt as _;

/// The shader, one file a subject; a test parses the very same whole.
const SHADER: &str = concat!(
    include_str!("../../../assets/shaders/night/head.wgsl"),
    include_str!("../../../assets/shaders/night/crossings.wgsl"),
    include_str!("../../../assets/shaders/night/trees.wgsl"),
    include_str!("../../../assets/shaders/night/frames.wgsl"),
    include_str!("../../../assets/shaders/night/lights.wgsl"),
    include_str!("../../../assets/shaders/night/look.wgsl"),
);
const GROUP: u32 = 8;

/// The record at the head of the shader, field by field.
#[derive(Clone, Copy, Debug, Pod, Zeroable)]
#[repr(C)]
struct View {
    eye: [f32; 3],
    half_height: f32,
    right: [f32; 3],
    pixel: f32,
    up: [f32; 3],
    beams: u32,
    forward: [f32; 3],
    lamps: u32,
    sky_lx: [f32; 3],
    glows: u32,
    moon_toward: [f32; 3],
    moon: u32,
    moon_square: [f32; 3],
    lamp_base: u32,
    size: [u32; 2],
    origin: [u32; 2],
    jitter: [f32; 2],
    glow_base: u32,
    spread_base: u32,
    solid_root: u32,
    veil_root: u32,
    blend: f32,
    pad: u32,
}

/// One picture to take.
#[derive(Clone, Copy, Debug)]
pub struct Order {
    /// From where.
    pub camera: Camera,
    /// Pixels across and down of the whole picture.
    pub size: (u32, u32),
    /// First row to fill, and how many.
    pub rows: (u32, u32),
    /// Where in a pixel its ray goes, 0 to 1 each way.
    pub within: [f32; 2],
    /// Share with which the new value replaces the old: 1 replaces it, 1/n makes the mean of n.
    pub blend: f32,
    /// Rays as wide as a pixel of a picture of this height, for detail that is averaged.
    pub width_of: u32,
}

impl Order {
    /// The whole of a picture, one ray through the middle of each pixel.
    pub fn whole(camera: Camera, size: (u32, u32)) -> Self {
        Self { camera, size, rows: (0, size.1), within: [0.5; 2], blend: 1.0, width_of: size.1 }
    }
}

/// The night in buffers, and the pipeline over them.
pub struct Exposer {
    device: wgpu::Device,
    queue: wgpu::Queue,
    pipeline: wgpu::ComputePipeline,
    pub(super) scene: ScenePack,
    texels: TexelPack,
    lights: LightPack,
    nodes: wgpu::Buffer,
    solids: wgpu::Buffer,
    veils: wgpu::Buffer,
    pub(super) tables: wgpu::Buffer,
    light_records: wgpu::Buffer,
    texel_words: wgpu::Buffer,
    plates: [Plate; 2],
    sky: Sky,
}

/// A buffer of luminances.
struct Plate {
    buffer: wgpu::Buffer,
    size: (u32, u32),
}

/// Light from no particular place, as that record holds it.
struct Sky {
    lx: [f32; 3],
    moon: Option<([f32; 3], [f32; 3])>,
}

impl Sky {
    fn of(night: &Night) -> Self {
        let moon = night.disc().map(|m| (m.toward.to_array(), m.square.to_array()));
        Self { lx: night.sky_lx.to_array(), moon }
    }
}

/// Which of an exposer's two pictures: a small quick one while something moves, and a fine one that takes its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// Quick.
    Quick,
    /// Fine.
    Fine,
}

fn storage(device: &wgpu::Device, label: &str, bytes: &[u8]) -> wgpu::Buffer {
    device.create_buffer_init(&wgpu::util::BufferInitDescriptor {
        label: Some(label),
        contents: bytes,
        usage: wgpu::BufferUsages::STORAGE | wgpu::BufferUsages::COPY_DST,
    })
}

/// Writes over a buffer of the same size, else makes another.
fn refill(device: &wgpu::Device, queue: &wgpu::Queue, buffer: &mut wgpu::Buffer, label: &str, bytes: &[u8]) {
    if bytes.len() as u64 == buffer.size() {
        queue.write_buffer(buffer, 0, bytes);
    } else {
        *buffer = storage(device, label, bytes);
    }
}

/// Texels that a card binds at once.
fn most_texels(device: &wgpu::Device) -> usize {
    (device.limits().max_storage_buffer_binding_size as usize) / size_of::<[u32; 2]>()
}

fn picture_buffer(device: &wgpu::Device, size: (u32, u32)) -> wgpu::Buffer {
    device.create_buffer(&wgpu::BufferDescriptor {
        label: Some("luminance"),
        size: u64::from(size.0.max(1)) * u64::from(size.1.max(1)) * 16,
        usage: wgpu::BufferUsages::STORAGE | wgpu::BufferUsages::COPY_SRC,
        mapped_at_creation: false,
    })
}

impl Exposer {
    /// Compiles the shader and uploads a night.
    pub fn new(device: &wgpu::Device, queue: &wgpu::Queue, night: &Night) -> Self {
        let module = device.create_shader_module(wgpu::ShaderModuleDescriptor {
            label: Some("night"),
            source: wgpu::ShaderSource::Wgsl(SHADER.into()),
        });
        let pipeline = device.create_compute_pipeline(&wgpu::ComputePipelineDescriptor {
            label: Some("expose"),
            layout: None,
            module: &module,
            entry_point: Some("expose"),
            compilation_options: Default::default(),
            cache: None,
        });
        let scene = ScenePack::of(night, false);
        let texels = TexelPack::of(night, most_texels(device));
        let lights = LightPack::of(night, &scene, &texels);
        Self {
            nodes: storage(device, "nodes", bytemuck::cast_slice(&scene.nodes)),
            solids: storage(device, "solids", bytemuck::cast_slice(&scene.solids)),
            veils: storage(device, "veils", bytemuck::cast_slice(&scene.veils)),
            tables: storage(device, "tables", bytemuck::cast_slice(&scene.tables)),
            light_records: storage(device, "lights", bytemuck::cast_slice(&lights.lights)),
            texel_words: storage(device, "pictures", bytemuck::cast_slice(&texels.texels)),
            plates: [(); 2].map(|()| Plate { buffer: picture_buffer(device, (1, 1)), size: (1, 1) }),
            sky: Sky::of(night),
            device: device.clone(),
            queue: queue.clone(),
            pipeline,
            scene,
            texels,
            lights,
        }
    }

    /// Uploads a night whose yard was rebuilt. Where `open`, with the sky of the open, which costs no time.
    pub fn reload(&mut self, night: &Night, open: bool) {
        self.scene = ScenePack::of(night, open);
        let device = &self.device;
        self.nodes = storage(device, "nodes", bytemuck::cast_slice(&self.scene.nodes));
        self.solids = storage(device, "solids", bytemuck::cast_slice(&self.scene.solids));
        self.veils = storage(device, "veils", bytemuck::cast_slice(&self.scene.veils));
        self.tables = storage(device, "tables", bytemuck::cast_slice(&self.scene.tables));
        self.relight(night);
    }

    /// Uploads a night in which a cloth hangs elsewhere or is another.
    pub fn rehang(&mut self, night: &Night) {
        self.scene.hang(night);
        for (buffer, label, rows) in [
            (&mut self.nodes, "nodes", &self.scene.nodes),
            (&mut self.veils, "veils", &self.scene.veils),
            (&mut self.tables, "tables", &self.scene.tables),
        ] {
            refill(&self.device, &self.queue, buffer, label, bytemuck::cast_slice(rows));
        }
        self.relight(night);
    }

    /// Uploads lights alone: a station was moved or switched. Pictures travel only when a new one is thrown.
    pub fn relight(&mut self, night: &Night) {
        if !self.scene.holds_lamps(night) {
            return self.rehang(night);
        }
        if !self.texels.holds(night) {
            self.texels = TexelPack::of(night, most_texels(&self.device));
            self.texel_words = storage(&self.device, "pictures", bytemuck::cast_slice(&self.texels.texels));
        }
        self.sky = Sky::of(night);
        self.lights = LightPack::of(night, &self.scene, &self.texels);
        let bytes: &[u8] = bytemuck::cast_slice(&self.lights.lights);
        refill(&self.device, &self.queue, &mut self.light_records, "lights", bytes);
    }

    /// Records the taking of a picture, or of some rows of it.
    pub fn record(&mut self, frame: &Order, which: Which, encoder: &mut wgpu::CommandEncoder) {
        let plate = &mut self.plates[which as usize];
        if plate.size != frame.size {
            *plate = Plate { buffer: picture_buffer(&self.device, frame.size), size: frame.size };
        }
        let view = self.device.create_buffer_init(&wgpu::util::BufferInitDescriptor {
            label: Some("view"),
            contents: bytemuck::bytes_of(&self.view(frame)),
            usage: wgpu::BufferUsages::STORAGE,
        });
        let buffers = [
            &view,
            &self.nodes,
            &self.solids,
            &self.veils,
            &self.light_records,
            &self.tables,
            &self.texel_words,
            &self.plates[which as usize].buffer,
        ];
        let entries: Vec<_> = buffers
            .iter()
            .enumerate()
            .map(|(i, buffer)| wgpu::BindGroupEntry { binding: i as u32, resource: buffer.as_entire_binding() })
            .collect();
        let group = self.device.create_bind_group(&wgpu::BindGroupDescriptor {
            label: Some("night"),
            layout: &self.pipeline.get_bind_group_layout(0),
            entries: &entries,
        });
        let mut pass = encoder.begin_compute_pass(&wgpu::ComputePassDescriptor::default());
        pass.set_pipeline(&self.pipeline);
        pass.set_bind_group(0, &group, &[]);
        pass.dispatch_workgroups(frame.size.0.div_ceil(GROUP), frame.rows.1.div_ceil(GROUP), 1);
    }

    /// The buffer of luminances and its size in pixels: RGB and a 1, cd/m².
    pub fn picture(&self, which: Which) -> (&wgpu::Buffer, (u32, u32)) {
        let plate = &self.plates[which as usize];
        (&plate.buffer, plate.size)
    }

    fn view(&self, frame: &Order) -> View {
        let camera = &frame.camera;
        let counts = self.lights.counts;
        let (toward, square) = self.sky.moon.unwrap_or(([0.0, 1.0, 0.0], [0.0; 3]));
        View {
            eye: camera.eye.to_array(),
            half_height: camera.half_height,
            right: camera.right.to_array(),
            pixel: camera.pixel(frame.width_of),
            up: camera.up.to_array(),
            beams: counts.beams,
            forward: camera.forward.to_array(),
            lamps: counts.lamps,
            sky_lx: self.sky.lx,
            glows: counts.glows,
            moon_toward: toward,
            moon: self.sky.moon.is_some().into(),
            moon_square: square,
            lamp_base: counts.lamp_base,
            size: [frame.size.0, frame.size.1],
            origin: [0, frame.rows.0],
            jitter: frame.within,
            glow_base: counts.glow_base,
            spread_base: self.scene.spread_base,
            solid_root: self.scene.solid_root,
            veil_root: self.scene.veil_root,
            blend: frame.blend,
            pad: 0,
        }
    }
}
