"""`school/roles.yml`: what the school calls the roles of a team."""

from __future__ import annotations

from trivet.model.lock import ROLE_IDS
from trivet.model.school import Role
from trivet.reading.school.builtin import ROLES
from trivet.reading.school.sheet import Sheet


def read_roles(sheet: Sheet | None) -> tuple[Role, ...]:
    """Return the five roles in the order in which they are dealt; a role that the file leaves out keeps its built-in words."""
    written = sheet.data["roles"] if sheet else {}
    built_in = {role.id: role for role in ROLES}
    return tuple(
        Role(role_id, written[role_id]["name"], written[role_id]["does"], written[role_id]["watch for"])
        if role_id in written
        else built_in[role_id]
        for role_id in ROLE_IDS
    )
