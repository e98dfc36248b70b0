"""Which inspection, permit or certificate a job needs, why, and how the days stand."""

from packet.review.duties.approvals import approval_findings, standings
from packet.review.duties.corrections import correction_findings
from packet.review.duties.judge import KINDS, duties
from packet.review.duties.model import Bound, DayCheck, Duty, Reason, Rule, Standing, Stated
from packet.review.duties.papers import duty_findings

__all__ = [
    "KINDS",
    "Bound",
    "DayCheck",
    "Duty",
    "Reason",
    "Rule",
    "Standing",
    "Stated",
    "approval_findings",
    "correction_findings",
    "duties",
    "duty_findings",
    "standings",
]
