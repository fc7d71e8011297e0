//! Placing and building: entries made of what people know, points by tape, weather boxes, what keeps a station running, wind,
//! shopping and cautions.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod cautions;
mod laws;
mod own;
mod power;
mod running;
mod shelter;
mod shopping;
mod tapes;
mod wind;
