//! An item's fields as somebody types them.

use super::{Item, with_noun};
use crate::scene::read::{Noun, Read};
use crate::scene::write::{Whole, Write, Written};
use crate::scene::{Fault, Faults, Field, Form, Opening, Plant, Sort, Thing, syntax};
use crate::units::{Length, Style};

/// Why something typed was not taken.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{0}")]
pub struct EntryFault(pub Fault);

impl Item {
    /// Every field but the name, in the order of its file.
    pub fn fields(&self) -> Vec<Field> {
        with_noun!(self, noun => fields_of(noun)).into_iter().filter(|field| field.name != "name").collect()
    }

    /// The same item with one field as typed. A field of several values takes the `entry`th. Lengths are taken in any
    /// notation; `+4 in` adds to what stands there. Nothing typed puts back what it is when left out.
    pub fn with_entry(&self, field: &str, entry: usize, typed: &str) -> Result<Self, EntryFault> {
        let item = match self {
            Self::Area(n) => Self::Area(typed_in(n, field, entry, typed)?),
            Self::House(n) => Self::House(typed_in(n, field, entry, typed)?),
            Self::Wall(n) => Self::Wall(typed_in(n, field, entry, typed)?),
            Self::Opening(host, opening) => {
                let opening = match opening {
                    Opening::Window(n) => Opening::Window(typed_in(n, field, entry, typed)?),
                    Opening::Door(n) => Opening::Door(typed_in(n, field, entry, typed)?),
                };
                Self::Opening(host.clone(), opening)
            }
            Self::Thing(thing) => Self::Thing(match thing {
                Thing::Block(n) => Thing::Block(typed_in(n, field, entry, typed)?),
                Thing::Steps(n) => Thing::Steps(typed_in(n, field, entry, typed)?),
                Thing::Fence(n) => Thing::Fence(typed_in(n, field, entry, typed)?),
                Thing::Post(n) => Thing::Post(typed_in(n, field, entry, typed)?),
                Thing::Pergola(n) => Thing::Pergola(typed_in(n, field, entry, typed)?),
                Thing::Porch(n) => Thing::Porch(typed_in(n, field, entry, typed)?),
                Thing::Bench(n) => Thing::Bench(typed_in(n, field, entry, typed)?),
            }),
            Self::Plant(Plant::Hedge(n)) => Self::Plant(Plant::Hedge(typed_in(n, field, entry, typed)?)),
            Self::Plant(Plant::Tree(n)) => Self::Plant(Plant::Tree(typed_in(n, field, entry, typed)?)),
            Self::Lamp(n) => Self::Lamp(typed_in(n, field, entry, typed)?),
            Self::Spot(n) => Self::Spot(typed_in(n, field, entry, typed)?),
            Self::Cloth(n) => Self::Cloth(typed_in(n, field, entry, typed)?),
            Self::Film(n) => Self::Film(typed_in(n, field, entry, typed)?),
            Self::Form(form) => Self::Form(match form {
                Form::Figure(n) => Form::Figure(typed_in(n, field, entry, typed)?),
                Form::Bag(n) => Form::Bag(typed_in(n, field, entry, typed)?),
                Form::Gourd(n) => Form::Gourd(typed_in(n, field, entry, typed)?),
                Form::Globe(n) => Form::Globe(typed_in(n, field, entry, typed)?),
                Form::Turned(n) => Form::Turned(typed_in(n, field, entry, typed)?),
            }),
            Self::Mirror(n) => Self::Mirror(typed_in(n, field, entry, typed)?),
            Self::Station(n) => Self::Station(typed_in(n, field, entry, typed)?),
        };
        Ok(item)
    }
}

fn fields_of<N: Noun>(noun: &N) -> Vec<Field> {
    let described = N::MEANINGS.iter().zip(N::SORTS);
    noun.write_whole()
        .into_iter()
        .zip(described)
        .map(|(whole, (meaning, sort))| Field {
            name: whole.name,
            meaning: meaning.trim(),
            sort: *sort,
            entries: entries(whole.value, *sort),
            is_default: whole.is_default,
        })
        .collect()
}

