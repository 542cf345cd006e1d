//! What is held in memory after taps is what a restart reads from the disk: a tap loads only what it changed.

use crate::support;

use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use support::{acts, open, with_field};

#[test]
fn after_any_taps_a_restart_shows_the_same_screen() {
    let mut random = TestRng::from_seed(RngAlgorithm::ChaCha, &[11; 32]);
    let mut compared = 0;
    for name in ["mere_piece", "heron_close", "lapwing_ground"] {
        let (folder, mut session) = with_field(name);
        let mut screen = session.screen().unwrap();
        let mut saves = 0_u32;
        for _ in 0..200 {
            let acts: Vec<_> =
                acts(&screen).into_iter().filter(|(_, act)| !act.contains("\"own\"")).collect();
            let Some((label, act)) = acts.get(random.next_u32() as usize % acts.len().max(1)) else {
                screen = session.back().unwrap().unwrap();
                continue;
            };
            screen = session.tap(act.clone()).unwrap();
            saves += u32::from(screen.saved);
            if screen.saved && saves.is_multiple_of(3) {
                let held = session.screen().unwrap();
                drop(session);
                session = open(folder.path()).unwrap();
                screen = session.screen().unwrap();
                assert_eq!(held, screen, "{name}: {label}, {act}");
                compared += 1;
            }
        }
    }
    assert!(compared > 20, "{compared} compared");
}
