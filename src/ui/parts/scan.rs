//! The number of a vehicle read off its bar code, where the browser reads codes; elsewhere there is
//! no key.

use crate::platform::barcode::VinReader;
use crate::platform::clock;
use crate::platform::media::{Camera, MediaError};
use crate::text::{self, Lang, VehicleWord};
use crate::trade::vehicle::scan::{Scanned, VinScan};
use crate::ui::parts::key::{Look, key};
use crate::ui::react::html::Video;
use crate::ui::react::spawn_local;
use crate::ui::view::prelude::*;

/// So long between two looks at what the camera shows.
const LOOK_MS: i32 = 200;

/// How far the scanning is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Scan {
    /// The camera is closed; what became of the last time, if there was one.
    Off(Option<VehicleWord>),
    /// The browser is asked for the camera.
    Asking,
    /// The camera is looked at; what the last look said.
    On(VehicleWord),
}

/// What the key and its picture share.
#[derive(Clone, Copy)]
struct Scanner {
    reader: StoredValue<Option<VinReader>, LocalStorage>,
    camera: StoredValue<Option<Camera>, LocalStorage>,
    state: RwSignal<Scan>,
    video: NodeRef<Video>,
}

/// The key and, while it scans, what the camera sees; `take` gets the number.
pub fn scan(lang: Lang, take: impl Fn(String) + Clone + 'static) -> Node {
    let can = RwSignal::new(false);
    let scanner = Scanner {
        reader: StoredValue::new_local(None),
        camera: StoredValue::new_local(None),
        state: RwSignal::new(Scan::Off(None)),
        video: NodeRef::new(),
    };
    spawn_local(async move {
        let reader = VinReader::here().await;
        let found = reader.is_some();
        let _ = scanner.reader.try_set_value(reader);
        can.try_set(found);
    });
    (move || can.get().then(|| shown(lang, scanner, take.clone()))).into_node()
}

fn shown(lang: Lang, scanner: Scanner, take: impl Fn(String) + Clone + 'static) -> Node {
    let (state, video) = (scanner.state, scanner.video);
    let word = move |word| text::vehicle_word(lang, word);
    let said = move || match state.get() {
        Scan::Off(said) => said.map(word),
        Scan::Asking => Some(word(VehicleWord::Asking)),
        Scan::On(said) => Some(word(said)),
    };
    let closed = move || !matches!(state.get(), Scan::On(_));
    let keys = move || match state.get() {
        Scan::Off(_) => {
            let take = take.clone();
            key(Look::Plain, word(VehicleWord::Scan), move || {
                scanner.begin(take.clone());
            })
        }
        _ => key(Look::Plain, word(VehicleWord::StopScan), move || {
            scanner.end(None);
        }),
    };
    view! {
        <div class="scan">
            {keys}
            <video class="scan__video" muted playsinline hidden=closed node_ref=video></video>
            <p class="hint" role="status">{said}</p>
        </div>
    }
}

impl Scanner {
    fn begin(self, take: impl Fn(String) + 'static) {
        self.state.set(Scan::Asking);
        spawn_local(async move {
            match Camera::open().await {
                Ok(camera) => self.run(camera, take).await,
                Err(MediaError::Denied) => self.end(Some(VehicleWord::CameraDenied)),
                Err(MediaError::Missing) => self.end(Some(VehicleWord::CameraNone)),
            }
        });
    }

    /// Looks until a number is read, the key is touched or the screen goes.
    async fn run(self, camera: Camera, take: impl Fn(String) + 'static) {
        let asked = self.state.try_get_untracked() == Some(Scan::Asking);
        let Some(video) = self.video.try_get_untracked().flatten().filter(|_| asked) else {
            return;
        };
        camera.show_in(&video);
        if self.camera.try_set_value(Some(camera)).is_some() {
            return;
        }
        self.state.try_set(Scan::On(VehicleWord::ScanHint));
        let taken = self.reader.try_update_value(Option::take).flatten();
        let Some(reader) = taken else { return };
        let mut scan = VinScan::default();
        while matches!(self.state.try_get_untracked(), Some(Scan::On(_))) {
            for text in reader.texts(&video).await {
                self.looked(scan.look(&text), &take);
            }
            clock::pause(LOOK_MS).await;
        }
        let _ = self.reader.try_set_value(Some(reader));
    }

    fn looked(self, seen: Scanned, take: &impl Fn(String)) {
        if !matches!(self.state.try_get_untracked(), Some(Scan::On(_))) {
            return;
        }
        match seen {
            Scanned::Taken(vin) => {
                self.end(Some(VehicleWord::Scanned));
                take(vin.as_str().to_owned());
            }
            Scanned::Again => self.state.set(Scan::On(VehicleWord::ReadAgain)),
            Scanned::NoVin => self.state.set(Scan::On(VehicleWord::NoVin)),
        }
    }

    /// Closes the camera, with what is to be said of it.
    fn end(self, said: Option<VehicleWord>) {
        let _ = self.camera.try_set_value(None);
        self.state.try_set(Scan::Off(said));
    }
}
