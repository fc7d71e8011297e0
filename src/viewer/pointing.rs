//! The pointer over the picture: what it rests on, what a click chooses, what a drag takes hold of.

use super::{
    hands::{Grip, Mark, Sign, Step, TapeHeld, corner_near, marks},
    studio::{Act, Hover, Studio},
};
use bevy_egui::egui::{self, PointerButton, Pos2, Rect, pos2};
use gauzelight::light::EyeRay;

/// How near to a mark the pointer must be, points.
const REACH: f32 = 11.0;

/// What the pointer is about.
#[derive(Default)]
pub struct Pointing {
    /// What it rests on, and where it is.
    pub hover: Option<(Pos2, Hover)>,
    /// Marks to draw, with their places.
    pub marks: Vec<(Mark, Pos2)>,
    /// The mark under it.
    pub on: Option<Mark>,
}

impl Pointing {
    /// Looks at the pointer over the picture; a card over it takes it first.
    pub fn look(&mut self, ui: &egui::Ui, picture: &egui::Response, full: Rect, studio: &Studio, acts: &mut Vec<Act>) {
        let ctx = ui.ctx();
        self.place_marks(full, studio);
        let modifiers = ctx.input(|input| input.modifiers);
        let at = picture.hover_pos().or(picture.interact_pointer_pos());
        let ray = |at: Pos2| {
            let (width, height) = (full.width() as u32, full.height() as u32);
            studio.eye.camera().ray(at.x - full.min.x, at.y - full.min.y, width, height)
        };
        if studio.held.is_none() {
            self.on = at.and_then(|at| self.mark_near(at));
        }
        if picture.drag_started_by(PointerButton::Primary)
            && let Some(from) = ctx.input(|input| input.pointer.press_origin())
        {
            acts.extend(self.grip(from, ray(from), studio).map(Act::Grip));
        }
        let gripped = studio.held.is_some() || acts.iter().any(|act| matches!(act, Act::Grip(_)));
        if picture.drag_stopped() && gripped {
            acts.push(Act::Drag(None));
        } else if picture.dragged_by(PointerButton::Primary) {
            match at {
                Some(at) if gripped => acts.push(Act::Drag(Some(Step {
                    ray: ray(at),
                    upright: modifiers.shift,
                    through: modifiers.alt,
                    free: modifiers.ctrl,
                }))),
                _ => {
                    let drag = picture.drag_delta() * 0.006;
                    acts.push(Act::Turn(-drag.x, drag.y));
                }
            }
        } else if picture.dragged_by(PointerButton::Secondary) {
            let drag = picture.drag_delta() * 0.003;
            acts.push(Act::Look(drag.x, drag.y));
        }
        let Some(at) = picture.hover_pos() else {
            self.hover = None;
            return;
        };
        let wheel = ctx.input(|input| input.smooth_scroll_delta().y);
        if wheel != 0.0 {
            acts.push(Act::Approach((-wheel * 0.004).exp()));
        }
        if picture.dragged() {
            self.hover = None;
            return;
        }
        let hover = studio.hover(ray(at), modifiers.alt);
        if picture.clicked() && studio.tape != TapeHeld::No {
            let seen = &hover.seen;
            if !seen.name.is_empty() {
                acts.push(Act::TapeAt(corner_near(studio.night(), seen.point, 0.012 * seen.distance)));
            }
        } else if picture.clicked() {
            let marked = self.on.as_ref().map(|mark| mark.name.clone());
            acts.push(Act::Choose(marked.or_else(|| chosen_by(&hover, studio))));
        }
        self.hover = Some((at, hover));
    }

    fn place_marks(&mut self, full: Rect, studio: &Studio) {
        let camera = studio.eye.camera();
        let list = marks(studio, camera.eye);
        let on = |mark: Mark| {
            let (x, y) = camera.project(mark.at, full.width(), full.height())?;
            let at = pos2(full.min.x + x, full.min.y + y);
            full.contains(at).then_some((mark, at))
        };
        self.marks = list.into_iter().filter_map(on).collect();
    }

    /// The mark nearest to the pointer; a handle before what it belongs to.
    fn mark_near(&self, at: Pos2) -> Option<Mark> {
        let near = self.marks.iter().rev().filter(|(_, place)| place.distance(at) < REACH);
        let handle = |mark: &Mark| matches!(mark.sign, Sign::Axis(_) | Sign::Aim | Sign::Figure);
        near.min_by(|a, b| handle(&b.0).cmp(&handle(&a.0)).then(a.1.distance(at).total_cmp(&b.1.distance(at))))
            .map(|(mark, _)| mark.clone())
    }

    /// What a press takes hold of; nothing where it is not on the chosen thing.
    fn grip(&self, from: Pos2, ray: EyeRay, studio: &Studio) -> Option<Grip> {
        let chosen = studio.chosen.as_deref()?;
        if let Some(mark) = self.mark_near(from)
            && mark.name == chosen
        {
            return Some(match mark.sign {
                Sign::Aim => Grip::Aim,
                Sign::Figure => Grip::Figure(mark.at),
                Sign::Axis(axis) => Grip::Axis(axis, mark.at),
                Sign::Lens | Sign::Lamp | Sign::Spot | Sign::Meter | Sign::Supply => Grip::Body(mark.at),
            });
        }
        let seen = studio.night().seen(ray, false);
        (seen.name == chosen).then_some(Grip::Body(seen.point))
    }
}

/// What a click on a thing chooses; the ground is nothing.
fn chosen_by(hover: &Hover, studio: &Studio) -> Option<String> {
    let name = &hover.seen.name;
    studio.yard().item(name).map(|item| item.name().to_owned())
}
