"""Two hundred learners of one set: all distinct, classes balanced within one, and the same again from the name alone."""

from __future__ import annotations

from collections import Counter

from tests.exam_sets import small_set
from tests.sets.test_sets import DRAWN
from trainer.cases.drawing.random_case import is_group
from trainer.sets.items import items_of

LEARNERS = 200


def main() -> None:
    case_set = small_set(DRAWN.replace("difficulty: [1]", "difficulty: [1, 2, 3]")).case_set
    draw = case_set.lines[0]
    drawn = {f"learner {number}": items_of(case_set, f"learner {number}") for number in range(LEARNERS)}
    distinct = {tuple(item.case.digest for item in items) for items in drawn.values()}
    worst = 0
    for items in drawn.values():
        single = Counter(i.case.faults[0].location for i in items if i.case.faults and not is_group(i.case.faults[0]))
        counts = [single[place] for place in draw.places]
        worst = max(worst, max(counts) - min(counts))
        assert sum(not i.case.faults for i in items) == 2
        assert sum(any(is_group(f) for f in i.case.faults) for i in items) == 1
    again = all(items_of(case_set, name) == items for name, items in list(drawn.items())[::10])
    print(
        f"{len(distinct)} of {LEARNERS} learners' sets are distinct; classes within {worst}; drawn again alike: {again}"
    )
    assert len(distinct) == LEARNERS
    assert worst <= 1
    assert again


if __name__ == "__main__":
    main()
