"""`python -m trainer` is the same as `injector-trainer`."""

from trainer.commands.entry import main

main()
