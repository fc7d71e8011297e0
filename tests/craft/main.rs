//! Placing and building: entries made of what people know, and points by tape.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod own;
mod power;
mod tapes;
