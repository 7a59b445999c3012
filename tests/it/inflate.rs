//! Streams of a PDF unpacked (RFC 1950 and 1951), so that its text is read with nothing of the program.

/// Bits of packed data, low ones first.
struct Bits<'a> {
    data: &'a [u8],
    at: usize,
}

impl Bits<'_> {
    fn one(&mut self) -> Option<u32> {
        let byte = self.data.get(self.at / 8)?;
        let bit = u32::from(byte >> (self.at % 8) & 1);
        self.at += 1;
        Some(bit)
    }

    fn number(&mut self, bits: u32) -> Option<u32> {
        (0..bits).try_fold(0, |n, i| Some(n | self.one()? << i))
    }
}

/// A canonical code: how many symbols each length has, and the symbols in order.
struct Code {
    counts: [u32; 16],
    symbols: Vec<usize>,
}

impl Code {
    fn of(lengths: &[u32]) -> Self {
        let mut counts = [0; 16];
        lengths.iter().for_each(|l| counts[*l as usize] += 1);
        counts[0] = 0;
        let mut symbols: Vec<usize> = (0..lengths.len()).filter(|i| lengths[*i] > 0).collect();
        symbols.sort_by_key(|i| lengths[*i]);
        Code { counts, symbols }
    }

    fn next(&self, bits: &mut Bits) -> Option<usize> {
        let (mut code, mut first, mut index) = (0, 0, 0);
        for count in &self.counts[1..] {
            code |= bits.one()?;
            if code < first + count {
                return self.symbols.get((index + code - first) as usize).copied();
            }
            index += count;
            first = (first + count) << 1;
            code <<= 1;
        }
        None
    }
}

/// First length of each symbol from 257 on, with its further bits; the same of distances.
const LENGTHS: [u32; 29] = [
    3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131,
    163, 195, 227, 258,
];
const LENGTH_BITS: [u32; 29] =
    [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const ORDER: [usize; 19] = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];

fn dynamic(bits: &mut Bits) -> Option<(Code, Code)> {
    let (literals, distances) = (bits.number(5)? + 257, bits.number(5)? + 1);
    let mut short = [0; 19];
    for i in ORDER.iter().take(bits.number(4)? as usize + 4) {
        short[*i] = bits.number(3)?;
    }
    let short = Code::of(&short);
    let all = (literals + distances) as usize;
    let mut lengths: Vec<u32> = Vec::new();
    while lengths.len() < all {
        let (value, times) = match short.next(bits)? {
            16 => (*lengths.last()?, 3 + bits.number(2)?),
            17 => (0, 3 + bits.number(3)?),
            18 => (0, 11 + bits.number(7)?),
            length => (length as u32, 1),
        };
        lengths.extend((0..times).map(|_| value));
    }
    let (a, b) = lengths.split_at(literals as usize);
    Some((Code::of(a), Code::of(b)))
}

fn fixed() -> (Code, Code) {
    let length = |i: usize| match i {
        0..144 => 8,
        144..256 => 9,
        256..280 => 7,
        _ => 8,
    };
    (Code::of(&(0..288).map(length).collect::<Vec<_>>()), Code::of(&[5; 30]))
}

/// The bytes of a zlib stream; `None` where it is none.
pub(crate) fn inflated(packed: &[u8]) -> Option<Vec<u8>> {
    let mut bits = Bits { data: packed.get(2..)?, at: 0 };
    let mut out: Vec<u8> = Vec::new();
    loop {
        let last = bits.one()? == 1;
        let (literals, distances) = match bits.number(2)? {
            0 => {
                bits.at = bits.at.div_ceil(8) * 8;
                let length = bits.number(16)?;
                bits.number(16)?;
                for _ in 0..length {
                    out.push(bits.number(8)? as u8);
                }
                if last {
                    return Some(out);
                }
                continue;
            }
            1 => fixed(),
            2 => dynamic(&mut bits)?,
            _ => return None,
        };
        loop {
            match literals.next(&mut bits)? {
                256 => break,
                byte @ 0..256 => out.push(byte as u8),
                symbol => {
                    let length =
                        LENGTHS.get(symbol - 257)? + bits.number(LENGTH_BITS[symbol - 257])?;
                    let far = distances.next(&mut bits)? as u32;
                    let more = (far / 2).saturating_sub(1);
                    let base = if far < 4 { far } else { (2 + far % 2) << more };
                    let back = (base + 1 + bits.number(more)?) as usize;
                    for _ in 0..length {
                        out.push(*out.get(out.len().checked_sub(back)?)?);
                    }
                }
            }
        }
        if last {
            return Some(out);
        }
    }
}

/// Every packed stream of a PDF, unpacked, as text.
pub(crate) fn streams(pdf: &[u8]) -> Vec<String> {
    let find = |from: usize, what: &[u8]| {
        pdf[from..].windows(what.len()).position(|w| w == what).map(|i| from + i)
    };
    let (mut at, mut out) = (0, Vec::new());
    while let Some(start) = find(at, b"stream\n").or_else(|| find(at, b"stream\r\n")) {
        let begin = start + 7 + usize::from(pdf[start + 6] == b'\r');
        let Some(end) = find(begin, b"endstream") else { break };
        out.extend(inflated(&pdf[begin..end]).map(|b| String::from_utf8_lossy(&b).into_owned()));
        at = end + 9;
    }
    out
}

#[test]
fn a_stream_made_by_another_program_comes_out_whole() {
    // `zlib.compress(b"siding siding siding", 9)` of Python 3.11.
    let packed = [
        0x78, 0xda, 0x2b, 0xce, 0x4c, 0xc9, 0xcc, 0x4b, 0x57, 0x28, 0x46, 0xa6, 0x00, 0x51, 0x71,
        0x07, 0xbb,
    ];
    assert_eq!(inflated(&packed).unwrap(), b"siding siding siding");
}
