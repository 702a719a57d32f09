"""The content-security policy that every page carries: nothing from elsewhere, no inline script but the theme's own.

Policy by meta element: W3C Content Security Policy Level 3, section 3.3.
"""

from __future__ import annotations

import base64
import hashlib
import re

_ARTICLE = re.compile(r"<article\b.*</article>", re.DOTALL | re.IGNORECASE)
_INLINE = re.compile(r"<script(?![^>]*\bsrc=)(?![^>]*application/json)[^>]*>(.*?)</script>", re.DOTALL | re.IGNORECASE)
_CHARSET = re.compile(r"<meta\s+charset=[^>]*>", re.IGNORECASE)
_HEAD = re.compile(r"<head(?:\s[^>]*)?>", re.IGNORECASE)

_SHARED = "img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'"
STATIC_POLICY = f"default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'none'; {_SHARED}"
"""For a unit's own pages (simulations): they may load what lies beside them and talk to nobody."""


def page_policy(html: str) -> str:
    """Return the policy for a finished page, with the hash of each inline script outside `<article>`.

    Scripts inside the article are an author's and get no hash, so that they never run.
    """
    outside = _ARTICLE.sub("", html)
    hashes = dict.fromkeys(f"'sha256-{_digest(script)}'" for script in _INLINE.findall(outside))
    scripts = " ".join(["'self'", *hashes])
    return (
        f"default-src 'none'; script-src {scripts}; style-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; {_SHARED}"
    )


def with_page_policy(html: str) -> str:
    """Return `html` with its policy as the first thing after its charset."""
    return _with_policy(html, page_policy(html))


def with_static_policy(html: str) -> str:
    """Return a unit's own page with the strict policy written in, before anything that could load."""
    return _with_policy(html, STATIC_POLICY)


def _with_policy(html: str, policy: str) -> str:
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy}">'
    head = _HEAD.search(html)
    if head is None:
        return f"<!doctype html><head>{meta}</head>{html}"
    charset = _CHARSET.match(html, head.end()) or _CHARSET.match(html.lstrip(), head.end())
    at = charset.end() if charset else head.end()
    return html[:at] + meta + html[at:]


def _digest(script: str) -> str:
    return base64.b64encode(hashlib.sha256(script.encode("utf-8")).digest()).decode("ascii")
