//! The window: an engine's frame around the picture, and cards over it. It keeps no second truth: what it shows was taken
//! by the shader from the core's own tables, and every number on a card was asked of the core.

mod cards;
mod chords;
mod curtain;
mod darkroom;
mod eye;
pub mod gpu;
mod hands;
mod keys;
mod outline;
mod pointing;
mod rest;
mod studio;
mod theme;
mod thumbs;

use crate::command::{Stage, skies};
use bevy::{
    app::{App, AppExit, PreStartup, TerminalCtrlCHandlerPlugin, Update},
    asset::{Assets, Handle, RenderAssetUsages},
    camera::{Camera2d, ClearColor},
    color::Color,
    ecs::{
        error::warn,
        prelude::{
            Commands, IntoScheduleConfigs, MessageReader, MessageWriter, NonSendMut, Query, Res, ResMut, Result,
            Single, With,
        },
        system::SystemParam,
    },
    image::{Image, ImageSampler},
    input::keyboard::{KeyboardFocusLost, KeyboardInput},
    log::LogPlugin,
    prelude::{DefaultPlugins, PluginGroup, Window, WindowPlugin},
    render::{
        Render, RenderApp, RenderSystems,
        render_resource::TextureFormat,
        renderer::{RenderDevice, RenderQueue},
        view::Msaa,
    },
    utils::default,
    window::{PrimaryWindow, RequestRedraw, WindowCloseRequested, WindowResizeConstraints},
    winit::WinitSettings,
};
use bevy_egui::{
    EguiContext, EguiContextSettings, EguiFullOutput, EguiInput, EguiPlugin, EguiStartupSet, EguiTextureHandle,
    EguiUserTextures,
    egui::{self, Sense, TextureId},
};
use cards::Pad;
use chords::Chords;
use curtain::Curtain;
use darkroom::{Darkroom, Wish};
use pointing::Pointing;
use rest::Rest;
use std::time::{Duration, Instant};
use studio::{Act, Studio};
use theme::Theme;
use thumbs::Thumbs;

/// The name of the program, as it stands in the title.
const TITLE: &str = "gauzelight";
/// Smaller than this the cards would lie over each other, points.
const SMALLEST: (f32, f32) = (960.0, 560.0);
/// Larger than this no screen is: what was remembered of another is forgotten, points.
const LARGEST: (u32, u32) = (7680, 4320);

/// What the one system of the window keeps.
struct Desk {
    studio: Studio,
    theme: Theme,
    pad: Pad,
    pointing: Pointing,
    thumbs: Thumbs,
    place: Option<(Handle<Image>, TextureId, (u32, u32))>,
    throws: (u64, Vec<outline::Throw>),
    told: Option<(Instant, String)>,
    pace: (f32, bool, f32),
    rest: Rest,
    chords: Chords,
}

/// Why there is no window.
#[derive(Debug, thiserror::Error)]
pub enum NoWindow {
    /// None can be had here.
    #[error("{0}")]
    None(String),
    /// It ended with an error.
    #[error("{0}")]
    Ended(String),
}

