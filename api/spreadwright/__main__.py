"""``python -m spreadwright``."""

from spreadwright.cli import main

if __name__ == "__main__":
    main()
