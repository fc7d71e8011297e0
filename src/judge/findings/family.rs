//! Which proposals are variants of one move: a quarter of a metre nearer and half a metre nearer.

use crate::{
    edit::Edit,
    scene::{Item, Yard},
};

/// What tells one move from another: the thing, its fields that change, and of a place the axis along which it goes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Family(Vec<(String, Vec<String>)>);

impl Family {
    /// The family of an edit to a yard.
    pub fn of(yard: &Yard, edit: &Edit) -> Self {
        let mut moves = Vec::new();
        gather(yard, edit, &mut moves);
        Self(moves)
    }
}

fn gather(yard: &Yard, edit: &Edit, moves: &mut Vec<(String, Vec<String>)>) {
    match edit {
        Edit::All(all) => all.iter().for_each(|edit| gather(yard, edit, moves)),
        Edit::Change(item) => {
            let was = yard.item(item.name()).map_or(Vec::new(), |was| was.fields());
            let now = item.fields();
            let other =
                now.iter().filter(|now| was.iter().any(|was| was.name == now.name && was.entries != now.entries));
            let mut fields: Vec<String> = other.map(|field| field.name.clone()).collect();
            fields.extend(way(yard, item));
            moves.push((item.name().to_owned(), fields));
        }
        other => moves.push((other.label(), Vec::new())),
    }
}

/// The axis along which a thing goes most, and to which side: `x+`.
fn way(yard: &Yard, item: &Item) -> Option<String> {
    let at = |item: &Item| item.points().first().copied();
    let (was, now) = (at(&yard.item(item.name())?)?, at(item)?);
    let by = [0, 1, 2].map(|axis| now[axis] - was[axis]);
    let axis = (0..3).max_by(|a, b| by[*a].abs().total_cmp(&by[*b].abs()))?;
    (by[axis] != 0.0).then(|| format!("{}{}", ["x", "y", "z"][axis], if by[axis] > 0.0 { '+' } else { '-' }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::Catalogue;

    #[test]
    fn as_far_to_the_same_side_is_one_move() {
        let yard = Yard::parse(include_str!("../../../scenes/one_window.ron"), "one", &Catalogue::builtin());
        let yard = yard.unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
        let station = Item::Station(yard.stations[0].clone());
        let of = |by| Family::of(&yard, &Edit::Change(station.clone().moved(by)));
        assert_eq!(of([0.0, 0.0, 0.25]), of([0.0, 0.0, 0.5]));
        assert_ne!(of([0.0, 0.0, 0.25]), of([0.0, 0.0, -0.25]));
        assert_ne!(of([0.0, 0.0, 0.25]), of([0.0, 0.25, 0.0]));
        assert_ne!(of([0.0, 0.0, 0.25]), Family::of(&yard, &Edit::Change(station.clone())));
    }
}
