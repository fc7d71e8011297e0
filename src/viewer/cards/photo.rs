//! A front from a photo: four corners squared up, then a box over every window.

use super::{Act, Shown, asking};
use bevy_egui::egui::{
    self, Button, ColorImage, Pos2, Rect, RichText, Sense, Stroke, StrokeKind, TextEdit, TextureHandle, TextureOptions,
    Vec2, pos2, vec2,
};
use gauzelight::{
    edit::{Edit, Front, Measured},
    frames::Photo,
    geometry::square_up::{Mark, SquareUp, SquareUpFault, Squared, Stretch},
    scene::{Point, Units},
    units::Length,
};
use glam::DVec2;
use std::{
    path::PathBuf,
    sync::{
        Arc,
        mpsc::{Receiver, TryRecvError, channel},
    },
};

/// The corners of the wall in the order in which they are clicked.
const CORNERS: [&str; 4] = ["left foot", "right foot", "right top", "left top"];
/// Pixels of the squared-up picture, across.
const ACROSS: f64 = 1200.0;
/// How near to a corner the pointer must be to move it, points.
const REACH: f32 = 14.0;
/// A box smaller than this is a slip of the hand, m.
const LEAST: f64 = 0.15;

/// What is known so far.
pub struct Form {
    file: String,
    width: String,
    height: String,
    work: Option<Receiver<Result<Done, String>>>,
    photo: Option<(Arc<Photo>, TextureHandle)>,
    /// Corners, in pixels of the photo.
    corners: Vec<DVec2>,
    moving: Option<usize>,
    squared: Option<(Squared, TextureHandle)>,
    /// Windows, m on the wall: lower left and upper right corner.
    boxes: Vec<[DVec2; 2]>,
    drawing: Option<DVec2>,
    fault: Option<String>,
}

/// What a worker beside the window brings.
enum Done {
    Photo(Arc<Photo>, ColorImage),
    Squared(Box<Squared>),
}

impl Form {
    /// Nothing known.
    pub fn new(units: Units) -> Self {
        let (width, height) = if units == Units::Feet { ("30 ft", "16 ft") } else { ("9 m", "5 m") };
        Self {
            file: String::new(),
            width: width.to_owned(),
            height: height.to_owned(),
            work: None,
            photo: None,
            corners: Vec::new(),
            moving: None,
            squared: None,
            boxes: Vec::new(),
            drawing: None,
            fault: None,
        }
    }

    fn sizes(&self) -> Result<(Length, Length), String> {
        let length = |text: &str| Length::parse(text).map_err(|e| e.to_string());
        Ok((length(&self.width)?, length(&self.height)?))
    }

    fn read(&mut self, path: PathBuf) {
        let (sender, receiver) = channel();
        std::thread::spawn(move || {
            let read = Photo::load(&path).map_err(|e| e.to_string()).map(|photo| {
                let shown = thumbnail(&photo);
                Done::Photo(Arc::new(photo), shown)
            });
            // The card may have been closed meanwhile.
            let _ = sender.send(read);
        });
        (self.work, self.fault) = (Some(receiver), None);
    }

    fn square_up(&mut self) -> Result<(), String> {
        let (width, height) = self.sizes()?;
        let Some((photo, _)) = &self.photo else { return Ok(()) };
        let (w, h) = (width.m, height.m);
        let wall = [DVec2::ZERO, DVec2::new(w, 0.0), DVec2::new(w, h), DVec2::new(0.0, h)];
        let marks: Vec<Mark> =
            self.corners.iter().zip(wall).map(|(photo, wall)| Mark { photo: *photo, wall }).collect();
        let said = |fault: SquareUpFault| format!("{fault}: {}", fault.remedy());
        let map = SquareUp::new(&marks).map_err(said)?;
        let (sender, receiver) = channel();
        let photo = Arc::clone(photo);
        std::thread::spawn(move || {
            let stretch = Stretch { left: 0.0, right: w, foot: 0.0, top: h };
            let squared = map.squared(&photo, stretch, ACROSS / w.max(h)).map_err(said);
            // The card may have been closed meanwhile.
            let _ = sender.send(squared.map(|squared| Done::Squared(Box::new(squared))));
        });
        self.work = Some(receiver);
        Ok(())
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.work.is_some()
    }

