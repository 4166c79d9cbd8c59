//! Entries in typed columns (Apache Parquet), in a folder a shop and month, as engines find them:
//! `shop=…/month=YYYY-MM/entries.parquet`.
//!
//! The columns are those that `tests/warehouse.sql` names.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use parquet::basic::Compression;
use parquet::data_type::{BoolType, ByteArray, ByteArrayType, DataType, Int32Type, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::properties::WriterProperties;
use parquet::file::writer::{SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::parser::parse_message_type;

use crate::exchange::envelope::SavedText;
use crate::exchange::json::parse;
use crate::exchange::table::{Line, lines};
use crate::job::entry::Timestamp;
use crate::map::OrderedMap;
use crate::trade::day::day_of;

/// The columns of one file, in the order in which they are written.
const SCHEMA: &str = "message entries {
    required binary id (UTF8);
    required binary log (UTF8);
    required int32 place;
    required boolean counts;
    optional int32 day (DATE);
    optional int64 utc_ms;
    optional binary device (UTF8);
    optional int64 n;
    optional binary who (UTF8);
    required binary kind (UTF8);
    optional binary what (UTF8);
}";

/// The value of a folder's name that engines read as none.
const NONE: &str = "__HIVE_DEFAULT_PARTITION__";
/// So many bytes of rows wait in all files together before the longest is written.
const ROOM: usize = 64 << 20;
/// What a row takes besides its texts.
const ROW: usize = 64;

/// Entries on their way into their files.
pub struct Columns {
    folder: PathBuf,
    files: OrderedMap<(String, String), Part>,
    waiting: usize,
}

/// One file, and the rows that wait for it.
struct Part {
    writer: SerializedFileWriter<File>,
    rows: Rows,
}

/// Rows by column; of what may be missing, whether it is there.
#[derive(Default)]
struct Rows {
    id: Vec<ByteArray>,
    log: Vec<ByteArray>,
    place: Vec<i32>,
    counts: Vec<bool>,
    day: Vec<Option<i32>>,
    utc_ms: Vec<Option<i64>>,
    device: Vec<Option<ByteArray>>,
    n: Vec<Option<i64>>,
    who: Vec<Option<ByteArray>>,
    kind: Vec<ByteArray>,
    what: Vec<Option<ByteArray>>,
    bytes: usize,
}

impl Columns {
    /// None yet; their folders are made in this one.
    pub fn new(folder: &Path) -> Self {
        Self {
            folder: folder.to_owned(),
            files: OrderedMap::new(),
            waiting: 0,
        }
    }

    /// Adds the entries of one log.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn add(&mut self, shop: Option<&str>, records: &[SavedText]) -> io::Result<()> {
        let Some(first) = records.first() else {
            return Ok(());
        };
        for line in lines(records) {
            let month = line.day.as_deref().and_then(|day| day.get(..7));
            let at = (
                shop.unwrap_or(NONE).to_owned(),
                month.unwrap_or(NONE).to_owned(),
            );
            if self.files.get(&at).is_none() {
                let part = Part::create(&self.folder, &at)?;
                self.files.insert(at.clone(), part);
            }
            if let Some(part) = self.files.get_mut(&at) {
                self.waiting += part.rows.add(&first.log, &line);
            }
        }
        while ROOM < self.waiting {
            let parts = self.files.iter_mut().map(|(_, part)| part);
            let Some(longest) = parts.max_by_key(|part| part.rows.bytes) else {
                break;
            };
            self.waiting -= longest.rows.bytes;
            longest.write()?;
        }
        Ok(())
    }

    /// Writes what waits and closes all files.
    ///
    /// # Errors
    /// What the disk refused.
    pub fn end(self) -> io::Result<()> {
        for mut part in self.files.into_values() {
            part.write()?;
            part.writer.close().map_err(refused)?;
        }
        Ok(())
    }
}

