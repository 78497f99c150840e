#!/bin/sh
# Stages 3 and 4 on the machine with GPUs, in one go, for nothing stays there: voices and training side by side.
# device.sh BUNDLE.tar.xz OUT_FOLDER SECONDS [SHARE_OF_TEXTS] [ROUND WEIGHTS_TO_GO_ON_FROM RATE VARIANTS SECONDS_OF_LEARNED_VOICES]
# Every GPU trains one line of VARIANTS (a file of this folder; variants.txt), from the same voices, to OUT_FOLDER/NAME.npz. OUT_FOLDER/ended is there when all is done, so that this can
# run on its own (setsid) where one command may not take as long.
set -eu
bundle=$1 out=$2 seconds=$3 share=${4:-1} round=${5:-1} from=${6:-} rate=${7:-0.0025} variants=${8:-variants.txt} learned=${9:-300}
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
gpus=$(nvidia-smi -L 2>/dev/null | wc -l)
[ "$gpus" -gt 0 ] || gpus=1
voices=$(($(nproc) - 1 - gpus))
[ "$voices" -gt 0 ] || voices=1
export PYTHONUNBUFFERED=1 OMP_NUM_THREADS=2
mkdir -p "$out"
tar xf "$bundle" -C "$work"
# Festival and pico look for their voices here, whatever they are told.
for engine in festival pico; do [ -e /usr/share/$engine ] || ln -s "$work/tools/share/$engine" /usr/share/$engine; done
nice python3 "$here/voices.py" "$work/texts.json" "$work/tools" "$work/voices" "$share" "$voices" "$round" "$learned" > "$out/voices.log" 2>&1 &
number=0 trainings=
while read -r name options; do
  [ "$number" -lt "$gpus" ] || break
  # shellcheck disable=SC2086 — the options are several words
  CUDA_VISIBLE_DEVICES=$number python3 "$here/train.py" "$work/voices" "$out/$name.npz" "$seconds" --rate "$rate" ${from:+--from "$from"} $options > "$out/$name.log" 2>&1 &
  trainings="$trainings $!" number=$((number + 1))
done < "$here/$variants"
for training in $trainings; do wait "$training" || echo "a training failed" >> "$out/voices.log"; done
cat "$out"/*.log
touch "$out/ended"
