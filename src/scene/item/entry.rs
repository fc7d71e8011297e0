//! An item's fields as somebody types them.

use super::{Item, with_noun};
use crate::scene::read::{Noun, Read};
use crate::scene::write::{Whole, Write, Written};
use crate::scene::{Around, Evening, Fault, Faults, Field, Form, Opening, Plant, Sort, Thing, When, syntax};
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
            Self::Meter(n) => Self::Meter(typed_in(n, field, entry, typed)?),
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
            Self::Supply(n) => Self::Supply(typed_in(n, field, entry, typed)?),
            Self::Cable(n) => Self::Cable(typed_in(n, field, entry, typed)?),
        };
        Ok(item)
    }
}

/// The evening is no item, but is edited alike.
macro_rules! edited {
    ($($Noun:ident),*) => { $(
        impl $Noun {
            /// Every field, in the order of its file.
            pub fn fields(&self) -> Vec<Field> {
                fields_of(self)
            }

            /// The same with one field as typed, as [`Item::with_entry`] takes it.
            pub fn with_entry(&self, field: &str, entry: usize, typed: &str) -> Result<Self, EntryFault> {
                typed_in(self, field, entry, typed)
            }
        }
    )* };
}

edited! { Evening, When, Around }

fn fields_of<N: Noun>(noun: &N) -> Vec<Field> {
    let mut list = Vec::new();
    put_fields("", noun.write_whole(), N::MEANINGS, N::SORTS, &mut list);
    list
}

/// Adds fields to a list, those of nouns within after the name of each.
fn put_fields(
    within: &str,
    fields: Vec<Whole>,
    meanings: &'static [&'static str],
    sorts: &'static [Sort],
    list: &mut Vec<Field>,
) {
    for (whole, (meaning, sort)) in fields.into_iter().zip(meanings.iter().zip(sorts)) {
        let name = format!("{within}{}", whole.name);
        match (sort, whole.parts) {
            (Sort::Parts(parts), Some(inside)) => {
                put_fields(&format!("{name}."), inside, parts.meanings, parts.sorts, list)
            }
            _ => list.push(Field {
                name,
                meaning: meaning.trim(),
                sort: *sort,
                entries: entries(whole.value, *sort),
                is_default: whole.is_default,
            }),
        }
    }
}

/// What stands in a field, as somebody would type it.
fn entries(value: Written, sort: Sort) -> Vec<String> {
    match (value, sort) {
        (Written::Plain(text), _) if text == "None" => Vec::new(),
        (Written::Tuple(parts), Sort::Lengths(_) | Sort::Numbers(_) | Sort::Aim | Sort::Times)
        | (Written::List(parts), Sort::Names) => parts.into_iter().map(|part| bare(part.into_line())).collect(),
        (value, Sort::Group | Sort::Parts(_)) => vec![value.into_line()],
        (value, _) => vec![bare(value.into_line())],
    }
}

/// A text without its quotes.
fn bare(text: String) -> String {
    let inside = text.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    inside.map_or(text.clone(), |inside| inside.replace("\\\"", "\"").replace("\\\\", "\\"))
}

fn typed_in<N: Noun + Read>(noun: &N, field: &str, entry: usize, typed: &str) -> Result<N, EntryFault> {
    let whole = put_typed(noun.write_whole(), N::SORTS, field, entry, typed.trim())?;
    let text = whole.into_line();
    let mut faults = Faults::none("", &text);
    let noun = syntax::parse(&text, &mut faults).root.and_then(|root| N::read_titled(&root, N::TITLE, &mut faults));
    match noun {
        Some(noun) if !faults.has_errors() => Ok(noun),
        _ => Err(EntryFault(faults.iter().next().cloned().unwrap_or_else(|| Fault::new("this cannot be read")))),
    }
}

/// A noun with one field as typed, which may be a field of a noun within it.
fn put_typed(
    mut fields: Vec<Whole>,
    sorts: &[Sort],
    field: &str,
    entry: usize,
    typed: &str,
) -> Result<Written, EntryFault> {
    let (first, rest) = field.split_once('.').map_or((field, None), |(first, rest)| (first, Some(rest)));
    let known = fields.iter().position(|one| one.name == first);
    let unknown = || EntryFault(Fault::new(format!("there is no field {first} here")));
    let index = known.ok_or_else(unknown)?;
    match (rest, sorts[index]) {
        (Some(rest), Sort::Parts(parts)) => {
            let inside = fields[index].parts.take().ok_or_else(unknown)?;
            fields[index].value = put_typed(inside, parts.sorts, rest, entry, typed)?;
        }
        (Some(_), _) => return Err(unknown()),
        (None, sort) if typed.is_empty() && !matches!(sort, Sort::Text | Sort::Names) => drop(fields.remove(index)),
        (None, sort) => fields[index].value = Written::Plain(worded(&fields[index], sort, entry, typed)?),
    }
    Ok(Written::fields(fields.into_iter().map(|Whole { name, value, .. }| (name, value)).collect()))
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
        Sort::Times => several(2, &|_, typed| Ok(quoted(typed))),
        Sort::Numbers(count) => several(count, &|_, typed| Ok(typed.to_owned())),
        Sort::Text | Sort::Name | Sort::Date | Sort::Clock => Ok(quoted(typed)),
        Sort::Names => {
            let mut names = parts.clone();
            names.resize(names.len().max(entry + 1), String::new());
            names[entry] = typed.to_owned();
            let names = names.iter().filter(|name| !name.is_empty()).map(|name| quoted(name));
            Ok(format!("[{}]", names.collect::<Vec<_>>().join(", ")))
        }
        // Another coordinate of a point, or another point, or else a name.
        Sort::Aim if parts.len() == 3 && Length::parse(typed.trim_start_matches('+')).is_ok() => several(3, &length),
        Sort::Aim if typed.starts_with('(') => Ok(typed.to_owned()),
        Sort::Aim => Ok(quoted(typed)),
        Sort::Number | Sort::Switch | Sort::Choice(_) | Sort::Group | Sort::Parts(_) => Ok(typed.to_owned()),
    }
}

fn quoted(text: &str) -> String {
    text.to_owned().write().into_line()
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
