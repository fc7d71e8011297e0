//! Photos of a wall squared up: plain geometry, a wall seen through a pinhole, and what is refused.

#![allow(clippy::unwrap_used, reason = "a check that cannot be set up has failed")]

use gauzelight::frames::{Photo, srgb};
use gauzelight::geometry::square_up::{Mark, SquareUp, SquareUpFault, Stretch, Where};
use glam::{DMat3, DVec2, DVec3};
use proptest::prelude::*;

fn mark(photo: (f64, f64), wall: (f64, f64)) -> Mark {
    Mark { photo: photo.into(), wall: wall.into() }
}

/// A front of 8 m by 5 m at 100 px a metre, seen straight on, its upper left corner that of the photo.
fn straight() -> [Mark; 4] {
    [
        mark((0.0, 500.0), (0.0, 0.0)),
        mark((800.0, 500.0), (8.0, 0.0)),
        mark((800.0, 0.0), (8.0, 5.0)),
        mark((0.0, 0.0), (0.0, 5.0)),
    ]
}

const FRONT: Stretch = Stretch { left: 0.0, right: 8.0, foot: 0.0, top: 5.0 };

/// A pinhole: where it stands, the way its picture's right and down and its axis point, its focal length in pixels and
/// the middle of its picture. The wall is z = 0, x along it and y up.
struct Pinhole {
    stand: DVec3,
    /// Columns right, down, ahead.
    world_from_camera: DMat3,
    focal: f64,
    middle: DVec2,
}

impl Pinhole {
    fn new(stand: DVec3, look: DVec3, roll: f64, focal: f64, middle: DVec2) -> Self {
        let ahead = (look - stand).normalize();
        let right = ahead.cross(DVec3::Y).normalize();
        let down = ahead.cross(right);
        let (sin, cos) = roll.sin_cos();
        let world_from_camera = DMat3::from_cols(right * cos + down * sin, down * cos - right * sin, ahead);
        Self { stand, world_from_camera, focal, middle }
    }

    fn photo_from_wall(&self, wall: DVec2) -> DVec2 {
        let seen = self.world_from_camera.transpose() * (wall.extend(0.0) - self.stand);
        self.middle + self.focal * seen.truncate() / seen.z
    }

    /// By the ray through the pixel, so not by the map that is under test.
    fn wall_from_photo(&self, photo: DVec2) -> DVec2 {
        let ray = self.world_from_camera * ((photo - self.middle) / self.focal).extend(1.0);
        (self.stand - ray * (self.stand.z / ray.z)).truncate()
    }

    fn mark(&self, wall: DVec2) -> Mark {
        Mark { photo: self.photo_from_wall(wall), wall }
    }
}

/// Light of a wall of half-metre squares.
fn checker(wall: DVec2) -> f32 {
    let square = (wall * 2.0).floor();
    if (square.x + square.y).rem_euclid(2.0) < 1.0 { 0.05 } else { 0.8 }
}

/// Renders the checkered wall as a camera would: each pixel the mean light of two by two pixels, a slightly soft lens.
fn photo_of_checker(camera: &Pinhole) -> Photo {
    const TAKES: u32 = 8;
    let (width, height) = ((2.0 * camera.middle.x) as u32, (2.0 * camera.middle.y) as u32);
    let mut codes = Vec::with_capacity((width * height * 3) as usize);
    for row in 0..height {
        for column in 0..width {
            let at = |x: f64, y: f64| camera.wall_from_photo(DVec2::new(f64::from(column) + x, f64::from(row) + y));
            let square = |(x, y)| (at(x, y) * 2.0).floor();
            let corners = [(-0.5, -0.5), (1.5, -0.5), (-0.5, 1.5), (1.5, 1.5)].map(square);
            // Most pixels lie within one square.
            let takes = if corners.iter().all(|corner| *corner == corners[0]) { 1 } else { TAKES };
            let part = |take: u32| (f64::from(take) + 0.5) * 2.0 / f64::from(takes) - 0.5;
            let sum: f32 = (0..takes * takes).map(|take| checker(at(part(take % takes), part(take / takes)))).sum();
            let light = sum / (takes * takes) as f32;
            codes.extend([(srgb::from_linear(light) * 255.0).round() as u8; 3]);
        }
    }
    Photo::from_rgb8(width, height, codes).unwrap()
}

/// Where a row of light crosses the middle between black and white, in pixels from its beginning.
fn edges(light: &[f32]) -> Vec<f64> {
    const MIDDLE: f32 = 0.425;
    let crosses = |at: usize| (light[at] < MIDDLE) != (light[at + 1] < MIDDLE);
    (0..light.len() - 1)
        .filter(|at| crosses(*at))
        .map(|at| at as f64 + 0.5 + f64::from((MIDDLE - light[at]) / (light[at + 1] - light[at])))
        .collect()
}

