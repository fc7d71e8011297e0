//! Forms: closed bodies that a face or figure is thrown onto.

mod bag;
mod figure;
mod globe;
mod gourd;
mod turned;

use crate::geometry::Built;
use crate::scene::Form;

/// Builds a form.
pub fn build(form: &Form, built: &mut Built) {
    match form {
        Form::Figure(figure) => figure::build(figure, built),
        Form::Bag(bag) => bag::build(bag, built),
        Form::Gourd(gourd) => gourd::build(gourd, built),
        Form::Globe(globe) => globe::build(globe, built),
        Form::Turned(turned) => turned::build(turned, built),
    }
}
