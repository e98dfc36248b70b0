"""The packaged list of words a packet does not use: each phrase fires, each exempt sense does not; an office's own."""

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.figure import DECIDING_MARKS
from packet.problems import Problem
from packet.reference import Library
from packet.reference.avoid import AvoidFile, avoided_in
from packet.workspace import packaged

Write = Callable[[str, str], Path]
Problems = Callable[[], list[Problem]]

PACKAGED = Library.load([packaged("shared")]).avoided()
(FILE,) = PACKAGED

#: By phrase: a sentence, and what in it is to be avoided.
FIRE: dict[str, tuple[tuple[str, str], ...]] = {
    "covered-by-a-policy": (
        ("The valley is covered by your policy.", "covered by your policy"),
        ("All of it is covered under the owner's insurance.", "covered under the owner's insurance"),
        ("El techo está cubierto por su póliza.", "cubierto por su póliza"),
    ),
    "what-a-policy-does": (
        ("Your insurance will pay for the deck.", "insurance will pay"),
        ("The policy covers matching.", "policy covers"),
        ("The insurance company does not exclude it.", "insurance company does not exclude"),
        ("El seguro paga la madera.", "seguro paga"),
    ),
    "covered-damage": (("Wind made it a covered loss.", "covered loss"),),
    "damage-is-covered": (("The repair should be fully covered.", "repair should be fully covered"),),
    "covered-in-full": (("The ceiling is partly covered.", "partly covered"),),
    "coverage": (
        ("There is hail coverage.", "hail coverage"),
        ("That coverage applies to the deck.", "coverage applies"),
    ),
    "ordinance-or-law": (("This is ordinance and law work.", "ordinance and law"),),
    "words-of-a-policy": (
        ("It was sudden and accidental.", "sudden and accidental"),
        ("Shingles of like kind and quality.", "like kind and quality"),
        ("Excluded under their policy.", "under their policy"),
    ),
    "owed": (("They owed him the second payment.", "owed"),),
    "entitled": (
        ("She is entitled to a new slope.", "entitled"),
        ("Usted tiene derecho a un techo nuevo.", "tiene derecho a"),
    ),
    "has-to-pay": (
        ("The carrier must approve the nailing.", "carrier must approve"),
        ("The insurer is required to pay for it.", "insurer is required to pay"),
        ("La aseguradora debe pagar.", "aseguradora debe pagar"),
    ),
    "pay-a-claim": (
        ("They should pay your claim now.", "pay your claim"),
        ("We go after every dollar.", "every dollar"),
    ),
    "too-little": (("He was underpaid.", "underpaid"), ("It was wrongly denied.", "wrongly denied")),
    "supplement": (("We supplemented the claim.", "supplemented the claim"),),
    "damage-justifies": (("The hail justifies full replacement.", "justifies full replacement"),),
    "total-loss": (
        ("The roof is a total loss.", "total loss"),
        ("The roof was totaled.", "roof was totaled"),
    ),
    "depreciation": (("Depreciation is too high.", "Depreciation"),),
    "cash-value": (("Take the actual cash value.", "actual cash value"), ("The ACV was low.", "ACV")),
    "negotiates": (("We negotiated with their adjuster.", "negotiated with their adjuster"),),
    "handles-a-claim": (("We handle your insurance claim.", "handle your insurance claim"),),
    "represents": (("We represented the homeowner.", "represented the homeowner"),),
    "deductible-let-off": (
        ("We waive your deductible.", "waive your deductible"),
        ("Her deductible was absorbed.", "deductible was absorbed"),
        ("Pagamos su deducible.", "Pagamos su deducible"),
    ),
    "withstands-a-speed": (
        ("It withstands 150 mph.", "withstands 150 mph"),
        ("It will withstand gusts of up to 130-mph winds.", "withstand gusts of up to 130-mph"),
        ("Shingles that hold at one hundred miles an hour.", "hold at one hundred miles an hour"),
        ("El techo resiste vientos de 150 mph.", "resiste vientos de 150 mph"),
    ),
    "withstands-a-storm": (
        ("This roof withstands hurricanes.", "withstands hurricanes"),
        ("It will survive the next storm.", "will survive the next storm"),
    ),
    "rated-for-a-speed": (
        ("Rated for 130 mph.", "Rated for 130 mph"),
        ("We laid 130 mph shingles.", "130 mph shingles"),
    ),
    "proof-against": (
        ("A storm-proof valley.", "storm-proof"),
        ("Now leakproof.", "leakproof"),
        ("A prueba de huracanes.", "A prueba de huracanes"),
    ),
    "will-not-leak": (
        ("It will never leak again.", "will never leak"),
        ("The wall won’t leak.", "won’t leak"),
        ("No volverá a gotear.", "No volverá a gotear"),
    ),
    "will-not-blow-off": (("The ridge can't blow off.", "can't blow off"),),
    "watertight-for-good": (("The valley is completely watertight.", "completely watertight"),),
    "guaranteed": (
        ("The deck is guaranteed.", "guaranteed"),
        ("Garantizamos el trabajo.", "Garantizamos"),
    ),
    "will-last": (("It will last another 30 years.", "will last another 30 years"),),
    "insurers-approval": (
        ("Nailing approved by the insurer.", "approved by the insurer"),
        ("The adjuster approved four sheets.", "adjuster approved"),
        ("Aprobado por el seguro.", "Aprobado por el seguro"),
    ),
    "complies": (
        ("The deck is fully compliant.", "compliant"),
        ("It complies with the building code.", "complies with the building code"),
        ("All brought up to code.", "up to code"),
        ("It meets or exceeds all standards.", "meets or exceeds all standards"),
        ("El techo cumple con el código.", "cumple con el código"),
    ),
    "certifies": (
        ("We hereby certify the deck.", "We hereby certify"),
        ("A certified installation.", "certified installation"),
    ),
}

