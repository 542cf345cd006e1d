//! Pictures whose file is not on this phone.

use super::Words;
use crate::record::Photo;
use fluent::fluent_args;

impl Words {
    /// How many pictures of a pit are not here: `2 pictures are not on this phone.`
    pub fn photos_missing(&self, count: usize) -> String {
        self.say_with("photos-missing", &fluent_args!["count" => count])
    }

    /// A photo whose picture is not here, as a line of a list.
    pub fn photo_not_here(&self, photo: &Photo) -> String {
        self.say_with("photos-not_here", &fluent_args!["photo" => self.photo_line(photo)])
    }
}
