from __future__ import annotations

from tests.support.sheets import schema_problems, sheet
from trivet.model.lock import ROLE_IDS
from trivet.reading.school.builtin import ROLES
from trivet.reading.school.roles import read_roles


def test_without_a_file_the_five_built_in_roles_stand() -> None:
    """All five, in the order in which duties are dealt, each with a line for the student and one for the teacher."""
    roles = read_roles(None)
    assert tuple(role.id for role in roles) == ROLE_IDS
    assert all(role.name and role.does and role.watch_for for role in roles)


def test_a_role_that_is_left_out_keeps_its_built_in_words() -> None:
    """A department may rename one role without writing all five."""
    roles = read_roles(sheet("roles", "roles:\n  leader:\n    name: Captain\n    does: Leads.\n    watch for: asks first\n"))
    assert (roles[0].name, roles[0].does, roles[0].watch_for) == ("Captain", "Leads.", "asks first")
    assert roles[1:] == ROLES[1:]


def test_there_is_no_sixth_role() -> None:
    """The ids are a closed list, and a near miss gets the nearest one."""
    assert schema_problems("roles", "roles:\n  leaders:\n    name: A\n    does: B\n    watch for: C\n")[0].endswith("write leader")
