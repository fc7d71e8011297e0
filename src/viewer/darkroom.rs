//! Where pictures are taken and developed: plans what the graphics card does next, so that the window never waits for it.
//!
//! While something moves, a small picture is taken whole and stretched, as large as can be had in a tenth of a second.
//! Once nothing moves, a fine one is taken a few rows at a time, then again with its rays shifted, until its edges are
//! smooth; then the card rests.

use super::gpu::{Developer, Exposer, Order, Which};
use bevy::{
    asset::AssetId,
    image::Image,
    prelude::{Res, Resource},
    render::{
        render_asset::RenderAssets,
        renderer::{RenderDevice, RenderQueue},
        texture::GpuImage,
    },
};
use gauzelight::{
    edit::Starter,
    frames::Shelf,
    light::Night,
    picture::{Camera, Develop},
    scene::Catalogue,
};
use glam::Vec3;
use std::{
    sync::{
        Arc, Mutex, MutexGuard, PoisonError,
        atomic::{AtomicBool, AtomicU32, Ordering::Relaxed},
    },
    thread::JoinHandle,
    time::Instant,
};

/// Time that one order may take, ms.
const PATIENCE: f32 = 95.0;
/// Rays of a pixel of the finished picture: places within it. Roberts's R2 sequence, after the middle.
const PASSES: u32 = 6;

/// The state of the picture and of the work on it, shared by the window's world and the renderer's.
pub struct Lab {
    exposer: Option<Exposer>,
    /// Readies the exposer while the yard is lit.
    warming: Option<JoinHandle<Option<Exposer>>>,
    developer: Option<Developer>,
    orders: Vec<(Order, Which)>,
    develop: Develop,
    target: Option<(AssetId<Image>, (u32, u32))>,
    undeveloped: bool,
    wanted: Option<(Camera, u64)>,
    /// The next row and pass of the fine picture; `None` before the quick one is taken.
    progress: Option<(u32, u32)>,
    loaded: Revision,
    /// What a pixel costs, ns; falls and rises with what is measured.
    cost: f32,
    /// The shortest time that an order took of late, µs.
    shortest: f32,
    ordered_pixels: u32,
    clock: Arc<Clock>,
}

/// Told by the graphics card when it has done an order.
#[derive(Default)]
struct Clock {
    busy: AtomicBool,
    micros: AtomicU32,
}

/// Counts changes of what a picture shows: of its light, of what hangs, of what is built. The first counts them all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Revision {
    /// Any change.
    pub light: u64,
    /// Cloths hung elsewhere, and all below.
    pub hung: u64,
    /// The yard built anew.
    pub built: u64,
}

/// Handle of the lab in both worlds.
#[derive(Resource, Clone)]
pub struct Darkroom(Arc<Mutex<Lab>>);

/// What the window wants to see.
pub struct Wish<'a> {
    /// From where.
    pub camera: Camera,
    /// Of what.
    pub night: &'a Night,
    /// Of what state of it.
    pub revision: Revision,
    /// Whether it is shown quickly, with the sky of the open.
    pub draft: bool,
    /// How it is shown.
    pub develop: Develop,
    /// Where it goes, and its size in pixels.
    pub target: (AssetId<Image>, (u32, u32)),
}

impl Darkroom {
    /// An empty one.
    pub fn new() -> Self {
        Self(Arc::new(Mutex::new(Lab {
            exposer: None,
            warming: None,
            developer: None,
            orders: Vec::new(),
            develop: Develop::White(8.0),
            target: None,
            undeveloped: true,
            wanted: None,
            progress: None,
            loaded: Revision::default(),
            cost: 6000.0,
            shortest: 20_000.0,
            ordered_pixels: 0,
            clock: Arc::default(),
        })))
    }

