"""The content-security policy of pages and of a unit's own pages."""

from __future__ import annotations

import base64
import hashlib

from trivet.hosts.policy import STATIC_POLICY, page_policy, with_page_policy, with_static_policy

PAGE = (
    '<!doctype html><html><head><meta charset="utf-8"><script>theme()</script></head><body>'
    '<article class="x"><script>author()</script></article>'
    '<script id="__config" type="application/json">{}</script><script src="a.js"></script></body></html>'
)


def hash_of(script: str) -> str:
    return base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()


def test_a_script_of_the_theme_is_named_by_its_hash() -> None:
    """An inline script outside the article is allowed by its SHA-256 (CSP Level 3, section 2.3.1)."""
    assert f"'sha256-{hash_of('theme()')}'" in page_policy(PAGE)


def test_a_script_inside_the_article_is_never_allowed() -> None:
    """An author's script gets no hash, and no policy allows inline scripts as such."""
    policy = page_policy(PAGE)
    assert hash_of("author()") not in policy
    assert "unsafe" not in policy


def test_the_policy_stands_before_anything_that_loads() -> None:
    """The meta element follows the charset at once, so that no script comes before it."""
    html = with_page_policy(PAGE)
    assert html.index("Content-Security-Policy") < html.index("<script")
    assert html.index("charset") < html.index("Content-Security-Policy")


def test_a_units_own_page_talks_to_nobody() -> None:
    """The strict policy forbids connections, and is written even into a page without a head."""
    assert "connect-src 'none'" in STATIC_POLICY
    for html in ("<html><head><title>t</title></head></html>", "<p>bare</p>", "<HTML><HEAD ></HEAD></HTML>", ""):
        assert with_static_policy(html).count("Content-Security-Policy") == 1


def test_a_header_element_is_no_head() -> None:
    """`<header>` is not taken for `<head>`."""
    html = with_static_policy("<header><script src=x.js></script></header>")
    assert html.startswith("<!doctype html><head><meta")
