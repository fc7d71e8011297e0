//! Photometric files that disagree with themselves or are none: each is refused with its place, and none is a panic.

use gauzelight::optics::LampFile;
use proptest::prelude::*;

/// A sound one, line by line.
const GOOD: &str = include_str!("seeds/lamp/round.ies");

#[test]
fn the_good_file_is_good() {
    assert!(LampFile::read(GOOD.as_bytes()).is_ok());
}

#[test]
fn what_is_wrong_is_told_with_its_place() {
    let table = [
        ("TILT=NONE", "TILT=other.tlt", "line 4: the tilt data stand in another file, “other.tlt”; put them into this"),
        ("TILT=NONE", "TILT NONE", "line 11: no line begins with TILT="),
        ("1 1000 1 3", "0 1000 1 3", "line 5, number 1: 0 bulbs; a whole number from 1"),
        ("1 1000 1 3", "1 -5 1 3", "line 5, number 2: the lumens of a bulb is -5"),
        ("1 1000 1 3", "1 1000 -1 3", "line 5, number 3: the factor on candela is -1"),
        ("1 1000 1 3 2", "1 1000 1 3.5 2", "line 5, number 4: 3.5 vertical angles"),
        ("1 1000 1 3 2", "1 1000 1 3 -2", "line 5, number 5: -2 lateral angles"),
        ("1 1000 1 3 2", "1 1000 1 9999 9999", "line 5, number 5: 9999 by 9999 angles are too many"),
        ("3 2 1 2 0.1", "3 2 4 2 0.1", "line 5, number 6: the photometric type is 4; it is one of 1, 2, 3"),
        ("3 2 1 2 0.1", "3 2 1 3 0.1", "line 5, number 7: the unit (1 feet, 2 metres) is 3"),
        ("3 2 1 2 0.1", "3 2 1 2 wide", "line 5, number 8: “wide” stands where a size of the opening should"),
        ("1 1 50", "NaN 1 50", "line 6, number 1: “NaN” stands where the ballast factor should"),
        ("1 1 50", "1 1 -50", "line 6, number 3: the power is -50"),
        ("0 45 90", "0 45 45", "line 7, number 3: a vertical angle of 45 comes after 45; angles ascend"),
        ("0 45 90", "0 45 80", "line 7, number 3: the vertical angles run from 0 to 80"),
        ("0 45 90", "-90 45 90", "of type C they run 0 to 90, 90 to 180, 0 to 180"),
        ("0 90\n", "90 0\n", "line 8, number 2: a lateral angle of 0 comes after 90"),
        ("0 90\n", "0 120\n", "line 8, number 2: the lateral angles run from 0 to 120"),
        ("100 80 0", "100 -80 0", "line 9, number 2: this candela value is -80; it is 0 or more"),
        ("100 80 0", "100 inf 0", "line 9, number 2: “inf” stands where a candela value should"),
        ("100 80 0", "100 1e300 0", "line 5, number 4: this lamp gives"),
        ("100 60 0\n", "100 60\n", "line 11: the file ends where a candela value should stand"),
        ("100 60 0\n", "100 60 0 7\n", "line 10, number 4: “7” is one value more than the angles call for"),
        ("100 80 0\n100 60 0", "0 0 0\n0 0 0", "this lamp gives 0 lm"),
        (
            "3 2 1 2 0.1",
            "3 2 2 2 0.1",
            "line 7, number 3: the vertical angles run from 0 to 90; of type B they run -90 to 90",
        ),
        ("TILT=NONE", "TILT=INCLUDE\n7", "line 5, number 1: how the bulb stands in the lamp is 7"),
        ("TILT=NONE", "TILT=INCLUDE\n1\n2\n0 90\n1 -1", "line 8, number 2: this tilt factor is -1"),
    ];
    for (find, put, says) in table {
        assert_eq!(GOOD.matches(find).count(), 1, "{find} stands once");
        let said = LampFile::read(GOOD.replace(find, put).as_bytes()).expect_err(put).to_string();
        assert!(said.contains(says), "{put}: {said}");
    }
    for nothing in ["", "\n\n", "TILT=NONE", "\u{0}\u{0}"] {
        assert!(LampFile::read(nothing.as_bytes()).is_err());
    }
}

#[test]
fn how_it_is_laid_out_does_not_matter() {
    let sound = LampFile::read(GOOD.as_bytes()).unwrap();
    let all_apart = {
        let (head, numbers) = GOOD.split_once("NONE\n").unwrap();
        format!("{head}NONE\n{}", numbers.split_whitespace().collect::<Vec<_>>().join("\n\n"))
    };
    let latin = [b"caf\xe9 \xdf\n".as_slice(), GOOD.as_bytes()].concat();
    for bytes in [
        GOOD.replace('\n', "\r\n").into_bytes(),
        GOOD.replace('\n', "\r").into_bytes(),
        GOOD.replace("100 80 0\n", "100,80,0\n").into_bytes(),
        GOOD.replace("TILT=NONE", "  tilt = none  ").into_bytes(),
        all_apart.into_bytes(),
        latin,
        format!("{GOOD}\u{1a}").into_bytes(),
        format!("{GOOD}\nwords of nobody 5").into_bytes(),
    ] {
        assert_eq!(LampFile::read(&bytes).unwrap(), sound);
    }
}

/// Whatever is read can be lit.
fn survives(bytes: &[u8]) {
    if let Ok(file) = LampFile::read(bytes) {
        let light = file.light();
        assert!(light.lumens > 0.0 && light.spread.table.iter().all(|value| value.is_finite()), "{file:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn changed_bytes(
        changes in prop::collection::vec(
            (any::<prop::sample::Index>(), prop_oneof![prop::sample::select(b"0123456789.-+e, \n=TN".to_vec()), any::<u8>()]),
            1..8,
        ),
    ) {
        let mut bytes = GOOD.as_bytes().to_vec();
        for (index, byte) in changes {
            let index = index.index(bytes.len());
            bytes[index] = byte;
        }
        survives(&bytes);
    }

    #[test]
    fn truncations(end in 0..GOOD.len()) {
        survives(&GOOD.as_bytes()[..end]);
    }

    #[test]
    fn any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        survives(&bytes);
        survives(&[b"TILT=NONE\n".as_slice(), &bytes].concat());
    }
}
