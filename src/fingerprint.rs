//! The fingerprint of some bytes: of a drawing, of a file that was written.

use sha2::{Digest, Sha256};

/// SHA-256 of some bytes, hex.
pub fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}
