//! Nouns into surfaces: closed, the right way round, tight, and the same every time.

mod forms;
mod houses;
mod probe;
mod sheets;
mod square_up;
mod whole;
mod yards;
