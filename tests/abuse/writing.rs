//! Where files are written, and where not: links of both kinds, protected files, pipes, and what a killed writer left.

use gauzelight::files::{self, Kept, WriteError};
use std::{
    fs::{self, File},
    path::{Path, PathBuf},
};

fn write(path: &Path, text: &str) -> Result<(), WriteError> {
    files::write(path, text.as_bytes(), &Kept::none())
}

fn text(path: impl AsRef<Path>) -> String {
    fs::read_to_string(path).unwrap()
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn what_must_stay_is_refused_by_any_path() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::create_dir(at("sub")).unwrap();
    fs::write(at("yard.ron"), "mine").unwrap();
    fs::hard_link(at("yard.ron"), at("hard.png")).unwrap();
    let mut paths = vec![at("yard.ron"), at("./yard.ron"), at("sub/../yard.ron"), at("hard.png")];
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink("../yard.ron", at("sub/soft.png")).unwrap();
        std::os::unix::fs::symlink("sub", at("way")).unwrap();
        paths.extend([at("sub/soft.png"), at("way/soft.png"), at("way/../yard.ron")]);
    }
    let kept = Kept::none().and([at("yard.ron")], "the yard itself");
    for path in &paths {
        for done in [files::check(path, &kept), files::write(path, b"yours", &kept)] {
            assert!(matches!(done, Err(WriteError::Kept(..))), "{}: {done:?}", path.display());
        }
    }
    assert_eq!(text(at("yard.ron")), "mine");
    assert!(files::write(&at("other.png"), b"yours", &kept).is_ok());
}

#[test]
fn a_place_that_takes_no_file_is_refused_with_its_remedy() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("guarded"), "mine").unwrap();
    let mut rights = fs::metadata(at("guarded")).unwrap().permissions();
    rights.set_readonly(true);
    fs::set_permissions(at("guarded"), rights.clone()).unwrap();
    let table: [(PathBuf, &str); 4] = [
        (at(""), "this is a folder"),
        (at("no/such/file"), "there is no folder"),
        (at("guarded"), "write-protected and stays as it is"),
        (at("guarded/file"), "try again, or choose another folder"),
    ];
    for (path, says) in table {
        let said = write(&path, "yours").unwrap_err().to_string();
        assert!(said.contains(says) && said.contains("; "), "{said}");
        assert_eq!(files::check(&path, &Kept::none()).unwrap_err().to_string(), said);
    }
    assert_eq!((text(at("guarded")).as_str(), names(folder.path())), ("mine", vec!["guarded".to_owned()]));
    assert!(matches!(files::write_new(&at("guarded"), b"yours"), Err(WriteError::Taken(_))));
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_a_private_file_private() {
    use std::os::unix::fs::{PermissionsExt as _, symlink};
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("real"), "old").unwrap();
    fs::set_permissions(at("real"), fs::Permissions::from_mode(0o600)).unwrap();
    for (link, to) in [("there", "real"), ("to come", "./new"), ("round", "round")] {
        symlink(to, at(link)).unwrap();
    }
    write(&at("there"), "new").unwrap();
    write(&at("to come"), "new").unwrap();
    assert!(write(&at("round"), "new").is_err());
    for (link, to) in [("there", "real"), ("to come", "new")] {
        assert!(at(link).is_symlink());
        assert_eq!(text(at(to)), "new");
    }
    assert_eq!(fs::metadata(at("real")).unwrap().permissions().mode() & 0o777, 0o600);
}

#[cfg(unix)]
#[test]
fn a_pipe_is_written_directly() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe");
    assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let reader = std::thread::spawn({
        let pipe = pipe.clone();
        move || fs::read_to_string(pipe).unwrap()
    });
    write(&pipe, "through").unwrap();
    assert_eq!(reader.join().unwrap(), "through");
    assert_eq!(names(folder.path()), ["pipe"]);
}

#[test]
fn what_a_killed_writer_left_is_swept_and_what_a_living_one_holds_stays() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at(".gauzelight-1-0.part"), "half").unwrap();
    fs::write(at(".gauzelight-1-1.part"), "half").unwrap();
    fs::write(at(".gauzelight-notes.txt"), "mine").unwrap();
    let living = File::open(at(".gauzelight-1-1.part")).unwrap();
    living.lock().unwrap();
    write(&at("yard.ron"), "new").unwrap();
    assert_eq!(names(folder.path()), [".gauzelight-1-1.part", ".gauzelight-notes.txt", "yard.ron"]);
    drop(living);
    write(&at("yard.ron"), "newer").unwrap();
    assert_eq!(names(folder.path()), [".gauzelight-notes.txt", "yard.ron"]);
}

#[test]
fn many_writers_of_one_file_leave_one_of_their_texts() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("yard.ron");
    let texts: Vec<String> = (0..8).map(|writer| writer.to_string().repeat(100_000)).collect();
    std::thread::scope(|scope| {
        for text in &texts {
            scope.spawn(|| (0..10).for_each(|_| write(&path, text).unwrap()));
        }
    });
    assert!(texts.contains(&text(&path)));
    assert_eq!(names(folder.path()), ["yard.ron"]);
}