#: By exempt sense: sentences that are the trade's own.
EXEMPT: dict[str, tuple[str, ...]] = {
    "covered-by-the-next-layer": (
        "The damage was covered by the next course.",
        "The repair was fully covered with felt before the rain.",
        "The leak was covered over for the night.",
        "The repair is covered on March 17.",
    ),
    "a-layer-over-damage": ("The old felt covered damage that only the strip laid bare.",),
    "a-warranty": (
        "A leak is covered by this warranty.",
        "The warranty says new work will not leak.",
        "The maker's warranty policy covers the shingle.",
    ),
    "a-guarantee-on-paper": ("The maker's guarantee was left with the owner.",),
    "no-guarantee": ("That is no guarantee of the old felt.", "Color is never guaranteed."),
    "nothing-on-a-policy": ("It says nothing about what a policy covers.",),
    "title-of-a-paper": ("Affidavit of code compliance, signed.", "Certificate of compliance with the code."),
    "goods-to-come": ("The yard owes us two bundles.", "One roll is still owed."),
    "loss-of-a-part": ("Total loss of granules along the eave.",),
    "a-tarp-in-the-wind": ("The tarp should hold through the storm.",),
    "a-sheet-against-water": ("A water-proof membrane under the metal.",),
}

BARE = FILE.model_copy(update={"exempt": {}})


def hits(text: str, file: AvoidFile = FILE) -> list[tuple[str, str]]:
    return [(hit.phrase, hit.written) for hit in avoided_in(text, [file])]


def test_every_phrase_and_every_exempt_sense_has_a_sentence_here() -> None:
    assert {id for group in FILE.groups.values() for id in group.phrases} == set(FIRE)
    assert set(FILE.exempt) == set(EXEMPT)
    assert {"reads-a-policy", "argues-for-payment", "promises-against-weather", "claims-an-approval"} <= set(
        FILE.groups
    )


@pytest.mark.parametrize(("id", "said"), [(id, said) for id, all_ in FIRE.items() for said in all_])
def test_a_phrase_is_found_in_a_sentence(id: str, said: tuple[str, str]) -> None:
    sentence, written = said
    assert hits(sentence) == [(id, written)]


@pytest.mark.parametrize(("id", "sentence"), [(id, said) for id, all_ in EXEMPT.items() for said in all_])
def test_an_exempt_sense_is_let_stand_and_would_be_found_without_it(id: str, sentence: str) -> None:
    assert hits(sentence) == []
    kept = {name: sense for name, sense in FILE.exempt.items() if name != id}
    assert hits(sentence, FILE.model_copy(update={"exempt": kept})) != []


@pytest.mark.parametrize(
    "sentence",
    [
        "The nails were driven and covered before a photo was taken.",
        "Each sheet was covered by the next course within the hour.",
        "A temporary cover stood on the north slope; the covering followed.",
        "Bundles cover each 32.8 sq ft; cover caps on the ridge.",
        "This warranty covers leaks through new work for three years.",
        "The insurer's adjuster looked at the deck before it was covered.",
        "Design wind speed 130 mph, exposure B.",
        "Class H by ASTM D7158, as the wrapper prints it.",
        "To call on the warranty, write to us with the claim number.",
        "The final payment was made by check; the deductible was paid by the owner.",
        "A licensed engineer signed the certificate after the work.",
        "The inspector accepted the added nails.",
        "The nails totaled 320; the metal runs 9 ft up to the wall.",
        "A certified firm is needed before old paint is broken.",
        "The attic did not leak in the hose test and stayed fully dry.",
        "El fieltro va cubierto por la siguiente hilada en el mismo día.",
    ],
)
def test_what_the_trade_says_every_day_is_let_stand(sentence: str) -> None:
    assert hits(sentence) == []


LAYERS = (
    "felt",
    "underlayment",
    "the next course",
    "new shingles",
    "step flashing",
    "a tarp",
    "15/32 in plywood",
)
DONE = ("The damage", "The repair", "The old joint", "Sheet S3", "The leak", "A loss of granules")