/// Opens the window on a yard and returns when it is closed; `welcome` greets somebody who named no yard.
pub fn run(stage: Stage, welcome: bool) -> std::result::Result<(), NoWindow> {
    let theme = Theme::builtin().map_err(NoWindow::Ended)?;
    gpu::probe().map_err(|why| NoWindow::None(why.to_string()))?;
    let memory = studio::Memory::read();
    // The yard is lit while the engine finds its driver and the window is put up.
    let curtain = Curtain::before(std::thread::spawn(move || Studio::new(stage, welcome)), theme);
    let why = curtain.why();
    let darkroom = Darkroom::new();
    let remembered = memory.window.filter(|(width, height)| *width <= LARGEST.0 && *height <= LARGEST.1);
    let size = remembered.unwrap_or((1280, 800));
    let window = Window {
        title: TITLE.to_owned(),
        resolution: size.into(),
        resize_constraints: WindowResizeConstraints { min_width: SMALLEST.0, min_height: SMALLEST.1, ..default() },
        ..default()
    };
    let mut app = opened(window)?;
    app.insert_resource(darkroom.clone())
        .add_systems(
            PreStartup,
            (stand_up_a_camera.before(EguiStartupSet::InitContexts), by_hand.after(EguiStartupSet::InitContexts)),
        )
        .insert_non_send(curtain)
        .add_systems(Update, (curtain::lift, curtain::hang, frame.run_if(curtain::is_lifted)).chain());
    // A hitch in one frame is told and the next one is drawn; the yard in the window is worth more than a stop.
    app.set_error_handler(warn);
    if let Some(renderer) = app.get_sub_app_mut(RenderApp) {
        renderer.insert_resource(darkroom.clone());
        renderer.add_systems(Render, darkroom::work.in_set(RenderSystems::PrepareBindGroups));
        renderer.add_systems(Render, gpu::hold_back.in_set(RenderSystems::Cleanup));
    }
    let ended = app.run();
    darkroom.end();
    match (ended, why.take()) {
        (_, Some(why)) => Err(NoWindow::Ended(why)),
        (AppExit::Success, None) => Ok(()),
        (AppExit::Error(code), None) => Err(NoWindow::Ended(format!("the window ended with code {code}"))),
    }
}

/// The engine with its window. Where a display refuses that, the engine panics, which is nothing to show to anybody.
fn opened(window: Window) -> std::result::Result<App, NoWindow> {
    let hook = std::panic::take_hook();
    std::panic::set_hook(Box::new(|_| ()));
    let app = std::panic::catch_unwind(|| {
        let mut app = App::new();
        // What the engine tells itself is nobody's business; what goes wrong is.
        let quiet = LogPlugin { filter: "error".to_owned(), ..default() };
        // Its handler would be heard in the next frame only, and a window at rest draws none.
        let plugins = DefaultPlugins.set(quiet).disable::<TerminalCtrlCHandlerPlugin>();
        app.add_plugins(plugins.set(WindowPlugin {
            primary_window: Some(window),
            // Whoever closes the window is asked first whether changes may be lost.
            close_when_requested: false,
            ..default()
        }))
        .add_plugins(EguiPlugin::default())
        .insert_resource(ClearColor(Color::BLACK))
        .insert_resource(rest::settings());
        app
    });
    std::panic::set_hook(hook);
    app.map_err(|_| NoWindow::None("the display refuses a window".to_owned()))
}

/// The engine draws cards where a camera stands.
fn stand_up_a_camera(mut commands: Commands) {
    commands.spawn((Camera2d, Msaa::Off));
}

/// Cards are run by our own system, which gives them the real root and right answers about the pointer.
fn by_hand(mut settings: Query<&mut EguiContextSettings>) -> Result {
    settings.single_mut()?.run_manually = true;
    Ok(())
}

/// What came from the hand since the last frame.
#[derive(SystemParam)]
struct Given<'w, 's> {
    closing: MessageReader<'w, 's, WindowCloseRequested>,
    keyboard: MessageReader<'w, 's, KeyboardInput>,
    lost: MessageReader<'w, 's, KeyboardFocusLost>,
}

/// Where the picture is taken.
#[derive(SystemParam)]
struct Lab<'w> {
    darkroom: Res<'w, Darkroom>,
    device: Res<'w, RenderDevice>,
    queue: Res<'w, RenderQueue>,
    images: ResMut<'w, Assets<Image>>,
    textures: ResMut<'w, EguiUserTextures>,
}

/// What the engine is told for the next frame.
#[derive(SystemParam)]
struct Next<'w> {
    exit: MessageWriter<'w, AppExit>,
    redraw: MessageWriter<'w, RequestRedraw>,
    settings: ResMut<'w, WinitSettings>,
}

