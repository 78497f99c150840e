"""How a voice comes to be, in the files of utterances: by rules, from pieces or statistics of recordings, learned as a whole."""
BY_RULES, FROM_PIECES, LEARNED = range(3)