/// A checkered wall, photographed aslant, comes out with its edges where they are: within a tenth of a pixel.
#[test]
fn a_checkered_wall_comes_out_square() {
    let look = DVec3::new(4.2, 2.4, 0.0);
    for (stand, roll, focal) in [(DVec3::new(1.0, 1.6, 9.0), 0.05, 2000.0), (DVec3::new(11.0, 1.5, 6.0), -0.3, 2000.0)]
    {
        let camera = Pinhole::new(stand, look, roll, focal, DVec2::new(1200.0, 900.0));
        let corners = [(0.0, 0.0), (8.0, 0.0), (8.0, 5.0), (0.0, 5.0)];
        let square_up = SquareUp::new(&corners.map(|wall| camera.mark(wall.into()))).unwrap();
        let squared = square_up.squared(&photo_of_checker(&camera), FRONT, 100.0).unwrap();
        assert_eq!(squared.picture.dimensions(), (800, 500));
        let light = |x: u32, y: u32| srgb::decode8(squared.picture.get_pixel(x, y).0[0]);
        let seen = |x: u32, y: u32| squared.picture.get_pixel(x, y).0[3] == 255;
        let mut found = 0;
        let mut check = |edges: Vec<f64>| {
            for edge in edges {
                let true_edge = (edge / 50.0).round() * 50.0;
                assert!((edge - true_edge).abs() < 0.1, "an edge at {edge} from {stand}");
                found += 1;
            }
        };
        for y in (0..10).flat_map(|square| [square * 50 + 15, square * 50 + 25, square * 50 + 38]) {
            check(edges(&(0..800).filter(|x| seen(*x, y)).map(|x| light(x, y)).collect::<Vec<_>>()));
        }
        for x in (0..16).flat_map(|square| [square * 50 + 15, square * 50 + 25, square * 50 + 38]) {
            check(edges(&(0..500).filter(|y| seen(x, *y)).map(|y| light(x, y)).collect::<Vec<_>>()));
        }
        // Thirty rows of fifteen edges and forty-eight columns of nine.
        assert_eq!(found, 30 * 15 + 48 * 9, "from {stand}");
    }
}

#[test]
fn a_straight_photo_comes_out_as_it_is() {
    let codes: Vec<u8> = (0..800 * 500 * 3).map(|at| (at * 7 % 251) as u8).collect();
    let photo = Photo::from_rgb8(800, 500, codes).unwrap();
    let square_up = SquareUp::new(&straight()).unwrap();
    let squared = square_up.squared(&photo, FRONT, 100.0).unwrap();
    for (x, y, pixel) in squared.picture.enumerate_pixels() {
        let [red, green, blue] = photo.picture().get_pixel(x, y).0;
        assert_eq!(pixel.0, [red, green, blue, 255], "{x} {y}");
    }
    let place = DVec2::new(2.5, 4.0);
    assert_eq!(squared.pixel_from_wall(place), DVec2::new(250.0, 100.0));
    assert_eq!(squared.wall_from_pixel(DVec2::new(250.0, 100.0)), place);
    assert!((square_up.pixels_per_metre(place).unwrap() - 100.0).abs() < 1e-9);
}

#[test]
fn a_stretch_beyond_the_photo_is_clear_there() {
    let photo = Photo::from_rgb8(800, 500, vec![200; 800 * 500 * 3]).unwrap();
    let square_up = SquareUp::new(&straight()).unwrap();
    let squared = square_up.squared(&photo, Stretch { left: -1.0, right: 1.005, ..FRONT }, 10.0).unwrap();
    assert_eq!(squared.picture.dimensions(), (21, 50));
    assert!((squared.stretch.right - 1.1).abs() < 1e-12);
    assert_eq!(squared.picture.get_pixel(9, 20).0[3], 0);
    assert_eq!(squared.picture.get_pixel(10, 20).0, [200, 200, 200, 255]);
}

