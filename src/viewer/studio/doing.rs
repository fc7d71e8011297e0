//! Acts take effect.

use super::{Act, Asking, Of, Studio, evening};
use crate::{
    command::home,
    viewer::hands::{Held, TapeHeld, step_m},
};
use gauzelight::{
    craft,
    edit::{Edit, History, copy_of, fresh},
    light::EyeRay,
    scene::{Catalogue, Evening, Item, Point, Pose, Units},
};
use std::{path::PathBuf, sync::Arc};

impl Studio {
    /// Lets an act take effect. The error is what a person should be told.
    pub fn act(&mut self, act: Act) -> Result<(), String> {
        if self.held.is_some() && is_of_keys(&act) {
            // What is in the hand is changed by the hand alone.
            return Ok(());
        }
        match act {
            Act::Go(spot) => {
                (self.spot, self.walk) = (spot, None);
                self.home();
            }
            Act::Home => {
                self.walk = None;
                self.home();
            }
            Act::Turn(left, up) => {
                self.eye.turn_about(left, up);
                self.at_spot = false;
            }
            Act::Look(left, up) => self.eye.look(left, up),
            Act::Walk(way) => {
                self.eye.walk(way);
                self.at_spot = false;
            }
            Act::Approach(factor) => self.approach(factor),
            Act::WalkBy(pace) => self.walk_by(pace),
            Act::Choose(name) => {
                (self.chosen, self.aside) = (name, None);
                self.welcome = false;
                self.bring_into_sight();
            }
            Act::NextStation => self.next_station(),
            Act::NextThing => self.next_thing(),
            Act::Switch(station) => self.switch(station)?,
            Act::SwitchChosen => {
                if let Some(index) = self.station() {
                    self.switch(index)?;
                }
            }
            Act::White(white) => self.white = white.clamp(0.01, 10_000.0),
            Act::FalseColour => {
                self.false_colour = !self.false_colour;
                self.adapted.switch(false);
            }
            Act::Adapted => {
                self.adapted.switch(!self.adapted.on);
                self.false_colour = false;
            }
            Act::Outlines => self.outlines = !self.outlines,
            Act::Sky(lx, goes_on) => {
                let mut evening = self.history.yard().evening.clone();
                evening.sky_lx = f64::from(lx);
                // All the way of a slider is one step back.
                self.gesture += u64::from(!goes_on);
                self.edit(Edit::Evening(evening), Some(self.gesture))?;
            }
            Act::Edit(edit) => {
                if let Edit::Units(units) = &edit {
                    self.papers.memory.feet = Some(*units == Units::Feet);
                }
                self.edit(edit, None)?;
            }
            Act::Build(edit, chosen) => {
                self.edit(edit, None)?;
                (self.asking, self.chosen) = (None, chosen.or(self.chosen.take()));
                self.let_go_of_what_is_gone();
            }
            Act::Type { of: Of::Thing(name), field, text, .. } if field == "name" => {
                self.edit(Edit::Rename { from: name, to: text }, None)?;
            }
            Act::Type { of, field, index, text } => {
                let yard = self.history.yard();
                let edit = match of {
                    Of::Thing(name) => {
                        let item = yard.item(&name).ok_or("It is not there any more")?;
                        item.with_entry(&field, index, &text).map(Edit::Change)
                    }
                    Of::Evening => yard.evening.with_entry(&field, index, &text).map(Edit::Evening),
                    Of::Around => yard.around().with_entry(&field, index, &text).map(Edit::Around),
                };
                self.edit(edit.map_err(|e| e.to_string())?, None)?;
            }
            Act::Clock(clock, goes_on) => {
                let mut evening = self.history.yard().evening.clone();
                let Some(when) = &mut evening.when else { return Ok(()) };
                when.clock = clock;
                self.gesture += u64::from(!goes_on);
                self.edit(Edit::Evening(evening), Some(self.gesture))?;
            }
            Act::Dated(dated) => {
                let now = &self.history.yard().evening;
                let when = if dated {
                    let when = now.when.clone().or_else(evening::usual);
                    Some(when.ok_or("This computer's clock tells no date")?)
                } else {
                    None
                };
                self.edit(Edit::Evening(Evening { when, ..now.clone() }), None)?;
            }
            Act::Aside(aside) => {
                self.aside = if self.aside == Some(aside) { None } else { Some(aside) };
                (self.chosen, self.welcome) = (None, false);
            }
            Act::WhatHelps(finding) => {
                let folder = self.papers.folder().map(PathBuf::from);
                self.judging.try_for(*finding, &self.lighting, &self.catalogue, &self.papers.shelf, folder);
            }
            Act::Own(edit) => self.keep_own(edit)?,
            Act::Preview(edit) => self.show_only(edit),
            Act::Grip(grip) => {
                self.gesture += 1;
                self.readings.before = self.station().and_then(|i| self.readings.all.get(i).cloned());
                let free = self.item().filter(|item| self.yard().locked.iter().all(|one| one.0 != item.name()));
                self.held = free.map(|item| Held::take(grip, item));
            }
            Act::Drag(None) => (self.held, self.readings.before) = (None, None),
            Act::Drag(Some(step)) => {
                let Some(mut held) = self.held.take() else { return Ok(()) };
                let edit = held.follow(self.history.yard(), &self.lighting.night, step);
                self.held = Some(held);
                if let Some(edit) = edit {
                    self.edit(edit, Some(self.gesture))?;
                }
            }
            Act::Tape => self.tape.take_up(),
            Act::TapeAt(at) => {
                if let Some(tape) = self.tape.set(at) {
                    self.edit(Edit::LayTape(tape), None)?;
                }
            }
            Act::Nudge(steps) => self.nudge(steps)?,
            Act::TurnChosen(degrees) => self.change(|item| turned(item, degrees))?,
            Act::CopyChosen => self.copy_chosen()?,
            Act::RemoveChosen => self.remove_chosen()?,
            Act::LockChosen => {
                if let Some(name) = self.chosen.clone() {
                    let on = !self.yard().locked.iter().any(|locked| locked.0 == name);
                    self.edit(Edit::Lock(name, on), None)?;
                }
            }
            Act::HideChosen => {
                if let Some(name) = self.chosen.clone() {
                    let on = !self.yard().hidden.iter().any(|hidden| hidden.0 == name);
                    self.edit(Edit::Hide(name, on), None)?;
                }
            }
            Act::LayChosen => self.change(laid)?,
            Act::Add(kind) => self.add(kind)?,
            Act::LightWindow => self.light_window()?,
            Act::Undo => self.stepped(History::undo),
            Act::Redo => self.stepped(History::redo),
            Act::CompareFor(station, of) => {
                self.choosing.begin(station, of, &self.lighting, &self.catalogue, &self.papers.shelf);
                self.asking = Some(Asking::Choices);
            }
            Act::Print(setup) => {
                self.print(setup);
                self.asking = Some(Asking::Paper);
            }
            Act::WritePaper(kind, to) => self.write_paper(kind, &to)?,
            Act::Compare(other) => {
                self.compare(&other)?;
                self.asking = Some(Asking::Compare);
            }
            Act::Flip => self.flip()?,
            Act::Help => self.help = !self.help,
            Act::Questions => self.questions = !self.questions,
            Act::Welcomed => self.welcome = false,
            act @ (Act::Open(_) | Act::New(_) | Act::OpenFile(_) | Act::Quit) if !self.history.is_saved() => {
                self.asking = Some(Asking::Lose(Box::new(act)));
            }
            act @ (Act::Open(_) | Act::New(_) | Act::OpenFile(_) | Act::Quit) => self.begin(act)?,
            Act::Lose => {
                if let Some(Asking::Lose(act)) = self.asking.take() {
                    self.begin(*act)?;
                }
            }
            Act::Trust => self.trust()?,
            Act::Restore => {
                if let Some(Asking::Restore(left)) = self.asking.take() {
                    self.restore(&left)?;
                }
            }
            Act::Discard => {
                if let Some(Asking::Restore(left)) = self.asking.take() {
                    left.discard();
                    self.offer_what_was_left();
                }
            }
            Act::Save => {
                if let Some(Asking::Lose(act)) = self.asking.take() {
                    self.after_save = Some(*act);
                }
                match self.papers.file.clone() {
                    Some(file) if self.papers.is_changed_outside() => {
                        let name = file.display();
                        self.after_save = None;
                        return Err(format!(
                            "{name} was changed by somebody else since it was read: “Save as…” writes over it, “Read it again” takes theirs"
                        ));
                    }
                    Some(file) => self.save(file)?,
                    None => self.asking = Some(Asking::Save),
                }
            }
            Act::SaveAs(file) => self.save(file)?,
            Act::Ask(asking) => self.asking = Some(asking),
            Act::Close if self.held.is_some() => {
                self.history.abandon(self.gesture);
                (self.held, self.readings.before) = (None, None);
            }
            Act::Close => {
                self.after_save = None;
                let open = self.asking.take().is_some() || self.aside.take().is_some() || self.help || self.questions;
                if std::mem::take(&mut self.tape) == TapeHeld::No && !open {
                    self.chosen = None;
                }
                (self.help, self.questions, self.welcome, self.preview) = (false, false, false, None);
            }
        }
        Ok(())
    }

