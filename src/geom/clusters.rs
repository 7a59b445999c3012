//! Boxes that stand together.

use super::vocabulary::Rect;

/// Boxes joined until none comes within `apart` of another, left to right: a box grows with each it
/// takes in.
pub fn clusters(mut boxes: Vec<Rect>, apart: f64) -> Vec<Rect> {
    let near = |a: &Rect, b: &Rect| {
        b.x0 < a.x1 + apart && a.x0 < b.x1 + apart && b.y0 < a.y1 + apart && a.y0 < b.y1 + apart
    };
    loop {
        let before = boxes.len();
        boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
        // Left to right, beside those that a later one may still come near.
        let (mut done, mut open): (Vec<Rect>, Vec<Rect>) = (Vec::new(), Vec::new());
        for mut b in boxes {
            let (past, still) = open.into_iter().partition(|o: &Rect| o.x1 + apart <= b.x0);
            done.extend::<Vec<Rect>>(past);
            open = still;
            while let Some(i) = open.iter().position(|o| near(o, &b)) {
                b = b.union(open.swap_remove(i));
            }
            open.push(b);
        }
        done.append(&mut open);
        boxes = done;
        if boxes.len() == before {
            boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0)));
            return boxes;
        }
    }
}
