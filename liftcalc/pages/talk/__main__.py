"""Start the talk, or write its sheet of notes: ``python -m liftcalc.pages.talk``."""

from liftcalc.pages.talk import main

if __name__ == "__main__":
    main()
