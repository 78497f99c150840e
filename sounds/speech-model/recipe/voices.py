"""
Stage 3: the texts spoken by every voice, and features sampled from the CMUSphinx statistics, while training already goes on.
python3 voices.py TEXTS.json TOOLS_FOLDER OUT_FOLDER [share of the texts, 0 to 1] [processes] [round: another gives other voices to the same texts]
Writes OUT_FOLDER/*.npz: sound (or features), where each utterance ends, labels, voice.
"""
import io, json, os, random, shutil, subprocess, sys, tempfile, time, wave, zlib
from multiprocessing import Pool
import numpy as np
import sphinx

RATE = 16000
JOB = 160
LONGEST_SECONDS = 8
# Kept out of training, for the tests: flite's rms; these variants of espeak-ng: f4 m7 klatt3 edward2 max iven3 Tweaky; its accents en-gb-scotland, en-029, en-us-nyc.
VARIANTS = ("f1 f2 f3 f5 m1 m2 m3 m4 m5 m6 m8 Alex Alicia Andrea Andy Annie Denis Diogo Gene Gene2 Hugo Jacky Lee Marco Mario Michael Mike "
            "adam anika announcer antonio aunty belinda benjamin boris caleb david ed edward grandma grandpa gustave iven iven2 john kaukovalta "
            "klatt klatt2 klatt4 linda marcelo michel miguel norbert pablo paul pedro quincy rob robert sandro shelby steph steph2 travis victor zac").split()
ACCENTS = ["en-us"] * 7 + ["en-gb", "en-gb-x-rp", "en-gb-x-gbclan"]
FLITE = ["slt", "slt", "awb", "awb", "kal16"]
PICO = ["en-US", "en-US", "en-GB"]
FESTIVAL = ["voice_kal_diphone", "voice_ked_diphone", "voice_cmu_us_slt_arctic_hts", "voice_cmu_us_slt_arctic_hts"]


def main(texts, tools, out, share=1.0, processes=None, round_=1):
    os.makedirs(out, exist_ok=True)
    rows = json.load(open(texts))
    jobs = [(voice, rows[voice][at:at + JOB], at, tools, out, round_) for voice in rows for at in range(0, int(len(rows[voice]) * share), JOB)]
    random.Random(0).shuffle(jobs)
    began, totals = time.time(), {}
    with Pool(processes) as pool:
        for voice, count, hours in pool.imap_unordered(speak_job, jobs):
            before = totals.get(voice, (0, 0))
            totals[voice] = (before[0] + count, round(before[1] + hours, 3))
    open(os.path.join(out, "complete"), "w").write(json.dumps(totals))
    print("voices", totals, "seconds %.0f" % (time.time() - began), flush=True)


def speak_job(job):
    voice, rows, at, tools, out, round_ = job
    random_ = random.Random(zlib.crc32(f"{voice}{at} {round_}".encode()))
    np.random.seed(zlib.crc32(f"{at}{voice} {round_}".encode()))
    if voice == "sphinx": spoken, kind = list(sphinx.sample(rows, os.path.join(tools, "share/cmusphinx-en-us"), random_)), "features"
    else: spoken, kind = list(SPEAKERS[voice](rows, tools, random_)), "sound"
    if not spoken: return voice, 0, 0.0
    name = os.path.join(out, f"{voice}{at}")
    np.savez(name + ".part.npz", kind=kind, data=np.concatenate([s[0] for s in spoken]), length=np.array([len(s[0]) for s in spoken]),
             labels=np.concatenate([np.array(s[1], np.uint8) for s in spoken]), labelled=np.array([len(s[1]) for s in spoken]),
             human=np.array([s[2] for s in spoken]))
    os.rename(name + ".part.npz", name + ".npz")
    return voice, len(spoken), sum(len(s[0]) for s in spoken) / (RATE if kind == "sound" else 100) / 3600


def environment(tools):
    return dict(os.environ, LD_LIBRARY_PATH=os.path.join(tools, "lib"), ESPEAK_DATA_PATH=os.path.join(tools, "share"))


