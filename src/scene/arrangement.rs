//! Arrangements: several placings of the stations in one yard.

use super::{Name, Station};

noun! {
    /// One complete placing of the stations, kept beside the one that the yard shows.
    Arrangement as "arrangement" {
        /// Unique among the arrangements.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Its stations.
        stations: Vec<Station> = Vec::new(),
    }
}
