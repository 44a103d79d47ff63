"""README says what is true."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import BaseModel

from batchleaf.plugin import BatchleafConfig
from batchleaf.records import written
from batchleaf.records.yaml_text import read_yaml

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def keys() -> Iterator[str]:
    """Every key that a record may have."""
    for model in vars(written).values():
        if isinstance(model, type) and issubclass(model, BaseModel):
            yield from (field.alias or name for name, field in model.model_fields.items())


@pytest.mark.parametrize("key", sorted(set(keys())))
def test_every_key_of_a_record_is_in_the_readme(key: str) -> None:
    """In an example, or in a sentence."""
    assert re.search(rf"^ *(- )?{key}:|`{key}\b", README, re.MULTILINE)


@pytest.mark.parametrize("key", [name for name, _ in BatchleafConfig._schema if name != "enabled"])
def test_every_setting_is_in_the_readme(key: str) -> None:
    """With its meaning, in the table of settings."""
    assert re.search(rf"^\| `{key}` \|", README, re.MULTILINE)


def test_the_examples_of_the_readme_are_readable() -> None:
    """Every block of YAML is a record that the reader takes."""
    blocks = re.findall(r"```yaml\n(.*?)```", README, re.DOTALL)
    assert len(blocks) >= 2
    for block in blocks:
        node, problems = read_yaml(block.encode(), "README.md")
        assert node is not None
        assert problems == ()
