"""Kaldi's binary files, as far as the engine reads them: a transition model of one state to a phone, and an nnet3 network of a few kinds of component."""
import math, struct
import numpy as np
from phones import ENDINGS, PHONES

# The engine's phones: 1 silence, 2 the blank within a word, from 3 on each sound in four places (begin, internal, end, singleton). The garbage sound has
# the place after the dictionary's phones, with three numbers that stay unused, and the endings of our own come behind it.
SOUNDS = PHONES + ["garbage"] + ENDINGS
GARBAGE = 1 + len(PHONES)       # its output; 0 is the blank's
FIRST = 3
COUNT = FIRST + 4 * len(SOUNDS) - 1


def output_of(phone):
    return 0 if phone < FIRST else 1 + (phone - FIRST) // 4


class Writer:
    def __init__(self): self.bytes = bytearray(b"\0B")
    def token(self, text): self.bytes += text.encode() + b" "
    def text(self, text): self.bytes += text.encode()
    def whole(self, value): self.bytes += b"\4" + struct.pack("<i", value)
    def real(self, value): self.bytes += b"\4" + struct.pack("<f", value)
    def double(self, value): self.bytes += b"\x08" + struct.pack("<d", value)
    def wholes(self, values): self.bytes += b"\4" + struct.pack("<i", len(values)) + np.asarray(values, "<i4").tobytes()

    def vector(self, values):
        values = np.asarray(values, "<f4")
        self.token("FV"); self.whole(values.size); self.bytes += values.tobytes()

    def matrix(self, values):
        values = np.asarray(values, "<f4")
        self.token("FM"); self.whole(values.shape[0]); self.whole(values.shape[1]); self.bytes += values.tobytes()


def write_transitions(w):
    w.token("<TransitionModel>"); w.token("<Topology>")
    w.wholes(range(1, COUNT + 1)); w.wholes([-1] + [0] * COUNT)
    w.whole(1); w.whole(2)                                                  # one topology: a state that emits, and the end
    w.whole(0); w.whole(2); w.whole(0); w.real(.5); w.whole(1); w.real(.5)
    w.whole(-1); w.whole(0)
    w.token("</Topology>"); w.token("<Triples>"); w.whole(COUNT)
    for phone in range(1, COUNT + 1): w.whole(phone); w.whole(0); w.whole(output_of(phone))
    w.token("</Triples>"); w.token("<LogProbs>"); w.vector([0.] + [math.log(.5)] * (2 * COUNT)); w.token("</LogProbs>"); w.token("</TransitionModel>")


def write_component(w, layer):
    kind = layer["kind"]
    if kind == "affine":
        w.token("<FixedAffineComponent>"); w.token("<LinearParams>"); w.matrix(layer["weights"])
        w.token("<BiasParams>"); w.vector(layer["bias"]); w.token("</FixedAffineComponent>")
    elif kind == "sum":
        w.token("<NoOpComponent>"); w.token("<Dim>"); w.whole(layer["width"]); w.token("<BackpropScale>"); w.real(1.); w.token("</NoOpComponent>")
    elif kind == "largest":
        w.token("<MaxpoolingComponent>")
        for name, value in (("InputXDim", layer["width"]), ("InputYDim", 1), ("InputZDim", 1), ("PoolXSize", layer["width"]), ("PoolYSize", 1), ("PoolZSize", 1),
                            ("PoolXStep", layer["width"]), ("PoolYStep", 1), ("PoolZStep", 1)):
            w.token(f"<{name}>"); w.whole(value)
        w.token("</MaxpoolingComponent>")
    else:
        name = {"relu": "RectifiedLinearComponent", "logsoftmax": "LogSoftmaxComponent"}[kind]
        w.token(f"<{name}>"); w.token("<Dim>"); w.whole(layer["width"])
        for field in ("ValueAvg", "DerivAvg"): w.token(f"<{field}>"); w.vector([])
        for field in ("Count", "NumDimsSelfRepaired", "NumDimsProcessed"): w.token(f"<{field}>"); w.double(0.)
        w.token(f"</{name}>")


def write_model(path, layers, inputs, context):
    w = Writer()
    write_transitions(w)
    lines = [f"input-node name=input dim={inputs}"] + [f"component-node name={l['name']} component={l['name']} input={l['from']}" for l in layers]
    w.text("<Nnet3> \n" + "\n".join(lines + [f"output-node name=output input={layers[-1]['name']} objective=linear"]) + "\n\n")
    w.token("<NumComponents>"); w.whole(len(layers))
    for layer in layers: w.token("<ComponentName>"); w.token(layer["name"]); write_component(w, layer)
    w.token("</Nnet3>"); w.token("<LeftContext>"); w.whole(context); w.token("<RightContext>"); w.whole(context); w.token("<Priors>"); w.vector([])
    open(path, "wb").write(bytes(w.bytes))