@given(
    st.sampled_from(DONE),
    st.sampled_from(["is", "was", "will be", "should be", "was fully", "was partly"]),
    st.sampled_from(["by", "with", "under"]),
    st.sampled_from(LAYERS),
    st.sampled_from(["", " before the rain", " on March 17", " the same day", ", and the attic stayed dry"]),
)
def test_sentences_of_layers_give_nothing(what: str, is_: str, by: str, layer: str, then: str) -> None:
    assert hits(f"{what} {is_} covered {by} {layer}{then}.") == []


@given(
    st.sampled_from(["This warranty", "Our warranty", "The maker's warranty", "This promise"]),
    st.sampled_from(["covers", "does not cover", "covered", "says nothing on"]),
    st.sampled_from(["new work", "leaks at the valley", "the shingle", "wind damage", "old felt"]),
    st.integers(1, 50),
)
def test_sentences_of_a_warranty_give_nothing(who: str, covers: str, what: str, years: int) -> None:
    assert hits(f"{who} {covers} {what} for {years} years.") == []


@given(st.sampled_from(sorted(FIRE)), st.sampled_from(sorted(EXEMPT)))
def test_an_exempt_sense_in_one_sentence_hides_nothing_in_another(id: str, exempt: str) -> None:
    sentence, written = FIRE[id][0]
    assert hits(f"{EXEMPT[exempt][0]} {sentence}") == [(id, written)]


def test_of_phrases_that_overlap_the_longest_is_shown_once() -> None:
    assert hits("Your policy covers a covered loss under the policy.") == [
        ("what-a-policy-does", "policy covers"),
        ("covered-damage", "covered loss"),
        ("words-of-a-policy", "under the policy"),
    ]
    assert hits("It is fully covered by your policy.") == [("covered-in-full", "fully covered")]


def test_each_group_can_be_cited_and_says_what_it_does(library: Library) -> None:
    for group in FILE.groups.values():
        assert library.document(group.source).document
        assert group.checked in DECIDING_MARKS or group.source == "own-advice"
        assert group.title[0].islower()
        assert not group.title.endswith(".")


def test_a_plain_way_of_saying_it_holds_nothing_to_avoid() -> None:
    ways = {entry.plainly for group in FILE.groups.values() for entry in group.phrases.values()}
    assert len(ways) > 15
    assert [way for way in ways if hits(way) or way.endswith(".")] == []


# An office's own file

OWN = """\
groups:
  our-office:
    title: is not how we speak
    source: own-advice
    locator: ours
    checked: office
    phrases:
      cheap: {says: [cheap~ .. roof|repair], plainly: Say what it cost}
exempt:
  cheap-talk: {says: [cheap talk]}
"""


def test_an_offices_phrases_stand_beside_the_packaged_ones(write: Write, load: Callable[[], Library]) -> None:
    write("words/avoid.yaml", OWN)
    library = load()
    found = avoided_in("A cheap and quick repair, covered by your policy.", library.avoided())
    assert [(hit.group, hit.phrase, hit.plainly) for hit in found] == [
        ("our-office", "cheap", "Say what it cost"),
        ("reads-a-policy", "covered-by-a-policy", FILE.groups["reads-a-policy"].phrases["covered-by-a-policy"].plainly),
    ]  # fmt: skip
    assert {"packaged/words/avoid.yaml", "office/words/avoid.yaml"} <= set(library.digests())


def test_an_offices_exempt_sense_lets_none_of_the_packaged_phrases_stand(
    write: Write, load: Callable[[], Library]
) -> None:
    write("words/avoid.yaml", OWN.replace("cheap talk", "covered by your policy"))
    assert len(avoided_in("A cheap roof, covered by your policy.", load().avoided())) == 2


@pytest.mark.parametrize(
    ("old", "new", "code", "line", "found"),
    [
        ("our-office:", "reads-a-policy:", "shadows-packaged", 2, "reads-a-policy"),
        ("own-advice", "own-advise", "unknown-source", 4, "own-advise"),
        ("[cheap~ .. roof|repair]", "[cheap~ ..]", "bad-phrase", 8, "cheap~ .."),
        ("[cheap~ .. roof|repair]", "[]", "too-few-entries", 8, ""),
        ("[cheap talk]", "['#1 roof']", "bad-phrase", 10, "#1 roof"),
        ("plainly:", "plain:", "unknown-key", 8, "plain"),
        ("checked: office", "checked: offic", "not-one-of", 6, "offic"),
        ("    title: is not how we speak\n", "", "missing", 2, ""),
        ("cheap: {", "Cheap: {", "bad-id", 8, "Cheap"),
    ],
)
def test_a_mistake_in_an_offices_file_is_refused_at_its_line(
    write: Write, problems: Problems, old: str, new: str, code: str, line: int, found: str
) -> None:
    assert old in OWN
    path = write("words/avoid.yaml", OWN.replace(old, new))
    first = problems()[0]
    assert (first.code, first.file, first.line, first.found) == (code, path, line, found)


def test_a_file_with_the_other_ending_is_not_passed_over(write: Write, problems: Problems) -> None:
    write("words/avoid.yml", OWN)
    assert [problem.code for problem in problems()] == ["wrong-suffix"]