def espeak(rows, tools, r):
    for text, labels in rows:
        voice = f"{r.choice(ACCENTS)}+{r.choice(VARIANTS)}"
        call = [f"{tools}/bin/espeak-ng", "-v", voice, "-s", str(r.randint(105, 215)), "-p", str(r.randint(15, 85)), "--stdout", text]
        sound = subprocess.run(call, env=environment(tools), stdout=subprocess.PIPE, stderr=subprocess.DEVNULL).stdout
        # What is written to a pipe has no length in its header.
        yield from kept(np.frombuffer(sound[44:len(sound) // 2 * 2], "<i2"), 22050, labels, False)


def flite(rows, tools, r):
    with tempfile.TemporaryDirectory() as folder:
        for text, labels in rows:
            voice = r.choice(FLITE)
            call = [f"{tools}/bin/flite", "-voice", voice, "--setf", f"duration_stretch={r.uniform(.75, 1.35):.2f}"]
            if voice == "kal16": call += ["--setf", f"int_f0_target_mean={r.randint(75, 180)}"]
            yield from from_file(call + ["-t", text, "-o", f"{folder}/said.wav"], f"{folder}/said.wav", tools, labels)


def festival(rows, tools, r):
    with tempfile.TemporaryDirectory() as folder:
        for at in range(0, len(rows), 40):
            some = rows[at:at + 40]
            script = [f"({r.choice(FESTIVAL)})", "(define (say t f) (utt.save.wave (utt.synth (eval (list 'Utterance 'Text t))) f 'riff))"]
            for number, (text, _) in enumerate(some):
                script += [f"(Parameter.set 'Duration_Stretch {r.uniform(.75, 1.35):.2f})", f'(say "{text}" "{folder}/{number}.wav")']
            open(f"{folder}/say.scm", "w").write("\n".join(script))
            call = [f"{tools}/bin/festival", "--libdir", f"{tools}/share/festival", "-b", f"{folder}/say.scm"]
            subprocess.run(call, env=environment(tools), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            for number, (_, labels) in enumerate(some): yield from from_file(None, f"{folder}/{number}.wav", tools, labels)


def pico(rows, tools, r):
    with tempfile.TemporaryDirectory() as folder:
        for text, labels in rows:
            said = f'<speed level="{r.randint(65, 150)}"><pitch level="{r.randint(55, 170)}">{text}</pitch></speed>'
            yield from from_file([f"{tools}/bin/pico2wave", "-l", r.choice(PICO), "-w", f"{folder}/said.wav", said], f"{folder}/said.wav", tools, labels)


SPEAKERS = {"espeak": espeak, "flite": flite, "festival": festival, "pico": pico}


def from_file(call, path, tools, labels):
    if call: subprocess.run(call, env=environment(tools), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        with wave.open(path) as file: sound, rate = np.frombuffer(file.readframes(10 ** 8), "<i2"), file.getframerate()
        os.remove(path)
    except (OSError, EOFError, wave.Error): return
    yield from kept(sound, rate, labels, True)


def kept(sound, rate, labels, human):
    """The utterance as 16 kHz sound without the silence around it, unless the synthesiser swallowed it or ran on."""
    sound = trimmed(resampled(sound, rate))
    if sound is not None and len(labels) * RATE * .032 < len(sound) < RATE * LONGEST_SECONDS: yield sound, labels, human


def resampled(sound, rate):
    if rate == RATE or len(sound) == 0: return sound
    count = int(len(sound) * RATE / rate)
    spectrum = np.fft.rfft(sound.astype(np.float32))
    spectrum = np.pad(spectrum, (0, max(0, count // 2 + 1 - len(spectrum))))[:count // 2 + 1]
    return np.clip(np.fft.irfft(spectrum, count) * (count / len(sound)), -32767, 32767).astype(np.int16)


def trimmed(sound):
    if len(sound) == 0: return None
    loud = np.abs(sound.astype(np.int32))
    at = np.flatnonzero(loud > max(60, loud.max() * .01))
    return None if len(at) < 1600 else sound[max(0, at[0] - 800):at[-1] + 800]


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], sys.argv[3], *[kind(value) for kind, value in zip((float, int, int), filter(None, sys.argv[4:]))])
