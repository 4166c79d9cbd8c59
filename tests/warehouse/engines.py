"""What each engine answers to warehouse.sql, as JSON on one line: a list of answers, of rows, of cells.

    python tests/warehouse/engines.py duckdb FOLDER     out of FOLDER/entries.jsonl, or FOLDER/entries (Parquet)
    python tests/warehouse/engines.py spark FOLDER      the same, on three processes of one computer
"""

import json
import os
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
TABLES = ("CREATE TABLE entries AS", "CREATE TEMPORARY VIEW lines", "CREATE TEMPORARY VIEW entries AS")


def statements(engine, parquet):
    """The loader of an engine and the views and questions that all share."""
    loader, shared = HERE / f"{engine}.sql", HERE.parent / "warehouse.sql"
    for file in (loader, shared):
        plain = "\n".join(line for line in file.read_text().splitlines() if not line.startswith("--"))
        for statement in filter(None, map(str.strip, plain.split(";"))):
            if not (parquet and file == loader and statement.startswith(TABLES)):
                yield statement
        if file == loader and parquet:
            # The line that the loader's first comment gives for Parquet.
            given = [line[2:].strip() for line in loader.read_text().splitlines() if line.startswith("--   ")]
            yield given[0].removesuffix(";")


def answers(engine, parquet, run):
    for statement in statements(engine, parquet):
        rows = run(statement)
        if statement.startswith("SELECT"):
            yield [[None if cell is None else str(cell) for cell in row] for row in rows]


def duckdb_answers(parquet):
    import duckdb

    database = duckdb.connect()
    return list(answers("duckdb", parquet, lambda statement: database.execute(statement).fetchall()))


def spark_answers(parquet):
    import pyspark
    from pyspark.sql import SparkSession

    # A driver and two workers, each a process of its own, that speak over the network of this computer.
    os.environ["SPARK_HOME"] = os.path.dirname(pyspark.__file__)
    os.environ["PYSPARK_PYTHON"] = sys.executable
    os.environ["SPARK_LOCAL_IP"] = "127.0.0.1"
    settings = {
        "spark.ui.enabled": "false", "spark.driver.host": "127.0.0.1", "spark.driver.bindAddress": "127.0.0.1",
        "spark.sql.shuffle.partitions": "2", "spark.sql.warehouse.dir": str(Path("spark").resolve()),
    }
    builder = SparkSession.builder.master("local-cluster[2,1,1024]")
    for name, value in settings.items():
        builder = builder.config(name, value)
    session = builder.getOrCreate()
    session.sparkContext.setLogLevel("ERROR")
    assert session.sparkContext._jsc.sc().getExecutorMemoryStatus().size() >= 2, "no worker came"
    files = {f"path '{name}'": f"path '{Path(name).resolve().as_uri()}'" for name in ("entries.jsonl", "entries")}

    def run(statement):
        for name, full in files.items():
            statement = statement.replace(name, full)
        return session.sql(statement).collect()

    try:
        return list(answers("spark", parquet, run))
    finally:
        session.stop()


def main(engine, folder):
    os.chdir(folder)
    parquet = Path("entries").is_dir()
    print(json.dumps({"duckdb": duckdb_answers, "spark": spark_answers}[engine](parquet)))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2])
