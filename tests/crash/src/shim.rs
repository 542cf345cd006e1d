//! The layer between SQLite and the files (sqlite.org/vfs.html). Files in a watched folder are recorded on its tape; all others SQLite's
//! own layer opens, and this one is not asked again.

use crate::tape::Call;
use crate::{Change, Files, Tape};
use rusqlite::ffi;
use std::ffi::{CStr, c_char, c_int, c_void};
use std::fs::{File, OpenOptions};
use std::io::ErrorKind;
use std::os::unix::fs::FileExt;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, Once, PoisonError};

/// As SQLite's own layer reports it on Unix.
const SECTOR_BYTES: c_int = 4096;

/// The watched folders.
static WATCHED: Mutex<Vec<(PathBuf, Tape)>> = Mutex::new(Vec::new());

/// Watches a folder until dropped.
pub struct Watch {
    folder: PathBuf,
}

/// Records from now on what SQLite does in a folder, on a tape that begins with what is there.
pub fn watch(folder: &Path) -> (Watch, Tape) {
    static ONCE: Once = Once::new();
    ONCE.call_once(register);
    let tape = Tape::new(files(folder));
    watched().push((folder.to_owned(), tape.clone()));
    (Watch { folder: folder.to_owned() }, tape)
}

impl Drop for Watch {
    fn drop(&mut self) {
        watched().retain(|(folder, _)| *folder != self.folder);
    }
}

fn watched() -> std::sync::MutexGuard<'static, Vec<(PathBuf, Tape)>> {
    WATCHED.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Returns what lies in a folder.
pub fn files(folder: &Path) -> Files {
    let entries = std::fs::read_dir(folder).expect("the folder is there");
    let read = |entry: std::io::Result<std::fs::DirEntry>| {
        let entry = entry.expect("a folder can be read");
        let name = entry.file_name().to_string_lossy().into_owned();
        (name, std::fs::read(entry.path()).expect("a file can be read"))
    };
    entries.map(read).collect()
}

/// A file of a watched folder, as SQLite has it: the first member is what SQLite knows.
#[repr(C)]
struct Handle {
    sqlite: ffi::sqlite3_file,
    recorded: *mut Recorded,
}

struct Recorded {
    name: String,
    file: File,
    tape: Tape,
    /// A new journal or log: the first sync of it also syncs the folder, as SQLite's own layer does.
    folder_too: bool,
}

static METHODS: ffi::sqlite3_io_methods = ffi::sqlite3_io_methods {
    iVersion: 1,
    xClose: Some(close),
    xRead: Some(read),
    xWrite: Some(write),
    xTruncate: Some(truncate),
    xSync: Some(sync),
    xFileSize: Some(file_size),
    xLock: Some(lock),
    xUnlock: Some(unlock),
    xCheckReservedLock: Some(check_reserved_lock),
    xFileControl: Some(file_control),
    xSectorSize: Some(sector_size),
    xDeviceCharacteristics: Some(device_characteristics),
    xShmMap: None,
    xShmLock: None,
    xShmBarrier: None,
    xShmUnmap: None,
    xFetch: None,
    xUnfetch: None,
};

/// Makes this layer the one that SQLite opens files with. It stays until the process ends.
fn register() {
    // SAFETY: SQLite's own layer is there once SQLite is initialised, and stays. Ours is a copy of it with three functions
    // of our own, which is never freed.
    unsafe {
        assert_eq!(ffi::sqlite3_initialize(), ffi::SQLITE_OK);
        let own = ffi::sqlite3_vfs_find(std::ptr::null());
        assert!(!own.is_null());
        let mut ours = *own;
        ours.szOsFile = ours.szOsFile.max(size_of::<Handle>() as c_int);
        ours.zName = c"recording".as_ptr();
        ours.pNext = std::ptr::null_mut();
        ours.xOpen = Some(open);
        ours.xDelete = Some(delete);
        assert_eq!(ffi::sqlite3_vfs_register(Box::leak(Box::new(ours)), 1), ffi::SQLITE_OK);
    }
}

/// SQLite's own layer.
unsafe fn own_layer() -> *mut ffi::sqlite3_vfs {
    // SAFETY: the name is that of SQLite's layer on Unix, which is always registered.
    unsafe { ffi::sqlite3_vfs_find(c"unix".as_ptr()) }
}

/// The tape of the folder in which a file lies, and the file's path and name.
unsafe fn tape_of(name: *const c_char) -> Option<(Tape, PathBuf, String)> {
    if name.is_null() {
        return None;
    }
    // SAFETY: SQLite gives a string that ends with zero.
    let path = PathBuf::from(unsafe { CStr::from_ptr(name) }.to_str().ok()?);
    let folder = path.parent()?;
    let tape = watched().iter().find(|(watched, _)| watched == folder)?.1.clone();
    let name = path.file_name()?.to_str()?.to_owned();
    Some((tape, path, name))
}

