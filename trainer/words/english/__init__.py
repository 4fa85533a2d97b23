"""Every sentence in English, by id."""

from trainer.words.english import course, errors, exercises, general, reasoning, records, sets, station, window

TEXTS = {
    **general.TEXTS,
    **errors.TEXTS,
    **reasoning.TEXTS,
    **window.TEXTS,
    **station.TEXTS,
    **sets.TEXTS,
    **records.TEXTS,
    **exercises.TEXTS,
    **course.TEXTS,
}
