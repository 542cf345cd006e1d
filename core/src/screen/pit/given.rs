//! Looks and boundaries given by hand, written into the layers of a pit so that they stay without gap or overlap: a
//! layer looked at that has no record gets one, and so does every layer between it and those that have one.

use crate::record::{Layer, Pit, RecordId, Sign, Signs, Unknown};

/// Depths of a layer as read, top and bottom.
pub(super) type Depths = (u32, u32);

/// A pit whose layers are being written.
pub(super) struct Given<'a> {
    pub pit: Pit,
    /// The layers as read, from the top down.
    read: Vec<Depths>,
    new_id: &'a mut dyn FnMut() -> RecordId,
}

impl<'a> Given<'a> {
    pub fn of(pit: &Pit, read: Vec<Depths>, new_id: &'a mut dyn FnMut() -> RecordId) -> Self {
        Self { pit: pit.clone(), read, new_id }
    }

    /// Sets a sign in a layer; `None` = not looked.
    pub fn look(&mut self, layer: Depths, sign: Sign, answer: Option<usize>) {
        self.cover(layer);
        for own in self.pit.layers.iter_mut().filter(|own| lies_in(own, layer)) {
            own.signs.set(sign, answer);
        }
    }

    /// Sets the remark on a layer; where it has several records, on the uppermost.
    pub fn remark(&mut self, layer: Depths, mut text: Option<String>) {
        self.cover(layer);
        for own in self.pit.layers.iter_mut().filter(|own| lies_in(own, layer)) {
            own.remark = text.take();
        }
    }

    /// Moves the boundary at a depth; `false` where there is none, or where it would leave a layer thinner than
    /// `thinnest_mm`.
    pub fn nudge(&mut self, at_mm: u32, to_mm: u32, thinnest_mm: u32) -> bool {
        let above = self.read.iter().copied().find(|(_, bottom_mm)| *bottom_mm == at_mm);
        let below = self.read.iter().copied().find(|(top_mm, _)| *top_mm == at_mm);
        let (Some(above), Some(below)) = (above, below) else { return false };
        self.cover(above);
        self.cover(below);
        let keeps = |own: &Layer| {
            let moved = |edge_mm: u32| if edge_mm == at_mm { to_mm } else { edge_mm };
            moved(own.bottom_mm) >= moved(own.top_mm).saturating_add(thinnest_mm)
        };
        let touches = |own: &&Layer| own.top_mm == at_mm || own.bottom_mm == at_mm;
        if !self.pit.layers.iter().filter(touches).all(keeps) {
            return false;
        }
        for own in &mut self.pit.layers {
            if own.top_mm == at_mm {
                own.top_mm = to_mm;
            } else if own.bottom_mm == at_mm {
                own.bottom_mm = to_mm;
            }
        }
        true
    }

    /// Gives records to whatever of a layer has none, and to the ground between it and those that have.
    fn cover(&mut self, (top_mm, bottom_mm): Depths) {
        let tops = self.pit.layers.iter().map(|own| own.top_mm).min();
        let bottoms = self.pit.layers.iter().map(|own| own.bottom_mm).max();
        let Some((first_mm, last_mm)) = tops.zip(bottoms) else {
            self.add((top_mm, bottom_mm));
            return;
        };
        // What lies above the first record, and below the last, layer by layer as read.
        let above = self.read.iter().map(|&(top, bottom)| (top.max(top_mm), bottom.min(first_mm)));
        let below = self.read.iter().map(|&(top, bottom)| (top.max(last_mm), bottom.min(bottom_mm)));
        let missing: Vec<Depths> = above.chain(below).filter(|(top, bottom)| top < bottom).collect();
        for depths in missing {
            self.add(depths);
        }
    }

    fn add(&mut self, (top_mm, bottom_mm): Depths) {
        let id = (self.new_id)();
        let signs = Signs::default();
        self.pit.layers.push(Layer {
            id,
            top_mm,
            bottom_mm,
            signs,
            texture: None,
            remark: None,
            unknown: Unknown::new(),
        });
        self.pit.layers.sort_by_key(|own| own.top_mm);
    }
}

/// Returns whether a record is part of a layer as read.
pub(super) const fn lies_in(own: &Layer, (top_mm, bottom_mm): Depths) -> bool {
    own.top_mm >= top_mm && own.bottom_mm <= bottom_mm
}