    fn take_work(&mut self, ctx: &egui::Context) {
        let done = match self.work.as_ref().map(Receiver::try_recv) {
            None | Some(Err(TryRecvError::Empty)) => return,
            Some(Ok(done)) => done,
            Some(Err(TryRecvError::Disconnected)) => Err("the photo could not be worked on".to_owned()),
        };
        self.work = None;
        match done {
            Ok(Done::Photo(photo, shown)) => {
                let texture = ctx.load_texture("photo", shown, TextureOptions::LINEAR);
                (self.photo, self.squared) = (Some((photo, texture)), None);
                (self.corners, self.boxes) = (Vec::new(), Vec::new());
            }
            Ok(Done::Squared(squared)) => {
                let (w, h) = squared.picture.dimensions();
                let shown = ColorImage::from_rgba_unmultiplied([w as usize, h as usize], squared.picture.as_raw());
                let texture = ctx.load_texture("squared", shown, TextureOptions::LINEAR);
                self.squared = Some((*squared, texture));
            }
            Err(why) => self.fault = Some(why),
        }
    }

    fn front(&self, units: Units) -> Result<Front, String> {
        let (width, height) = self.sizes()?;
        // As fine as a photo and a hand can tell.
        let step = if units == Units::Feet { 0.0127 } else { 0.01 };
        let tape = |m: f64| width.changed(m);
        // Both edges are rounded, so that what ends at the wall's end does not end beyond it.
        let on_tape = |m: f64, most: f64| ((m / step).round() * step).min(most);
        let across = |m: f64| on_tape(m, width.m);
        let up = |m: f64| on_tape(m, height.m);
        let openings = self.boxes.iter().map(|[low, high]| Measured {
            left: tape(across(low.x)),
            sill: tape(up(low.y)),
            width: tape(across(high.x) - across(low.x)),
            height: tape(up(high.y) - up(low.y)),
            // What reaches the floor and is as high as a person is a door.
            door: low.y < 0.1 && high.y - low.y > 1.7,
        });
        Ok(Front { openings: openings.collect(), width: width.clone(), height, at: Point::default() })
    }
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    form.take_work(ui.ctx());
    ui.label(RichText::new("A front from a photo").size(theme.large).strong());
    if form.photo.is_none() {
        ui.label(RichText::new("Stand straight before the house and take all of the wall.").color(theme.faded.0));
        let endings = ["jpg", "jpeg", "png", "webp"];
        if let Some(path) = asking::file(ui, shown, "Read", &endings, &mut form.file) {
            form.read(path);
        }
    } else {
        measures(ui, form);
        let next = match (form.corners.len(), &form.squared, form.work.is_some()) {
            (_, _, true) => "a moment…".to_owned(),
            (4, Some(_), _) => format!("Drag a box over every window and door: {} so far", form.boxes.len()),
            (4, None, _) => "Drag a corner to where it belongs, then square it up".to_owned(),
            (n, ..) => format!("Click the wall's corners: now the {}", CORNERS[n.min(3)]),
        };
        ui.label(RichText::new(next).color(theme.warm.0));
        if form.squared.is_some() { windows(ui, shown, form) } else { corners(ui, shown, form) }
    }
    if let Some(fault) = &form.fault {
        ui.label(RichText::new(fault).color(theme.warm.0).size(theme.small));
    }
    ui.add_space(4.0);
    ui.horizontal(|ui| buttons(ui, shown, form, acts));
}

fn measures(ui: &mut egui::Ui, form: &mut Form) {
    ui.horizontal(|ui| {
        let mut changed = false;
        for (word, text) in [("Along the wall", &mut form.width), ("Up to the eaves", &mut form.height)] {
            ui.label(word);
            changed |= ui.add(TextEdit::singleline(text).desired_width(90.0)).changed();
        }
        if changed {
            // What was squared up by other measures is wrong.
            (form.squared, form.boxes, form.work) = (None, Vec::new(), None);
        }
    });
}

fn buttons(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let main = |text: &str| Button::new(RichText::new(text).color(theme.on_warm.0)).fill(theme.warm.0);
    if form.squared.is_some() {
        if ui.add(main("Build it")).clicked() {
            match form.front(shown.studio.yard().units) {
                Ok(front) => {
                    // The photo stays on the card: what is refused can be mended, what is built can be built upon.
                    let edit = front.edit(shown.studio.yard());
                    let built = if let Edit::Add(item) = &edit { Some(item.name().to_owned()) } else { None };
                    acts.push(Act::Build(edit, built));
                }
                Err(why) => form.fault = Some(why),
            }
        }
        if ui.add_enabled(!form.boxes.is_empty(), Button::new("Take back a box")).clicked() {
            form.boxes.pop();
        }
        if ui.button("Corners again").clicked() {
            (form.squared, form.boxes) = (None, Vec::new());
        }
    } else if form.photo.is_some() {
        let ready = form.corners.len() == 4 && form.work.is_none();
        if ui.add_enabled(ready, main("Square it up")).clicked() {
            form.fault = form.square_up().err();
        }
        if ui.button("Another photo").clicked() {
            (form.photo, form.work) = (None, None);
        }
    }
    if ui.button("Back").clicked() {
        acts.push(Act::Close);
    }
}

