//! Whatever is done to a yard file, reading it ends in a yard or in faults, and both can be shown.

use super::{GOOD, RICH, survives};
use proptest::prelude::*;

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
        survives::yard(&bytes);
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
        survives::yard(&bytes);
    }

    #[test]
    fn truncations(end in 0..RICH.len()) {
        let mut end = end;
        while !RICH.is_char_boundary(end) {
            end -= 1;
        }
        survives::yard(&RICH.as_bytes()[..end]);
    }

    #[test]
    fn swapped_values(from in any::<prop::sample::Index>(), to in any::<prop::sample::Index>()) {
        let values: Vec<&str> = GOOD.split([',', '\n']).filter_map(|part| part.split_once(": ")).map(|(_, value)| value).collect();
        let (from, to) = (values[from.index(values.len())], values[to.index(values.len())]);
        survives::yard(GOOD.replacen(from, to, 1).as_bytes());
    }

    #[test]
    fn any_text(text in "(?s).{0,200}") {
        survives::yard(text.as_bytes());
    }
}
