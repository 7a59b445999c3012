//! What the splice needs to know of the source, in one pass over its lines.

use crate::finding::files::OverlayReason;

/// Places and names in a source.
#[derive(Clone, Debug, Default)]
pub(super) struct Scan {
    /// The number of `AC1009` and on; 0 where none is stated, and of those before, whose names are of
    /// another form, `AC2.10` (both then as R12).
    pub version: u32,
    /// Line ending.
    pub newline: &'static str,
    /// Highest handle and seed.
    pub top_handle: u64,
    /// Whether anything carries a handle, in whichever section: a reader that gives handles to what has
    /// none would else give one that stands further on.
    pub handles: bool,
    /// How many things there are: as many handles may be given to them.
    pub things: u64,
    /// Whether the file says that it ends.
    pub ended: bool,
    /// Bytes of the seed's value.
    pub seed: Option<(usize, usize)>,
    /// Where entities may be added: the `0` line before ENDSEC.
    pub entities_end: usize,
    /// The `*Model_Space` block record.
    pub model_space: Option<String>,
    /// Symbol tables.
    pub layers: Table,
    pub line_types: Table,
    pub styles: Table,
    pub dim_styles: Table,
    pub block_records: Table,
    /// Names of blocks, upper case.
    pub blocks: Vec<String>,
    /// Where blocks may be added: the `0` line before the ENDSEC of BLOCKS.
    pub blocks_end: Option<usize>,
    /// Where TABLES begins, after its name.
    pub tables_start: Option<usize>,
    /// Where a TABLES section could be put: before ENTITIES' own section.
    pub before_entities: usize,
    /// Plot style and material handles of a layer, copied to new ones.
    pub plot_style: Option<String>,
}

/// A symbol table.
#[derive(Clone, Debug, Default)]
pub(super) struct Table {
    /// Its own handle.
    pub handle: Option<String>,
    /// Bytes of its count.
    pub count: Option<(usize, usize, i64)>,
    /// The `0` line before ENDTAB.
    pub end: Option<usize>,
    /// Names, upper case.
    pub names: Vec<String>,
}

/// One line: its bytes without ending, and where it begins.
fn line(bytes: &[u8], at: usize) -> Option<(&[u8], usize)> {
    let rest = bytes.get(at..).filter(|r| !r.is_empty())?;
    let end = memchr::memchr2(b'\n', b'\r', rest).unwrap_or(rest.len());
    let mut next = at + end;
    if rest.get(end) == Some(&b'\r') {
        next += 1;
        if rest.get(end + 1) == Some(&b'\n') {
            next += 1;
        }
    } else if end < rest.len() {
        next += 1;
    }
    Some((&rest[..end], next))
}

fn newline(bytes: &[u8]) -> &'static str {
    match memchr::memchr2(b'\n', b'\r', bytes) {
        Some(i) if bytes[i] == b'\r' && bytes.get(i + 1) == Some(&b'\n') => "\r\n",
        Some(i) if bytes[i] == b'\r' => "\r",
        _ => "\n",
    }
}

/// A handle's number; none of what is no handle, or so high that no more could follow it.
fn number_of(text: &str) -> Option<u64> {
    u64::from_str_radix(text, 16).ok().filter(|n| (1..1 << 60).contains(n))
}

/// Where the pass is.
#[derive(Default)]
struct Place {
    section: String,
    table: String,
    entity: String,
    variable: String,
    /// The entity's handle and name so far.
    handle: String,
    /// The `0` line that began the last entity.
    zero: usize,
    section_start: usize,
    expects_name: bool,
}

impl Scan {
    pub(super) fn of(bytes: &[u8]) -> Result<Self, OverlayReason> {
        let text = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
        let first = text.trim_ascii_start();
        if !first.first().is_some_and(u8::is_ascii_digit) {
            return Err(OverlayReason::BinarySource);
        }
        let mut scan = Scan { newline: newline(bytes), ..Default::default() };
        let mut place = Place::default();
        let mut at = bytes.len() - text.len();
        let mut found = false;
        while let Some((code_line, value_at)) = line(bytes, at) {
            let Some(code) = std::str::from_utf8(code_line.trim_ascii())
                .ok()
                .and_then(|c| c.parse::<i32>().ok())
            else {
                at = value_at;
                continue;
            };
            let Some((value, next)) = line(bytes, value_at) else { break };
            let span = (value_at, value_at + value.len());
            found |= scan.pair(&mut place, code, value.trim_ascii(), at, span, next);
            at = next;
        }
        if found { Ok(scan) } else { Err(OverlayReason::NoEntitiesSection) }
    }

