//! What is to be bought costs more than may be spent.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    craft::money::{Running, SEASONS},
    craft::shopping::ShoppingList,
    edit::Edit,
    scene::{Item, ProjectorClass, Station, limits},
    units::{two_digits, with_band},
};

/// A cheaper projector that gives less than this share of the light is no stand-in.
const DIMMEST: f64 = 0.5;

fn list(case: &Case) -> ShoppingList {
    ShoppingList::planned(case.yard, case.catalogue, Running::of(case.yard, SEASONS))
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let Some(budget) = case.yard.budget else { return Vec::new() };
    let bound = case.limit(limits::BUDGET);
    let cost = list(case).to_buy;
    let over = cost.typical / budget.0;
    if over <= bound.value {
        return Vec::new();
    }
    let says = format!(
        "The rest to buy comes to {} in your money, where {} may be spent",
        with_band(cost.low, cost.typical, cost.high, "").trim_end(),
        two_digits(budget.0)
    );
    let unsure = cost.low / budget.0 <= bound.value;
    vec![Finding::new(Matter::Budget, Level::Check, &case.yard.name.0, None).against(over, &bound, says).unsure(unsure)]
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let mut list: Vec<Proposal> = cheaper(case);
    list.extend(left_out(case, finding));
    list
}

/// A cheaper class in place of each that has one, the brightest of those that give light enough.
fn cheaper(case: &Case) -> Vec<Proposal> {
    let price = |class: &ProjectorClass| class.price.map(|price| price.typical);
    let shown = case.yard.stations.iter().filter(|station| !case.yard.is_hidden(&station.name.0));
    let mut changes: Vec<(f64, &Station, &ProjectorClass)> = Vec::new();
    for station in shown {
        let Some(now) = case.yard.projector(case.catalogue, &station.projector.0) else { continue };
        let Some(cost) = price(now) else { continue };
        let classes = case.yard.all_projectors(case.catalogue).filter(|class| {
            price(class).is_some_and(|other| other < cost) && class.lumens.typical >= DIMMEST * now.lumens.typical
        });
        if let Some(class) = classes.max_by(|a, b| a.lumens.typical.total_cmp(&b.lumens.typical)) {
            changes.push((cost - price(class).unwrap_or(cost), station, class));
        }
    }
    changes.sort_by(|a, b| b.0.total_cmp(&a.0));
    let edit = |(_, station, class): &(f64, &Station, &ProjectorClass)| {
        Edit::Change(Item::Station(station.with_projector(class)))
    };
    // One first, then two, as far as it takes.
    let some = |count: usize| {
        let taken = &changes[..count];
        let names: Vec<String> =
            taken.iter().map(|(_, s, class)| format!("{} in “{}”", class.name.0, s.name.0)).collect();
        Proposal { says: format!("Use a {}", names.join(", a ")), edit: Edit::All(taken.iter().map(edit).collect()) }
    };
    (1..=changes.len().min(4)).map(some).collect()
}

/// Without one station, the cheapest that is enough first.
fn left_out(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(budget) = case.yard.budget else { return Vec::new() };
    let list = list(case);
    let over = list.to_buy.typical - finding.limit * budget.0;
    let mut stations: Vec<_> = list.stations.iter().filter(|one| one.to_buy.typical >= over).collect();
    stations.sort_by(|a, b| a.to_buy.typical.total_cmp(&b.to_buy.typical));
    let proposal = |name: &String| Proposal {
        says: format!("Leave “{name}” for another year"),
        edit: Edit::Hide(name.clone(), true),
    };
    stations.iter().take(3).map(|one| proposal(&one.station)).collect()
}
