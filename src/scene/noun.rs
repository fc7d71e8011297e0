//! How a noun of the document is declared: one list of fields gives the struct, the reader and the writer, so that
//! the three cannot drift apart.

/// Declares a noun: `Name as "word a person uses" { field: Type [= default], … }`.
/// A field with no default must be written; a field at its default is left out on saving.
/// A noun that says `all optional` has a default for every field, and so for itself.
macro_rules! noun {
    (@read $fields:ident, $faults:ident, $field:ident) => { $fields.required(stringify!($field), $faults) };
    (@read $fields:ident, $faults:ident, $field:ident, $default:expr) => {
        $fields.optional(stringify!($field), || $default, $faults)
    };
    (@differs $value:expr, $T:ty) => { true };
    (@differs $value:expr, $T:ty, $default:expr) => {{
        let default: $T = $default;
        $value != default
    }};
    ($(#[$meta:meta])* $Name:ident as $word:literal, all optional {
        $( $(#[doc = $meaning:literal])* $field:ident : $T:ty = $default:expr ),* $(,)?
    }) => {
        noun! { $(#[$meta])* $Name as $word { $( $(#[doc = $meaning])* $field : $T = $default, )* } }

        impl Default for $Name {
            fn default() -> Self {
                Self { $( $field: $default, )* }
            }
        }
    };
    ($(#[$meta:meta])* $Name:ident as $word:literal {
        $( $(#[doc = $meaning:literal])* $field:ident : $T:ty $(= $default:expr)? ),* $(,)?
    }) => {
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $Name {
            $( $(#[doc = $meaning])* pub $field: $T, )*
        }

        impl $crate::scene::read::Noun for $Name {
            const TITLE: &'static str = stringify!($Name);
            const WORD: &'static str = $word;
            const FIELDS: &'static [&'static str] = &[$( stringify!($field) ),*];
            const MEANINGS: &'static [&'static str] = &[$( concat!($($meaning),*) ),*];
            const SORTS: &'static [$crate::scene::Sort] = &[$( <$T as $crate::scene::read::Read>::SORT ),*];

            fn read_fields(
                fields: &mut $crate::scene::read::Fields<'_, '_>,
                faults: &mut $crate::scene::Faults,
            ) -> Option<Self> {
                // Every field is read before any is missed, so that all faults show.
                $( let $field: Option<$T> = noun!(@read fields, faults, $field $(, $default)?); )*
                Some(Self { $( $field: $field?, )* })
            }

            fn write_whole(&self) -> Vec<$crate::scene::write::Whole> {
                vec![$(
                    $crate::scene::write::Whole {
                        name: stringify!($field),
                        value: $crate::scene::write::Write::write(&self.$field),
                        parts: $crate::scene::write::Write::parts(&self.$field),
                        is_default: !noun!(@differs self.$field, $T $(, $default)?),
                    }
                ),*]
            }
        }

        impl $crate::scene::read::Read for $Name {
            const SORT: $crate::scene::Sort = $crate::scene::Sort::Parts(&$crate::scene::Parts {
                meanings: <Self as $crate::scene::read::Noun>::MEANINGS,
                sorts: <Self as $crate::scene::read::Noun>::SORTS,
            });

            fn read(node: &$crate::scene::tree::Node<'_>, faults: &mut $crate::scene::Faults) -> Option<Self> {
                <Self as $crate::scene::read::Noun>::read_titled(node, stringify!($Name), faults)
            }
        }

        impl $crate::scene::write::Write for $Name {
            fn write(&self) -> $crate::scene::write::Written {
                let mut fields = Vec::new();
                $(
                    if noun!(@differs self.$field, $T $(, $default)?) {
                        fields.push((stringify!($field), $crate::scene::write::Write::write(&self.$field)));
                    }
                )*
                $crate::scene::write::Written::fields(fields)
            }

            fn parts(&self) -> Option<Vec<$crate::scene::write::Whole>> {
                Some($crate::scene::read::Noun::write_whole(self))
            }
        }
    };
}

/// Gives an enum its reader and writer: `Name as "word a person uses" { Plain, Holding(Noun), With { field: Type } }`.
/// The fields of a noun stand right in the brackets of the variant that holds it: `Window(name: …, left: …)`.
macro_rules! choice {
    (@bare) => { true };
    (@bare $($held:tt)+) => { false };
    (@read $node:ident, $faults:ident, $word:literal, $E:ident $V:ident) => {
        $crate::scene::read::bare_variant($node, $faults).map(|()| $E::$V)
    };
    (@read $node:ident, $faults:ident, $word:literal, $E:ident $V:ident ($N:ty)) => {
        <$N as $crate::scene::read::Noun>::read_titled($node, stringify!($V), $faults).map($E::$V)
    };
    (@read $node:ident, $faults:ident, $word:literal, $E:ident $V:ident { $($field:ident : $T:ty),* }) => {{
        let names = &[$( stringify!($field) ),*];
        let mut fields = $crate::scene::read::Fields::open($node, stringify!($V), $word, names, $faults)?;
        $( let $field: Option<$T> = fields.required(stringify!($field), $faults); )*
        let value = $E::$V { $( $field: $field? ),* };
        fields.is_sound().then_some(value)
    }};
    (@write $value:ident, $E:ident $V:ident) => {
        if matches!($value, $E::$V) {
            return $crate::scene::write::Written::word(stringify!($V));
        }
    };
    (@write $value:ident, $E:ident $V:ident ($N:ty)) => {
        if let $E::$V(noun) = $value {
            return $crate::scene::write::Write::write(noun).titled(stringify!($V));
        }
    };
    (@write $value:ident, $E:ident $V:ident { $($field:ident : $T:ty),* }) => {
        if let $E::$V { $($field),* } = $value {
            let fields = vec![$( (stringify!($field), $crate::scene::write::Write::write($field)) ),*];
            return $crate::scene::write::Written::fields(fields).titled(stringify!($V));
        }
    };
    ($E:ident as $word:literal { $( $V:ident $(($N:ty))? $({ $($field:ident : $T:ty),* $(,)? })? ),* $(,)? }) => {
        impl $crate::scene::read::Read for $E {
            const SORT: $crate::scene::Sort = if true $( && choice!(@bare $(($N))? $({ $($field)* })?) )* {
                $crate::scene::Sort::Choice(&[$( stringify!($V) ),*])
            } else {
                $crate::scene::Sort::Group
            };

            fn read(node: &$crate::scene::tree::Node<'_>, faults: &mut $crate::scene::Faults) -> Option<Self> {
                match node.title() {
                    $( Some(stringify!($V)) => {
                        choice!(@read node, faults, $word, $E $V $(($N))? $({ $($field : $T),* })?)
                    } )*
                    _ => $crate::scene::read::no_such_variant(node, $word, &[$( stringify!($V) ),*], faults),
                }
            }
        }

        impl $crate::scene::write::Write for $E {
            fn write(&self) -> $crate::scene::write::Written {
                let value = self;
                $( choice!(@write value, $E $V $(($N))? $({ $($field : $T),* })?); )*
                // Out of reach; the compiler sees here that no variant was forgotten above.
                let name = match value { $( $E::$V { .. } => stringify!($V), )* };
                $crate::scene::write::Written::word(name)
            }
        }
    };
}
