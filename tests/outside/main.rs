//! Checks from outside: published standards, handbook tables and worked examples, each named beside its check.

mod cases;
mod evening;
mod eye;
mod nine_points;
mod optics;
mod power;
mod shelter;
mod square_up;
mod tapes;
mod wind;