/// One frame: cards and picture, then the acts they led to, then the next order to the darkroom.
fn frame(
    mut contexts: Query<(&mut EguiContext, &mut EguiInput, &mut EguiFullOutput)>,
    mut desk: NonSendMut<Desk>,
    mut window: Single<&mut Window, With<PrimaryWindow>>,
    mut hand: Given,
    mut lab: Lab,
    mut next: Next,
) -> Result {
    let (mut context, mut input, mut output) = contexts.single_mut()?;
    let desk = &mut *desk;
    let ctx = context.get_mut();
    desk.fit(&window, &mut lab);
    desk.thumbs.refresh(ctx, &desk.studio);
    let mut acts = Vec::new();
    let mut given = input.take();
    if !ctx.egui_wants_keyboard_input() {
        // Tab is a key of ours while nobody types.
        acts.extend(keys::take_tab(&mut given));
    }
    desk.chords.amend(&mut hand.keyboard, &mut hand.lost, &mut given.events);
    let news = desk.rest.news(&mut given);
    **output = Some(ctx.run_ui(given, |ui| desk.draw(ui, &mut acts)));
    if hand.closing.read().count() > 0 {
        desk.pad.take(&mut acts);
        acts.push(Act::Quit);
    }
    let moved = !acts.is_empty();
    desk.perform(acts);
    let title = desk.title();
    if window.title != title {
        window.title = title;
    }
    if desk.studio.over {
        desk.studio.remember((window.width() as u32, window.height() as u32));
        next.exit.write(AppExit::Success);
    }
    desk.order(&lab);
    let held = ctx.input(|input| input.pointer.is_moving() || input.pointer.any_down() || !input.keys_down.is_empty());
    desk.go_on(news || moved || held || ctx.has_requested_repaint(), &mut next);
    Ok(())
}

impl Desk {
    /// Before its first frame.
    fn new(mut studio: Studio, theme: Theme) -> Self {
        studio.lighting.begin_as_draft();
        Self {
            pad: Pad::new(studio.yard().units),
            studio,
            theme,
            pointing: Pointing::default(),
            thumbs: Thumbs::default(),
            place: None,
            throws: (0, Vec::new()),
            told: None,
            pace: (0.0, true, 0.0),
            rest: Rest::new(),
            chords: Chords::default(),
        }
    }

    /// Fits picture and eye to the window.
    fn fit(&mut self, window: &Window, lab: &mut Lab) {
        let size = (window.physical_width().max(1), window.physical_height().max(1));
        self.studio.aspect = size.0 as f32 / size.1 as f32;
        let (theme, width) = (&self.theme, window.width().max(1.0));
        self.studio.free = ((theme.rail + 2.0 * theme.gap) / width, 1.0 - (theme.card + 2.0 * theme.gap) / width);
        self.make_place(size, &mut lab.images, &mut lab.textures);
    }

    /// Lets acts take effect, and all that hangs on the yard follow.
    fn perform(&mut self, mut acts: Vec<Act>) {
        // What was typed comes before the click that ended the typing.
        acts.sort_by_key(|act| !matches!(act, Act::Type { .. }));
        for act in acts {
            let typed = if let Act::Type { of, field, .. } = &act { Some((of.clone(), field.clone())) } else { None };
            match (self.studio.act(act), typed) {
                (Err(why), Some((of, field))) => self.pad.refused(of, field, why),
                (Err(why), None) => self.told = Some((Instant::now(), why)),
                (Ok(()), _) => {}
            }
        }
        if let Err(why) = self.studio.keep_step() {
            self.told = Some((Instant::now(), why));
        }
    }

    /// Orders the next picture.
    fn order(&mut self, lab: &Lab) {
        let Some((image, _, size)) = &self.place else { return };
        let wish = Wish {
            camera: self.studio.eye.camera(),
            night: self.studio.night(),
            revision: self.studio.lighting.revision,
            draft: self.studio.lighting.is_draft(),
            develop: self.studio.develop(),
            target: (image.id(), *size),
        };
        (self.pace.0, self.pace.1) = lab.darkroom.wish(&wish, &lab.device, &lab.queue);
        if self.studio.lighting.is_draft() && lab.darkroom.has_picture() {
            self.studio.lighting.gather(skies::gather);
        }
    }

    /// Says when the next frame is drawn, after one in which something stirred or not.
    fn go_on(&mut self, stirred: bool, next: &mut Next) {
        let moves = stirred || self.studio.walk.is_some();
        let awaits = self.pace.1 || self.studio.is_at_work() || self.pad.is_at_work() || self.told.is_some();
        let after = self.rest.after(moves, awaits);
        if next.settings.focused_mode != after.focused_mode {
            *next.settings = after;
        }
        if moves {
            next.redraw.write(RequestRedraw);
            let whole = self.rest.pause();
            self.pace.2 += 0.1 * (1.0 / whole - self.pace.2);
        }
    }

