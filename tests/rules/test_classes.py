"""Class words, their aliases and how loosely they are read."""

import pytest

from loadplan.day.article import CargoClass
from loadplan.rules.classes import ALIASES, class_named


@pytest.mark.parametrize("kind", CargoClass)
def test_every_class_by_its_own_word_and_its_aliases(kind):
    for text in (kind.value, kind.value.upper(), *ALIASES.get(kind, ())):
        assert class_named(text) is kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("metal coils", CargoClass.METAL_COIL),
        ("Large  Boulder", CargoClass.BOULDER),
        ("large boulders", CargoClass.BOULDER),
        ("paper roll", CargoClass.PAPER_ROLLS),
        ("log", CargoClass.LOGS),
        ("dressed lumber and building products", CargoClass.DRESSED_LUMBER),
        ("concrete pipes", CargoClass.CONCRETE_PIPE),
        ("container", CargoClass.INTERMODAL_CONTAINER),
        ("crushed cars", CargoClass.FLATTENED_VEHICLES),
        ("hook-lift container", CargoClass.ROLL_OFF_CONTAINER),
        ("Roll-on/roll-off container", CargoClass.ROLL_OFF_CONTAINER),
        ("roll off container", CargoClass.ROLL_OFF_CONTAINER),
        ("sofa", None),
        ("", None),
    ],
)
def test_words_people_use(text, kind):
    assert class_named(text) is kind


def test_no_alias_names_two_classes():
    words = [alias for aliases in ALIASES.values() for alias in aliases]
    assert len(words) == len(set(words))
    assert not set(words) & {kind.value for kind in CargoClass}
