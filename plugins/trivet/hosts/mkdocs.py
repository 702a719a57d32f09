"""The MkDocs plugin: claims the unit folders, adds the pages, and keeps a live preview alive."""

from __future__ import annotations

import logging
import posixpath
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.config import base as base_config
from mkdocs.config import config_options as option
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.utils import get_relative_url
from mkdocs.utils.templates import TemplateContext

from trivet.hosts.build import Built, build_site
from trivet.hosts.kept_templates import KeptTemplates
from trivet.hosts.policy import with_page_policy, with_static_policy
from trivet.hosts.searchable import ids, searchable
from trivet.model.page import Page
from trivet.model.problem import Severity
from trivet.pages.theme import PREVIEW_SCRIPT, THEME_FOLDER, template_globals, with_language
from trivet.reading.report.for_people import one_line

log = logging.getLogger("mkdocs.plugins.trivet")

GUIDE = "guide/"
UNITS = "units/"
SITEMAP = "sitemap.xml"
"""Left out: it dates every page, so that two builds would differ."""
_PROSE = "trivet.pages.plain_markdown:PlainMarkdown"
_LEVELS = {Severity.ERROR: logging.ERROR, Severity.WARNING: logging.WARNING, Severity.ADVICE: logging.INFO}


class TrivetConfig(base_config.Config):  # type: ignore[no-untyped-call]  # the host's class hook has no types
    """What may stand under `trivet:` in mkdocs.yml."""

    only = option.Type(str, default="")
    """Build the pages of this unit alone, for a quick preview while writing it."""


class TrivetPlugin(BasePlugin[TrivetConfig]):  # type: ignore[no-untyped-call]  # the same
    """Thin by intent: every hook is a few lines over functions that tests call without a site."""

    serving = False
    built: Built | None = None
    compiled = KeptTemplates()

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Remember whether this is a live preview; defining this hook keeps the plugin across rebuilds."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig, **_: Any) -> MkDocsConfig:
        """Add our templates (a department's overrides win) and the rules for prose."""
        config.theme.dirs.insert(_after_overrides(config), str(THEME_FOLDER))
        config.theme.static_templates.discard(SITEMAP)
        if _PROSE not in config.markdown_extensions:
            config.markdown_extensions.append(_PROSE)
        if self.config.only:
            # Links to the pages that are left out are no fault of whoever previews one unit.
            config.validation.links.not_found = config.validation.nav.not_found = logging.INFO
        return config

    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, **_: Any) -> LiveReloadServer:
        """Watch school/ beside the units."""
        school = _root(config) / "school"
        if school.is_dir():
            server.watch(str(school))
        return server

    def on_files(self, files: Files, *, config: MkDocsConfig, **_: Any) -> Files:
        """Put our pages in the place of the unit folders."""
        self.built = self._build(config)
        _report(self.built, self.serving)
        claimed = _claim(files, config.docs_dir)
        _withhold(files, self.built)
        for page in self.built.site.pages:
            _put(files, _page_file(page, config))
        for asset in self.built.site.assets:
            _put(files, File.generated(config, asset.path, content=asset.content))
        for source in [f for f in files if f.src_dir == config.docs_dir and f.src_uri.endswith((".html", ".htm"))]:
            _put(files, File.generated(config, source.src_uri, content=with_static_policy(source.content_string)))
        log.debug("claimed %d files of unit folders", claimed)
        return files

    def on_env(self, env: Environment, **_: Any) -> Environment:
        """Give the frame its words and the place of its assets."""
        if self.serving:
            env.bytecode_cache = self.compiled
        env.globals.update(template_globals())
        return env

    def on_pre_page(self, page: MkDocsPage, **_: Any) -> MkDocsPage:
        """Spare our pages the making of a Markdown reader, since their body is HTML already."""
        if self._ours(page) is not None:
            page.render = partial(_as_it_is, page)  # type: ignore[method-assign]  # the host leaves no other place to say so
        return page

    def on_page_markdown(self, markdown: str, *, page: MkDocsPage, **_: Any) -> str:
        """Hand MkDocs the front matter of our pages and no Markdown: their body is HTML already."""
        ours = self._ours(page)
        if ours is None:
            return markdown
        page.meta = dict(ours.meta)
        if page.meta.get("search") is False:
            page.meta["search"] = {"exclude": True}
        return ""

    def on_page_content(self, html: str, *, page: MkDocsPage, **_: Any) -> str:
        """Give a search what it should find of our pages."""
        ours = self._ours(page)
        if ours is None:
            return html
        return "" if _left_out(page) else searchable(ours.body)

    @event_priority(-100)  # after the search, which takes a page's content in this event
    def on_page_context(self, context: TemplateContext, *, page: MkDocsPage, **_: Any) -> TemplateContext:
        """Give our pages their body."""
        ours = self._ours(page)
        if ours is not None:
            page.content = ours.body
        return context

    def on_post_page(self, output: str, *, page: MkDocsPage, **_: Any) -> str:
        """Write the content-security policy into every page."""
        if self.serving:
            script = get_relative_url(PREVIEW_SCRIPT, page.url)
            output = output.replace("</head>", f'<script type="module" src="{script}"></script></head>', 1)
        return with_page_policy(with_language(output, str(page.meta.get("lang", "en"))))

    def on_post_template(self, output: str, *, template_name: str, **_: Any) -> str:
        """Write the policy into pages that are no Markdown, such as 404.html."""
        return with_page_policy(output) if template_name.endswith(".html") else output

    def _build(self, config: MkDocsConfig) -> Built:
        try:
            return build_site(_root(config), self.config.only)
        except Exception:
            # A plugin that raises during a rebuild of a preview makes every page hang until the fault is mended.
            if not self.serving or self.built is None:
                raise
            log.exception("the pages could not be made; the last good ones stand")
            return self.built

    def _ours(self, page: MkDocsPage) -> Page | None:
        return getattr(page.file, "trivet_page", None)


