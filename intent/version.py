"""The version of the program, as papers and packages name it."""

VERSION = "0.1.0"
