"""How a page reaches a site: as MkDocs pages or as files in a folder."""
