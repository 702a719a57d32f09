"""Calendar files (RFC 5545): lines, events, and on which dates an event falls.

Written for files that others make: everything is bounded, and whatever can't be read is a problem with its line.
"""