def _as_it_is(page: MkDocsPage, config: MkDocsConfig, files: Files) -> None:
    """Stand in for the host's rendering of a page whose body comes later; links of the guide may point at any of its ids."""
    page.content = ""
    page.present_anchor_ids = ids(page.file.trivet_page.body)  # type: ignore[attr-defined]


def _left_out(page: MkDocsPage) -> bool:
    """Whether a search leaves the page out, so that there is nothing to give it."""
    asked = page.meta.get("search")
    return isinstance(asked, dict) and bool(asked.get("exclude"))


def _root(config: MkDocsConfig) -> Path:
    return Path(config.config_file_path or ".").resolve().parent


def _after_overrides(config: MkDocsConfig) -> int:
    return 1 if config.theme.custom_dir else 0


def _claim(files: Files, docs_dir: str) -> int:
    """Take every file of a unit folder, the home page's stand-in and the sitemap out of MkDocs' hands."""
    in_units = [f for f in files if f.src_dir == docs_dir and "/" in f.src_uri and not f.src_uri.startswith(GUIDE)]
    claimed = [*in_units, *(f for f in files if f.src_uri in ("index.md", SITEMAP))]
    for file in claimed:
        files.remove(file)
    return len(claimed)


def _withhold(files: Files, built: Built) -> None:
    """Take out files with an error, such as a list of names in the guide's folder: a preview goes on beside errors and would serve them."""
    faulty = {problem.place.file for problem in built.errors}
    for file in [f for f in files if not f.is_documentation_page() and UNITS + f.src_uri in faulty]:
        files.remove(file)


def _page_file(page: Page, config: MkDocsConfig) -> File:
    """Return the MkDocs file of a page; a unit's own page keeps its source's name, for the edit link."""
    source = "units.md" if page.path == UNITS else posixpath.join(page.path.removeprefix(UNITS), "index.md")
    file = File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV)
    file.dest_uri = posixpath.join(page.path, "index.html")
    file.edit_uri = file.src_uri if page.meta.get("kind") == "unit" else None
    file.trivet_page = page  # type: ignore[attr-defined]
    return file


def _put(files: Files, file: File) -> None:
    old = files.get_file_from_path(file.src_uri)
    if old is not None:
        files.remove(old)
    files.append(file)


def _report(built: Built, serving: bool) -> None:
    """Log each problem; stop a build once, after all of them."""
    for problem in built.problems:
        level = min(_LEVELS[problem.severity], logging.WARNING) if serving else _LEVELS[problem.severity]
        log.log(level, "%s", one_line(problem))
    if built.errors and not serving:
        raise PluginError(f"{len(built.errors)} errors stop this build; `trivet check` lists them with the line to write")
