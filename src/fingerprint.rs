//! The fingerprint of some bytes: of a drawing, of a file that was written.

use sha2::{Digest, Sha256};

/// SHA-256 of some bytes.
pub fn digest(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// SHA-256 of some bytes, hex.
pub fn sha256(bytes: &[u8]) -> String {
    digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}
