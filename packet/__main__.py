"""Run the command as ``python -m packet``."""

from packet.cli.main import run

if __name__ == "__main__":
    run()
