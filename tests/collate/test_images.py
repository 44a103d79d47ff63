"""Images dealt round over makes and papers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.collate.images import deal_images


def makes(most: int, each: int = 4) -> st.SearchStrategy[list[list[str]]]:
    """Makes of as many parts each; every part meets a, b or c."""
    return st.integers(1, each).flatmap(
        lambda count: st.lists(
            st.lists(st.sampled_from("abc"), min_size=count, max_size=count), min_size=1, max_size=most
        )
    )


def are_even(dealt: Sequence[int], images: int) -> bool:
    """Whether each image comes as often as another, or once more."""
    counts = [dealt.count(image) for image in range(images)]
    return max(counts) - min(counts) <= 1


@settings(max_examples=400, deadline=None)
@given(makes(12), st.integers(1, 5))
def test_images_are_even_over_all_in_a_make_and_over_what_they_meet(
    meets: list[list[str]], images: int
) -> None:
    """Counts differ by one at most, of all parts, of those of one make, and of those that meet one paper."""
    dealt = deal_images(meets, images)
    assert [len(make) for make in dealt] == [len(make) for make in meets]
    assert are_even([image for make in dealt for image in make], images)
    assert all(are_even(make, images) for make in dealt)
    pairs = [pair for things, got in zip(meets, dealt, strict=True) for pair in zip(things, got, strict=True)]
    for thing in "abc":
        assert are_even([image for one, image in pairs if one == thing], images)


@settings(max_examples=60, deadline=None)
@given(makes(3, 2), st.integers(2, 3))
def test_no_pair_comes_twice_while_that_can_be_helped(meets: list[list[str]], images: int) -> None:
    """Of all ways to deal the images, none has fewer pairs of an image and a paper that come again."""
    things = [thing for make in meets for thing in make]
    mine = [image for make in deal_images(meets, images) for image in make]
    fewest = min(repeats(things, some) for some in product(range(images), repeat=len(things)))
    assert repeats(things, mine) == fewest


def repeats(things: Sequence[str], dealt: Sequence[int]) -> int:
    """How often a pair comes that has been there before."""
    return sum(times - 1 for times in Counter(zip(things, dealt, strict=True)).values())


def test_three_images_over_three_papers() -> None:
    """Nine makes, three of each paper: every pair once."""
    meets = [[thing] for thing in "aaabbbccc"]
    assert deal_images(meets, 3) == [[0], [1], [2]] * 3


def test_images_go_on_where_the_paper_before_left_off() -> None:
    """Two of each paper: the first gets images 1 and 2, the next 3 and 1."""
    assert deal_images([["a"], ["b"], ["a"], ["b"]], 3) == [[0], [2], [1], [0]]
