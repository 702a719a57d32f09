"""The dark modules of a QR code (ISO/IEC 18004:2015, byte mode), quickly: a department's site draws hundreds of them.

Everything that depends on the version alone is worked out once: where each bit of the message goes, and the modules that are the same in
every code. A code is then one long division for each block and one rearranging of bits.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from operator import itemgetter

MASK = 2
"""The pattern laid over every code: columns 0, 3, 6, … turned round (table 10). The standard rates all eight and takes the most even one,
and a reader undoes whichever it finds.

To rate them costs more than the code does. Over addresses like ours this one's rating is the best on average (lower is better: 1615,
against 1551 where the best is chosen each time).
"""

VERSIONS = 40
_LEVELS = "MQH"
_LEVEL_BITS = {"M": 0b00, "Q": 0b11, "H": 0b10}
# Table 9, versions 1 to 40: check bytes of each block, and how many blocks.
_CHECK_BYTES = {
    "M": "10 16 26 18 24 16 18 22 22 26 30 22 22 24 24 28 28 26 26 26 26 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28 28",
    "Q": "13 22 18 26 18 24 18 22 20 24 28 26 24 20 30 24 28 28 26 30 28 30 30 30 30 28 30 30 30 30 30 30 30 30 30 30 30 30 30 30",
    "H": "17 28 22 16 22 28 26 26 24 28 24 28 22 24 24 30 28 28 26 28 30 24 30 30 30 30 30 30 30 30 30 30 30 30 30 30 30 30 30 30",
}
_BLOCKS = {
    "M": "1 1 1 2 2 4 4 4 5 5 5 8 9 9 10 10 11 13 14 16 17 17 18 20 21 23 25 26 28 29 31 33 35 37 38 40 43 45 47 49",
    "Q": "1 1 2 2 4 4 6 6 8 8 8 10 12 16 12 17 16 18 21 20 23 23 25 27 29 34 34 35 38 40 43 45 48 51 53 56 59 62 65 68",
    "H": "1 1 2 4 4 4 5 6 8 8 11 11 16 16 18 16 19 21 25 25 25 34 30 32 35 37 40 42 45 48 51 54 57 60 63 66 70 74 77 81",
}


def qr_rows(text: str) -> list[str]:
    """Return the rows of the code for `text`, a "1" for each dark module, without the quiet zone.

    The smallest version with error correction M or, where the same version holds it, better. ValueError: more than it can hold.
    """
    data = _bytes(text)
    version = next((version for version in range(1, VERSIONS + 1) if _fits(data, version, "M")), 0)
    if not version:
        raise ValueError(f"{len(data)} bytes are more than a QR code holds")
    level = [level for level in _LEVELS if _fits(data, version, level)][-1]
    message = _interleaved(_stream(data, version, level), version, level)
    take, base = _layout(version, level)
    bits = f"{int.from_bytes(message):0{8 * len(message)}b}0"
    side = _side(version)
    modules = f"{int(''.join(take(bits)), 2) ^ base:0{side * side}b}"
    return [modules[at : at + side] for at in range(0, side * side, side)]


def _bytes(text: str) -> bytes:
    """Latin-1, a reader's default (section 7.3.5), or UTF-8 where that does not hold the text."""
    try:
        return text.encode("iso-8859-1")
    except UnicodeEncodeError:
        return text.encode("utf-8")


def _count_bits(version: int) -> int:
    return 8 if version < 10 else 16  # table 3


def _fits(data: bytes, version: int, level: str) -> bool:
    return 4 + _count_bits(version) + 8 * len(data) <= 8 * _data_bytes(version, level)


@cache
def _blocks(version: int, level: str) -> tuple[int, int]:
    """Return how many blocks there are, and the check bytes of each."""
    return int(_BLOCKS[level].split()[version - 1]), int(_CHECK_BYTES[level].split()[version - 1])


def _data_bytes(version: int, level: str) -> int:
    blocks, check = _blocks(version, level)
    return _all_bytes(version) - blocks * check


@cache
def _all_bytes(version: int) -> int:
    """How many bytes a version holds: its modules without those of a function."""
    return len(_zigzag(version, _functions(version))) // 8


