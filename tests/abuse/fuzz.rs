//! Whatever is done to a yard file, reading it ends in a yard or in faults, and both can be shown.

use super::{GOOD, RICH};
use gauzelight::scene::{Catalogue, Yard};
use proptest::prelude::*;

/// Reads a text, shows its faults in both ways, and saves what could be read.
fn survives(text: &str) {
    match Yard::parse(text, "fuzz.ron", &Catalogue::builtin()) {
        Ok(loaded) => {
            let saved = loaded.yard.to_text();
            let again = Yard::parse(&saved, "saved.ron", &Catalogue::builtin());
            let again = again.unwrap_or_else(|faults| panic!("what was saved cannot be read:\n{faults}\n{saved}"));
            assert_eq!(again.yard, loaded.yard);
        }
        Err(faults) => {
            assert!(faults.has_errors());
            assert!(!faults.plain().is_empty() && !faults.pretty(true, 100).is_empty());
        }
    }
}

/// Bytes that mean something to the reader, and some that do not.
fn any_byte() -> impl Strategy<Value = u8> {
    prop_oneof![prop::sample::select(b"()[]{}\"'\\/*:,.-+0123456789eEr# \nxn".to_vec()), any::<u8>()]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn changed_bytes(changes in prop::collection::vec((any::<prop::sample::Index>(), any_byte()), 1..12)) {
        let mut bytes = RICH.as_bytes().to_vec();
        for (index, byte) in changes {
            let index = index.index(bytes.len());
            bytes[index] = byte;
        }
        survives(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn lost_and_doubled_pieces(cuts in prop::collection::vec((any::<prop::sample::Index>(), 1_usize..40, any::<bool>()), 1..6)) {
        let mut bytes = GOOD.as_bytes().to_vec();
        for (index, len, doubled) in cuts {
            let from = index.index(bytes.len());
            let to = (from + len).min(bytes.len());
            let piece = bytes[from..to].to_vec();
            let put = if doubled { [piece.as_slice(), piece.as_slice()].concat() } else { Vec::new() };
            bytes.splice(from..to, put);
        }
        survives(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn truncations(end in 0..RICH.len()) {
        let mut end = end;
        while !RICH.is_char_boundary(end) {
            end -= 1;
        }
        survives(&RICH[..end]);
    }

    #[test]
    fn swapped_values(from in any::<prop::sample::Index>(), to in any::<prop::sample::Index>()) {
        let values: Vec<&str> = GOOD.split([',', '\n']).filter_map(|part| part.split_once(": ")).map(|(_, value)| value).collect();
        let (from, to) = (values[from.index(values.len())], values[to.index(values.len())]);
        survives(&GOOD.replacen(from, to, 1));
    }

    #[test]
    fn any_text(text in "(?s).{0,200}") {
        survives(&text);
    }
}
