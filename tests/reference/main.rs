//! Checks against general-purpose Python libraries, ezdxf, shapely and pypdf, in an environment of
//! pinned versions that this test makes under `target/`.

mod checks;
mod venv;
