//! What is there already and need not be bought.

use super::{Positive, Ref};

noun! {
    /// Something that is there already.
    Owned as "owned item" {
        /// A projector class, a fabric or goods, by its name in the catalogue.
        what: Ref,
        /// Anything worth remembering.
        note: String = String::new(),
        /// How much of it: pieces of a projector, square metres of a fabric, flat, and of goods as they are sold.
        amount: Positive = Positive(1.0),
    }
}
