"""
Stage 5: the network as the engine reads it.
python3 export.py WEIGHTS.npz MODEL_FOLDER [--prior 0.3] [--garbage 0.25] [--bits 11]
Writes am/final.mdl, am/phones.txt, conf/, graph/phones/word_boundary.int; the rest of graph/ is stage 6's.
"""
import argparse, os
import numpy as np
import kaldi
from phones import ENDINGS, OUTPUTS, PHONES
from shape import COARSE_LAYERS, CONTEXT, FINE_LAYERS, SKIP, SUBSAMPLING

FEATURES = """--use-energy=false
--sample-frequency=16000
--frame-length=25.625
--frame-shift=10
--window-type=hamming
--preemphasis-coefficient=0.97
--remove-dc-offset=true
--dither=0
--num-mel-bins=25
--num-ceps=13
--low-freq=130
--high-freq=6800
--cepstral-lifter=22
"""
DECODER = """--min-active=200
--max-active=1500
--beam=13
--lattice-beam=3
--acoustic-scale=1
--frame-subsampling-factor=3
--endpoint.silence-phones=1
--endpoint.rule2.min-trailing-silence=0.5
--endpoint.rule3.min-trailing-silence=0.75
--endpoint.rule4.min-trailing-silence=1.0
"""


def rounded(values, bits):
    """Keeps so many bits of each number's fraction: nothing is lost that the ear could notice, and the rest packs well."""
    values = np.asarray(values, "<f4")
    drop = 23 - bits
    whole = values.view("<u4").astype(np.uint64) + (1 << (drop - 1))
    return ((whole >> drop) << drop).astype("<u4").view("<f4").reshape(values.shape)


def at(name, offset):
    return name if offset == 0 else f"Offset({name}, {offset})"


def layers_of(weights, bits):
    """Convolutions become matrices over neighbouring frames; the input's mean and spread and every normalisation fold into them."""
    z, layers, small = weights, [], 1e-5
    norm = lambda name: (1 / np.sqrt(z[name + ".running_var"] + small), z[name + ".running_mean"])
    flat = lambda kernel: kernel.transpose(0, 2, 1).reshape(kernel.shape[0], -1)
    affine = lambda name, source, matrix, bias: layers.append({"name": name, "kind": "affine", "from": source, "weights": rounded(matrix, bits), "bias": bias})
    kernel = z["c1.weight"] / z["sd"][None, :, None]
    scale, mean = norm("b1")
    width = len(scale)
    affine("first.affine", "Append(" + ", ".join(at("input", k) for k in range(-2, 3)) + ")", flat(kernel) * scale[:, None],
           (z["c1.bias"] - (kernel * z["mu"][None, :, None]).sum((1, 2))) * scale)
    layers.append({"name": "first.relu", "kind": "relu", "from": "first.affine", "width": width})
    current, shift = "first.relu", -mean * scale
    for name, step in [(f"f.{i}", 1) for i in range(FINE_LAYERS)] + [(f"g.{i}", SUBSAMPLING) for i in range(COARSE_LAYERS)]:
        squeeze, spread = flat(z[name + ".l.weight"]), flat(z[name + ".a.weight"])
        scale, mean = norm(name + ".bn")
        own = name.replace(".", "")
        affine(f"{own}.squeeze", f"Append({at(current, -step)}, {current})", squeeze, rounded(squeeze, bits) @ np.concatenate([shift, shift]))
        affine(f"{own}.spread", f"Append({own}.squeeze, {at(own + '.squeeze', step)})", spread * scale[:, None], z[name + ".a.bias"] * scale)
        layers.append({"name": f"{own}.relu", "kind": "relu", "from": f"{own}.spread", "width": width})
        layers.append({"name": own, "kind": "sum", "from": f"Sum(Scale({SKIP:g}, {current}), {own}.relu)", "width": width})
        current, shift = own, -mean * scale + SKIP * shift
    matrix = rounded(z["o.weight"][:, :, 0], bits)
    affine("scores", current, matrix, z["o.bias"] + matrix @ shift)
    layers.append({"name": "chances", "kind": "logsoftmax", "from": "scores", "width": OUTPUTS})
    return layers


def add_garbage(layers, prior, prior_share, garbage):
    """
    How likely a sound is at all is taken out by `prior_share`. The garbage sound scores what the best of all sounds scores in that frame, less `garbage`:
    speech that no word of the grammar explains as well as free phones do goes to it, in noise and in quiet alike.
    """
    adjust = -prior_share * np.log(np.maximum(prior, 1e-5))
    adjust -= adjust[0]
    layers.append({"name": "adjusted", "kind": "affine", "from": "chances", "weights": np.eye(OUTPUTS), "bias": adjust})
    layers.append({"name": "best", "kind": "largest", "from": "adjusted", "width": OUTPUTS})
    order = list(range(kaldi.GARBAGE)) + [OUTPUTS] + list(range(kaldi.GARBAGE, OUTPUTS))
    bias = np.zeros(OUTPUTS + 1)
    bias[kaldi.GARBAGE] = -garbage
    layers.append({"name": "sounds", "kind": "affine", "from": "Append(adjusted, best)", "weights": np.eye(OUTPUTS + 1)[order], "bias": bias})


def write_tables(folder):
    names = ["<blank>"] + PHONES + ["<garbage>"] + ENDINGS
    open(f"{folder}/am/phones.txt", "w").write("".join(f"{name} {output}\n" for output, name in enumerate(names)))
    os.makedirs(f"{folder}/graph/phones", exist_ok=True)
    places = ["begin", "internal", "end", "singleton"]
    lines = ["1 nonword", "2 internal"] + [f"{phone} {places[(phone - kaldi.FIRST) % 4]}" for phone in range(kaldi.FIRST, kaldi.COUNT + 1)]
    garbage = kaldi.FIRST + 4 * len(PHONES)
    lines[garbage - 1] = f"{garbage} singleton"
    open(f"{folder}/graph/phones/word_boundary.int", "w").write("\n".join(lines) + "\n")


def main():
    options = argparse.ArgumentParser()
    options.add_argument("weights"); options.add_argument("folder")
    options.add_argument("--prior", type=float, default=.3)
    options.add_argument("--garbage", type=float, default=.25)
    options.add_argument("--bits", type=int, default=11)
    options = options.parse_args()
    for part in ("am", "conf"): os.makedirs(f"{options.folder}/{part}", exist_ok=True)
    weights = dict(np.load(options.weights))
    layers = layers_of(weights, options.bits)
    add_garbage(layers, weights["prior"], options.prior, options.garbage)
    kaldi.write_model(f"{options.folder}/am/final.mdl", layers, 13, CONTEXT)
    open(f"{options.folder}/conf/mfcc.conf", "w").write(FEATURES)
    open(f"{options.folder}/conf/model.conf", "w").write(DECODER)
    write_tables(options.folder)
    print("written", options.folder, os.path.getsize(f"{options.folder}/am/final.mdl"), "bytes")


if __name__ == "__main__":
    main()
