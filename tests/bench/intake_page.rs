//! What an import reckons, without a screen and without a disk: built like the app, so that its
//! time beside that of `JSON.parse` is the time of the app's own code.

#[cfg(target_arch = "wasm32")]
mod page {
    use hubslate::exchange::summary::Summary;
    use hubslate::exchange::{LogKind, merge, read};
    use hubslate::job::{fold, next, plan};
    use hubslate::trade::wheel_end::procedure;
    use wasm_bindgen::prelude::wasm_bindgen;

    /// Reads a file with its digests, merges it into nothing, folds each job and makes its line;
    /// gives how many entries that were, 0 for a file that is refused.
    #[wasm_bindgen]
    pub fn intake(bytes: Vec<u8>) -> usize {
        let Ok(text) = String::from_utf8(bytes) else {
            return 0;
        };
        let Ok(incoming) = read(&text) else { return 0 };
        let mut entries = 0;
        for log in incoming.logs {
            entries += merge(&[], &log.records).add.len();
            if log.kind == LogKind::Job {
                let sheet = fold(log.entries);
                let steps = procedure(&plan(&sheet));
                let line = Summary::of(&log.id, &sheet, &steps, next(&sheet, &steps));
                std::hint::black_box(line.to_text());
            }
        }
        entries
    }

    /// How many bytes the module's memory has; it only ever grows.
    #[wasm_bindgen]
    pub fn bytes_held() -> usize {
        core::arch::wasm32::memory_size(0) * 65_536
    }
}

fn main() {}
