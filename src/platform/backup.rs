//! The backup journal's files, behind the worker that alone may write them at once.
//!
//! A line is answered for when it was flushed: measured, that survives a kill and a power cut; in
//! the very first run of the app on a phone a power cut can still take the whole file.

use crate::map::OrderedMap;
use std::cell::{Cell, RefCell};
use std::pin::Pin;
use std::rc::Rc;

use js_sys::{Array, Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, Worker};

use super::clock;
use super::event::Listener;
use super::js;
use super::record::StoreError;

/// A worker that does not answer in this time must not hold a tap for longer.
const PATIENCE_MS: i32 = 3_000;
/// The question that the page's first script puts to the worker.
const EARLY: u32 = 0;
/// At the start nothing is shown before it answered, or had this long.
const FIRST_MS: i32 = 10_000;

/// The files; clones share one worker.
#[derive(Clone, Debug)]
pub struct BackupFiles(Rc<Inner>);

#[derive(Debug)]
struct Inner {
    worker: Worker,
    waiting: Rc<Waiting>,
    next: Cell<u32>,
    /// Whether it failed to answer: then nothing waits for it again.
    silent: Rc<Cell<bool>>,
    /// The question that the page's first script put, until its answer is taken.
    early: Cell<bool>,
    _heard: [Listener; 2],
}

/// Who waits for which answer.
#[derive(Debug, Default)]
struct Waiting(RefCell<OrderedMap<u32, Function>>);

impl Waiting {
    fn answer(&self, id: u32, with: &JsValue) {
        let asked = self.0.borrow_mut().remove(&id);
        if let Some(asked) = asked {
            let _ = asked.call1(&JsValue::UNDEFINED, with);
        }
    }

    fn refuse_all(&self, name: &str) {
        let all: Vec<u32> = self.0.borrow().keys().copied().collect();
        for id in all {
            self.answer(id, &js::object(&[("problem", name.into())]));
        }
    }
}

impl BackupFiles {
    /// Takes the worker that the page began with, or starts one. Whether the browser grants the
    /// files is known at the first answer.
    ///
    /// # Errors
    /// [`StoreError::Denied`] where there are no workers.
    pub fn open() -> Result<Self, StoreError> {
        let begun: Option<Worker> = js::taken("hubslateBackup").and_then(|it| it.dyn_into().ok());
        let early = Cell::new(begun.is_some());
        let worker = match begun {
            Some(begun) => begun,
            None => Worker::new("./backup.js").map_err(|_| StoreError::Denied)?,
        };
        let waiting = Rc::new(Waiting::default());
        let (answers, failed) = (Rc::clone(&waiting), Rc::clone(&waiting));
        let silent = Rc::new(Cell::new(false));
        let speaks = Rc::clone(&silent);
        let heard = Listener::new(&worker, "message", move |event| {
            // Late is not never: a phone that slept answers when it wakes.
            speaks.set(false);
            let Ok(message) = event.dyn_into::<MessageEvent>() else {
                return;
            };
            let said = message.data();
            let id = js::property(&said, "id").and_then(|id| id.as_f64());
            if let Some(id) = id {
                answers.answer(id as u32, &said);
            }
        });
        let broken = Listener::new(&worker, "error", move |_| failed.refuse_all("Error"));
        Ok(Self(Rc::new(Inner {
            worker,
            waiting,
            next: Cell::new(EARLY.wrapping_add(1)),
            silent,
            early,
            _heard: [heard, broken],
        })))
    }

    /// Whether it failed to answer and has not spoken since.
    pub fn is_silent(&self) -> bool {
        self.0.silent.get()
    }

    /// Asks for both files. The question is on its way when this returns.
    pub fn read(&self) -> impl Future<Output = Result<Vec<String>, StoreError>> + use<> {
        let files = self.clone();
        let early = self.0.early.replace(false);
        let asked = match early {
            true => self.asked_early(),
            false => self.ask("read", &[]),
        };
        async move {
            let said = match asked.await {
                Ok(said) if Array::is_array(&said) => said,
                // The page only looked, and there was nothing to be seen.
                _ if early && !files.is_silent() => files.ask("read", &[]).await?,
                Ok(_) => return Ok(Vec::new()),
                Err(problem) => return Err(problem),
            };
            let files = Array::from(&said);
            Ok(files.iter().filter_map(|file| file.as_string()).collect())
        }
    }

    /// Adds lines, flushed, and gives the size of the file in bytes. They are on their way when
    /// this returns.
    pub fn append(&self, lines: &str) -> impl Future<Output = Result<usize, StoreError>> + use<> {
        let asked = self.ask("append", &[("lines", lines.into())]);
        async move {
            let size = asked.await?.as_f64().unwrap_or_default();
            Ok(size as usize)
        }
    }

    /// Writes all lines again, if the file still has `size` bytes; false if it has not.
    pub fn anew(
        &self,
        lines: &str,
        size: usize,
    ) -> impl Future<Output = Result<bool, StoreError>> + use<> {
        let size = JsValue::from_f64(size as f64);
        let asked = self.ask("anew", &[("lines", lines.into()), ("size", size)]);
        async move { Ok(asked.await?.is_truthy()) }
    }

    /// Waits for the answer to the question of the page's first script, which may be here already.
    fn asked_early(&self) -> Pin<Box<dyn Future<Output = Result<JsValue, StoreError>>>> {
        let answer = self.answer(EARLY, FIRST_MS, true);
        if let Some(said) = js::taken("hubslateBackupSaid") {
            self.0.waiting.answer(EARLY, &said);
        }
        answer
    }

    fn ask(
        &self,
        act: &str,
        with: &[(&str, JsValue)],
    ) -> Pin<Box<dyn Future<Output = Result<JsValue, StoreError>>>> {
        let inner = &self.0;
        let id = inner.next.get();
        inner.next.set(id.wrapping_add(1));
        let message = js::object(&[&[("id", id.into()), ("act", act.into())], with].concat());
        let posted = inner.worker.post_message(&message).is_ok();
        let patience = if act == "read" { FIRST_MS } else { PATIENCE_MS };
        self.answer(id, patience, posted)
    }

    /// Waits for an answer; it is heard of from now on.
    fn answer(
        &self,
        id: u32,
        patience: i32,
        posted: bool,
    ) -> Pin<Box<dyn Future<Output = Result<JsValue, StoreError>>>> {
        let inner = Rc::clone(&self.0);
        let promise = Promise::new(&mut |answer, _| {
            inner.waiting.0.borrow_mut().insert(id, answer);
        });
        Box::pin(async move {
            if !posted || inner.silent.get() {
                inner.waiting.0.borrow_mut().remove(&id);
                return Err(StoreError::Denied);
            }
            let waiting = Rc::clone(&inner.waiting);
            let late = js::object(&[("problem", "TimeoutError".into())]);
            let _patience = clock::after(patience, move || waiting.answer(id, &late));
            let said = JsFuture::from(promise)
                .await
                .map_err(|_| StoreError::Denied)?;
            match js::text(&said, "problem") {
                None => Ok(js::property(&said, "said").unwrap_or_default()),
                Some(name) => {
                    inner.silent.set(name == "TimeoutError");
                    Err(StoreError::from_error_name(&name))
                }
            }
        })
    }
}
