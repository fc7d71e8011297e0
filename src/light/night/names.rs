//! Names of the things of a night, by their numbers; and their numbers, by name.

use std::{collections::HashMap, ops::Deref, sync::Arc};

/// The names, which copies of a night share. Things of one name have the number of the first.
#[derive(Clone, Debug, Default)]
pub struct Names(Arc<(Vec<String>, HashMap<String, u32>)>);

impl Names {
    pub(super) fn of(names: Vec<String>) -> Self {
        let mut numbers = HashMap::with_capacity(names.len());
        for (number, name) in (0..).zip(&names) {
            numbers.entry(name.clone()).or_insert(number);
        }
        Self(Arc::new((names, numbers)))
    }

    /// The number of a name.
    pub fn number(&self, name: &str) -> Option<u32> {
        self.0.1.get(name).copied()
    }
}

impl Deref for Names {
    type Target = [String];

    fn deref(&self) -> &[String] {
        &self.0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_has_the_number_of_the_first_that_bears_it() {
        let names = Names::of(["wall", "net", "wall"].map(str::to_owned).to_vec());
        assert_eq!(["wall", "net", "roof"].map(|name| names.number(name)), [Some(0), Some(1), None]);
        assert_eq!(&names[2], "wall");
    }
}
