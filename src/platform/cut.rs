//! Where what scrolls is cut off, so that neither a block nor a line of text is cut in half.

/// Something on the screen, by its upper and lower edge in pixels from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Its upper edge, of a text that of its first line.
    pub top: f64,
    /// Its lower edge, of a text that of its last line.
    pub bottom: f64,
    /// How high a line of it is; nothing where it is seen as a whole or not at all.
    pub line: Option<f64>,
}

/// Less than this is no cut.
const SLACK: f64 = 1.0;

/// The lowest place at or above `edge` that cuts nothing, as far down as `start`; `edge` itself where
/// there is none below that.
pub fn above(edge: f64, start: f64, blocks: &[Block]) -> f64 {
    let mut cut = edge;
    for _ in blocks {
        let crossed = blocks
            .iter()
            .filter(|it| it.top + SLACK < cut && cut + SLACK < it.bottom);
        let places = crossed.map(|it| match it.line {
            Some(line) if line > SLACK => it.top + ((cut - it.top) / line).floor() * line,
            _ => it.top,
        });
        let next = places.fold(cut, f64::min);
        if next >= cut {
            break;
        }
        cut = next;
    }
    if cut > start { cut } else { edge }
}

/// The highest place at or below `edge` that cuts nothing, up to `end`.
pub fn below(edge: f64, end: f64, blocks: &[Block]) -> f64 {
    let turned: Vec<Block> = blocks
        .iter()
        .map(|it| Block {
            top: -it.bottom,
            bottom: -it.top,
            line: it.line,
        })
        .collect();
    -above(-edge, -end, &turned)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn block(top: f64, bottom: f64) -> Block {
        Block {
            top,
            bottom,
            line: None,
        }
    }

    const fn text(top: f64, bottom: f64, line: f64) -> Block {
        Block {
            line: Some(line),
            ..block(top, bottom)
        }
    }

    #[test]
    fn a_block_is_seen_whole_or_not_at_all() {
        let all = [block(0.0, 40.0), block(50.0, 90.0)];
        assert_eq!(above(70.0, 0.0, &all), 50.0);
        assert_eq!(above(90.0, 0.0, &all), 90.0);
        assert_eq!(above(45.0, 0.0, &all), 45.0);
        assert_eq!(below(20.0, 90.0, &all), 40.0);
        assert_eq!(below(0.0, 90.0, &all), 0.0);
    }

    #[test]
    fn a_text_is_cut_between_its_lines() {
        let all = [text(0.0, 100.0, 20.0)];
        assert_eq!(above(50.0, 0.0, &all), 40.0);
        assert_eq!(above(60.5, 0.0, &all), 60.0);
        assert_eq!(below(50.0, 100.0, &all), 60.0);
    }

    #[test]
    fn what_stands_beside_it_is_not_cut_either() {
        let all = [text(0.0, 100.0, 20.0), block(35.0, 80.0)];
        assert_eq!(above(50.0, 0.0, &all), 20.0);
    }

    #[test]
    fn what_is_higher_than_the_screen_is_cut_all_the_same() {
        assert_eq!(above(50.0, 0.0, &[block(-10.0, 200.0)]), 50.0);
        assert_eq!(below(50.0, 90.0, &[block(-10.0, 200.0)]), 50.0);
    }
}
