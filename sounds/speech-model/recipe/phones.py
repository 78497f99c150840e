"""The sounds that the model tells apart, and how a word's pronunciation becomes a row of them."""
import re

# The CMU Pronouncing Dictionary's phones without stress, then two sounds of our own: the endings of the teens and of the tens. As whole sounds they are
# learned against each other, with everything that tells them apart (length, stress, the flapped t, the nasal), not by a last N that noise covers.
PHONES = ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG "
          "OW OY P R S SH T TH UH UW V W Y Z ZH").split()
ENDINGS = ["TEEN", "TY"]
LABELS = {name: 1 + place for place, name in enumerate(PHONES + ENDINGS)}  # 0 is the blank
OUTPUTS = 1 + len(LABELS)

_TEEN = re.compile(r"^(thir|four|fif|six|seven|eigh|nine)teen(s|th|ths)?$")
_TY = re.compile(r"^(twen|thir|for|fif|six|seven|eigh|nine)t(y|ies|ieth|ieths)$")


def with_endings(word, phones):
    """The phones of a number word with its ending as one sound; every other word's as they are."""
    if _TEEN.match(word):
        for at in range(len(phones) - 2):
            if phones[at:at + 3] == ["T", "IY", "N"]:
                return phones[:at] + ["TEEN"] + phones[at + 3:]
    if _TY.match(word):
        at = len(phones) - 1 - phones[::-1].index("IY") if "IY" in phones else -1
        if at > 0:
            return phones[:at - (phones[at - 1] in ("T", "D"))] + ["TY"] + phones[at + 1:]
    return list(phones)


def load_dictionary(path):
    """word -> list of pronunciations, from the npm package cmu-pronouncing-dictionary (its index.js)."""
    words = {}
    for key, line in re.findall(r'^\s*"([^"]+)":\s*"([^"]+)"', open(path, encoding="utf-8").read(), re.M):
        word = re.sub(r"\(\d+\)$", "", key)
        if re.fullmatch(r"[a-z][a-z']*", word):
            phones = [re.sub(r"\d$", "", phone) for phone in line.split("#")[0].split()]
            words.setdefault(word, [])
            if phones not in words[word]:
                words[word].append(phones)
    return words


def add_trade_words(words, path):
    """Adds sounds/dictionary/trade.txt: a word followed by phones in capitals, or by none when the dictionary has it."""
    text = re.sub(r"#.*", "", open(path, encoding="utf-8").read())
    for word, phones in re.findall(r"([a-z][a-z']*)((?:\s+[A-Z]+\b)*)", text):
        if phones.split():
            words.setdefault(word, []).insert(0, phones.split())


def labels_of(word, phones):
    return [LABELS[phone] for phone in with_endings(word, phones)]