    /// Has the driver compile the shader beside the window, by a small picture of nothing that is built.
    pub fn warm(&self, device: &RenderDevice, queue: &RenderQueue) {
        let (device, queue) = (device.wgpu_device().clone(), wgpu::Queue::clone(queue));
        self.lab().warming = Some(std::thread::spawn(move || {
            // The other threads are busy with the yard.
            let alone = rayon::ThreadPoolBuilder::new().num_threads(1).build().ok()?;
            let mut exposer = alone.install(|| {
                let yard = Starter::EmptyFront.yard();
                let night = Night::build(&yard, &Catalogue::builtin(), &Shelf::default()).ok()?;
                Some(Exposer::new(&device, &queue, &night))
            })?;
            let mut encoder = device.create_command_encoder(&Default::default());
            let camera = Camera::looking(Vec3::new(0.0, 1.6, 12.0), Vec3::ZERO, 0.8);
            exposer.record(&Order::whole(camera, (8, 8)), Which::Quick, &mut encoder);
            queue.submit([encoder.finish()]);
            Some(exposer)
        }));
    }

    /// Whether the shader is compiled.
    pub fn is_warm(&self) -> bool {
        self.lab().warming.as_ref().is_none_or(JoinHandle::is_finished)
    }

    /// Waits for the driver, so that the program does not end while that compiles.
    pub fn end(&self) {
        let warming = self.lab().warming.take();
        // What failed is told when it is wanted; now nothing is.
        let _ = warming.map(JoinHandle::join);
    }

    /// Whether a picture was taken, be it a small one.
    pub fn has_picture(&self) -> bool {
        let lab = self.lab();
        lab.progress.is_some() && lab.orders.is_empty() && !lab.clock.busy.load(Relaxed)
    }

    fn lab(&self) -> MutexGuard<'_, Lab> {
        // A panic elsewhere does not make a half-taken picture dangerous.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Plans the next order. Returns the time that the last took, ms, and whether anything is left to do.
    pub fn wish(&self, wish: &Wish, device: &RenderDevice, queue: &RenderQueue) -> (f32, bool) {
        // Lets the card tell what it has done.
        let _ = device.poll(wgpu::PollType::Poll);
        let mut lab = self.lab();
        lab.load(wish, device.wgpu_device(), queue);
        if lab.develop != wish.develop || lab.target != Some(wish.target) {
            (lab.develop, lab.undeveloped) = (wish.develop, true);
            if lab.target.map(|t| t.1) != Some(wish.target.1) {
                lab.wanted = None;
            }
            lab.target = Some(wish.target);
        }
        if lab.wanted != Some((wish.camera, wish.revision.light)) {
            lab.wanted = Some((wish.camera, wish.revision.light));
            lab.progress = None;
        }
        if !lab.clock.busy.load(Relaxed) && lab.orders.is_empty() {
            lab.measure();
            // The fine picture waits for the sky.
            if !wish.draft || lab.progress.is_none() {
                lab.plan();
            }
        }
        let resting = lab.progress.is_some_and(|(_, pass)| pass >= PASSES) && !lab.undeveloped;
        (lab.clock.micros.load(Relaxed) as f32 / 1000.0, !resting)
    }
}

impl Lab {
    fn load(&mut self, wish: &Wish, device: &wgpu::Device, queue: &wgpu::Queue) {
        if let Some(warming) = self.warming.take() {
            // Where it failed the exposer is made below, and what is wrong told.
            self.exposer = warming.join().ok().flatten();
        }
        let (now, loaded) = (wish.revision, self.loaded);
        match &mut self.exposer {
            None => self.exposer = Some(Exposer::new(device, queue, wish.night)),
            Some(exposer) if loaded.built != now.built => exposer.reload(wish.night, wish.draft),
            Some(exposer) if loaded.hung != now.hung => exposer.rehang(wish.night),
            Some(exposer) if loaded.light != now.light => exposer.relight(wish.night),
            Some(_) => {}
        }
        self.loaded = now;
    }

    fn measure(&mut self) {
        let micros = self.clock.micros.load(Relaxed) as f32;
        if self.ordered_pixels > 4000 && micros > 0.0 {
            // Part of the time is the window's own drawing, whatever the size of the order: the shortest of late tells.
            self.shortest = (self.shortest * 1.05).min(micros);
            let own = (micros - 0.7 * self.shortest).max(0.1 * micros);
            let measured = own * 1000.0 / self.ordered_pixels as f32;
            self.cost += 0.5 * (measured - self.cost);
        }
        self.ordered_pixels = 0;
    }

