"""What a cable takes from a signal, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

from intent.formulas import cabling
from intent.values.bounds import between, point
from intent.vocabulary.loader import read_vocabulary

TERM = "https://w3id.org/intent-record/term/"


def test_loss_in_proportion_to_length() -> None:
    # arithmetic
    assert cabling.loss(point(22), point(60)) == point(Fraction("13.2"))


def test_loss_at_another_frequency_lies_between_root_and_proportion() -> None:
    # transmission line theory: skin effect √f, dielectric f; four times the frequency, two to four times the loss
    assert cabling.loss_at(point(10), point(400), point(100)) == between(20, 40)
    assert cabling.loss_at(point(10), point(100), point(100)) == point(10)


def test_a_published_cable_lies_between() -> None:
    # a 75 Ω cable of 1 mm, catalogue values (from memory): 2.0 dB at 10 MHz, 6.5 dB at 100 MHz over 100 m
    bounds = cabling.loss_at(point(2), point(100), point(10))
    assert bounds.low is not None
    assert bounds.high is not None
    assert bounds.low <= Fraction("6.5") <= bounds.high


def test_half_the_rate_of_the_bits() -> None:
    # SMPTE ST 259, ST 292-1, ST 424 (rates from memory): the loss
    # counts at half the clock of 270 Mbit/s, 1.485 and 2.97 Gbit/s
    concepts = read_vocabulary().concepts
    for name, rate in (("sd-sdi", 270), ("hd-sdi", 1485), ("three-g-sdi", 2970)):
        reach = concepts[TERM + name].reach
        assert reach is not None
        assert reach.frequency == Fraction(rate * 10**6, 2)


def test_a_usb_cable_is_as_long_as_its_delay_allows() -> None:
    # USB 2.0, 7.1.16 (as quoted): 26 ns for a cable, of 5.2 ns a metre at most
    reach = read_vocabulary().concepts[TERM + "usb-2"].reach
    assert reach is not None
    assert reach.length == point(Fraction("26") / Fraction("5.2"))
