"""Papers and visits a job needs that are not there, or came on the wrong side of the work."""

from collections.abc import Iterator, Sequence

from packet.review.duties.model import Duty
from packet.review.model import Finding

#: Asked for by a requirement of the catalogue, so that it is not open twice.
_ASKED_ELSEWHERE = frozenset({"final-visit"})


def duty_findings(duties: Sequence[Duty]) -> Iterator[Finding]:
    """Yield what a needed duty lacks once its time is over, and days that are not in order.

    Args:
        duties: What the job needs, with its days compared.
    """
    for duty in duties:
        if duty.word != "needed":
            continue
        lacking = any(check.word == "not_recorded" and not check.paper for check in duty.days)
        if lacking and not duty.stated and duty.id not in _ASKED_ELSEWHERE:
            yield Finding("paper-missing", duty.id, (), {})
        late = [check for check in duty.days if check.word == "out_of_order"]
        if late:
            pairs = ((check.day, check.against) for check in late)
            days = [day.isoformat() for pair in pairs for day in pair if day]
            yield Finding("paper-out-of-order", duty.id, (), {"days": ", ".join(days)})
