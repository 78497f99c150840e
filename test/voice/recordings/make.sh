#!/bin/sh
# Makes the recordings again (Debian packages flite and sox). They are checked in, so no test needs either.
set -e
cd "$(dirname "$0")"
say() { # NAME VOICE WORDS
  flite -voice "$2" -t "$3" -o "$1.tmp.wav"
  sox "$1.tmp.wav" -R -r 16000 -b 16 -c 1 "$1.wav" norm -9
  rm "$1.tmp.wav"
}
say bench-next-step slt "bench, next step"
say bench rms "bench"
say next-step rms "next step"
say how-long-is-the-long-rail slt "how long is the long rail"
say bench-record-leg-two awb "bench, record leg two width three and seven sixteenths"
say remark rms "there was a long line at the bank and only one person working"
say bench-scratch-that slt "bench, scratch that"
say bench-slower rms "bench, slower"
say bench-how-deep-are-the-mortises slt "bench, how deep are the mortises"
say bench-stop-the-clock rms "bench, stop the clock"
say bench-how-wide-is-the-kumiko slt "bench, how wide is the koomeeko"
