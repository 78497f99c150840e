"""
Cepstra sampled from the Gaussians of the CMUSphinx US English acoustic model (Debian's pocketsphinx-en-us, BSD style): the only place where the variety of
real speakers comes from. A phone's states are walked in time; the likeliest track is found in which the cepstra, their first and second differences agree
with the Gaussians chosen (K. Tokuda et al., ICASSP 2000, "Speech parameter generation algorithms for HMM-based speech synthesis"), and noise of the same
covariance is added.
"""
import functools, struct
import numpy as np
from scipy.linalg import cholesky_banded, cho_solve_banded, lapack
from origins import FROM_PIECES
from phones import with_endings, LABELS

CEPSTRA = 13
# The differences as CMUSphinx takes them: c(t+2) - c(t-2), and [c(t+3) - c(t-1)] - [c(t+1) - c(t-3)].
WINDOWS = [{0: 1.0}, {2: 1.0, -2: -1.0}, {3: 1.0, -1: -1.0, 1: -1.0, -3: 1.0}]
BAND = 6
PLACES = {"internal": 0, "begin": 1, "end": 2, "single": 3}


@functools.lru_cache(maxsize=1)
def load(folder):
    raw = open(f"{folder}/mdef", "rb").read()
    if raw[:4] != b"BMDF": raise ValueError(f"{folder}/mdef is no binary model definition")
    at = 12 + struct.unpack("<i", raw[8:12])[0]
    singles, phones, emitting, _, senones, _, sequences, _, tree, _ = struct.unpack("<10i", raw[at:at + 40])
    at += 40
    start, names = at, []
    for _ in range(singles):
        end = raw.index(b"\0", at)
        names.append(raw[at:end].decode())
        at = end + 1
    at = start + (at - start + 3) // 4 * 4 + 8 * tree
    phone = np.frombuffer(raw, np.dtype([("sequence", "<i4"), ("tmat", "<i4"), ("context", "u1", 4)]), phones, at)
    at += 12 * phones + 4
    sequence = np.frombuffer(raw, "<u2", sequences * emitting, at).reshape(sequences, emitting)
    triphone = {tuple(int(c) for c in phone[k]["context"]): k for k in range(singles, phones)}
    book = np.zeros(senones, np.int64)
    for k in range(phones): book[sequence[phone[k]["sequence"]]] = k if k < singles else phone[k]["context"][1]
    dump = open(f"{folder}/sendump", "rb").read()
    weights = -np.frombuffer(dump, "u1", 3 * 128 * senones, len(dump) - 3 * 128 * senones).reshape(3, 128, senones).astype(np.float32) * 1024 * np.log(1.0001)
    moves = s3(f"{folder}/transition_matrices", 4)
    stay = np.array([[moves[p, s, s] / moves[p, s].sum() for s in range(emitting)] for p in range(singles)])
    return dict(names=names, index={n: i for i, n in enumerate(names)}, phone=phone, sequence=sequence, triphone=triphone, book=book, weights=weights,
                stay=stay, means=s3(f"{folder}/means", 0), variances=np.maximum(s3(f"{folder}/variances", 0), 1e-3))


def s3(path, dimensions):
    """A CMUSphinx parameter file: transition matrices, or Gaussians as (codebook, stream, density, cepstrum)."""
    raw = open(path, "rb").read()
    at = raw.index(b"endhdr\n") + 7 + 4
    if dimensions:
        count, rows, columns, total = struct.unpack("<4i", raw[at:at + 16])
        return np.frombuffer(raw, "<f4", total, at + 16).reshape(count, rows, columns).astype(np.float64)
    books, streams, densities = struct.unpack("<3i", raw[at:at + 12])
    lengths = struct.unpack(f"<{streams}i", raw[at + 12:at + 12 + 4 * streams])
    total = struct.unpack("<i", raw[at + 12 + 4 * streams:at + 16 + 4 * streams])[0]
    return np.frombuffer(raw, "<f4", total, at + 16 + 4 * streams).reshape(books, streams, densities, lengths[0]).astype(np.float64)


def sample(rows, folder, r):
    model = load(folder)
    for _, _, ways in rows:
        states, stays, labels = walk(model, ways, r)
        rate = np.random.uniform(.45, 1.15)
        frames = np.maximum(1, np.round(rate * np.exp(np.random.normal(0, .45, len(states)) + np.repeat(np.random.normal(0, .25, len(states) // 3), 3)) / (1 - stays))).astype(int)
        frames[:3], frames[-3:] = np.random.randint(3, 14, 3), np.random.randint(3, 14, 3)
        if sum(frames) < 400: yield track(model, np.array(states), frames).astype(np.float16), labels, FROM_PIECES


def walk(model, ways, r):
    """The states of a sentence in order, the chance to stay in each, and the labels."""
    index, silence = model["index"], model["index"]["SIL"]
    pause = lambda: (None, "SIL" if r.random() < .9 else r.choice(["+NSN+", "+SPN+"]))
    row, labels = [pause()], []
    for word, phones in ways:
        for at, phone in enumerate(phones):
            row.append(("single" if len(phones) == 1 else "begin" if at == 0 else "end" if at == len(phones) - 1 else "internal", phone))
        labels += [LABELS[phone] for phone in with_endings(word, phones)]
        if r.random() < .06: row.append(pause())
    row.append(pause())
    around = lambda item: silence if item[0] is None else index[item[1]]
    states, stays = [], []
    for at, (place, phone) in enumerate(row):
        number = index[phone]
        if place is not None:
            left, right = around(row[at - 1]), around(row[at + 1])
            keys = [(PLACES[place], number, left, right)] + [(other, number, left, right) for other in range(4)]
            number = next((model["triphone"][key] for key in keys if key in model["triphone"]), number)
        states += list(model["sequence"][model["phone"][number]["sequence"]])
        stays += list(model["stay"][index[phone]])
    return states, np.array(stays), labels


def track(model, states, frames):
    chosen = np.repeat(np.arange(len(states)), frames)
    count, books = len(chosen), model["book"][states]
    means, weights = [], []
    for stream in range(3):
        chance = model["weights"][stream][:, states].T
        chance = np.exp(chance - chance.max(1, keepdims=True)).cumsum(1)
        density = (chance < np.random.rand(len(states), 1) * chance[:, -1:]).sum(1)
        means.append(model["means"][books, stream, density][chosen])
        weights.append(1 / model["variances"][books, stream, density][chosen])
    temper, result = np.random.uniform(.3, 1.0), np.empty((count, CEPSTRA))
    clip = lambda t: np.clip(t, 0, count - 1)
    times = np.arange(count)
    for c in range(CEPSTRA):
        band, right = np.zeros((BAND + 1, count)), np.zeros(count)
        for stream, window in enumerate(WINDOWS):
            w, m = weights[stream][:, c], means[stream][:, c]
            for one, a in window.items():
                np.add.at(right, clip(times + one), a * w * m)
                for other, b in window.items():
                    low, high = clip(times + min(one, other)), clip(times + max(one, other))
                    if one <= other: np.add.at(band, (high - low, low), a * b * w * np.where((low == high) & (one != other), 2, 1))
        band[0] += 1e-4
        factor = cholesky_banded(band, lower=True)
        noise = lapack.dtbtrs(factor, np.random.randn(count), uplo="L", trans="T")[0]
        result[:, c] = cho_solve_banded((factor, True), right) + temper * noise.reshape(-1)
    return result