impl Part {
    fn create(folder: &Path, (shop, month): &(String, String)) -> io::Result<Self> {
        let folder = folder
            .join(format!("shop={shop}"))
            .join(format!("month={month}"));
        fs::create_dir_all(&folder)?;
        let file = File::create(folder.join("entries.parquet"))?;
        let schema = Arc::new(parse_message_type(SCHEMA).map_err(refused)?);
        let properties = WriterProperties::builder().set_compression(Compression::SNAPPY);
        let writer = SerializedFileWriter::new(file, schema, Arc::new(properties.build()));
        Ok(Self {
            writer: writer.map_err(refused)?,
            rows: Rows::default(),
        })
    }

    /// Writes the rows that wait as one group.
    fn write(&mut self) -> io::Result<()> {
        let rows = std::mem::take(&mut self.rows);
        if rows.id.is_empty() {
            return Ok(());
        }
        let mut group = self.writer.next_row_group().map_err(refused)?;
        rows.write(&mut group).map_err(refused)?;
        group.close().map(drop).map_err(refused)
    }
}

impl Rows {
    /// Adds a row; gives how many bytes it takes.
    fn add(&mut self, log: &str, line: &Line<'_>) -> usize {
        let json = parse(line.text).ok();
        let text = |name| json.as_ref().and_then(|json| json.field::<String>(name));
        let id = text("id").unwrap_or_default();
        let at: Option<Timestamp> = json.as_ref().and_then(|json| json.field("at"));
        let n: Option<u64> = json.as_ref().and_then(|json| json.field("n"));
        let what = json.as_ref().and_then(|json| json.find("what").ok()?);
        let bytes = ROW + line.text.len() + log.len();
        self.id.push(id.as_str().into());
        self.log.push(log.into());
        self.place
            .push(i32::try_from(line.place).unwrap_or(i32::MAX));
        self.counts.push(line.counts);
        self.day.push(line.day.as_deref().and_then(days));
        self.utc_ms.push(at.map(|at| at.utc_ms));
        self.device
            .push(text("device").map(|it| it.as_str().into()));
        self.n.push(n.and_then(|n| i64::try_from(n).ok()));
        self.who.push(text("by").map(|it| it.as_str().into()));
        self.kind.push(line.kind.as_str().into());
        self.what.push(what.map(|what| what.raw().into()));
        self.bytes += bytes;
        bytes
    }

    /// Column by column, in the order of [`SCHEMA`].
    fn write(self, group: &mut SerializedRowGroupWriter<'_, File>) -> Result<(), ParquetError> {
        all::<ByteArrayType>(group, &self.id)?;
        all::<ByteArrayType>(group, &self.log)?;
        all::<Int32Type>(group, &self.place)?;
        all::<BoolType>(group, &self.counts)?;
        some::<Int32Type>(group, self.day)?;
        some::<Int64Type>(group, self.utc_ms)?;
        some::<ByteArrayType>(group, self.device)?;
        some::<Int64Type>(group, self.n)?;
        some::<ByteArrayType>(group, self.who)?;
        all::<ByteArrayType>(group, &self.kind)?;
        some::<ByteArrayType>(group, self.what)
    }
}

/// A column that has a value in each row.
fn all<T: DataType>(
    group: &mut SerializedRowGroupWriter<'_, File>,
    values: &[T::T],
) -> Result<(), ParquetError> {
    column::<T>(group, values, None)
}

/// One that may have none.
fn some<T: DataType>(
    group: &mut SerializedRowGroupWriter<'_, File>,
    values: Vec<Option<T::T>>,
) -> Result<(), ParquetError> {
    let there: Vec<i16> = values.iter().map(|it| i16::from(it.is_some())).collect();
    let values: Vec<T::T> = values.into_iter().flatten().collect();
    column::<T>(group, &values, Some(&there))
}

fn column<T: DataType>(
    group: &mut SerializedRowGroupWriter<'_, File>,
    values: &[T::T],
    there: Option<&[i16]>,
) -> Result<(), ParquetError> {
    let Some(mut column) = group.next_column()? else {
        return Err(ParquetError::General("a column too many".to_owned()));
    };
    column.typed::<T>().write_batch(values, there, None)?;
    column.close()
}

/// A day as days since 1970.
fn days(day: &str) -> Option<i32> {
    let from = day_of("1970-01-01")?;
    i32::try_from((day_of(day)? - from).num_days()).ok()
}

fn refused(error: ParquetError) -> io::Error {
    io::Error::other(error)
}
