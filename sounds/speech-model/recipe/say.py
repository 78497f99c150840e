"""
Texts said by a learned voice as it is, for trying a model by: python3 say.py KOKORO_FOLDER ROWS.json
KOKORO_FOLDER is share/kokoro of what gather.sh has gathered; ROWS holds [voice, text, OUT.wav] of each. The voices kept out of training are KEPT_OUT in kokoro.py. Takes about twice as long as the speech.
"""
import json, os, sys, wave
import kokoro


def main(folder, rows):
    voice = kokoro.Kokoro(folder)
    for name, text, out in json.load(open(rows)):
        accent = "en-us" if name.startswith("a") else "en-gb"
        (ipa,) = kokoro.in_sounds([text], accent, "espeak-ng", dict(os.environ))
        sound = voice.say(ipa, lambda count: voice.voices[name][count], 1.)
        if sound is None: raise SystemExit(f'"{text}" cannot be said: it is too long')
        with wave.open(out, "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(kokoro.RATE)
            file.writeframes(sound.tobytes())


main(*sys.argv[1:])
