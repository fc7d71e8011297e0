//! How a noun of the document is declared: one list of fields gives the struct, the reader and the writer, so that
//! the three cannot drift apart.

/// Declares a noun: `Name as "word a person uses" { field: Type [= default], … }`.
/// A field with no default must be written; a field at its default is left out on saving.
macro_rules! noun {
    ($(#[$meta:meta])* $Name:ident as $word:literal {
        $( $(#[$field_meta:meta])* $field:ident : $T:ty $(= $default:expr)? ),* $(,)?
    }) => {
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $Name {
            $( $(#[$field_meta])* pub $field: $T, )*
        }
    };
}
