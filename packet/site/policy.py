"""What a page may load and run: the hashes in its policy are worked out when it is built.

The policy itself is a line of the theme, ``templates/theme/main.html``. Scripts that the theme writes into
every page are allowed by their hash; a script that stands in a page's own content never is.
"""

import base64
import hashlib
import re

#: Stands in the policy of a page until its frame is known; ``config.extra.inline_scripts`` in the theme.
PLACEHOLDER = "@inline-scripts@"

_INLINE_SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)


def with_hashes(page: str, content: str) -> str:
    """Return a finished page with the hashes of its frame's inline scripts in its policy.

    Args:
        page: The page as the theme wrote it.
        content: Its own content, which is a part of it as it stands.
    """
    frame = page.replace(content, "", 1)
    scripts = dict.fromkeys(found[1] for found in _INLINE_SCRIPT.finditer(frame))
    return page.replace(PLACEHOLDER, " ".join(map(_source, scripts)), 1)


def _source(script: str) -> str:
    """Return the source expression that allows one script."""
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    return f"'sha256-{digest}'"
