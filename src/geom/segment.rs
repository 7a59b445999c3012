//! Straight lines from one point to another.

use super::vocabulary::Point;

/// A straight line between two places.
pub type Segment = (Point, Point);
