"""The very same value."""

from __future__ import annotations

from trivet.planning.same import Same


def test_equal_values_are_not_the_same_one() -> None:
    """Two lists of the same content are told apart, the same list in two wrappings is not, and nothing else equals a wrapping."""
    one, other = [1, 2], [1, 2]
    assert Same(one) == Same(one) and hash(Same(one)) == hash(Same(one))
    assert Same(one) != Same(other)
    assert Same(one) != one