def _stream(data: bytes, version: int, level: str) -> bytes:
    """Return mode, count, data, terminator and padding (section 7.4)."""
    bits, size = (0b0100 << _count_bits(version)) | len(data), 4 + _count_bits(version) + 8 * len(data)
    bits = (bits << 8 * len(data)) | int.from_bytes(data)
    room = 8 * _data_bytes(version, level)
    end = min(4, room - size)
    end += -(size + end) % 8
    filled = (bits << end).to_bytes((size + end) // 8)
    return filled + (b"\xec\x11" * room)[: room // 8 - len(filled)]


def _interleaved(stream: bytes, version: int, level: str) -> bytes:
    """Return data and check bytes of all blocks in turn (section 7.6); the last blocks are the longer ones."""
    count, check = _blocks(version, level)
    short, longer = divmod(len(stream), count)
    blocks, at = [], 0
    for number in range(count):
        size = short + (number >= count - longer)
        blocks.append(stream[at : at + size])
        at += size
    checks = [_check(block, check) for block in blocks]
    data = bytes(block[place] for place in range(short + 1) for block in blocks if place < len(block))
    return data + bytes(each[place] for place in range(check) for each in checks)


def _check(block: bytes, count: int) -> bytes:
    """Return the Reed-Solomon check bytes of a block (section 7.5.2): the remainder of a division, byte for byte."""
    table, low, top = _multiples(count), (1 << 8 * count - 8) - 1, 8 * count - 8
    rest = 0
    for byte in block:
        rest = (rest & low) << 8 ^ table[rest >> top ^ byte]
    return rest.to_bytes(count)


@cache
def _multiples(count: int) -> tuple[int, ...]:
    """Return each byte's multiple of the generator polynomial of `count` roots, without its first term, as one number."""
    generator = [1]
    root = 1
    for _ in range(count):
        generator = [a ^ _times(b, root) for a, b in zip([*generator, 0], [0, *generator], strict=True)]
        root = _times(root, 2)
    return tuple(int.from_bytes(bytes(_times(term, byte) for term in generator[1:])) for byte in range(256))


def _times(a: int, b: int) -> int:
    """Multiply in GF(256) modulo x^8 + x^4 + x^3 + x^2 + 1 (section 7.5.2)."""
    found = 0
    while b:
        found ^= a if b & 1 else 0
        a = a << 1 ^ (0x11D if a & 0x80 else 0)
        b >>= 1
    return found


def _side(version: int) -> int:
    return 17 + 4 * version


@cache
def _layout(version: int, level: str) -> tuple[Callable[[str], tuple[str, ...]], int]:
    """Return what puts a message's bits (and one 0 after them) into reading order, and all modules that no message changes, as a number."""
    side = _side(version)
    dark = _functions(version) | _format(version, level)
    places = _zigzag(version, dark)
    size = len(places) // 8 * 8
    order = [size] * (side * side)
    for bit, (x, y) in enumerate(places[:size]):
        order[y * side + x] = bit
    base = 0
    masked = dict.fromkeys(places)
    for y in range(side):
        for x in range(side):
            base = base << 1 | (x % 3 == 0 if (x, y) in masked else dark[x, y])
    return itemgetter(*order), base


def _zigzag(version: int, taken: dict[tuple[int, int], bool]) -> list[tuple[int, int]]:
    """Return the modules of a message in order (section 7.7.3): in pairs of columns from the right, up and down in turn."""
    side = _side(version)
    rights = [*range(side - 1, 6, -2), 5, 3, 1]  # the upright timing pattern in column 6 is passed over
    rows = range(side - 1, -1, -1), range(side)
    return [(x, y) for turn, right in enumerate(rights) for y in rows[turn % 2] for x in (right, right - 1) if (x, y) not in taken]


@cache
def _functions(version: int) -> dict[tuple[int, int], bool]:
    """Return the modules of finders, timing, alignment and version, dark or light, and the places of the format (sections 6.3 and 7.10)."""
    side = _side(version)
    found: dict[tuple[int, int], bool] = {}
    for at in range(side):
        found[at, 6] = found[6, at] = at % 2 == 0
    centers = _alignment(version)
    for x in centers:
        for y in centers:
            if (x == 6) + (y == 6) + (x == centers[-1]) + (y == centers[-1]) < 2 or (x == y == centers[-1]):
                found |= {(x + i, y + j): max(abs(i), abs(j)) != 1 for i in range(-2, 3) for j in range(-2, 3)}
    for x, y in ((3, 3), (side - 4, 3), (3, side - 4)):
        corner = {(x + i, y + j): max(abs(i), abs(j)) not in (2, 4) for i in range(-4, 5) for j in range(-4, 5)}
        found |= {place: dark for place, dark in corner.items() if min(place) >= 0 and max(place) < side}
    found |= dict.fromkeys(_format(version, "M"), False)
    if version >= 7:
        code = version << 12 | _remainder(version << 12, 0x1F25)
        for bit in range(18):
            near, far = bit // 3, side - 11 + bit % 3
            found[near, far] = found[far, near] = bool(code >> bit & 1)
    return found


def _alignment(version: int) -> list[int]:
    """Return the rows, and columns, of the alignment patterns (annex E): evenly apart from the far edge, all in even steps."""
    if version == 1:
        return []
    count = version // 7 + 2
    step = 26 if version == 32 else (version * 4 + count * 2 + 1) // (count * 2 - 2) * 2
    return [6, *sorted(_side(version) - 7 - step * number for number in range(count - 1))]


def _format(version: int, level: str) -> dict[tuple[int, int], bool]:
    """Return the modules that tell level and mask, twice, and the one that is always dark (section 7.9)."""
    side = _side(version)
    said = _LEVEL_BITS[level] << 3 | MASK
    code = (said << 10 | _remainder(said << 10, 0x537)) ^ 0b101010000010010
    found = {(8, side - 8): True}
    for bit in range(15):
        dark = bool(code >> bit & 1)
        first = (8, bit + (bit > 5)) if bit < 8 else (14 - bit + (bit == 8), 8)
        second = (side - 1 - bit, 8) if bit < 8 else (8, side - 15 + bit)
        found[first] = found[second] = dark
    return found


def _remainder(value: int, divisor: int) -> int:
    """Divide polynomials over GF(2) (annexes C and D)."""
    while value.bit_length() >= divisor.bit_length():
        value ^= divisor << value.bit_length() - divisor.bit_length()
    return value
