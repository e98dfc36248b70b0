"""The offset from UTC of a time on the wall, where the house's time zone leaves no doubt about it."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo


def offset_at(moment: datetime, zone: str) -> str | None:
    """Return the offset of a wall-clock time in a time zone, or None when it can't be told.

    When clocks are put back an hour is shown twice, and when they are put forward one is never shown.

    Args:
        moment: Time on the wall.
        zone: IANA name.

    Example:
        >>> offset_at(datetime(2026, 3, 16, 8, 12), "America/New_York")
        '-04:00'
        >>> offset_at(datetime(2026, 11, 1, 1, 30), "America/New_York") is None
        True
    """
    early, late = (moment.replace(tzinfo=ZoneInfo(zone), fold=fold).utcoffset() for fold in (0, 1))
    if early is None or early != late or early % timedelta(minutes=1):
        return None
    minutes = int(early / timedelta(minutes=1))
    sign, minutes = "-" if minutes < 0 else "+", abs(minutes)
    return f"{sign}{minutes // 60:02}:{minutes % 60:02}"


def instant(moment: datetime, offset: str | None, zone: str) -> datetime:
    """Return when it was in UTC, for putting photos in order; without an offset the house's clock is taken.

    Args:
        moment: Time on the wall.
        offset: Offset from UTC as ``-04:00``, or None.
        zone: IANA name.
    """
    if offset is None:
        return _in_utc(moment.replace(tzinfo=ZoneInfo(zone)))
    return _in_utc(datetime.fromisoformat(f"{moment.isoformat()}{offset}"))


def span(moment: datetime, offset: str | None, zone: str) -> tuple[datetime, datetime]:
    """Return the earliest and the latest instant that a time on the wall can mean, in UTC.

    They differ only where no offset was written down, in the hour that clocks show twice or leave out.

    Args:
        moment: Time on the wall.
        offset: Offset from UTC as ``-04:00``, or None for the house's clock.
        zone: IANA name.
    """
    both = [instant(moment.replace(fold=fold), offset, zone) for fold in (0, 1)]
    return min(both), max(both)


def day_in(moment: datetime, zone: str) -> date:
    """Return the day on the house's calendar at an instant.

    Args:
        moment: Instant in UTC.
        zone: IANA name.
    """
    try:
        return moment.astimezone(ZoneInfo(zone)).date()
    except OverflowError:
        return moment.date()


def _in_utc(moment: datetime) -> datetime:
    try:
        return moment.astimezone(UTC)
    except OverflowError:  # a camera that was never set may write the year 1
        return moment.replace(tzinfo=UTC)
