"""Who asks, and which kinds of work are asked."""

INSPECTOR, ADJUSTER, HOMEOWNER, OFFICE = "inspector", "adjuster", "homeowner", "office"

PATCH = frozenset({"patch"})
EVERY_KIND = frozenset({"patch", "section", "re-roof", "recover"})

#: A patch is asked for a dozen things, not for everything.
MORE_THAN_A_PATCH = EVERY_KIND - PATCH
TIED_INTO_OLD = frozenset({"patch", "section"})

#: What a whole new covering lays bare, and a patch does not.
OLD_DECK_BARE = frozenset({"section", "re-roof"})
