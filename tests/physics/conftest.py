"""The published figures: `published("signal/am_sidebands")` gives its columns, numbers or words, by their names."""

import csv
from pathlib import Path

import numpy as np
import pytest

TABLES = Path(__file__).parents[1] / "published"


def table(name):
    with open(TABLES / f"{name}.csv", encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    return {column: _numbers([row[column] for row in rows]) for column in rows[0]}


def _numbers(texts):
    try:
        return np.array([float(text or "nan") for text in texts])
    except ValueError:
        return np.array(texts)


@pytest.fixture(scope="session")
def published():
    return table
