//! Limits against hostile files, each a named diagnostic.

/// The most that is read of anything. Generous against real drawings: the largest sheet measured
/// in trials held under 100,000 entities.
#[derive(Clone, Debug)]
pub struct Limits {
    /// Bytes of input.
    pub bytes: usize,
    /// Insertions inside insertions.
    pub nesting: usize,
    /// Items after blocks are inserted.
    pub items: usize,
    /// Blocks inserted, arrays counted out.
    pub insertions: usize,
    /// Vertices of one entity.
    pub vertices: usize,
    /// Layers: what tells them apart grows with their number.
    pub layers: usize,
    /// Points of all items together, after blocks are inserted: what a drawing may take of memory.
    pub points: usize,
    /// Loops of one hatch; even-odd areas of more take too long to make.
    pub loops: usize,
    /// Elements of an SVG, uses counted out: each costs ten times what an item of a DXF does, since
    /// styles and transforms are resolved for it.
    pub elements: usize,
    /// Steps of the sampling of splines: a point of one takes as many as its degree, squared.
    pub spline_steps: usize,
    /// Letters in the name of a layer or block: names are looked up, compared and shown many times.
    pub name: usize,
    /// Instructions of a page of a PDF, forms counted out.
    pub instructions: usize,
    /// Which pages of a PDF are read, from 1; those that look like elevations where none is named.
    pub pages: Vec<usize>,
    /// Greatest coordinate.
    pub coordinate: f64,
}

impl Default for Limits {
    fn default() -> Self {
        Limits {
            bytes: 1 << 30,
            nesting: 16,
            items: 1_500_000,
            layers: 20_000,
            insertions: 500_000,
            vertices: 1_000_000,
            points: 20_000_000,
            loops: 5_000,
            elements: 500_000,
            spline_steps: 100_000_000,
            name: 500,
            instructions: 10_000_000,
            pages: Vec::new(),
            coordinate: 1e9,
        }
    }
}