#[test]
fn a_slip_in_one_of_eight_marks_is_found() {
    let camera =
        Pinhole::new(DVec3::new(1.0, 1.6, 9.0), DVec3::new(4.2, 2.4, 0.0), 0.0, 2000.0, DVec2::new(1200.0, 900.0));
    let places = [(0.0, 0.0), (8.0, 0.0), (8.0, 5.0), (0.0, 5.0), (2.0, 1.0), (3.0, 1.0), (3.0, 3.0), (2.0, 3.0)];
    for slip in 0..8 {
        let mut marks = places.map(|wall| camera.mark(wall.into()));
        marks[slip].photo.x += 12.0;
        let fit = SquareUp::new(&marks).unwrap().fit().clone();
        let suspect = fit.suspect.unwrap();
        assert_eq!(suspect.mark, slip, "{fit}");
        assert!(fit.spread().unwrap() > 1.0 && suspect.spread_without < 1e-6, "{fit:?}");
    }
}

#[test]
fn what_cannot_be_is_refused_with_a_remedy() {
    use SquareUpFault::{Coincide, Crossed, FarOff, Mirrored, NotFinite, OnALine, TooFew, TooMany};
    let changed = |change: &dyn Fn(&mut Vec<Mark>)| {
        let mut marks = straight().to_vec();
        change(&mut marks);
        marks
    };
    let swapped = |a: usize, b: usize| {
        move |marks: &mut Vec<Mark>| (marks[a].photo, marks[b].photo) = (marks[b].photo, marks[a].photo)
    };
    let (photo, wall) = (Where::Photo, Where::Wall);
    let cases: Vec<(Vec<Mark>, SquareUpFault)> = vec![
        (vec![], TooFew { given: 0 }),
        (changed(&|marks| marks.truncate(3)), TooFew { given: 3 }),
        (vec![straight()[0]; 65], TooMany { given: 65, most: 64 }),
        (changed(&|marks| marks[2].photo.y = f64::NAN), NotFinite { mark: 2, place: photo }),
        (changed(&|marks| marks[3].wall.x = f64::INFINITY), NotFinite { mark: 3, place: wall }),
        (changed(&|marks| marks[1].wall.x = 8e5), FarOff { mark: 1, place: wall }),
        (changed(&|marks| marks[1].photo.x = -8e9), FarOff { mark: 1, place: photo }),
        (changed(&|marks| marks[2].photo = marks[1].photo + 0.4), Coincide { marks: [1, 2], place: photo }),
        (changed(&|marks| marks[3].wall = marks[0].wall), Coincide { marks: [0, 3], place: wall }),
        (changed(&|marks| marks[2].photo = DVec2::new(400.0, 502.0)), OnALine { marks: vec![0, 1, 2], place: photo }),
        (changed(&|marks| marks[2].wall = DVec2::new(4.0, 0.0)), OnALine { marks: vec![0, 1, 2], place: wall }),
        (changed(&swapped(0, 1)), Crossed { swapped: Some([0, 1]) }),
        (changed(&swapped(1, 2)), Crossed { swapped: Some([1, 2]) }),
        (changed(&swapped(0, 2)), Mirrored),
        (changed(&|marks| marks.iter_mut().for_each(|mark| mark.photo.x = 800.0 - mark.photo.x)), Mirrored),
        // One corner inside the triangle of the others: no photo of four corners of a front looks so.
        (changed(&|marks| marks[2].photo = DVec2::new(200.0, 300.0)), Crossed { swapped: None }),
    ];
    for (marks, wanted) in cases {
        let fault = SquareUp::new(&marks).unwrap_err();
        assert_eq!(fault, wanted);
        spoken(&fault);
    }
}

/// Ten marks of which nine lie on a line settle no map, ten with eight on it do.
#[test]
fn a_row_of_marks_needs_two_beside_it() {
    let mut marks: Vec<Mark> = (0..9).map(f64::from).map(|at| mark((at * 100.0, 500.0), (at, 0.0))).collect();
    marks.push(mark((0.0, 0.0), (0.0, 5.0)));
    let fault = SquareUp::new(&marks).unwrap_err();
    assert_eq!(fault, SquareUpFault::OnALine { marks: (0..9).collect(), place: Where::Photo });
    marks[8] = mark((800.0, 0.0), (8.0, 5.0));
    assert!(SquareUp::new(&marks).is_ok());
}

