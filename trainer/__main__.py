"""`python -m trainer` is the same as `injector-trainer`."""

from trainer.commands.entry import run

if __name__ == "__main__":  # a worker process reads this file too, and must not begin again
    run()
