//! Nouns into surfaces: closed, the right way round, tight, and the same every time.

mod forms;
mod houses;
mod probe;
mod sheets;
mod whole;
mod yards;
