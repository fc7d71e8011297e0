//! Any bytes as a picture.
#![no_main]

#[allow(dead_code, reason = "each fuzzer calls one of them")]
#[path = "../abuse/survives.rs"]
mod survives;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| survives::picture(bytes));
