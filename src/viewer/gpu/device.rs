//! A graphics device without a window, and stills taken on it.

use super::{Exposer, Order, Which};
use gauzelight::{
    light::{Night, Rgb},
    picture::{Camera, Still},
};

/// Why the live picture cannot be had.
#[derive(Debug, thiserror::Error)]
pub enum DeviceFault {
    /// No driver.
    #[error("no graphics driver answers; on Debian, mesa-vulkan-drivers draws in software")]
    Adapter(#[source] wgpu::RequestAdapterError),
    /// The driver refused.
    #[error("the graphics driver refused: {0}")]
    Device(wgpu::RequestDeviceError),
    /// The result could not be read back.
    #[error("the picture could not be read back: {0}")]
    Back(String),
}

/// Whether any graphics driver answers.
pub fn probe() -> Result<(), DeviceFault> {
    adapter().map(|_| ())
}

fn adapter() -> Result<wgpu::Adapter, DeviceFault> {
    let instance = wgpu::Instance::new(wgpu::InstanceDescriptor::new_without_display_handle());
    let options =
        wgpu::RequestAdapterOptions { power_preference: wgpu::PowerPreference::HighPerformance, ..Default::default() };
    pollster::block_on(instance.request_adapter(&options)).map_err(DeviceFault::Adapter)
}

/// A device without a window.
pub struct Headless {
    /// The device.
    pub device: wgpu::Device,
    /// Its queue.
    pub queue: wgpu::Queue,
    /// What it calls itself.
    pub name: String,
}

impl Headless {
    /// Asks for the best device there is.
    pub fn open() -> Result<Self, DeviceFault> {
        let adapter = adapter()?;
        let (device, queue) = pollster::block_on(adapter.request_device(&wgpu::DeviceDescriptor {
            label: Some("gauzelight"),
            required_limits: adapter.limits(),
            ..Default::default()
        }))
        .map_err(DeviceFault::Device)?;
        let info = adapter.get_info();
        Ok(Self { device, queue, name: format!("{} ({:?})", info.name, info.backend) })
    }

    /// Takes a still of a night with the live shader, `samples` × `samples` rays a pixel.
    pub fn still(&self, night: &Night, camera: &Camera, size: (u32, u32), samples: u32) -> Result<Still, DeviceFault> {
        let mut exposer = Exposer::new(&self.device, &self.queue, night);
        for i in 0..samples * samples {
            let within = |k: u32| (k as f32 + 0.5) / samples as f32;
            let frame = Order {
                within: [within(i % samples), within(i / samples)],
                blend: 1.0 / (i + 1) as f32,
                ..Order::whole(*camera, size)
            };
            let mut encoder = self.device.create_command_encoder(&Default::default());
            exposer.record(&frame, Which::Fine, &mut encoder);
            self.queue.submit([encoder.finish()]);
        }
        self.read(&exposer)
    }

    /// Reads an exposer's picture back.
    pub fn read(&self, exposer: &Exposer) -> Result<Still, DeviceFault> {
        let (picture, (width, height)) = exposer.picture(Which::Fine);
        let copy = self.device.create_buffer(&wgpu::BufferDescriptor {
            label: Some("read back"),
            size: picture.size(),
            usage: wgpu::BufferUsages::MAP_READ | wgpu::BufferUsages::COPY_DST,
            mapped_at_creation: false,
        });
        let mut encoder = self.device.create_command_encoder(&Default::default());
        encoder.copy_buffer_to_buffer(picture, 0, &copy, 0, picture.size());
        self.queue.submit([encoder.finish()]);
        let (sender, receiver) = std::sync::mpsc::channel();
        copy.slice(..).map_async(wgpu::MapMode::Read, move |result| {
            // The receiver waits below and can only be gone if this function has returned.
            let _ = sender.send(result);
        });
        self.wait()?;
        let answer = receiver.recv().map_err(|e| DeviceFault::Back(e.to_string()))?;
        answer.map_err(|e| DeviceFault::Back(e.to_string()))?;
        let bytes = copy.slice(..).get_mapped_range();
        let texels: &[[f32; 4]] = bytemuck::cast_slice(&bytes);
        let luminance = texels.iter().map(|t| Rgb::new(t[0], t[1], t[2])).collect();
        Ok(Still { width, height, luminance })
    }

    /// Waits until the device has done all it was given.
    pub fn wait(&self) -> Result<(), DeviceFault> {
        self.device
            .poll(wgpu::PollType::Wait { submission_index: None, timeout: None })
            .map(|_| ())
            .map_err(|e| DeviceFault::Back(e.to_string()))
    }
}
