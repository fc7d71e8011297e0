//! The pass that turns luminance into display values.

use super::{Exposer, Which};
use bytemuck::{Pod, Zeroable};
use gauzelight::picture::{Develop, PALETTE_STEPS, palette_table};
use wgpu::util::DeviceExt as _;

const SHADER: &str = include_str!("../../../assets/shaders/develop.wgsl");

/// The record at the head of `develop.wgsl`.
#[derive(Clone, Copy, Pod, Zeroable)]
#[repr(C)]
struct Bath {
    quick: [u32; 2],
    fine: [u32; 2],
    shown: [u32; 2],
    low: f32,
    high: f32,
    mode: u32,
    fine_rows: u32,
    pad: [u32; 2],
    palette: [[f32; 4]; PALETTE_STEPS],
}

/// Draws an exposer's picture into a target.
pub struct Developer {
    device: wgpu::Device,
    pipeline: wgpu::RenderPipeline,
}

impl Developer {
    /// For targets of one format.
    pub fn new(device: &wgpu::Device, format: wgpu::TextureFormat) -> Self {
        let module = device.create_shader_module(wgpu::ShaderModuleDescriptor {
            label: Some("develop"),
            source: wgpu::ShaderSource::Wgsl(SHADER.into()),
        });
        let pipeline = device.create_render_pipeline(&wgpu::RenderPipelineDescriptor {
            label: Some("develop"),
            layout: None,
            vertex: wgpu::VertexState {
                module: &module,
                entry_point: Some("cover"),
                compilation_options: Default::default(),
                buffers: &[],
            },
            primitive: Default::default(),
            depth_stencil: None,
            multisample: Default::default(),
            fragment: Some(wgpu::FragmentState {
                module: &module,
                entry_point: Some("develop"),
                compilation_options: Default::default(),
                targets: &[Some(format.into())],
            }),
            multiview_mask: None,
            cache: None,
        });
        Self { device: device.clone(), pipeline }
    }

    /// Records the drawing of a picture into `target`, `shown` pixels across and down: the fine one as far down as
    /// `fine_rows` of its rows are taken, the quick one below.
    pub fn record(
        &self,
        exposer: &Exposer,
        fine_rows: u32,
        develop: Develop,
        target: &wgpu::TextureView,
        shown: (u32, u32),
        encoder: &mut wgpu::CommandEncoder,
    ) {
        let ((quick, quick_size), (fine, fine_size)) = (exposer.picture(Which::Quick), exposer.picture(Which::Fine));
        let (low, high, mode) = match develop {
            Develop::White(white) => (0.0, white, 0),
            Develop::FalseColour(low, high) => (low, high, 1),
            Develop::Adapted(eye) => (eye.threshold, eye.white, 2),
        };
        let bath = Bath {
            quick: [quick_size.0, quick_size.1],
            fine: [fine_size.0, fine_size.1],
            shown: [shown.0, shown.1],
            low,
            high,
            mode,
            fine_rows,
            pad: [0; 2],
            palette: palette_table().map(|colour| colour.extend(1.0).to_array()),
        };
        let record = self.device.create_buffer_init(&wgpu::util::BufferInitDescriptor {
            label: Some("bath"),
            contents: bytemuck::bytes_of(&bath),
            usage: wgpu::BufferUsages::STORAGE,
        });
        let group = self.device.create_bind_group(&wgpu::BindGroupDescriptor {
            label: Some("develop"),
            layout: &self.pipeline.get_bind_group_layout(0),
            entries: &[
                wgpu::BindGroupEntry { binding: 0, resource: record.as_entire_binding() },
                wgpu::BindGroupEntry { binding: 1, resource: quick.as_entire_binding() },
                wgpu::BindGroupEntry { binding: 2, resource: fine.as_entire_binding() },
            ],
        });
        let mut pass = encoder.begin_render_pass(&wgpu::RenderPassDescriptor {
            label: Some("develop"),
            color_attachments: &[Some(wgpu::RenderPassColorAttachment {
                view: target,
                depth_slice: None,
                resolve_target: None,
                ops: wgpu::Operations { load: wgpu::LoadOp::Clear(wgpu::Color::BLACK), store: wgpu::StoreOp::Store },
            })],
            ..Default::default()
        });
        pass.set_pipeline(&self.pipeline);
        pass.set_bind_group(0, &group, &[]);
        pass.draw(0..3, 0..1);
    }
}
