"""Compiled templates kept in memory: a preview compiles the theme once, not at every rebuild."""

from __future__ import annotations

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket


class KeptTemplates(BytecodeCache):
    """Keeps the code of each template under its name and its text."""

    def __init__(self) -> None:
        """Begin with none."""
        self.kept: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give back what was kept; a template that changed has another checksum and is compiled anew."""
        if bucket.key in self.kept:
            bucket.bytecode_from_string(self.kept[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template."""
        self.kept[bucket.key] = bucket.bytecode_to_string()
