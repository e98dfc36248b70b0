"""The library: codes, tables, products, stages and care notes a packet may cite, packaged or the office's."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from packet import figure
from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model
from packet.reference.access import AccessFactEntry, AccessFile
from packet.reference.amendments import amended, amendment_problems, chain
from packet.reference.avoid import AvoidFile, read_avoided
from packet.reference.checks import code_problems, product_problems, reading_problems, unknown_source
from packet.reference.files import misnamed, yaml_files
from packet.reference.match import CodeRow, Match, lifted, match, row_of
from packet.reference.models import (
    CareFile,
    CareNote,
    CodeFile,
    Reading,
    RequirementNote,
    RequirementsFile,
    SourceEntry,
    SourcesFile,
    Stage,
    StagesFile,
    TableFile,
)
from packet.reference.products import Product, ProductFile, product_of
from packet.reference.table import Table, build
from packet.reference.when import Facts


@dataclass
class Library:
    """Reference data of one packet: parsed on first use, and it remembers which files were used.

    Load one for each packet, so that ``digests`` names the files that packet rests on and no others; a file
    whose bytes did not change is parsed once a process.

    Attributes:
        folders: ``shared/`` folders, the packaged one first.
    """

    folders: tuple[Path, ...]
    _paths: dict[str, dict[str, Path]] = field(default_factory=dict, repr=False)
    _sources: dict[str, SourceEntry] = field(default_factory=dict, repr=False)
    _codes: dict[str, tuple[ReadFile[Any], tuple[CodeRow, ...]]] = field(default_factory=dict, repr=False)
    _tables: dict[str, tuple[ReadFile[Any], Table]] = field(default_factory=dict, repr=False)
    _products: dict[str, tuple[ReadFile[Any], Product]] = field(default_factory=dict, repr=False)
    _readings: dict[str, ReadFile[Any]] = field(default_factory=dict, repr=False)
    _used: dict[Path, str] = field(default_factory=dict, repr=False)
    _asked: dict[tuple[str, ...], dict[str, list[CodeRow]]] = field(default_factory=dict, repr=False)

    @classmethod
    def load(cls, folders: Sequence[Path]) -> "Library":
        """Return the library of a packaged ``shared/`` and the office's own.

        The office's files are read and checked at once; packaged ones, which the tests check, on first use.

        Args:
            folders: The packaged folder first, then the office's.

        Raises:
            Refused: An office file shadows a packaged code, table or product, does not fit its form, or cites
                what is not there; every problem of every file at once.
        """
        library = cls(tuple(folders))
        problems: list[Problem] = []
        steps = (library._find_files, library._read_sources, library._read_own, library._read_readings)
        for step in (*steps, library._check_amendments):
            problems += _problems_of(step)
        if problems:
            raise Refused(dict.fromkeys(problems))
        return library

    def _find_files(self) -> None:
        problems = [
            problem
            for folder in self.folders
            for shelf in ("codes", "tables", "products", "care", "readings", "words")
            for problem in misnamed(folder / shelf)
        ]
        for shelf in ("codes", "tables", "products"):
            paths = self._paths[shelf] = {}
            for folder in self.folders:
                for path in yaml_files(folder / shelf):
                    if paths.setdefault(path.stem, path) != path:
                        problems.append(Problem("shadows-packaged", path, found=path.stem))
        if problems:
            raise Refused(problems)

    def _read_sources(self) -> None:
        problems = []
        for path in (folder / "sources.yaml" for folder in self.folders):
            if path.is_file():
                read = self._use(read_model(path, SourcesFile, under="sources"))
                for id, entry in read.value.sources.items():
                    if self._sources.setdefault(id, entry) is not entry:
                        problems.append(read.problem_of_key("shadows-packaged", (id,)))
        if problems:
            raise Refused(problems)

    def _read_own(self) -> None:
        """Read the office's own files, so that problems show before a build."""
        own = self.folders[1:]
        problems: list[Problem] = []
        shelves = (("codes", self._code), ("tables", self._table), ("products", self._product))
        for shelf, read in shelves:
            for id, path in self._paths[shelf].items():
                if path.parent.parent in own:
                    problems += _problems_of(lambda read=read, id=id: read(id))  # type: ignore[misc]
        for language in {path.stem for folder in own for path in yaml_files(folder / "care")}:
            problems += _problems_of(lambda language=language: self._care(language))  # type: ignore[misc]
        problems += _problems_of(lambda: read_avoided(self.folders, self._sources))
        if problems:
            raise Refused(problems)

    def _read_readings(self) -> None:
        problems: list[Problem] = []
        for path in (path for folder in self.folders[1:] for path in yaml_files(folder / "readings")):
            try:
                read = read_model(path, Reading)
                row = self._find_row(read.value.row)
                found = list(
                    reading_problems(read, row, self._row_ids() if row is None else (), self._readings)
                )
            except Refused as refused:
                problems += refused.problems
                continue
            problems += found
            if not found:
                self._readings[read.value.row] = read
        if problems:
            raise Refused(problems)

    def _check_amendments(self) -> None:
        """Hold the office's amendments against what they amend; a file that does not fit waits."""
        problems: list[Problem] = []
        for id, path in self._paths["codes"].items():
            if path.parent.parent in self.folders[1:] and not _problems_of(lambda id=id: self._code(id)):  # type: ignore[misc]
                codes = {}
                for code in (id, *chain(id, self._amends)):
                    read, rows = self._code(code)
                    readings = ((row, self._readings.get(row.id)) for row in rows)
                    codes[code] = read, tuple(lifted(row, one.value) if one else row for row, one in readings)
                problems += amendment_problems(id, codes)
        if problems:
            raise Refused(problems)

    def _use(self, read: ReadFile[Any]) -> ReadFile[Any]:
        self._used[read.path] = read.digest
        return read

    # Codes

    def code_ids(self) -> tuple[str, ...]:
        """Return the ids of every code there is."""
        return tuple(self._paths["codes"])

    def code(self, id: str) -> CodeFile:
        """Return a code's file.

        Raises:
            KeyError: There is no such code.
            Refused: Its file does not fit.
        """
        code: CodeFile = self._use(self._code(id)[0]).value
        return code

    def all_rows(self, code_ids: Iterable[str]) -> tuple[CodeRow, ...]:
        """Return the rows of codes and of the codes they amend, readings and amendments applied.

        Raises:
            KeyError: There is no such code.
        """
        found: dict[str, tuple[CodeFile, tuple[CodeRow, ...]]] = {}
        waiting = list(code_ids)
        while waiting:
            id = waiting.pop(0)
            if id not in found:
                read, rows = self._code(id)
                found[id] = self._use(read).value, tuple(self._as_read(row) for row in rows)
                amends = found[id][0].amends
                waiting += [amends] if amends else []
        return amended(found)

    def match(self, code_ids: Iterable[str], asks: str, facts: Facts) -> Match:
        """Return the rows that limit one thing: those that apply, and those of which it can't be told.

        Args:
            code_ids: Codes the job rests on.
            asks: What is limited, for example ``deck.nail.field_spacing``.
            facts: What is known of the job; None or absence stands for unknown.

        Raises:
            KeyError: There is no such code.
            ValueError: A name is no fact.
        """
        codes = tuple(code_ids)
        if codes not in self._asked:
            by_subject: dict[str, list[CodeRow]] = {}
            for row in self.all_rows(codes):
                by_subject.setdefault(row.asks, []).append(row)
            self._asked[codes] = by_subject
        return match(self._asked[codes].get(asks, ()), facts)

    def rows(self, code_ids: Iterable[str], asks: str, facts: Facts) -> list[CodeRow]:
        """Return the rows that surely apply; ``match`` returns those of which it can't be told too."""
        return list(self.match(code_ids, asks, facts).rows)

    def row(self, id: str) -> CodeRow:
        """Return a row by its id, the office's reading applied.

        Raises:
            KeyError: There is no such row.
        """
        row = self._find_row(id)
        if row is None:
            raise KeyError(id)
        self._use(self._code(row.code)[0])
        return self._as_read(row)

    def source(self, row: CodeRow) -> figure.Source:
        """Return where a row was read, ready to cite."""
        return self._cited(row.source, row.locator, row.checked)

    def document(self, source_id: str) -> SourceEntry:
        """Return a document of sources.yaml.

        Raises:
            KeyError: There is no such id.
        """
        return self._sources[source_id]

    def source_ids(self) -> tuple[str, ...]:
        """Return the ids of every document there is."""
        return tuple(self._sources)

    def _cited(self, id: str, locator: str, checked: figure.Mark) -> figure.Source:
        entry = self._sources[id]
        return figure.Source(id, entry.document, entry.edition, locator, checked)

    def _code(self, id: str) -> tuple[ReadFile[Any], tuple[CodeRow, ...]]:
        if id not in self._codes:
            read = read_model(self._paths["codes"][id], CodeFile)
            problems = list(code_problems(id, read, self.code_ids(), self._sources))
            if problems:
                raise Refused(problems)
            code: CodeFile = read.value
            own = SourceEntry(document=code.title, edition=code.edition)
            self._sources.setdefault(code.document_id, own)
            self._codes[id] = read, tuple(row_of(name, entry, code) for name, entry in code.rows.items())
        return self._codes[id]

    def _amends(self, id: str) -> str | None:
        """Return the code that a code amends; None where it amends none that can be read."""
        if id not in self._paths["codes"] or _problems_of(lambda: self._code(id)):
            return None
        amends: str | None = self._code(id)[0].value.amends
        return amends if amends in self._paths["codes"] else None

    def _find_row(self, id: str) -> CodeRow | None:
        """Return a row as packaged; its id starts with its code's, so that few files are opened."""
        codes = [code for code in self.code_ids() if id.startswith(f"{code}-")]
        return next((row for code in codes for row in self._code(code)[1] if row.id == id), None)

    def _row_ids(self) -> tuple[str, ...]:
        """Return the rows of every code that can be read; the others are refused on their own account."""
        readable = [code for code in self.code_ids() if not _problems_of(lambda code=code: self._code(code))]  # type: ignore[misc]
        return tuple(row.id for code in readable for row in self._code(code)[1])

    def _as_read(self, row: CodeRow) -> CodeRow:
        reading = self._readings.get(row.id)
        return row if reading is None else lifted(row, self._use(reading).value)

    # Tables, products, stages, care

    def table_names(self) -> tuple[str, ...]:
        """Return the names of every table there is."""
        return tuple(self._paths["tables"])

    def table(self, name: str) -> Table:
        """Return a table, checked against its own invariants and sums.

        Raises:
            KeyError: There is no such table.
            Refused: Its file does not fit, or breaks what it says of itself.
        """
        read, table = self._table(name)
        self._use(read)
        return table

    def _table(self, name: str) -> tuple[ReadFile[Any], Table]:
        if name not in self._tables:
            read = read_model(self._paths["tables"][name], TableFile)
            table, faults = build(read.value, self._sources)
            problems = [read.problem(f.code, f.loc, f.found, accepted=f.accepted) for f in faults]
            if read.value.table != name:
                problems.append(read.problem("name-mismatch", ("table",), read.value.table, accepted=name))
            if problems:
                raise Refused(problems)
            self._tables[name] = read, table
        return self._tables[name]

    def product_ids(self) -> tuple[str, ...]:
        """Return the ids of every product sheet there is."""
        return tuple(self._paths["products"])

    def product(self, id: str) -> Product:
        """Return a product: what one bundle, roll, box or piece gives.

        Raises:
            KeyError: There is no such product.
            Refused: Its file does not fit, or breaks what it says of itself.
        """
        read, product = self._product(id)
        self._use(read)
        return product

    def _product(self, id: str) -> tuple[ReadFile[Any], Product]:
        if id not in self._products:
            read = read_model(self._paths["products"][id], ProductFile)
            problems = list(product_problems(id, read, self._sources))
            if problems:
                raise Refused(problems)
            self._products[id] = read, product_of(read.value, self._cited)
        return self._products[id]

    def stages(self) -> tuple[Stage, ...]:
        """Return the stages in the order of the work; they are packaged and not an office's to change."""
        read = self._use(read_model(self.folders[0] / "stages.yaml", StagesFile))
        return tuple(read.value.stages)

    def requirement_notes(self) -> Mapping[str, RequirementNote]:
        """Return what stands behind each requirement of the catalogue, by its id; packaged, as stages are."""
        read = self._use(read_model(self.folders[0] / "requirements.yaml", RequirementsFile))
        notes: Mapping[str, RequirementNote] = read.value.requirements
        return notes

    def requirement_source(self, note: RequirementNote) -> figure.Source:
        """Return where the need for a requirement was read, ready to cite."""
        return self._cited(note.source, note.locator, note.checked)

    def access_facts(self) -> Mapping[str, AccessFactEntry]:
        """Return the facts on access and safety by id; packaged, as stages are."""
        read = self._use(read_model(self.folders[0] / "access.yaml", AccessFile))
        facts: Mapping[str, AccessFactEntry] = read.value.facts
        return facts

    def access_source(self, fact: AccessFactEntry) -> figure.Source:
        """Return where a fact on access was read, ready to cite."""
        return self._cited(fact.source, fact.locator, fact.checked)

    def care(self, language: str = "en") -> dict[str, CareNote]:
        """Return the care notes of a language by id, the packaged ones first.

        Raises:
            Refused: A file does not fit, or an office's note takes a packaged id.
        """
        reads = self._care(language)
        return {id: note for read in reads for id, note in self._use(read).value.notes.items()}

    def _care(self, language: str) -> tuple[ReadFile[Any], ...]:
        paths = [path for folder in self.folders if (path := folder / "care" / f"{language}.yaml").is_file()]
        reads = tuple(read_model(path, CareFile) for path in paths)
        problems, taken = [], set[str]()
        for read in reads:
            for id, note in read.value.notes.items():
                if id in taken:
                    problems.append(read.problem_of_key("shadows-packaged", ("notes", id)))
                if note.source not in self._sources:
                    problems.append(unknown_source(read, ("notes", id, "source"), note.source, self._sources))
            taken |= set(read.value.notes)
        if problems:
            raise Refused(problems)
        return reads

    def care_source(self, note: CareNote) -> figure.Source:
        """Return where a care note was read, ready to cite."""
        return self._cited(note.source, note.locator, note.checked)

    def avoided(self) -> tuple[AvoidFile, ...]:
        """Return the files of words a packet does not use, the packaged one first."""
        return tuple(self._use(read).value for read in read_avoided(self.folders, self._sources))

    def digests(self) -> Mapping[str, str]:
        """Return the SHA-256 of every file used so far, by its path below ``packaged/`` or ``office/``."""
        labels = ("packaged", "office", *(f"office-{number}" for number in range(2, len(self.folders))))
        found = {}
        for path, digest in self._used.items():
            for label, folder in zip(labels, self.folders, strict=False):
                if path.is_relative_to(folder):
                    found[f"{label}/{path.relative_to(folder).as_posix()}"] = digest
                    break
        return dict(sorted(found.items()))


def _problems_of(step: Callable[[], object]) -> tuple[Problem, ...]:
    """Return the problems that a step refuses with; none when it goes through."""
    try:
        step()
    except Refused as refused:
        return refused.problems
    return ()
