"""
Stage 3: the texts spoken by every voice, and features sampled from the CMUSphinx statistics, while training already goes on.
python3 voices.py TEXTS.json TOOLS_FOLDER OUT_FOLDER [share of the texts, 0 to 1] [processes] [round: another gives other voices to the same texts]
    [seconds for the learned voices; training waits for their end, for both want the GPU]
Writes OUT_FOLDER/*.npz: sound (or features), where each utterance ends, labels, voice.
"""
import io, json, os, random, shutil, subprocess, sys, tempfile, time, wave, zlib
from multiprocessing import Pool
import numpy as np
import kokoro, sphinx
from origins import BY_RULES, FROM_PIECES, LEARNED

RATE = 16000
JOB = 160
LEARNED_JOB = 40
LONGEST_SECONDS = 8
# Kept out of training, for the tests: flite's rms; these variants of espeak-ng: f4 m7 klatt3 edward2 max iven3 Tweaky; its accents en-gb-scotland, en-029, en-us-nyc.
VARIANTS = ("f1 f2 f3 f5 m1 m2 m3 m4 m5 m6 m8 Alex Alicia Andrea Andy Annie Denis Diogo Gene Gene2 Hugo Jacky Lee Marco Mario Michael Mike "
            "adam anika announcer antonio aunty belinda benjamin boris caleb david ed edward grandma grandpa gustave iven iven2 john kaukovalta "
            "klatt klatt2 klatt4 linda marcelo michel miguel norbert pablo paul pedro quincy rob robert sandro shelby steph steph2 travis victor zac").split()
ACCENTS = ["en-us"] * 7 + ["en-gb", "en-gb-x-rp", "en-gb-x-gbclan"]
FLITE = ["slt", "slt", "awb", "awb", "kal16"]
PICO = ["en-US", "en-US", "en-GB"]
KOKORO = ["en-us"] * 4 + ["en-gb"]
FESTIVAL = ["voice_kal_diphone", "voice_ked_diphone", "voice_cmu_us_slt_arctic_hts", "voice_cmu_us_slt_arctic_hts"]


def main(texts, tools, out, share=1.0, processes=None, round_=1, seconds=1e9):
    os.makedirs(out, exist_ok=True)
    rows, began, totals = json.load(open(texts)), time.time(), {}
    size = lambda voice: LEARNED_JOB if voice == "kokoro" else JOB
    jobs = [(voice, rows[voice][at:at + size(voice)], at, tools, out, round_) for voice in rows for at in range(0, int(len(rows[voice]) * share), size(voice))]
    random.Random(0).shuffle(jobs)
    learned = [job + (began + seconds,) for job in jobs if job[0] == "kokoro"]
    others = [job + (None,) for job in jobs if job[0] != "kokoro"]
    processes, far_share, left = processes or os.cpu_count(), len(others) // 3, len(learned)

    def tell(what):
        open(os.path.join(out, what), "w").write(json.dumps(totals))
        print(what, totals, "seconds %.0f" % (time.time() - began), flush=True)

    if not learned: tell("learned")
    with Pool(max(1, processes * 2 // 3)) as near_gpu, Pool(max(1, processes // 3)) as far:
        for results in [near_gpu.imap_unordered(speak_job, learned + others[far_share:]), far.imap_unordered(speak_job, others[:far_share])]:
            for voice, count, hours in results:
                before = totals.get(voice, (0, 0))
                totals[voice] = (before[0] + count, round(before[1] + hours, 3))
                if voice == "kokoro":
                    left -= 1
                    if left == 0: tell("learned")
    tell("complete")


def speak_job(job):
    voice, rows, at, tools, out, round_, until = job
    if until and time.time() > until: return voice, 0, 0.0
    random_ = random.Random(zlib.crc32(f"{voice}{at} {round_}".encode()))
    np.random.seed(zlib.crc32(f"{at}{voice} {round_}".encode()))
    if voice == "sphinx": spoken, kind = list(sphinx.sample(rows, os.path.join(tools, "share/cmusphinx-en-us"), random_)), "features"
    else: spoken, kind = list(SPEAKERS[voice](rows, tools, random_)), "sound"
    if not spoken: return voice, 0, 0.0
    name = os.path.join(out, f"{voice}{at}")
    np.savez(name + ".part.npz", kind=kind, data=np.concatenate([s[0] for s in spoken]), length=np.array([len(s[0]) for s in spoken]),
             labels=np.concatenate([np.array(s[1], np.uint8) for s in spoken]), labelled=np.array([len(s[1]) for s in spoken]),
             origin=np.array([s[2] for s in spoken]))
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
        yield from kept(np.frombuffer(sound[44:len(sound) // 2 * 2], "<i2"), 22050, labels, BY_RULES)


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


def learned(rows, tools, r):
    voice = kokoro.speaker(f"{tools}/share/kokoro")
    for at in range(0, len(rows), 20):
        some, accent = rows[at:at + 20], r.choice(KOKORO)
        for (_, labels), ipa in zip(some, kokoro.in_sounds([text for text, _ in some], accent, f"{tools}/bin/espeak-ng", environment(tools), r)):
            sound = voice.say(ipa, voice.somebody(accent, r), r.uniform(.75, 1.3))
            if sound is not None: yield from kept(sound, kokoro.RATE, labels, LEARNED)


SPEAKERS = {"espeak": espeak, "flite": flite, "festival": festival, "pico": pico, "kokoro": learned}


def from_file(call, path, tools, labels):
    if call: subprocess.run(call, env=environment(tools), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        with wave.open(path) as file: sound, rate = np.frombuffer(file.readframes(10 ** 8), "<i2"), file.getframerate()
        os.remove(path)
    except (OSError, EOFError, wave.Error): return
    yield from kept(sound, rate, labels, FROM_PIECES)


def kept(sound, rate, labels, origin):
    """The utterance as 16 kHz sound without the silence around it, unless the synthesiser swallowed it or ran on."""
    sound = trimmed(resampled(sound, rate))
    if sound is not None and len(labels) * RATE * .032 < len(sound) < RATE * LONGEST_SECONDS: yield sound, labels, origin


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
    main(sys.argv[1], sys.argv[2], sys.argv[3], *[kind(value) for kind, value in zip((float, int, int, float), filter(None, sys.argv[4:]))])