    fn plan(&mut self) {
        let (Some((camera, _)), Some((_, size))) = (self.wanted, self.target) else { return };
        let affordable = (PATIENCE * 1e6 / self.cost.max(1.0)).max(1000.0);
        let (frame, which) = match self.progress {
            None => {
                let shrink = (size.0 as f32 * size.1 as f32 / affordable).sqrt().ceil().clamp(1.0, 8.0);
                let small = |n: u32| ((n as f32 / shrink) as u32).max(1);
                let frame = Order { width_of: size.1, ..Order::whole(camera, (small(size.0), small(size.1))) };
                // Where the card is quick enough, the quick picture is the fine one's first pass.
                let whole = shrink == 1.0;
                self.progress = Some(if whole { (0, 1) } else { (0, 0) });
                (frame, if whole { Which::Fine } else { Which::Quick })
            }
            Some((_, pass)) if pass >= PASSES => return,
            Some((row, pass)) => {
                let rows = ((affordable / size.0 as f32) as u32).max(8).next_multiple_of(8).min(size.1 - row);
                // Spread the rays of the passes evenly (M. Roberts, "The Unreasonable Effectiveness of Quasirandom
                // Sequences", 2018: steps of 1/g and 1/g² with g = 1.32471795724).
                let within = [0.754_877_7, 0.569_840_3].map(|step: f32| (0.5 + pass as f32 * step).fract());
                let done = row + rows >= size.1;
                self.progress = Some(if done { (0, pass + 1) } else { (row + rows, pass) });
                let frame =
                    Order { camera, size, rows: (row, rows), within, blend: 1.0 / (pass + 1) as f32, width_of: size.1 };
                (frame, Which::Fine)
            }
        };
        self.ordered_pixels = frame.size.0 * frame.rows.1;
        self.orders.push((frame, which));
    }

    /// Rows of the fine picture that are taken of what is wanted.
    fn fine_rows(&self) -> u32 {
        match self.progress {
            None => 0,
            Some((row, 0)) => row,
            Some(_) => u32::MAX / 4096,
        }
    }
}

/// Runs the orders and develops the picture; in the renderer's world, once it has its textures.
pub fn work(
    darkroom: Res<Darkroom>,
    device: Res<RenderDevice>,
    queue: Res<RenderQueue>,
    images: Res<RenderAssets<GpuImage>>,
) {
    let mut lab = darkroom.lab();
    let lab = &mut *lab;
    let (Some((target, _)), Some(exposer)) = (lab.target, &mut lab.exposer) else { return };
    let Some(image) = images.get(target) else { return };
    let orders = std::mem::take(&mut lab.orders);
    if orders.is_empty() && !lab.undeveloped {
        return;
    }
    let mut encoder = device.wgpu_device().create_command_encoder(&Default::default());
    for (frame, which) in &orders {
        exposer.record(frame, *which, &mut encoder);
    }
    let fine_rows = lab.fine_rows();
    let Some(exposer) = &lab.exposer else { return };
    let format = image.texture_descriptor.format;
    let developer = lab.developer.get_or_insert_with(|| Developer::new(device.wgpu_device(), format));
    let size = (image.texture_descriptor.size.width, image.texture_descriptor.size.height);
    developer.record(exposer, fine_rows, lab.develop, &image.texture_view, size, &mut encoder);
    lab.undeveloped = false;
    let clock = Arc::clone(&lab.clock);
    let timed = !orders.is_empty();
    if timed {
        clock.busy.store(true, Relaxed);
    }
    let begun = Instant::now();
    queue.submit([encoder.finish()]);
    queue.on_submitted_work_done(move || {
        if timed {
            clock.micros.store(begun.elapsed().as_micros().min(u128::from(u32::MAX)) as u32, Relaxed);
            clock.busy.store(false, Relaxed);
        }
    });
}