    /// Comes closer, but not into a wall.
    fn approach(&mut self, factor: f32) {
        /// Kept before whatever stands in the way, m.
        const ARM: f32 = 0.5;
        let camera = self.eye.camera();
        let way = EyeRay { from: camera.eye, along: camera.forward, width: 0.0 };
        let free = (self.night().seen(way, true).distance - ARM).max(0.0);
        let arm = (self.eye.target - self.eye.at).length();
        self.eye.approach(factor.max(1.0 - free / arm.max(0.1)));
        self.at_spot = false;
    }

    fn edit(&mut self, edit: Edit, gesture: Option<u64>) -> Result<(), String> {
        self.preview = None;
        let folder = self.papers.folder().map(PathBuf::from);
        self.history.act(&edit, gesture, &self.catalogue, folder.as_deref()).map_err(|refusal| refusal.to_string())?;
        self.fetch();
        // A renamed thing stays chosen.
        if let (Edit::Rename { from, to }, Some(chosen)) = (&edit, &mut self.chosen)
            && chosen == from
        {
            *chosen = to.trim().to_owned();
        }
        self.let_go_of_what_is_gone();
        Ok(())
    }

    /// Keeps an entry in this yard and in the owner's file, which another window may have written meanwhile.
    fn keep_own(&mut self, edit: Edit) -> Result<(), String> {
        let path = home::file(home::OWN).ok_or("This system has no place for what you own")?;
        let mut own = home::own()?;
        match &edit {
            Edit::OwnProjector(entry) => {
                own.projectors.retain(|one| one.name != entry.name);
                own.projectors.push(entry.clone());
            }
            Edit::OwnFabric(entry) => {
                own.fabrics.retain(|one| one.name != entry.name);
                own.fabrics.push(entry.clone());
            }
            _ => {}
        }
        self.edit(edit, None)?;
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder).map_err(|e| format!("{}: {e}", folder.display()))?;
        }
        own.save(&path).map_err(|e| e.to_string())?;
        self.catalogue = Catalogue::builtin().with_own(own.clone());
        (self.own, self.asking) = (own, None);
        Ok(())
    }

    /// Takes into the yard what it names out of the owner's catalogue, so that its file can be read elsewhere.
    pub(super) fn carry_own(&mut self) -> Result<(), String> {
        let yard = self.history.yard();
        let mut edits = Vec::new();
        for entry in &self.own.projectors {
            if yard.projectors_named().any(|name| name == entry.name.0)
                && yard.projectors.iter().all(|own| own.name != entry.name)
            {
                edits.push(Edit::OwnProjector(entry.clone()));
            }
        }
        for entry in &self.own.fabrics {
            if yard.fabrics_named().any(|name| name == entry.name.0)
                && yard.fabrics.iter().all(|own| own.name != entry.name)
            {
                edits.push(Edit::OwnFabric(entry.clone()));
            }
        }
        for entry in &self.own.surfaces {
            if yard.surfaces_named().any(|name| name == entry.name.0)
                && yard.surfaces.iter().all(|own| own.name != entry.name)
            {
                edits.push(Edit::OwnSurface(entry.clone()));
            }
        }
        for entry in &self.own.lamp_kinds {
            if yard.lamp_kinds_named().any(|name| name == entry.name.0)
                && yard.lamp_kinds.iter().all(|own| own.name != entry.name)
            {
                edits.push(Edit::OwnLampKind(entry.clone()));
            }
        }
        if edits.is_empty() { Ok(()) } else { self.edit(Edit::All(edits), None) }
    }

    fn fetch(&mut self) {
        let yard = Arc::clone(self.history.yard());
        // What cannot be had was told of by the check; a card stands in for a picture, and a lamp stays dark.
        let _ = self.papers.shelf.fetch_for(&yard);
        // A file that was just named is asked about as one that the yard came with.
        let _ = self.ask_about_what_lies_outside();
    }

    fn let_go_of_what_is_gone(&mut self) {
        if self.item().is_none() {
            (self.chosen, self.held) = (None, None);
        }
        self.spot = self.spot.min(self.yard().spots.len().saturating_sub(1));
    }

    fn show_only(&mut self, edit: Option<Edit>) {
        if self.preview.as_ref().map(|(shown, _)| shown) == edit.as_ref() {
            return;
        }
        self.preview = None;
        let Some(edit) = edit else { return };
        // What would be refused is not shown.
        if let Ok(yard) = edit.apply(self.history.yard(), &self.catalogue, self.papers.folder()) {
            self.preview = Some((edit, Arc::new(yard)));
        }
    }

    fn change(&mut self, how: impl FnOnce(Item) -> Item) -> Result<(), String> {
        let Some(item) = self.item() else { return Ok(()) };
        self.edit(Edit::Change(how(item)), None)
    }

    fn nudge(&mut self, steps: [i32; 3]) -> Result<(), String> {
        let tape = step_m(self.yard().units);
        let [x, y, z] = steps.map(|n| f64::from(n) * tape);
        // Away from who looks at a wall is up it.
        self.change(|item| if matches!(item, Item::Opening(..)) { item.slid(x, y - z) } else { item.moved([x, y, z]) })
    }

    fn next_station(&mut self) {
        self.welcome = false;
        let names: Vec<String> = self.yard().stations.iter().map(|s| s.name.0.clone()).collect();
        let now = self.chosen.as_ref().and_then(|chosen| names.iter().position(|name| name == chosen));
        if let Some(next) = names.get(now.map_or(0, |now| (now + 1) % names.len())) {
            self.chosen = Some(next.clone());
            self.bring_into_sight();
        }
    }

    fn next_thing(&mut self) {
        self.welcome = false;
        let names: Vec<String> = self.yard().items().map(|item| item.name().to_owned()).collect();
        let now = self.chosen.as_ref().and_then(|chosen| names.iter().position(|name| name == chosen));
        if let Some(next) = names.get(now.map_or(0, |now| (now + 1) % names.len())) {
            self.chosen = Some(next.clone());
            self.bring_into_sight();
        }
    }

    fn switch(&mut self, index: usize) -> Result<(), String> {
        let Some(mut station) = self.history.yard().stations.get(index).cloned() else { return Ok(()) };
        station.on = !station.on;
        self.edit(Edit::Change(Item::Station(station)), None)
    }

    fn copy_chosen(&mut self) -> Result<(), String> {
        let Some(item) = self.item() else { return Ok(()) };
        let copy = copy_of(self.history.yard(), &item);
        // Beside the first, so that both can be seen.
        let copy = if let Item::Opening(..) = copy { copy.slid(1.5, 0.0) } else { copy.moved([0.5, 0.0, 0.0]) };
        let name = copy.name().to_owned();
        self.edit(Edit::Add(copy), None)?;
        self.chosen = Some(name);
        Ok(())
    }

    fn remove_chosen(&mut self) -> Result<(), String> {
        let Some(name) = self.chosen.clone() else { return Ok(()) };
        let middle = self.night().place(&name).map(|place| place.middle.as_dvec3());
        let leaving = middle.map(|at| {
            let [x, y, z] = at.to_array().map(|v| (v * 1000.0).round() / 1000.0);
            Point::metres(x, y, z)
        });
        self.edit(Edit::Remove { name, leaving }, None)
    }

    /// Adds a thing where one looks: on the ground or the wall in the middle of the picture.
    fn add(&mut self, kind: &'static str) -> Result<(), String> {
        let camera = self.eye.camera();
        let ray = EyeRay { from: camera.eye, along: camera.forward, width: 0.0 };
        let seen = self.night().seen(ray, true);
        let yard = self.history.yard();
        let tape = 10.0 * step_m(yard.units);
        let rounded = |v: f32| (f64::from(v) / tape).round() * tape;
        let opening = matches!(kind, "window" | "door");
        let (at, host) = if opening {
            let host =
                self.wall_in_view(&seen.name).ok_or("There is no wall in the middle of the picture to cut it into")?;
            let (along, up) = craft::free_place(yard, &host, kind).ok_or("There is no room for it in that wall")?;
            ([along, up, 0.0], Some(host))
        } else {
            // A little before what is looked at, and never farther than one can see well.
            let far = (seen.distance - 0.5).clamp(1.0, 14.0);
            let at = ray.from + far * ray.along;
            let floor = if matches!(kind, "area") { 0.0 } else { at.y.min(0.0) };
            ([rounded(at.x), f64::from(floor), rounded(at.z)], None)
        };
        let item = fresh(yard, kind, at, host.as_deref()).ok_or("This cannot be added here")?;
        let name = item.name().to_owned();
        self.edit(Edit::Add(item), None)?;
        (self.chosen, self.welcome) = (Some(name), false);
        Ok(())
    }

    /// The chosen wall or house, else the one in the middle of the picture, else the first.
    fn wall_in_view(&self, seen: &str) -> Option<String> {
        let yard = self.history.yard();
        let host = |name: &str| match yard.item(name)? {
            Item::House(_) | Item::Wall(_) => Some(name.to_owned()),
            Item::Opening(host, _) => Some(host),
            _ => None,
        };
        let first = yard.walls.first().map(|w| &w.name).or(yard.houses.first().map(|h| &h.name));
        self.chosen.as_deref().and_then(host).or_else(|| host(seen)).or(first.map(|name| name.0.clone()))
    }

    /// Puts a film into the chosen window and a station behind it; before any other thing a station.
    fn light_window(&mut self) -> Result<(), String> {
        let Some(item) = self.item() else { return Ok(()) };
        let edit = craft::light_up(self.history.yard(), self.night(), &self.catalogue, item.name());
        let edit = edit.ok_or("Nothing can be thrown onto this")?;
        let station = match &edit {
            Edit::All(list) => list.iter().rev().find_map(|edit| match edit {
                Edit::Add(Item::Station(station)) => Some(station.name.0.clone()),
                _ => None,
            }),
            _ => None,
        };
        self.edit(edit, None)?;
        self.chosen = station.or(self.chosen.take());
        Ok(())
    }

    fn stepped(&mut self, step: impl FnOnce(&mut History) -> Option<String>) {
        (self.preview, self.held) = (None, None);
        if step(&mut self.history).is_some() {
            self.fetch();
            self.let_go_of_what_is_gone();
        }
    }

    fn flip(&mut self) -> Result<(), String> {
        let last = self.history.yard().arrangements.last().map(|one| one.name.0.clone());
        match last {
            Some(name) => self.edit(Edit::Arrange(name), None),
            None => Err("There is no other arrangement yet: keep one first".to_owned()),
        }
    }
}

/// The next way for a station to lie: on its feet, on its side, upside down.
fn laid(item: Item) -> Item {
    let Item::Station(mut station) = item else { return item };
    station.pose = match station.pose {
        Pose::Table => Pose::Upright,
        Pose::Upright => Pose::Ceiling,
        Pose::Ceiling => Pose::Table,
    };
    Item::Station(station)
}

/// Turned by so many degrees; in large steps to their next whole multiple, so that right angles are met.
fn turned(item: Item, degrees: f64) -> Item {
    /// A step of this and more is a large one, degrees.
    const LARGE: f64 = 15.0;
    match item.turn_deg() {
        Some(now) if degrees.abs() >= LARGE => {
            let to = ((now + degrees) / LARGE).round() * LARGE;
            item.turned(to - now)
        }
        _ => item.turned(degrees),
    }
}

/// Whether an act comes of a key that changes the chosen thing.
fn is_of_keys(act: &Act) -> bool {
    matches!(
        act,
        Act::Nudge(_)
            | Act::TurnChosen(_)
            | Act::CopyChosen
            | Act::RemoveChosen
            | Act::LockChosen
            | Act::HideChosen
            | Act::LayChosen
            | Act::Undo
            | Act::Redo
            | Act::Flip
    )
}
