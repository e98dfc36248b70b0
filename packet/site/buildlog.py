"""What a build sees of the process and what it reports: environment variables and the collected log."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager

from packet.environ import environment


class BuildLog(logging.Handler):
    """Collects warnings and errors.

    Attributes:
        reasons: The words of each record, in order.
    """

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.reasons: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep one record's words."""
        self.reasons.append(record.getMessage())


@contextmanager
def collected_log() -> Iterator[BuildLog]:
    """Collect what MkDocs logs and print none of it.

    Strict mode counts log records, so the logger's level must let warnings through: a quieter logger
    would make a broken link pass as success.
    """
    logger, log = logging.getLogger("mkdocs"), BuildLog()
    level, propagate, disabled = logger.level, logger.propagate, logger.disabled
    logger.addHandler(log)
    logger.setLevel(logging.WARNING)
    logger.propagate, logger.disabled = False, False
    try:
        yield log
    finally:
        logger.removeHandler(log)
        logger.setLevel(level)
        logger.propagate, logger.disabled = propagate, disabled


@contextmanager
def build_variables(epoch: int) -> Iterator[None]:
    """Set the build date, and silence the theme's notice about later versions, for the time of one build.

    Args:
        epoch: Build date [seconds since 1970, UTC].
    """
    with environment({"SOURCE_DATE_EPOCH": str(epoch), "NO_MKDOCS_2_WARNING": "1"}):
        yield
