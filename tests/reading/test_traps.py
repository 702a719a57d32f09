"""What YAML would twist in a text without quotes; the acceptance table of whole lines stands in test_scan."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.quoting import quoted
from trivet.reading.traps import trap

REGIONS = st.text(st.sampled_from("ab 5#:'\"-*[]{}?!%\\,"), max_size=14).map(lambda text: f" {text}")


def read(region: str) -> object:
    """What a plain YAML parser reads after a key: the text of a scalar, else the kind of node; an error where it refuses."""
    node = yaml.compose(f"k:{region}\n", Loader=yaml.SafeLoader)
    assert isinstance(node, yaml.MappingNode)
    value = node.value[0][1]
    return value.value if isinstance(value, yaml.ScalarNode) else type(value)


@given(REGIONS)
def test_what_passes_is_read_as_typed(region: str) -> None:
    """Where no trap is found, YAML reads the very text, its comment after two spaces left out; brackets are answered elsewhere."""
    text = region.strip()
    if trap(region) is None and text and text[0] not in "[{":
        bare = text.partition("  # ")[0].rstrip()
        if bare[:1] == '"':
            assert isinstance(read(region), str)
        elif bare[:1] == "'":
            assert read(region) == bare.rstrip().split(" #")[0].rstrip()[1:-1].replace("''", "'")
        elif not bare.startswith("#"):
            assert read(region) == bare


@given(REGIONS)
def test_what_was_meant_can_be_written(region: str) -> None:
    """The text that a trap takes for meant is read back from quotes, and the trap lies inside the region."""
    found = trap(region)
    if found is not None:
        assert read(f" {quoted(found.meant)}{found.comment}") == found.meant
        assert 0 <= found.at < len(region)
        assert found.at + max(1, found.length) <= len(region)


@pytest.mark.parametrize("region", ["", " ", "   ", " [a, b]", " {a: b}", " [a, b]  # note"])
def test_what_the_loader_answers_is_left_to_it(region: str) -> None:
    """Nothing, and brackets that close at the line's end, are no traps."""
    assert trap(region) is None


@pytest.mark.parametrize(
    ("region", "unit", "plain"), [(" a # b", "hash-cuts-text", None), (" a  # b", None, None), (" a  #b", "hash-cuts-text", None)]
)
def test_a_plain_file_takes_any_comment(region: str, unit: str | None, plain: str | None) -> None:
    """In a school file every ` #` begins a comment; in a unit only after two spaces and before one."""
    for any_comment, code in ((False, unit), (True, plain)):
        found = trap(region, any_comment=any_comment)
        assert (found.code if found else None) == code


@pytest.mark.parametrize(
    ("region", "code"),
    [(" a: b # c", "colon-in-text"), (" a # b: c", "hash-cuts-text"), (" a:b", None), (" a :b", None), (" a : b", "colon-in-text")],
)
def test_the_first_trap_is_the_one_that_is_named(region: str, code: str | None) -> None:
    """Of a colon and a hash the earlier one is answered, at its own column."""
    found = trap(region)
    assert (found.code if found else None) == code
    if found is not None:
        assert region[found.at] in ":#"
