"""What stands around the drawn parts of a random work: its head and its people, and a loan that changes nothing."""

from __future__ import annotations

HEAD = """# Many

- artist: Ilse Venn
- year: 1994
- number: D 9
- owner: Drawing Cabinet

## People

| person | name       | role        |
| ------ | ---------- | ----------- |
| cons   | Cora Lindt | conservator |

## Parts
"""
LOAN = """# Loan

- work: work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- venue: Hall
- by: cons
"""
