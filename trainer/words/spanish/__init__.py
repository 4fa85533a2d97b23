"""Every sentence in Spanish, by id."""

from trainer.words.spanish import course, errors, exercises, general, reasoning, records, sets, station, window

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
