"""The same kept groups give the same text, which plain YAML reads back."""

from __future__ import annotations

from dataclasses import replace

import pytest
import yaml

from tests.support.department import tiny_class
from tests.support.lock import tiny_lock
from trivet.model.lock import StationGroup
from trivet.reading.lock_text import canonical_pairs, team_number, write_lock


@pytest.mark.parametrize("size", [0, 1, 2, 7, 23, 37])
def test_plain_yaml_reads_the_groups(size: int) -> None:
    """Every team, duty and pair is read back by a plain YAML parser, and nothing but empty lists and mappings stands in brackets."""
    lock = tiny_lock(tiny_class(size=size))
    text = write_lock(lock)
    said = yaml.safe_load(text)["groups"]
    for letter, group in lock.groups.items():
        assert said[letter]["teams"] == {team: {one: list(roles) for one, roles in own.items()} for team, own in group.teams.items()}
        assert said[letter]["pairs"] == [list(pair) for pair in canonical_pairs(group.pairs)]
    assert not {"[", "{"} & set(text.replace("[]", "").replace("{}", ""))


def test_the_order_in_which_groups_were_made_leaves_no_trace() -> None:
    """Letters, teams, students and pairs turned round give the same bytes; the tenth team comes after the second."""
    lock = tiny_lock(tiny_class(size=37))
    turned = {
        letter: StationGroup(
            {team: dict(reversed(own.items())) for team, own in reversed(group.teams.items())},
            tuple(tuple(reversed(pair)) for pair in reversed(group.pairs)),
        )
        for letter, group in reversed(lock.groups.items())
    }
    assert write_lock(replace(lock, groups=turned)) == write_lock(lock)
    assert sorted(["A10", "A2", "A1"], key=team_number) == ["A1", "A2", "A10"]


@pytest.mark.parametrize("slug", ["true", "false", "float-or-sink"])
def test_a_unit_may_be_called_like_a_truth(slug: str) -> None:
    """The name of a unit comes back as text, in the lock and in what it counts."""
    said = yaml.safe_load(write_lock(tiny_lock(tiny_class(size=7), slug, counted=(slug,))))
    assert (said["unit"], said["counted"]) == (slug, [slug])


def test_a_bound_is_written_where_there_is_one() -> None:
    """Without a proved minimum neither it nor a certificate stands there; zero is a minimum, and an empty certificate is said."""
    lock = tiny_lock(tiny_class(size=7))
    assert not {"proved_minimum", "certificate"} & set(yaml.safe_load(write_lock(lock)))
    said = yaml.safe_load(write_lock(replace(lock, proved_minimum=0)))
    assert (said["proved_minimum"], said["certificate"]) == (0, {})
    proved = replace(lock, proved_minimum=2, certificate={"p1-02": -5, "p1-01": 1250})
    assert yaml.safe_load(write_lock(proved))["certificate"] == {"p1-01": 1250, "p1-02": -5}
    assert "how" not in said
    assert yaml.safe_load(write_lock(replace(lock, leveled=True)))["how"] == "leveled"
