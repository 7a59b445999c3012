//! Group pairs of a DXF in text.

use std::io::Write as _;

use opendwg::Handle;

/// Pairs as they are put one after another.
#[derive(Default)]
pub(super) struct Pairs {
    out: Vec<u8>,
}

impl Pairs {
    /// The bytes of the text.
    pub(super) fn into_bytes(self) -> Vec<u8> {
        self.out
    }

    fn pair(&mut self, code: i32, value: std::fmt::Arguments) {
        // Writing to memory does not fail.
        let _ = writeln!(self.out, "{code}\n{value}");
    }

    /// A word of the format, or a name.
    pub(super) fn text(&mut self, code: i32, value: &str) {
        // A line break or another control character inside a value would end it: they are written
        // with a caret, as the DXF reference has it.
        if !value.bytes().any(|b| b < b' ') {
            return self.pair(code, format_args!("{value}"));
        }
        let safe: String = value
            .chars()
            .flat_map(|c| match c {
                '\0' => [None, None],
                c if c < ' ' => [Some('^'), char::from_u32(c as u32 + 0x40)],
                c => [Some(c), None],
            })
            .flatten()
            .collect();
        self.pair(code, format_args!("{safe}"));
    }

    /// A whole number.
    pub(super) fn int(&mut self, code: i32, value: impl Into<i64>) {
        self.pair(code, format_args!("{}", value.into()));
    }

    /// How many there are.
    pub(super) fn count(&mut self, code: i32, value: usize) {
        self.pair(code, format_args!("{value}"));
    }

    /// A number, with all its digits.
    pub(super) fn float(&mut self, code: i32, value: f64) {
        self.pair(code, format_args!("{value:?}"));
    }

    /// An angle: radians in DWG, degrees in DXF.
    pub(super) fn angle(&mut self, code: i32, radians: f64) {
        self.float(code, radians.to_degrees());
    }

    /// A point of the plane.
    pub(super) fn flat(&mut self, code: i32, [x, y]: [f64; 2]) {
        self.float(code, x);
        self.float(code + 10, y);
    }

    /// A point in space.
    pub(super) fn point(&mut self, code: i32, [x, y, z]: [f64; 3]) {
        self.flat(code, [x, y]);
        self.float(code + 20, z);
    }

    /// The direction out of the plane an entity is drawn in; straight up is left out.
    pub(super) fn extrusion(&mut self, [x, y, z]: [f64; 3]) {
        if [x, y, z] != [0.0, 0.0, 1.0] {
            self.float(210, x);
            self.float(220, y);
            self.float(230, z);
        }
    }

    /// An object's handle.
    pub(super) fn handle(&mut self, code: i32, handle: Handle) {
        self.pair(code, format_args!("{handle}"));
    }
}
