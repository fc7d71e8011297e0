//! A picture as it lies on the shelf, and the light that projectors make of it.

use super::decode::{is_linear, upright};
use super::{Frame, FrameError, Response};
use crate::files;
use std::{
    borrow::Cow,
    path::Path,
    sync::{Arc, Mutex, PoisonError},
};

/// A picture, with one frame for each response that it is thrown by.
///
/// Its file is kept as it is, small, and decoded once for each response: a frame that nobody holds any more is let go when
/// the next is made.
#[derive(Debug)]
pub struct Picture {
    source: Source,
    made: Mutex<Vec<(Response, Arc<Frame>)>>,
}

/// What frames are made of.
#[derive(Debug)]
enum Source {
    /// Bytes of a file of codes.
    Codes(Cow<'static, [u8]>),
    /// Linear light, which no curve touches.
    Light(Arc<Frame>),
    /// Nothing: there are the frames that were given.
    Given,
}

impl Picture {
    /// The most bytes that a picture's file may have.
    pub const MOST_BYTES: u64 = 128 << 20;

    /// A picture from a file: PNG, JPEG, WebP, GIF (its first picture) or EXR, told by its content.
    pub fn load(path: impl AsRef<Path>) -> Result<Self, FrameError> {
        let path = path.as_ref();
        files::read(path, Self::MOST_BYTES)
            .map_err(FrameError::from)
            .and_then(Self::decode)
            .map_err(|fault| FrameError::File { fault: Box::new(fault), path: path.to_owned() })
    }

    /// A picture from the bytes of such a file.
    pub fn decode(bytes: impl Into<Cow<'static, [u8]>>) -> Result<Self, FrameError> {
        let bytes = bytes.into();
        let picture = upright(&bytes)?;
        let is_linear = is_linear(&picture);
        let frame = Arc::new(Frame::of_image(picture, Response::USUAL)?);
        if is_linear {
            return Ok(Self::linear(frame));
        }
        Ok(Self { source: Source::Codes(bytes), made: Mutex::new(vec![(Response::USUAL, frame)]) })
    }

    /// A picture that is linear light already.
    pub fn linear(frame: Arc<Frame>) -> Self {
        Self { source: Source::Light(frame), made: Mutex::default() }
    }

    /// A picture of which nothing is left but frames, each as one response makes it.
    pub fn given(frames: Vec<(Response, Arc<Frame>)>) -> Self {
        Self { source: Source::Given, made: Mutex::new(frames) }
    }

    /// The light that a projector of this response makes of it; `None` of a given picture for a response that it was not given by.
    pub fn frame(&self, response: Response) -> Option<Arc<Frame>> {
        if let (Source::Light(frame), 1.0) = (&self.source, response.colour_light) {
            return Some(Arc::clone(frame));
        }
        let key = match self.source {
            // No curve touches it: one frame for all.
            Source::Light(_) => Response { transfer: Response::USUAL.transfer, ..response },
            _ => response,
        };
        let find = |made: &[(Response, Arc<Frame>)]| {
            made.iter().find(|(by, _)| *by == key).map(|(_, frame)| Arc::clone(frame))
        };
        if let Some(frame) = find(&self.made()) {
            return Some(frame);
        }
        // Not under the lock: decoding waits for other threads, which may come here.
        let new = match &self.source {
            Source::Codes(bytes) => Frame::decode(bytes, key).ok()?,
            Source::Light(frame) => frame.answered(key),
            Source::Given => return None,
        };
        let mut made = self.made();
        if let Some(frame) = find(&made) {
            return Some(frame);
        }
        made.retain(|(_, frame)| Arc::strong_count(frame) > 1);
        let frame = Arc::new(new);
        made.push((key, Arc::clone(&frame)));
        Some(frame)
    }

    fn made(&self) -> std::sync::MutexGuard<'_, Vec<(Response, Arc<Frame>)>> {
        self.made.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frames::{Transfer, builtin};
    use glam::Vec3;

    fn power(gamma: f32) -> Response {
        Response { transfer: Transfer::Power(gamma), ..Response::USUAL }
    }

    #[test]
    fn each_curve_is_one_frame_and_what_nobody_holds_is_let_go() {
        let picture = Picture::decode(builtin("gourds").unwrap()).unwrap();
        let one = picture.frame(Response::USUAL).unwrap();
        assert!(Arc::ptr_eq(&one, &picture.frame(Response::USUAL).unwrap()));
        let other = picture.frame(power(2.4)).unwrap();
        assert!(other.mean < 0.97 * one.mean && !Arc::ptr_eq(&one, &other));
        assert_eq!(picture.made().len(), 2);
        drop(one);
        let third = picture.frame(Response::SRGB).unwrap();
        assert!(third.mean > other.mean);
        let kept: Vec<Response> = picture.made().iter().map(|(by, _)| *by).collect();
        assert_eq!(kept, [power(2.4), Response::SRGB]);
    }

    #[test]
    fn no_curve_touches_linear_light_but_colour_light_does() {
        let frame = Arc::new(Frame::from_linear(1, 1, vec![Vec3::new(0.5, 0.25, 0.0)]).unwrap());
        let picture = Picture::linear(Arc::clone(&frame));
        for response in [Response::SRGB, power(3.0)] {
            assert!(Arc::ptr_eq(&frame, &picture.frame(response).unwrap()));
        }
        let dim = |gamma| picture.frame(Response { colour_light: 0.5, ..power(gamma) }).unwrap();
        assert!(dim(2.2).sample(0.5, 0.5, 0.0).abs_diff_eq(Vec3::new(0.25, 0.125, 0.0), 1e-4));
        let held = dim(2.0);
        assert!(Arc::ptr_eq(&held, &dim(2.4)));
    }

    #[test]
    fn a_given_picture_has_what_it_was_given() {
        let frame = Arc::new(Frame::from_linear(1, 1, vec![Vec3::ONE]).unwrap());
        let picture = Picture::given(vec![(Response::SRGB, Arc::clone(&frame))]);
        assert!(Arc::ptr_eq(&frame, &picture.frame(Response::SRGB).unwrap()));
        assert!(picture.frame(Response::USUAL).is_none());
    }

    #[test]
    fn a_message_ends_with_the_path() {
        let fault = Picture::load("no/such/picture.png").unwrap_err();
        assert!(fault.to_string().ends_with(": no/such/picture.png"), "{fault}");
    }
}
