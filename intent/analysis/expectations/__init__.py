"""Whether cases are judged as a dossier says that they are to be."""
