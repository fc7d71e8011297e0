//! What is tried.

use super::{NoComparison, Of};
use crate::scene::{Catalogue, Cloth, Fabric, FabricKind, Item, ProjectorClass, RearFilm, Ref, Station, Yard};

/// One thing to try.
pub(super) struct Candidate {
    /// Its names: fabrics from front to back, or a projector class.
    pub names: Vec<String>,
    /// Name of the target that it is tried on; a projector is tried on all of them together.
    pub target: Option<String>,
    /// Whether it is what is there now.
    pub now: bool,
    /// The thing of the yard with it.
    pub item: Item,
}

/// Everything to try for a station on each of its targets, in the order of the catalogue; an error where none is made of fabric.
pub(super) fn list(
    yard: &Yard,
    catalogue: &Catalogue,
    station: &Station,
    targets: &[&str],
    of: Of,
) -> Result<Vec<Candidate>, NoComparison> {
    let targets = if of == Of::Projectors { &targets[..targets.len().min(1)] } else { targets };
    let lists = targets.iter().map(|target| on(yard, catalogue, station, target, of));
    let (found, mut failed): (Vec<_>, Vec<_>) = lists.partition(Result::is_ok);
    if found.is_empty() && !failed.is_empty() {
        return failed.swap_remove(0);
    }
    Ok(found.into_iter().flatten().flatten().collect())
}

fn on(
    yard: &Yard,
    catalogue: &Catalogue,
    station: &Station,
    target: &str,
    of: Of,
) -> Result<Vec<Candidate>, NoComparison> {
    if of == Of::Projectors {
        return Ok(yard.all_projectors(catalogue).map(|class| with_class(station, class)).collect());
    }
    let films =
        |film: bool| yard.all_fabrics(catalogue).filter(move |f| matches!(f.kind, FabricKind::Film { .. }) == film);
    if let Some(cloth) = yard.cloths.iter().find(|cloth| cloth.name.0 == target) {
        let names: Vec<&str> = films(false).map(|fabric| fabric.name.0.as_str()).collect();
        let mut all = Vec::new();
        for front in &names {
            match of {
                Of::Pairs => all.extend(names.iter().map(|back| of_layers(cloth, &[front, back]))),
                _ => all.push(of_layers(cloth, &[front])),
            }
        }
        return Ok(all);
    }
    let film = yard.films.iter().find(|film| film.name.0 == target);
    match film {
        Some(film) if of == Of::Fabrics => Ok(films(true).map(|fabric| of_film(film, fabric)).collect()),
        _ => Err(NoComparison::NoFabric {
            station: station.name.0.clone(),
            target: target.to_owned(),
            wanted: if of == Of::Pairs { "no hanging cloth" } else { "neither a hanging cloth nor a film" },
        }),
    }
}

fn of_layers(cloth: &Cloth, layers: &[&str]) -> Candidate {
    let refs: Vec<Ref> = layers.iter().map(|name| Ref::to(name)).collect();
    let changed = Cloth { fabric: refs[0].clone(), behind: refs[1..].to_vec(), ..cloth.clone() };
    Candidate {
        target: Some(cloth.name.0.clone()),
        names: layers.iter().map(|&name| name.to_owned()).collect(),
        now: changed == *cloth,
        item: Item::Cloth(changed),
    }
}

fn of_film(film: &RearFilm, fabric: &Fabric) -> Candidate {
    let changed = RearFilm { fabric: Ref::to(&fabric.name.0), ..film.clone() };
    let (target, now) = (Some(film.name.0.clone()), changed == *film);
    Candidate { names: vec![fabric.name.0.clone()], target, now, item: Item::Film(changed) }
}

/// The station with another projector in its place: a new one, as its class is.
fn with_class(station: &Station, class: &ProjectorClass) -> Candidate {
    let now = station.projector.0 == class.name.0;
    let changed = if now { station.clone() } else { station.with_projector(class) };
    Candidate { names: vec![class.name.0.clone()], target: None, now, item: Item::Station(changed) }
}
