"""Every sentence in English, by id."""

from trainer.words.english import (
    course,
    errors,
    exercises,
    faults,
    general,
    measuring,
    reasoning,
    records,
    sets,
    station,
    window,
)

TEXTS = {
    **general.TEXTS,
    **faults.TEXTS,
    **measuring.TEXTS,
    **errors.TEXTS,
    **reasoning.TEXTS,
    **window.TEXTS,
    **station.TEXTS,
    **sets.TEXTS,
    **records.TEXTS,
    **exercises.TEXTS,
    **course.TEXTS,
}
