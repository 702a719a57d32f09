"""What a teacher asks of the order of stations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.station import Kind


@dataclass(frozen=True, slots=True)
class Wish:
    """An order that a teacher asks for. `letter`: one group, or "" for as many groups as can have it.

    With `before`, the group is at `kind` some round before it is at `before`; without, it is there in the first round, or in the `last`.
    """

    kind: Kind
    letter: str = ""
    before: Kind | None = None
    last: bool = False

    def holds(self, order: Sequence[Kind]) -> bool:
        """Whether one group's stations, in their order, keep it."""
        if self.before is None:
            return order[-1 if self.last else 0] is self.kind
        return order.index(self.kind) < order.index(self.before)
