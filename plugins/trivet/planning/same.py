"""The very same value as before, so that what was worked out from it need not be worked out again."""

from __future__ import annotations

from typing import Generic, TypeVar

T = TypeVar("T")


class Same(Generic[T]):
    """Equal to another only where both hold one object: to compare two departments field by field would take as long as the work."""

    __slots__ = ("value",)

    def __init__(self, value: T) -> None:
        """Hold `value`, which must never change."""
        self.value = value

    def __eq__(self, other: object) -> bool:
        """Whether the other holds the same object."""
        return isinstance(other, Same) and other.value is self.value

    def __hash__(self) -> int:
        """Go with `__eq__`; the number orders nothing."""
        return id(self.value)
