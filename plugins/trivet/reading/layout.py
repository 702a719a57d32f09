"""Keep track of which lists and keys are open, and tell where a line belongs by its indentation."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from trivet.reading.entries import Entry

_KEY_LIKE = re.compile(r"[a-z][a-z0-9 -]{0,24}")


STEP = 2
"""Spaces from a key to what stands under it."""


@dataclass(frozen=True, slots=True)
class Block:
    """Lines at one column that belong together: the items of a list, or keys. `key` is the key that opened it."""

    column: int
    is_list: bool
    key: str


@dataclass(slots=True)
class Layout:
    """The open blocks, outermost first. `homes` are keys that stand under one key only, each with that key.

    `opener` is the entry just read if it has no text of its own, so that lines may stand under it.
    """

    homes: Mapping[str, str] = field(default_factory=dict)
    blocks: list[Block] = field(default_factory=list)
    opener: Entry | None = None

    def opens(self, each: Entry) -> bool:
        """Whether this line begins what stands under the entry just read."""
        opener = self.opener
        if opener is None:
            return not self.blocks
        same = each.dash and opener.key is not None and each.column == opener.own_column
        return each.column > opener.own_column or same

    def list_at(self, column: int) -> Block | None:
        """The open list whose dashes stand at `column`, unless keys stand at the same column too."""
        here = [block for block in self.blocks if block.column == column]
        return here[0] if here and here[0].is_list else None

    def is_stray_item(self, each: Entry) -> bool:
        """Whether this list item stands among keys, and not under a key that has no text."""
        if self.opens(each):
            return False
        here = [block for block in self.blocks if block.column == each.column]
        return bool(here) and not here[-1].is_list

    def list_key(self, each: Entry) -> str:
        """The key of the list that the item `each` belongs to."""
        if self.opens(each) and self.opener is not None:
            return self.opener.key or ""
        return next((block.key for block in reversed(self.blocks) if block.is_list and block.column == each.column), "")

    def right_column(self, each: Entry, item_keys: tuple[str, ...]) -> int:
        """The column at which `each` should stand; its own where it lines up.

        `item_keys` are the keys of the items of the list at its column, if there is one.
        """
        home = self._home(each)
        if home is not None or self.opens(each):
            return each.column if home is None else home
        lists = [block.column for block in self.blocks if block.is_list and abs(block.column - each.column) <= STEP]
        if each.dash and lists:
            return min(reversed(lists), key=lambda level: abs(level - each.column))
        levels = [block.column for block in self.blocks]
        column = min(reversed(levels), key=lambda level: abs(level - each.column))
        if each.dash or each.key is None or self.list_at(column) is None:
            return column
        # A key among the dashes of a list: either it belongs to the item above it, or it stands one level too deep.
        at = levels.index(column)
        if each.key in item_keys and at + 1 < len(levels):
            return levels[at + 1]
        keys_above = [block.column for block in self.blocks[:at] if not block.is_list]
        return keys_above[-1] if keys_above and _KEY_LIKE.fullmatch(each.key) else column

    def _home(self, each: Entry) -> int | None:
        """The column of the open block that a key belongs to and stands outside of, None where it is in or has no such home."""
        under = self.homes.get(each.key or "")
        if under is None or each.dash:
            return None
        if self.opener is not None and self.opener.key == under:
            return self.opener.own_column + STEP if each.column <= self.opener.own_column else None
        inside = (block.column for block in reversed(self.blocks) if block.key == under and not block.is_list)
        return next(inside, None)

    def take(self, each: Entry) -> None:
        """Note an entry that stands where it should."""
        opened = self.opener.key if self.opener is not None and self.opens(each) else None
        while self.blocks and self.blocks[-1].column > each.column:
            self.blocks.pop()
        top = self.blocks[-1] if self.blocks else None
        if each.dash:
            if top is None or top.column < each.column or not top.is_list:
                self.blocks.append(Block(each.column, True, opened or ""))
            if each.key is not None:
                self.blocks.append(Block(each.inner, False, opened or ""))
        elif each.key is not None:
            if top is not None and top.column == each.column and top.is_list:
                self.blocks.pop()
                top = self.blocks[-1] if self.blocks else None
            if top is None or top.column < each.column:
                self.blocks.append(Block(each.column, False, opened or ""))
        self.opener = None if each.has_text else each
