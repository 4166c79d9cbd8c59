//! What the screens share, as signals.

use std::sync::Arc;

use crate::ui::react::*;

use crate::exchange::confirmation::Lines;
use crate::exchange::summary::Summary;
use crate::job::backdate::Ago;
use crate::job::entry::{Entry, Shop};
use crate::platform::journal::Closed;
use crate::platform::page;
use crate::platform::record::Storage;
use crate::platform::tabs::Tabs;
use crate::platform::update::Update as NewVersion;
use crate::ui::late::Late;
use crate::ui::route::Route;
use crate::ui::settings::Settings;
use crate::ui::shelf::BrowserStore;
use crate::ui::signal::RwSignal;
use crate::ui::state::{Keeping, Open, Shut};
use crate::ui::work::Work;

/// What the screens share.
pub struct Shared {
    /// Where the person is.
    pub route: RwSignal<Route>,
    /// The choices.
    pub settings: RwSignal<Settings>,
    /// The open job.
    pub open: RwSignal<Option<Arc<Open>>>,
    /// How the last tap fared.
    pub keeping: RwSignal<Keeping>,
    /// What storage was granted.
    pub storage: RwSignal<Storage>,
    /// The jobs of this phone, for the list.
    pub jobs: RwSignal<Vec<Summary>>,
    /// Whether that are all of them; until then the list is being read.
    pub listed: RwSignal<bool>,
    /// Whether a new version waits.
    pub update_waits: RwSignal<bool>,
    /// Why no job is open at the place of one.
    pub shut: RwSignal<Shut>,
    /// Long work that is on its way.
    pub work: Work,
    /// What could not be read, in plain English.
    pub unreadable: RwSignal<Vec<String>>,
    /// What was last done outside the job, said once.
    pub recorded: RwSignal<Option<String>>,
    /// What the last tap took back, until the next one.
    pub undone: RwSignal<Option<String>>,
    /// How long ago the next tap was done, if not now.
    pub ago: RwSignal<Option<Ago>>,
    /// Megabytes left for this app, where they are few.
    pub tight: RwSignal<Option<u64>>,
    /// The picture or voice note that the last tap kept.
    pub latest: RwSignal<Option<String>>,
    /// Why the database was closed under this page, where it was.
    pub closed: crate::ui::react::RwSignal<Option<Closed>>,
    /// Whether the browser threw the data away under this page.
    pub thrown_away: RwSignal<bool>,
    /// Whether entries of open jobs were lost and came back from the backup journal.
    pub came_back: RwSignal<bool>,
    /// Logs that this phone had and has no more.
    pub lost: RwSignal<Vec<String>>,
    /// The shop's settings that are in force here.
    pub shop: RwSignal<Shop>,
    /// What the shop's confirmations say it has.
    pub held: RwSignal<Lines>,
    /// Whether the browser keeps the screen on.
    pub awake: RwSignal<bool>,
    /// How far the second part of the program is.
    pub late: RwSignal<Late>,
    /// Whether another tab shows the same job.
    pub other_tab: RwSignal<bool>,
    /// Whether the app works without a signal: not yet on a first visit, and from when on; nothing
    /// where it did before, or where the browser cannot.
    pub offline: RwSignal<Option<bool>>,
    /// Whether keys are held for a moment, so that a bounce does not press the next step.
    pub locked: RwSignal<bool>,
    /// The drafts that go with the tap that comes next.
    pub drops: StoredValue<Vec<String>, LocalStorage>,
    pub(super) shelf: StoredValue<BrowserStore, LocalStorage>,
    pub(super) tabs: StoredValue<Option<Tabs>, LocalStorage>,
    pub(super) update: StoredValue<Option<NewVersion>, LocalStorage>,
    /// Entries of the open job; the sheet is folded from these alone.
    pub(in crate::ui) entries: StoredValue<Vec<Entry>, LocalStorage>,
}

impl Shared {
    /// The state at the start, before anything was read.
    pub(super) fn new(
        shelf: BrowserStore,
        settings: Settings,
        closed: ArcRwSignal<Option<Closed>>,
    ) -> Self {
        Self {
            route: RwSignal::new(Route::from_hash(&page::hash())),
            settings: RwSignal::new(settings),
            open: RwSignal::new(None),
            keeping: RwSignal::new(Keeping::Saved),
            storage: RwSignal::new(shelf.storage()),
            jobs: RwSignal::new(Vec::new()),
            listed: RwSignal::new(false),
            update_waits: RwSignal::new(false),
            shut: RwSignal::new(Shut::Reading),
            work: Work::new(),
            unreadable: RwSignal::new(Vec::new()),
            recorded: RwSignal::new(None),
            undone: RwSignal::new(None),
            ago: RwSignal::new(None),
            tight: RwSignal::new(None),
            latest: RwSignal::new(None),
            closed: closed.into(),
            thrown_away: RwSignal::new(false),
            came_back: RwSignal::new(false),
            lost: RwSignal::new(Vec::new()),
            awake: RwSignal::new(false),
            late: RwSignal::new(Late::START),
            other_tab: RwSignal::new(false),
            offline: RwSignal::new(None),
            locked: RwSignal::new(false),
            shop: RwSignal::new(Shop::default()),
            held: RwSignal::new(Lines::default()),
            drops: StoredValue::new_local(Vec::new()),
            shelf: StoredValue::new_local(shelf),
            tabs: StoredValue::new_local(None),
            update: StoredValue::new_local(None),
            entries: StoredValue::new_local(Vec::new()),
        }
    }
}