/// What stands in a field, as somebody would type it.
fn entries(value: Written, sort: Sort) -> Vec<String> {
    match (value, sort) {
        (Written::Plain(text), _) if text == "None" => Vec::new(),
        (Written::Tuple(parts), Sort::Lengths(_) | Sort::Numbers(_)) => {
            parts.into_iter().map(|part| bare(part.into_line())).collect()
        }
        (value, Sort::Group) => vec![value.into_line()],
        (value, _) => vec![bare(value.into_line())],
    }
}

/// A text without its quotes.
fn bare(text: String) -> String {
    let inside = text.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    inside.map_or(text.clone(), |inside| inside.replace("\\\"", "\"").replace("\\\\", "\\"))
}

fn typed_in<N: Noun + Read>(noun: &N, field: &str, entry: usize, typed: &str) -> Result<N, EntryFault> {
    let mut whole = noun.write_whole();
    let known = whole.iter().position(|one| one.name == field);
    let index = known.ok_or_else(|| EntryFault(Fault::new(format!("there is no field {field} here"))))?;
    let typed = typed.trim();
    if typed.is_empty() && !matches!(N::SORTS[index], Sort::Text) {
        whole.remove(index);
    } else {
        let value = worded(&whole[index], N::SORTS[index], entry, typed)?;
        whole[index].value = Written::Plain(value);
    }
    let fields = whole.into_iter().map(|Whole { name, value, .. }| (name, value)).collect();
    let text = Written::fields(fields).into_line();
    let mut faults = Faults::none("", &text);
    let noun = syntax::parse(&text, &mut faults).root.and_then(|root| N::read_titled(&root, N::TITLE, &mut faults));
    match noun {
        Some(noun) if !faults.has_errors() => Ok(noun),
        _ => Err(EntryFault(faults.iter().next().cloned().unwrap_or_else(|| Fault::new("this cannot be read")))),
    }
}

/// What is typed, as it stands in a file.
fn worded(now: &Whole, sort: Sort, entry: usize, typed: &str) -> Result<String, EntryFault> {
    let parts = entries(now.value.clone(), sort);
    let several = |count: u8, one: &dyn Fn(&str, &str) -> Result<String, EntryFault>| {
        let mut list = Vec::new();
        for index in 0..usize::from(count) {
            let before = parts.get(index).map_or("0", String::as_str);
            list.push(one(before, if index == entry { typed } else { before })?);
        }
        Ok(format!("({})", list.join(", ")))
    };
    let before = parts.first().map_or("0", String::as_str);
    match sort {
        Sort::Length => length(before, typed),
        Sort::Lengths(count) => several(count, &length),
        Sort::Numbers(count) => several(count, &|_, typed| Ok(typed.to_owned())),
        Sort::Text | Sort::Name => match typed.to_owned().write() {
            Written::Plain(text) => Ok(text),
            other => Ok(other.into_line()),
        },
        Sort::Number | Sort::Switch | Sort::Choice(_) | Sort::Group => Ok(typed.to_owned()),
    }
}

/// A length as typed; a plus before it adds it to the one before.
fn length(before: &str, typed: &str) -> Result<String, EntryFault> {
    let read = |text: &str| {
        let error = |e: crate::units::LengthError| {
            EntryFault(Fault::new(format!("“{}” is not a length", e.text)).remedy(e.remedy))
        };
        Length::parse(text).map_err(error)
    };
    let mut length = match typed.strip_prefix('+') {
        Some(more) => {
            let (now, more) = (read(before)?, read(more)?);
            now.changed(now.m + more.m)
        }
        None => read(typed)?,
    };
    if length.style == Style::Bare {
        // Without a unit it is a plain number, as in a file.
        length.text.clear();
    }
    Ok(length.write().into_line())
}