#[test]
fn what_cannot_be_shown_is_refused_with_a_remedy() {
    let camera =
        Pinhole::new(DVec3::new(-2.0, 1.6, 3.0), DVec3::new(2.0, 2.0, 0.0), 0.0, 300.0, DVec2::new(400.0, 300.0));
    let corners = [(0.0, 0.0), (8.0, 0.0), (8.0, 5.0), (0.0, 5.0)];
    let square_up = SquareUp::new(&corners.map(|wall| camera.mark(wall.into()))).unwrap();
    let photo = Photo::from_rgb8(800, 600, vec![9; 800 * 600 * 3]).unwrap();
    let refused = |stretch, scale| {
        let fault = square_up.squared(&photo, stretch, scale).unwrap_err();
        spoken(&fault);
        fault
    };
    assert_eq!(refused(Stretch { right: 0.0, ..FRONT }, 100.0), SquareUpFault::Stretch);
    assert_eq!(refused(Stretch { top: f64::NAN, ..FRONT }, 100.0), SquareUpFault::Stretch);
    assert_eq!(refused(Stretch { left: f64::NEG_INFINITY, ..FRONT }, 100.0), SquareUpFault::Stretch);
    assert_eq!(refused(FRONT, -1.0), SquareUpFault::Scale { pixels_per_metre: -1.0 });
    assert!(matches!(refused(FRONT, f64::NAN), SquareUpFault::Scale { .. }));
    let fault = refused(FRONT, 1e5);
    assert!(matches!(fault, SquareUpFault::TooLarge { most: 1024.0, .. }), "{fault:?}");
    assert_eq!(fault.remedy(), "Ask for 1020 pixels per metre at most, or for less of the wall.");
    assert!(square_up.squared(&photo, FRONT, 0.25).is_ok());
    let fault = refused(FRONT, 0.01);
    assert_eq!(fault.remedy(), "Ask for more than 0.2 pixels per metre.");
    // The camera stands 3 m off at -2 m and looks to the right: its own plane meets the wall at -4.25 m and less.
    assert_eq!(refused(Stretch { left: -6.0, ..FRONT }, 10.0), SquareUpFault::PastTheCamera);
    assert_eq!(refused(Stretch { left: 0.0, right: 1.0, foot: 200.0, top: 201.0 }, 10.0), SquareUpFault::Unseen);
    assert_eq!(square_up.photo_from_wall(DVec2::new(-6.0, 1.0)), None);
    // Its axis meets the wall at an angle whose tangent is 3/4: the wall's horizon is 225 px right of the middle.
    assert!(square_up.wall_from_photo(DVec2::new(600.0, 300.0)).is_some());
    assert_eq!(square_up.wall_from_photo(DVec2::new(650.0, 300.0)), None);
}

/// Whole sentences, and marks counted from one.
#[track_caller]
fn spoken(fault: &SquareUpFault) {
    let (what, remedy) = (fault.to_string(), fault.remedy());
    assert!(what.len() > 15 && what.starts_with(char::is_uppercase) && !what.contains("ark 0"), "{what}");
    assert!(remedy.len() > 25 && remedy.ends_with('.') && !remedy.contains("ark 0"), "{remedy}");
}

proptest! {
    /// Any camera before the wall: the map is its own, there and back.
    #[test]
    fn a_pinhole_s_own_map_is_found(
        along in -4.0..14.0f64, up in 0.5..8.0f64, off in 3.0..20.0f64, roll in -3.1..3.1f64, focal in 800.0..6000.0f64,
        x in 0.0..9.0f64, y in 0.0..6.0f64,
    ) {
        let camera = Pinhole::new(DVec3::new(along, up, off), DVec3::new(4.5, 3.0, 0.0), roll, focal, DVec2::new(3000.0, 2000.0));
        let corners = [(0.0, 0.0), (9.0, 0.0), (9.0, 6.0), (0.0, 6.0)].map(DVec2::from);
        let before = |wall: &DVec2| (camera.world_from_camera.transpose() * (wall.extend(0.0) - camera.stand)).z > 0.3;
        prop_assume!(corners.iter().all(before));
        let square_up = SquareUp::new(&corners.map(|wall| camera.mark(wall))).unwrap();
        let wall = DVec2::new(x, y);
        let photo = camera.photo_from_wall(wall);
        prop_assert!(square_up.photo_from_wall(wall).unwrap().distance(photo) < 1e-6 * (1.0 + photo.length() / 1e3));
        prop_assert!(square_up.wall_from_photo(photo).unwrap().distance(wall) < 1e-8);
    }

    /// Whatever is given, there is an answer or a refusal, and an answer is made of numbers.
    #[test]
    fn nonsense_never_breaks_it(
        numbers in prop::collection::vec((-1e4..1e4f64, -1e4..1e4f64, -1e2..1e2f64, -1e2..1e2f64), 0..9),
    ) {
        let marks: Vec<Mark> = numbers.iter().map(|(u, v, x, y)| mark((*u, *v), (*x, *y))).collect();
        if let Ok(square_up) = SquareUp::new(&marks) {
            prop_assert!(square_up.fit().misses.iter().all(|miss| miss.photo.is_finite() && miss.wall.is_finite()));
        }
    }
}
