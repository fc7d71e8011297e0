//! Arrangements: kept, shown and dropped.

use super::Refusal;
use crate::scene::{Arrangement, Name, Yard};

/// Keeps the stations as they stand, and goes on with a copy called `name`.
pub(super) fn keep_as(yard: &mut Yard, name: &str) -> Result<(), Refusal> {
    let name = name.trim();
    if yard.arrangement.0 == name || yard.arrangements.iter().any(|one| one.name.0 == name) {
        return Err(Refusal::new(format!("“{name}” is the name of an arrangement already"), "give this one another"));
    }
    let note = std::mem::take(&mut yard.arrangement_note);
    yard.arrangements.push(Arrangement { name: yard.arrangement.clone(), note, stations: yard.stations.clone() });
    yard.arrangement = Name::of(name);
    Ok(())
}

/// Shows the arrangement `name`; the one shown comes last among the others, so that the last is the one shown before.
pub(super) fn arrange(yard: &mut Yard, name: &str) -> Result<(), Refusal> {
    let found = yard.arrangements.iter().position(|one| one.name.0 == name).ok_or_else(|| unknown(name))?;
    let Arrangement { name, note, stations } = yard.arrangements.remove(found);
    yard.arrangements.push(Arrangement {
        name: std::mem::replace(&mut yard.arrangement, name),
        note: std::mem::replace(&mut yard.arrangement_note, note),
        stations: std::mem::replace(&mut yard.stations, stations),
    });
    Ok(())
}

/// Drops an arrangement that is not shown.
pub(super) fn drop(yard: &mut Yard, name: &str) -> Result<(), Refusal> {
    let before = yard.arrangements.len();
    yard.arrangements.retain(|one| one.name.0 != name);
    if yard.arrangements.len() < before { Ok(()) } else { Err(unknown(name)) }
}

fn unknown(name: &str) -> Refusal {
    Refusal::new(format!("no other arrangement is called “{name}”"), "the one shown is always kept")
}
