//! Placing and building: entries made of what people know, points by tape, weather boxes, and what keeps a station running.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod own;
mod power;
mod running;
mod shelter;
mod tapes;
