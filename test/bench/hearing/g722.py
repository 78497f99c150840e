"""Decodes G.722 (ITU-T, 64 kbit/s) with Debian's libspandsp2: pairs of FILE.g722 FILE.raw (16 kHz, 16 bits)."""
import ctypes, sys

library = ctypes.CDLL("libspandsp.so.2")
library.g722_decode_init.restype = ctypes.c_void_p
library.g722_decode_init.argtypes = [ctypes.c_void_p, ctypes.c_int, ctypes.c_int]
library.g722_decode.argtypes = [ctypes.c_void_p, ctypes.c_void_p, ctypes.c_char_p, ctypes.c_int]
for source, target in zip(sys.argv[1::2], sys.argv[2::2]):
    coded = open(source, "rb").read()
    sound = (ctypes.c_int16 * (2 * len(coded) + 16))()
    count = library.g722_decode(library.g722_decode_init(None, 64000, 0), sound, coded, len(coded))
    open(target, "wb").write(bytes(sound)[:2 * count])
