"""Sound records with their bytes spoilt: slips of the hand, of editors and of discs."""

from __future__ import annotations

from typing import Final

from hypothesis import strategies as st

from records.odd_texts import Draw, as_often
from records.seeds import Files, archives, home_of, kind_in, words

_SIGNS: Final = [
    *(b":", b": ", b"- ", b"-", b"?", b"? ", b"[", b"]", b"{", b"}", b",", b"#", b" #", b"&a ", b"*a", b"!"),
    *(b"!!str ", b"|", b">", b"'", b'"', b"%", b"@", b"`", b"---\n", b"...\n", b"%YAML 1.1\n", b"<<: "),
    *(b"\t", b"\r", b"\r\n", b"\n", b"\x00", b"\x1b", b"\x7f", b"\xff", b"\xc3", b"\xc2\x85"),
    *(b"\xe2\x80\xa8", b"\xef\xbb\xbf", b"\xed\xa0\x80", b"\xf4\x90", b"\xe2\x80\xae", b"\xcc\x81"),
    *(b'"\\x1c"', b'"\\0"', b'"\\ud800"', b'"\\U0010ffff"', b'"\\', b"\\N", b"~", b"[key]: x\n"),
]
ENCODINGS: Final = ("cp1252", "latin-1", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-8-sig", "utf-7")


def _put_in(draw: Draw, data: bytes, at: int) -> bytes:
    new = draw(st.binary(min_size=1, max_size=4) | st.sampled_from(_SIGNS))
    return data[:at] + new + data[at:]


def _leave_out(draw: Draw, data: bytes, at: int) -> bytes:
    return data[:at] + data[at + draw(st.integers(1, 40)) :]


def _flip(draw: Draw, data: bytes, at: int) -> bytes:
    bit = 1 << draw(st.integers(0, 7))
    return data[:at] + bytes(one ^ bit for one in data[at : at + 1]) + data[at + 1 :]


def _break_off(draw: Draw, data: bytes, at: int) -> bytes:
    return data[:at]


def _swap_lines(draw: Draw, data: bytes, at: int) -> bytes:
    lines = data.splitlines(keepends=True)
    one, other = at % max(len(lines), 1), draw(st.integers(0, 60)) % max(len(lines), 1)
    if lines:
        lines[one], lines[other] = lines[other], lines[one]
    return b"".join(lines)


def _repeat_line(draw: Draw, data: bytes, at: int) -> bytes:
    lines = data.splitlines(keepends=True)
    number, times = at % max(len(lines), 1), draw(st.integers(2, 60))
    return b"".join([*lines[:number], *lines[number : number + 1] * times, *lines[number + 1 :]])


def _indent(draw: Draw, data: bytes, at: int) -> bytes:
    start = data.rfind(b"\n", 0, at) + 1
    return data[:start] + draw(st.sampled_from([b" ", b"  ", b"\t", b"\xc2\xa0", b"      "])) + data[start:]


def _splice(draw: Draw, data: bytes, at: int) -> bytes:
    other = draw(st.sampled_from([record for files in archives() for record in files.values()]))
    start = draw(st.integers(0, len(other)))
    return data[:at] + other[start : start + draw(st.integers(0, 300))] + data[at:]


def _recode(draw: Draw, data: bytes, at: int) -> bytes:
    text = data.decode(errors="replace").replace("\ufffd", "é")
    return text.encode(draw(st.sampled_from(ENCODINGS)), errors="replace")


def _run_on(draw: Draw, data: bytes, at: int) -> bytes:
    """The same again and again: a line of any length, or of any depth."""
    unit = draw(st.sampled_from([*_SIGNS, b"a", b" ", b"9", b"a ", b"a: ", b"- - ", b"[[", b"{a: ", b"a:\n"]))
    times = draw(st.sampled_from([3, 13, 200, 2_000, 2_000, 60_000]))
    return data[:at] + unit * times + data[at:]


def _nest(draw: Draw, data: bytes, at: int) -> bytes:
    """Groups inside of groups, each a step further in, or all in one line."""
    deep = draw(st.sampled_from([5, 11, 12, 13, 14, 60, 500, 2_000]))
    step = draw(st.sampled_from([b"a:", b"-", b"?"]))
    block = b"".join(b" " * level + step + b"\n" for level in range(min(deep, 500)))
    compact = step.replace(b"a:", b"-") + b" "
    flow = b"x: " + b"[" * deep + b"]" * deep + b"\n"
    return data[:at] + draw(st.sampled_from([block, compact * deep, flow])) + data[at:]


def _other_word(draw: Draw, data: bytes, at: int) -> bytes:
    start, end = data.rfind(b" ", 0, at) + 1, data.find(b"\n", at)
    word = draw(st.sampled_from(words())).encode()
    return data[:start] + word + data[end if end >= 0 else len(data) :]


_CHANGES: Final = (
    *(_put_in, _leave_out, _flip, _break_off, _swap_lines, _repeat_line, _indent, _splice),
    *(_other_word, _other_word, _recode, _run_on, _nest),
)


@st.composite
def spoilt(draw: Draw, record: bytes) -> bytes:
    """A record with one to four changes."""
    for _ in range(draw(st.integers(1, 4))):
        change = draw(st.sampled_from(_CHANGES))
        record = change(draw, record, draw(st.integers(0, len(record))))
    return record


@st.composite
def spoilt_archives(draw: Draw) -> Files:
    """An archive with one file of any bytes at all, or of a record that is spoilt."""
    files = dict(draw(st.sampled_from(archives())))
    path = draw(st.sampled_from([path for path in files if kind_in(path)]))
    kind = kind_in(path)
    any_bytes = st.binary(max_size=60) | st.text(max_size=40).map(str.encode)
    data = draw(as_often(*[spoilt(files[path])] * 7, any_bytes))
    files[draw(st.sampled_from([path, home_of(kind, "one-more")]))] = data
    return files
