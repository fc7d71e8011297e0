//! What a system says, for people.

/// Why the system could not do something, without the number that it counts its reasons by.
pub fn reason(error: &std::io::Error) -> String {
    let said = error.to_string();
    match error.raw_os_error() {
        Some(number) => said.trim_end_matches(&format!(" (os error {number})")).to_owned(),
        None => said,
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_systems_number_is_left_out() {
        let said = super::reason(&std::fs::read("no/such/file").unwrap_err());
        assert!(!said.is_empty() && !said.contains("os error"), "{said}");
        assert_eq!(super::reason(&std::io::Error::other("torn")), "torn");
    }
}