    /// Keeps an image as large as the window for the picture to be developed into.
    fn make_place(&mut self, size: (u32, u32), images: &mut Assets<Image>, textures: &mut EguiUserTextures) {
        if self.place.as_ref().is_some_and(|(_, _, now)| *now == size) {
            return;
        }
        if let Some((old, ..)) = self.place.take() {
            textures.remove_image(&old);
        }
        let mut image = Image::new_target_texture(size.0, size.1, TextureFormat::Rgba8UnormSrgb, None);
        image.asset_usage = RenderAssetUsages::RENDER_WORLD | RenderAssetUsages::MAIN_WORLD;
        image.sampler = ImageSampler::linear();
        let handle = images.add(image);
        let id = textures.add_image(EguiTextureHandle::Strong(handle.clone()));
        self.place = Some((handle, id, size));
    }

    /// The window's title: the yard, and a star before it while it is not saved.
    fn title(&self) -> String {
        let star = if self.studio.history.is_saved() { "" } else { "* " };
        format!("{star}{} — {TITLE}", self.studio.yard().name.0)
    }

    fn draw(&mut self, ui: &mut egui::Ui, acts: &mut Vec<Act>) {
        let full = ui.ctx().viewport_rect();
        if let Some((_, texture, _)) = &self.place {
            let whole = egui::Rect::from_min_max(egui::pos2(0.0, 0.0), egui::pos2(1.0, 1.0));
            ui.painter().image(*texture, full, whole, egui::Color32::WHITE);
        }
        let picture = ui.interact(full, egui::Id::new("picture"), Sense::CLICK | Sense::DRAG);
        self.pointing.look(ui, &picture, full, &self.studio, acts);
        if !ui.ctx().egui_wants_keyboard_input() {
            let keyed = ui.ctx().input(|input| keys::acts(input, self.studio.yard().spots.len()));
            // Behind a card in the middle no key reaches the yard, and Esc closes an open list before all else.
            let listing = egui::Popup::is_any_open(ui.ctx());
            let reaches = |act: &Act| match act {
                Act::Close => !listing,
                Act::Help | Act::Questions => true,
                _ => !self.studio.is_asking(),
            };
            acts.extend(keyed.into_iter().filter(reaches));
        }
        let station = self.studio.station();
        if self.studio.outlines || station.is_some() {
            let revision = self.studio.lighting.revision.light;
            if self.throws.0 != revision {
                self.throws = (revision, outline::throws(self.studio.night()));
            }
            let camera = self.studio.eye.camera();
            // What is chosen shows its throw; all show theirs where that is asked for.
            let shown = |throw: &&outline::Throw| self.studio.outlines || Some(throw.station) == station;
            let throws: Vec<&outline::Throw> = self.throws.1.iter().filter(shown).collect();
            cards::outlines(ui.painter(), full, &camera, &throws, station, &self.theme);
        }
        cards::marks(ui.painter(), full, &self.studio, &self.pointing, &self.theme);
        let shown = cards::Shown {
            studio: &self.studio,
            theme: &self.theme,
            thumbs: &self.thumbs.list,
            // A card in the middle is what one looks at.
            hover: self.pointing.hover.as_ref().filter(|_| !self.studio.is_asking()),
            pace: self.pace,
        };
        let mut child = ui.new_child(egui::UiBuilder::new().max_rect(full));
        cards::draw(&mut child, &shown, &mut self.pad, acts);
        if let Some((since, why)) = &self.told {
            let colour = self.theme.warm.0;
            let at = egui::pos2(full.center().x, full.max.y - cards::strip_height(&self.studio, &self.theme) - 24.0);
            ui.painter().text(
                at,
                egui::Align2::CENTER_CENTER,
                why,
                egui::FontId::proportional(self.theme.body),
                colour,
            );
            if since.elapsed() > Duration::from_secs(8) {
                self.told = None;
            }
        }
    }
}