    /// Takes one pair; true once the ENTITIES section was seen whole.
    fn pair(
        &mut self,
        p: &mut Place,
        code: i32,
        value: &[u8],
        at: usize,
        span: (usize, usize),
        next: usize,
    ) -> bool {
        let text = String::from_utf8_lossy(value).to_uppercase();
        match code {
            0 => return self.zero(p, &text, at),
            2 if p.expects_name => {
                p.expects_name = false;
                if p.entity == "SECTION" {
                    p.section = text.clone();
                    match text.as_str() {
                        "TABLES" => self.tables_start = Some(next),
                        "ENTITIES" => self.before_entities = p.section_start,
                        _ => {}
                    }
                } else if p.entity == "TABLE" {
                    p.table = text;
                }
            }
            2 if p.section == "TABLES" => self.named(p, value, text),
            2 if p.section == "BLOCKS" && p.entity == "BLOCK" => self.blocks.push(text),
            9 if p.section == "HEADER" => p.variable = text,
            1 if p.section == "HEADER" && p.variable == "$ACADVER" => {
                self.version = text.strip_prefix("AC").and_then(|n| n.parse().ok()).unwrap_or(0);
            }
            5 if p.section == "HEADER" && p.variable == "$HANDSEED" => {
                self.seed = Some(span);
                self.top_handle = self.top_handle.max(number_of(&text).unwrap_or(0));
            }
            // In a dimension style, 5 is the name of an arrow's block.
            5 if p.entity == "DIMSTYLE" => {}
            5 | 105 if p.section != "HEADER" => self.handle(p, code, text),
            70 if p.entity == "TABLE" => {
                if let (Some(t), Ok(n)) = (self.table(&p.table), text.parse()) {
                    t.count.get_or_insert((span.0, span.1, n));
                }
            }
            390 if p.entity == "LAYER" => {
                self.plot_style.get_or_insert(text);
            }
            _ => {}
        }
        false
    }

    fn handle(&mut self, p: &mut Place, code: i32, text: String) {
        let Some(number) = number_of(&text) else { return };
        self.top_handle = self.top_handle.max(number);
        self.handles = true;
        p.handle.clone_from(&text);
        if p.entity == "TABLE"
            && code == 5
            && let Some(t) = self.table(&p.table)
        {
            t.handle = Some(text);
        }
    }

    fn zero(&mut self, p: &mut Place, text: &str, at: usize) -> bool {
        self.things += 1;
        match text {
            "EOF" => self.ended = true,
            "SECTION" => p.section_start = at,
            "ENDSEC" => {
                let whole = p.section == "ENTITIES";
                if whole {
                    self.entities_end = at;
                } else if p.section == "BLOCKS" {
                    self.blocks_end = Some(at);
                }
                p.section.clear();
                p.entity.clear();
                return whole;
            }
            "ENDTAB" => {
                if let Some(t) = self.table(&p.table) {
                    t.end = Some(at);
                }
                p.table.clear();
            }
            _ => {}
        }
        p.expects_name = matches!(text, "SECTION" | "TABLE");
        p.entity = text.to_owned();
        p.handle.clear();
        p.zero = at;
        false
    }

    fn table(&mut self, name: &str) -> Option<&mut Table> {
        match name {
            "LAYER" => Some(&mut self.layers),
            "LTYPE" => Some(&mut self.line_types),
            "STYLE" => Some(&mut self.styles),
            "DIMSTYLE" => Some(&mut self.dim_styles),
            "BLOCK_RECORD" => Some(&mut self.block_records),
            _ => None,
        }
    }

    fn named(&mut self, p: &Place, value: &[u8], text: String) {
        if p.entity == "BLOCK_RECORD" && value.eq_ignore_ascii_case(b"*Model_Space") {
            self.model_space.get_or_insert(p.handle.clone());
        }
        if p.entity == p.table
            && let Some(t) = self.table(&p.table)
        {
            t.names.push(text);
        }
    }
}
