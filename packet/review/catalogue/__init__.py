"""The catalogue: what each kind of work is asked, at which stage it shows, and what hides it.

One module a part of the work, in its order. Limits are not here: rules are rows in ``shared/codes/``, found
by the words in ``asks``; where the need comes from and which shots show it stand in
``shared/requirements.yaml``. To add one, add an entry, its line there, its title and what to photograph in
``shared/words/`` (``requirements``, ``shots``), rows where a rule limits it, and a test.
"""

from packet.review.catalogue.before import BEFORE
from packet.review.catalogue.covering import COVERING
from packet.review.catalogue.deck import DECK
from packet.review.catalogue.dry_in import DRY_IN
from packet.review.catalogue.finish import FINISH
from packet.review.model import Requirement

CATALOGUE: tuple[Requirement, ...] = (*BEFORE, *DECK, *DRY_IN, *COVERING, *FINISH)
BY_ID = {requirement.id: requirement for requirement in CATALOGUE}
