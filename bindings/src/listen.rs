//! Telling whoever wants to know that something was saved.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError, Weak};

/// Told after each save, on the thread that made it and before that call returns; no lock is held, so it may call the
/// session again. Not called for what only changes what is shown.
#[uniffi::export(with_foreign)]
pub trait ChangeListener: Send + Sync {
    /// Something was saved or taken back.
    fn changed(&self);
}

type Listeners = Mutex<BTreeMap<u64, Arc<dyn ChangeListener>>>;

/// All who listen.
#[derive(Default)]
pub(crate) struct Listening(Arc<Listeners>);

/// Ends with `stop`, or when it is dropped (closed).
#[derive(uniffi::Object)]
pub struct Subscription {
    listeners: Weak<Listeners>,
    number: u64,
}

impl Listening {
    pub fn add(&self, listener: Arc<dyn ChangeListener>) -> Arc<Subscription> {
        let mut listeners = held(&self.0);
        let number = listeners.keys().next_back().map_or(0, |last| last + 1);
        listeners.insert(number, listener);
        Arc::new(Subscription { listeners: Arc::downgrade(&self.0), number })
    }

    pub fn tell(&self) {
        let listeners: Vec<_> = held(&self.0).values().cloned().collect();
        for listener in listeners {
            listener.changed();
        }
    }
}

#[uniffi::export]
impl Subscription {
    /// Ends it; twice is no harm. Any thread.
    ///
    /// # Errors
    /// None but a fault of this program.
    pub fn stop(&self) -> Result<(), crate::PitfaceError> {
        if let Some(listeners) = self.listeners.upgrade() {
            held(&listeners).remove(&self.number);
        }
        Ok(())
    }
}

impl Drop for Subscription {
    fn drop(&mut self) {
        let _ = self.stop();
    }
}

/// Returns what a lock guards; a thread that panicked while holding it has left nothing half-done in here.
pub(crate) fn held<T>(guarded: &Mutex<T>) -> MutexGuard<'_, T> {
    guarded.lock().unwrap_or_else(PoisonError::into_inner)
}
