//! gauzelight knows light: what small projectors do on cloth, rear film, forms and walls, in lux and cd/m².
//!
//! The rooms of the house, each of which may call those before it and none after:
//!
//! | room | what it is for |
//! | --- | --- |
//! | [`units`] | lengths, angles and light as people write and read them |
//! | [`files`] | files written whole or not at all, and read within bounds |
//! | [`optics`] | the laws of fabric, glass, film and lamps, as tables over angle |
//! | [`scene`] | the document: yards and the catalogue |
//! | [`edit`] | what can be done to a document, and undo |
//! | [`frames`] | pictures as linear light; photos to measure on; the shelf of what lies beside a yard |
//! | [`geometry`] | shapes as triangles and parallelograms; ray trees; photos of a wall squared up |
//! | [`light`] | the photometric core: illuminance anywhere, luminance along any ray |
//! | [`craft`] | placing: where a station stands so that its picture fills what it lights; points by tape; own entries; power and money |
//! | [`judge`] | readings |
//! | [`picture`] | luminance to pixels, PNG and EXR |
//! | [`sheet`] | the hang sheet: paper for the day with the ladder, and the frame to throw on the first night |
//!
//! The binary stands on top: its commands, and the window with everything that knows an engine.

pub mod craft;
pub mod edit;
pub mod files;
pub mod frames;
pub mod geometry;
pub mod judge;
pub mod light;
pub mod optics;
pub mod picture;
pub mod scene;
pub mod sheet;
pub mod units;