unsafe extern "C" fn open(
    _: *mut ffi::sqlite3_vfs,
    name: ffi::sqlite3_filename,
    file: *mut ffi::sqlite3_file,
    flags: c_int,
    out_flags: *mut c_int,
) -> c_int {
    // SAFETY: `file` has room for a handle of either layer, and the other arguments are handed on as they came.
    unsafe {
        let Some((tape, path, name)) = tape_of(name) else {
            let own = own_layer();
            return (*own).xOpen.map_or(ffi::SQLITE_ERROR, |open| open(own, name, file, flags, out_flags));
        };
        // With no methods SQLite does not close what could not be opened.
        (*file).pMethods = std::ptr::null();
        if let Some(fault) = tape.fails(Call::Open) {
            return if fault.disk_full { ffi::SQLITE_FULL } else { ffi::SQLITE_CANTOPEN };
        }
        let creates = flags & ffi::SQLITE_OPEN_CREATE != 0;
        // The store makes its own file, for its owner alone, before SQLite opens it.
        let is_new = !tape.knows(&name) || !path.exists();
        let writes = flags & ffi::SQLITE_OPEN_READWRITE != 0;
        let Ok(opened) = OpenOptions::new().read(true).write(writes).create(creates).open(&path) else {
            return ffi::SQLITE_CANTOPEN;
        };
        if is_new {
            tape.record(Change::Create(name.clone()));
        }
        let is_journal = flags & (ffi::SQLITE_OPEN_MAIN_JOURNAL | ffi::SQLITE_OPEN_WAL) != 0;
        let folder_too = creates && is_journal;
        let recorded = Box::into_raw(Box::new(Recorded { name, file: opened, tape, folder_too }));
        file.cast::<Handle>()
            .write(Handle { sqlite: ffi::sqlite3_file { pMethods: &raw const METHODS }, recorded });
        if !out_flags.is_null() {
            *out_flags = flags;
        }
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn delete(_: *mut ffi::sqlite3_vfs, name: *const c_char, sync_folder: c_int) -> c_int {
    // SAFETY: the arguments are handed on as they came.
    unsafe {
        let watched = tape_of(name);
        if let Some((tape, ..)) = &watched
            && tape.fails(Call::Delete).is_some()
        {
            return ffi::SQLITE_IOERR_DELETE;
        }
        let own = own_layer();
        let done = (*own).xDelete.map_or(ffi::SQLITE_ERROR, |delete| delete(own, name, sync_folder));
        if let (Some((tape, _, name)), ffi::SQLITE_OK) = (watched, done) {
            tape.record(Change::Delete(name));
            if sync_folder != 0 {
                tape.record(Change::SyncFolder);
            }
        }
        done
    }
}

/// The file that SQLite means.
unsafe fn recorded<'file>(file: *mut ffi::sqlite3_file) -> &'file mut Recorded {
    // SAFETY: SQLite calls these methods only for files that `open` made, one call at a time, until `close`.
    unsafe { &mut *(*file.cast::<Handle>()).recorded }
}

unsafe extern "C" fn close(file: *mut ffi::sqlite3_file) -> c_int {
    // SAFETY: made by `open` and closed once.
    unsafe {
        let handle = file.cast::<Handle>();
        drop(Box::from_raw((*handle).recorded));
        (*handle).sqlite.pMethods = std::ptr::null();
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn read(file: *mut ffi::sqlite3_file, to: *mut c_void, length: c_int, at: i64) -> c_int {
    // SAFETY: SQLite gives room for `length` bytes.
    let (recorded, to) =
        unsafe { (recorded(file), std::slice::from_raw_parts_mut(to.cast::<u8>(), length as usize)) };
    if recorded.tape.fails(Call::Read).is_some() {
        return ffi::SQLITE_IOERR_READ;
    }
    let mut done = 0;
    while done < to.len() {
        match recorded.file.read_at(&mut to[done..], at as u64 + done as u64) {
            Ok(0) => {
                to[done..].fill(0);
                return ffi::SQLITE_IOERR_SHORT_READ;
            }
            Ok(read) => done += read,
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(_) => return ffi::SQLITE_IOERR_READ,
        }
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn write(
    file: *mut ffi::sqlite3_file,
    from: *const c_void,
    length: c_int,
    at: i64,
) -> c_int {
    // SAFETY: SQLite gives `length` bytes.
    let (recorded, bytes) =
        unsafe { (recorded(file), std::slice::from_raw_parts(from.cast::<u8>(), length as usize)) };
    let fault = recorded.tape.fails(Call::Write);
    // A full disk takes what there is still room for.
    let bytes = match fault {
        Some(fault) if fault.disk_full => &bytes[..bytes.len() / 2],
        Some(_) => return ffi::SQLITE_IOERR_WRITE,
        None => bytes,
    };
    if recorded.file.write_all_at(bytes, at as u64).is_err() {
        return ffi::SQLITE_IOERR_WRITE;
    }
    let (name, bytes) = (recorded.name.clone(), bytes.to_vec());
    recorded.tape.record(Change::Write { name, at: at as usize, bytes });
    if fault.is_some() { ffi::SQLITE_FULL } else { ffi::SQLITE_OK }
}

unsafe extern "C" fn truncate(file: *mut ffi::sqlite3_file, length: i64) -> c_int {
    // SAFETY: see `recorded`.
    let recorded = unsafe { recorded(file) };
    if recorded.tape.fails(Call::Truncate).is_some() || recorded.file.set_len(length as u64).is_err() {
        return ffi::SQLITE_IOERR_TRUNCATE;
    }
    recorded.tape.record(Change::Truncate { name: recorded.name.clone(), length: length as usize });
    ffi::SQLITE_OK
}

/// Syncs on the tape; the file itself need not come to any disk.
unsafe extern "C" fn sync(file: *mut ffi::sqlite3_file, _: c_int) -> c_int {
    // SAFETY: see `recorded`.
    let recorded = unsafe { recorded(file) };
    if let Some(fault) = recorded.tape.fails(Call::Sync) {
        recorded.tape.record(Change::SyncFailed(recorded.name.clone()));
        return if fault.disk_full { ffi::SQLITE_FULL } else { ffi::SQLITE_IOERR_FSYNC };
    }
    recorded.tape.record(Change::Sync(recorded.name.clone()));
    if std::mem::take(&mut recorded.folder_too) {
        recorded.tape.record(Change::SyncFolder);
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn file_size(file: *mut ffi::sqlite3_file, size: *mut i64) -> c_int {
    // SAFETY: see `recorded`; SQLite gives room for the answer.
    unsafe {
        let Ok(metadata) = recorded(file).file.metadata() else { return ffi::SQLITE_IOERR_FSTAT };
        *size = metadata.len() as i64;
    }
    ffi::SQLITE_OK
}

/// Nobody else opens a watched file, so a lock is only counted.
unsafe extern "C" fn lock(file: *mut ffi::sqlite3_file, _: c_int) -> c_int {
    // SAFETY: see `recorded`.
    let fails = unsafe { recorded(file) }.tape.fails(Call::Lock).is_some();
    if fails { ffi::SQLITE_IOERR_LOCK } else { ffi::SQLITE_OK }
}

unsafe extern "C" fn unlock(_: *mut ffi::sqlite3_file, _: c_int) -> c_int {
    ffi::SQLITE_OK
}

unsafe extern "C" fn check_reserved_lock(_: *mut ffi::sqlite3_file, answer: *mut c_int) -> c_int {
    // SAFETY: SQLite gives room for the answer.
    unsafe { *answer = 0 };
    ffi::SQLITE_OK
}

unsafe extern "C" fn file_control(file: *mut ffi::sqlite3_file, what: c_int, argument: *mut c_void) -> c_int {
    if what != ffi::SQLITE_FCNTL_PRAGMA {
        return ffi::SQLITE_NOTFOUND;
    }
    // SAFETY: for a pragma the argument is a list of an answer, the pragma's name and its value or null; the value is
    // SQLite's own copy of the text, and what is written into it is shorter.
    unsafe {
        let list = argument.cast::<*mut c_char>();
        let (name, value) = (*list.add(1), *list.add(2));
        if recorded(file).tape.takes_full_for_normal()
            && !value.is_null()
            && CStr::from_ptr(name).to_bytes().eq_ignore_ascii_case(b"synchronous")
            && CStr::from_ptr(value).to_bytes().eq_ignore_ascii_case(b"full")
        {
            // 1 = NORMAL.
            value.cast::<u8>().write(b'1');
            value.add(1).write(0);
        }
    }
    ffi::SQLITE_NOTFOUND
}

unsafe extern "C" fn sector_size(_: *mut ffi::sqlite3_file) -> c_int {
    SECTOR_BYTES
}

unsafe extern "C" fn device_characteristics(_: *mut ffi::sqlite3_file) -> c_int {
    // As SQLite's own layer: overwriting part of a sector does not harm the rest of it.
    ffi::SQLITE_IOCAP_POWERSAFE_OVERWRITE
}
