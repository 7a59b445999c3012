"""Random choices that are the same for the same seed on every Python."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")


class Dice:
    """Draws everything from `random.random()`, the one method whose sequence Python promises to
    keep for a given seed."""

    def __init__(self, seed: int) -> None:
        self._next = random.Random(seed).random

    def chance(self, share: float) -> bool:
        return self._next() < share

    def pick(self, choices: Sequence[T]) -> T:
        return choices[int(self._next() * len(choices))]

    def weighted(self, choices: Sequence[tuple[T, float]]) -> T:
        spot = self._next() * sum(weight for _, weight in choices)
        for choice, weight in choices:
            spot -= weight
            if spot < 0:
                return choice
        return choices[-1][0]

    def whole(self, least: int, most: int) -> int:
        """From `least` to `most`, both included."""
        return least + int(self._next() * (most - least + 1))

    def length(self, least: float, most: float, step: float) -> float:
        """A multiple of `step` between the two."""
        first, last = math.ceil(least / step - 1e-9), math.floor(most / step + 1e-9)
        return self.whole(first, max(first, last)) * step

    def shuffled(self, items: Sequence[T]) -> list[T]:
        mixed = list(items)
        for i in range(len(mixed) - 1, 0, -1):
            j = int(self._next() * (i + 1))
            mixed[i], mixed[j] = mixed[j], mixed[i]
        return mixed
