"""Start the app view: ``python -m liftcalc.pages.app_view``."""

from liftcalc.pages.app_view import main

if __name__ == "__main__":
    main()