/// The photo, with the corners that were clicked.
fn corners(ui: &mut egui::Ui, shown: &Shown, form: &mut Form) {
    let Some((photo, texture)) = &form.photo else { return };
    let (w, h) = photo.size();
    let place = fitted(ui, w as f32 / h as f32);
    let response = ui.allocate_rect(place, Sense::click_and_drag());
    picture(ui, texture, place);
    let scale = f64::from(w) / f64::from(place.width());
    let on = |corner: DVec2| place.min + vec2((corner.x / scale) as f32, (corner.y / scale) as f32);
    let of = |at: Pos2| DVec2::new(f64::from(at.x - place.min.x), f64::from(at.y - place.min.y)) * scale;
    if let Some(at) = response.interact_pointer_pos() {
        if response.drag_started() {
            form.moving = form.corners.iter().position(|corner| on(*corner).distance(at) < REACH);
        }
        if let Some(moving) = form.moving.filter(|_| response.dragged()) {
            form.corners[moving] = of(at);
        } else if response.clicked() && form.corners.len() < 4 {
            form.corners.push(of(at));
        }
    }
    let warm = shown.theme.warm.0;
    let points: Vec<Pos2> = form.corners.iter().map(|corner| on(*corner)).collect();
    for pair in points.windows(2) {
        ui.painter().line_segment([pair[0], pair[1]], Stroke::new(1.5, warm));
    }
    if let [first, .., last] = points.as_slice()
        && points.len() == 4
    {
        ui.painter().line_segment([*last, *first], Stroke::new(1.5, warm));
    }
    for point in points {
        ui.painter().circle_stroke(point, 6.0, Stroke::new(2.0, warm));
    }
}

/// The squared-up picture, with the boxes that were dragged over windows.
fn windows(ui: &mut egui::Ui, shown: &Shown, form: &mut Form) {
    let Some((squared, texture)) = &form.squared else { return };
    let stretch = squared.stretch;
    let size = DVec2::new(stretch.right - stretch.left, stretch.top - stretch.foot);
    let place = fitted(ui, (size.x / size.y) as f32);
    let response = ui.allocate_rect(place, Sense::click_and_drag());
    picture(ui, texture, place);
    let per_metre = f64::from(place.width()) / size.x;
    let on = |at: DVec2| place.min + vec2((at.x * per_metre) as f32, ((size.y - at.y) * per_metre) as f32);
    let of = |at: Pos2| {
        let (x, y) = (f64::from(at.x - place.min.x) / per_metre, size.y - f64::from(at.y - place.min.y) / per_metre);
        DVec2::new(x.clamp(0.0, size.x), y.clamp(0.0, size.y))
    };
    let pointer = response.interact_pointer_pos().map(of);
    if response.drag_started() {
        form.drawing = ui.input(|input| input.pointer.press_origin()).map(of);
    }
    let drawn = form.drawing.zip(pointer).map(|(a, b)| [a.min(b), a.max(b)]);
    if response.drag_stopped() {
        form.boxes.extend(drawn.filter(|[low, high]| (*high - *low).min_element() > LEAST));
        form.drawing = None;
    }
    let warm = shown.theme.warm.0;
    for [low, high] in form.boxes.iter().copied().chain(drawn.filter(|_| response.dragged())) {
        let rect = Rect::from_two_pos(on(low), on(high));
        ui.painter().rect_stroke(rect, 0.0, Stroke::new(2.0, warm), StrokeKind::Middle);
    }
}

/// As large as the card lets a picture be.
fn fitted(ui: &egui::Ui, aspect: f32) -> Rect {
    let most = Vec2::new(ui.available_width(), ui.ctx().viewport_rect().height() - 330.0).max(vec2(100.0, 100.0));
    let size = if most.x / most.y > aspect { vec2(most.y * aspect, most.y) } else { vec2(most.x, most.x / aspect) };
    Rect::from_min_size(ui.cursor().min, size)
}

fn picture(ui: &egui::Ui, texture: &TextureHandle, place: Rect) {
    let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    ui.painter().image(texture.id(), place, whole, egui::Color32::WHITE);
}

/// The photo small enough for any card.
fn thumbnail(photo: &Photo) -> ColorImage {
    let small = image::imageops::thumbnail(photo.picture(), 1600.min(photo.size().0), {
        let (w, h) = photo.size();
        (u64::from(1600.min(w)) * u64::from(h) / u64::from(w.max(1))) as u32
    });
    ColorImage::from_rgb([small.width() as usize, small.height() as usize], small.as_raw())
}
