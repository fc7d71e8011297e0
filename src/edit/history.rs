//! Undo and redo: yards as they were, one step a gesture.

use super::{Edit, Refusal};
use crate::scene::{Catalogue, Yard};
use std::{path::Path, sync::Arc};

/// Steps that are kept.
const MOST: usize = 1000;

/// A yard with its past.
#[derive(Clone, Debug)]
pub struct History {
    now: State,
    past: Vec<Step>,
    future: Vec<Step>,
    gesture: Option<u64>,
    saved: u64,
    counted: u64,
}

#[derive(Clone, Debug)]
struct State {
    yard: Arc<Yard>,
    /// Alike for the same state, however it is reached again.
    id: u64,
}

#[derive(Clone, Debug)]
struct Step {
    state: State,
    label: String,
}

impl History {
    /// A yard with no past, as it stands in its file.
    pub fn of(yard: Yard) -> Self {
        let now = State { yard: Arc::new(yard), id: 1 };
        Self { now, past: Vec::new(), future: Vec::new(), gesture: None, saved: 1, counted: 1 }
    }

    /// The yard as it is.
    pub fn yard(&self) -> &Arc<Yard> {
        &self.now.yard
    }

    /// Names the state that the yard is in: alike whenever it is reached, so that whoever keeps copies knows whether one is due.
    pub fn state(&self) -> u64 {
        self.now.id
    }

    /// Does an edit. Edits of one `gesture`, one after another, are one step back; an edit that changes nothing is none.
    pub fn act(
        &mut self,
        edit: &Edit,
        gesture: Option<u64>,
        catalogue: &Catalogue,
        folder: Option<&Path>,
    ) -> Result<(), Refusal> {
        let yard = edit.apply(&self.now.yard, catalogue, folder)?;
        if yard == *self.now.yard {
            return Ok(());
        }
        if gesture.is_some()
            && self.gesture == gesture
            && self.past.last().is_some_and(|step| *step.state.yard == yard)
            && let Some(step) = self.past.pop()
        {
            // There and back again is no step at all.
            self.now = step.state;
            self.gesture = None;
            return Ok(());
        }
        self.counted += 1;
        let state = State { yard: Arc::new(yard), id: self.counted };
        let before = std::mem::replace(&mut self.now, state);
        if gesture.is_none() || self.gesture != gesture {
            self.past.push(Step { state: before, label: edit.label() });
            let surplus = self.past.len().saturating_sub(MOST);
            self.past.drain(..surplus);
        }
        self.future.clear();
        self.gesture = gesture;
        Ok(())
    }

    /// Goes back to what was before a gesture that is given up, as if it had never begun.
    pub fn abandon(&mut self, gesture: u64) {
        if self.gesture == Some(gesture)
            && let Some(step) = self.past.pop()
        {
            self.now = step.state;
            self.gesture = None;
        }
    }

    /// One step back; what was undone, or `None` at the beginning.
    pub fn undo(&mut self) -> Option<String> {
        let step = self.past.pop()?;
        Some(self.step_to(step, false))
    }

    /// One step forward again; what was done, or `None` at the end.
    pub fn redo(&mut self) -> Option<String> {
        let step = self.future.pop()?;
        Some(self.step_to(step, true))
    }

    fn step_to(&mut self, step: Step, forward: bool) -> String {
        let left = Step { state: std::mem::replace(&mut self.now, step.state), label: step.label.clone() };
        if forward {
            self.past.push(left)
        } else {
            self.future.push(left)
        }
        self.gesture = None;
        step.label
    }

    /// What one step back would undo.
    pub fn can_undo(&self) -> Option<&str> {
        self.past.last().map(|step| step.label.as_str())
    }

    /// What one step forward would do.
    pub fn can_redo(&self) -> Option<&str> {
        self.future.last().map(|step| step.label.as_str())
    }

    /// Whether the yard is as it was last saved.
    pub fn is_saved(&self) -> bool {
        self.saved == self.now.id
    }

    /// Marks the yard as never saved: no state of it stands in a file.
    pub fn mark_unsaved(&mut self) {
        self.saved = 0;
    }

    /// Marks the yard as saved.
    pub fn mark_saved(&mut self) {
        self.saved = self.now.id;
    }
}
