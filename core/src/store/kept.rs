//! From a record to its cells and back, driven by the list in `cells.rs`.

use super::StoreError;
use super::cells::{Cell, Kind};
use super::log::Heads;
use super::value::{CellValue, encode, read};
use crate::record::RecordId;

/// The name of a field whose name this version cannot read. Saving it leaves the name that stands there alone.
pub const NAME_NOT_READABLE: &str = "?";

/// A record that the store keeps: one list of cells, its children apart.
pub(super) trait Kept: Sized {
    /// What it is.
    const KIND: Kind;
    /// Its id.
    fn id(&self) -> RecordId;
    /// Its own cells, all of them.
    fn cells(&self) -> Vec<Wanted>;
    /// From its cells; lists of children come out empty.
    fn from_cells(id: RecordId, heads: &Heads) -> Result<Self, StoreError>;
}

/// What a cell shall hold.
pub(super) struct Wanted {
    pub(super) cell: Cell,
    pub(super) value: Vec<u8>,
    /// How this version would write what already stands there.
    as_understood: fn(Cell, &[u8]) -> Vec<u8>,
}

impl Wanted {
    pub(super) fn new<T: CellValue>(cell: Cell, value: &T) -> Self {
        Self { cell, value: encode(value.to_value().as_ref()), as_understood: as_understood::<T> }
    }

    /// Returns whether it says something else than what already stands there.
    pub(super) fn differs(&self, stands: Option<&[u8]>) -> bool {
        self.value != stands.map_or_else(|| encode(None), |bytes| (self.as_understood)(self.cell, bytes))
    }
}

/// Returns what stands in a cell; `None` if this version cannot read it and shows no record without it.
pub(super) fn read_cell<T: CellValue>(cell: Cell, bytes: Option<&[u8]>) -> Option<T> {
    let instead = || {
        let name = (cell == Cell::FIELD_NAME).then(|| NAME_NOT_READABLE.into());
        if cell.is_shown_without() { T::from_value(name.as_ref()) } else { None }
    };
    read(bytes).or_else(instead)
}

/// The bytes this version would write for what it reads in `bytes`. What it cannot read counts as absent, so
/// that a save which says nothing of a newer value leaves it alone.
fn as_understood<T: CellValue>(cell: Cell, bytes: &[u8]) -> Vec<u8> {
    encode(read_cell::<T>(cell, Some(bytes)).and_then(|value| value.to_value()).as_ref())
}

/// Turns the list of numbers into [`Kind`], the names of the cells and [`Kept`] for each record.
macro_rules! kept {
    (
        common { $($common:literal $common_name:ident,)* }
        $(
            $(#[$meta:meta])*
            $record:ident $name:literal = $kind:literal {
                $($number:literal $cell:ident,)*
                $(children: $($list:ident),+ $(,)?)?
                $(in $group:ident $Group:ident: $($group_number:literal $group_cell:ident,)+)?
            }
        )*
    ) => {
        /// What a record is; the number stands in its kind cell.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Kind { $($(#[$meta])* $record = $kind,)* }

        impl Kind {
            /// The word for it.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$record => $name,)* }
            }
            /// The kind of a number; `None` for one of a newer version.
            pub(super) const fn from_number(number: u32) -> Option<Self> {
                match number { $($kind => Some(Self::$record),)* _ => None }
            }
        }

        impl Cell {
            /// Every number this version knows, with its name.
            pub const ALL: &'static [(u16, &'static str)] = &[
                $(($common, stringify!($common_name)),)*
                $(
                    $(($number, concat!($name, ".", stringify!($cell))),)*
                    $($(($group_number, concat!($name, ".", stringify!($group), ".", stringify!($group_cell))),)+)?
                )*
            ];
        }

        $(impl $crate::store::kept::Kept for $record {
            const KIND: Kind = Kind::$record;
            fn id(&self) -> $crate::record::RecordId {
                self.id
            }
            fn cells(&self) -> Vec<$crate::store::kept::Wanted> {
                use $crate::store::kept::Wanted;
                vec![
                    $(Wanted::new(Cell($number), &self.$cell),)*
                    $($(Wanted::new(Cell($group_number), &self.$group.$group_cell),)+)?
                    Wanted::new(Cell::UNKNOWN_KEYS, &self.unknown),
                ]
            }
            fn from_cells(
                id: $crate::record::RecordId,
                heads: &$crate::store::log::Heads,
            ) -> Result<Self, $crate::store::StoreError> {
                Ok(Self {
                    id,
                    $($cell: heads.read(Cell($number))?,)*
                    $($($list: Vec::new(),)+)?
                    $($group: $Group { $($group_cell: heads.read(Cell($group_number))?,)+ },)?
                    unknown: heads.read(Cell::UNKNOWN_KEYS)?,
                })
            }
        })*
    };
}
pub(super) use kept;
