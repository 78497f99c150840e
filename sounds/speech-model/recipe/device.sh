#!/bin/sh
# Stages 3 to 5 on the machine with the GPU, in one go, for nothing stays there: voices and training side by side, then the export.
# device.sh BUNDLE.tar.gz OUT_FOLDER SECONDS [SHARE_OF_TEXTS] [WEIGHTS_TO_GO_ON_FROM RATE]
set -eu
bundle=$1 out=$2 seconds=$3 share=${4:-1} from=${5:-} rate=${6:-}
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
voices=$(($(nproc) - 2))
export PYTHONUNBUFFERED=1 OMP_NUM_THREADS=2
nvidia-smi -L || true
tar xzf "$bundle" -C "$work"
# Festival looks for its beginnings here, whatever it is told.
[ -e /usr/share/festival ] || ln -s "$work/tools/share/festival" /usr/share/festival
nice python3 "$here/voices.py" "$work/texts.json" "$work/tools" "$work/voices" "$share" "$voices" "${from:+2}" > "$out/voices.log" 2>&1 &
python3 "$here/train.py" "$work/voices" "$out/weights.npz" "$seconds" ${from:+--from "$from" --rate "$rate"}
cat "$out/voices.log"
python3 "$here/export.py" "$out/weights.npz" "$work/model"
