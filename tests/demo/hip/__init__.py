"""Demo job 26-052: the whole roof of a hip house, its photo log and the views of its photos."""

from .entries import ENTRIES as ENTRIES
from .views import VIEWS as VIEWS
