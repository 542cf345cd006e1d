//! Pictures whose file is not on this phone, and the scale of those that are.

use super::Words;
use crate::picture::photo::ScaleFault;
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

    /// A photo with the layers drawn over it: `Photo of pit 1, headland`.
    pub fn photo_drawn_over(&self, pit: &str) -> String {
        self.say_with("photos-drawn_over", &fluent_args!["pit" => pit])
    }

    /// Why the marks of a photo give no scale, and what to do. Marks count from 1.
    pub fn scale_fault(&self, fault: ScaleFault) -> String {
        let of = |key: &str, mark: usize| {
            self.say_with(key, &fluent_args!["first" => mark + 1, "second" => mark + 2])
        };
        match fault {
            ScaleFault::Count { marks: 0 } => self.say("scale_fault-none"),
            ScaleFault::Count { marks: 1 } => self.say("scale_fault-one"),
            ScaleFault::Count { marks } => {
                self.say_with("scale_fault-count", &fluent_args!["marks" => marks])
            }
            ScaleFault::Outside => self.say("scale_fault-outside"),
            ScaleFault::SameDepth { mark } => of("scale_fault-same_depth", mark),
            ScaleFault::TooClose { mark } => of("scale_fault-too_close", mark),
            ScaleFault::OnOneLine => self.say("scale_fault-on_one_line"),
            ScaleFault::Crossed => self.say("scale_fault-crossed"),
        }
    }
}
