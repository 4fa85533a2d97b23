"""A flipped bit at 10,000 random places of a large bundle, and at every byte of a small sealed set and bundle: seen each time."""

from __future__ import annotations

import tempfile
from pathlib import Path

import numpy as np

from tests.exam_sets import sealed_set, sitting_of, work_through
from trainer.errors import WrongCallError
from trainer.practice.attempt.events import Away
from trainer.records.store.bundle import BundleError, bundle_bytes, read_bundle
from trainer.records.store.store import open_store
from trainer.sets import sealed as sealing

PLACES = 10_000


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path, exam = sealed_set(folder)
        store = open_store(None)
        sitting = sitting_of(exam, store)
        work_through(sitting, [True])
        case_set = exam.case_set

        def bundled() -> bytes:
            return bundle_bytes(store, case_set.id, case_set.name, "ann", exam.key, "t")

        def seen(content: bytes) -> bool:
            try:
                read_bundle(content, case_set.id, exam.key)
            except BundleError:
                return True
            return False

        small = bundled()
        every = sum(seen(small[:at] + bytes([small[at] ^ (1 << at % 8)]) + small[at + 1 :]) for at in range(len(small)))
        print(f"small bundle: {every} of {len(small)} bytes seen")
        from tests.exam_sets import seated

        desk, _item = seated(sitting)
        for _number in range(400):  # an attempt of many events
            desk.note(Away())
        large = bundled()
        rng = np.random.default_rng(11)
        hits = 0
        for at, bit in zip(rng.integers(0, len(large), PLACES), rng.integers(0, 8, PLACES), strict=True):
            hits += seen(large[:at] + bytes([large[at] ^ (1 << int(bit))]) + large[at + 1 :])
        print(f"large bundle of {len(large)} bytes: {hits} of {PLACES} flipped bits seen")
        whole = path.read_bytes()
        sealing.key_of = lambda _passphrase, _salt: exam.key  # type: ignore[assignment]  # the key once, not 12,000 times
        changed, caught = folder / "changed", 0
        for at in range(len(whole)):
            changed.write_bytes(whole[:at] + bytes([whole[at] ^ (1 << at % 8)]) + whole[at + 1 :])
            try:
                sealing.unseal(changed, "any")
            except WrongCallError:
                caught += 1
        print(f"sealed set: {caught} of {len(whole)} bytes seen")
        assert (every, hits, caught) == (len(small), PLACES, len(whole))


if __name__ == "__main__":
    main()
