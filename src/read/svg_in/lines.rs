//! Lines of a text by places in it: looked for once, since every element has one.

/// Where each line of a text begins.
pub(super) struct Lines(Vec<usize>);

impl Lines {
    pub(super) fn of(text: &str) -> Self {
        Lines(memchr::memchr_iter(b'\n', text.as_bytes()).map(|end| end + 1).collect())
    }

    /// The line of a byte, from 1.
    pub(super) fn at(&self, byte: usize) -> usize {
        1 + self.0.partition_point(|start| *start <= byte)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_begins_behind_its_end_mark() {
        let lines = Lines::of("ab\n\ncd\n");
        let at = |b| lines.at(b);
        assert_eq!([at(0), at(2), at(3), at(4), at(6), at(7)], [1, 1, 2, 3, 3, 4]);
    }
}
