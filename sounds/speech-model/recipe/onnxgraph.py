"""
An ONNX file (onnx.ai, onnx.proto3), read and run with PyTorch, where neither the onnx package nor a runtime can be had: only what the network of kokoro.py needs.
What is quantised while it runs (DynamicQuantizeLinear) is left as it is, so that only the weights are of eight bits: on a GPU this is faster, and no worse.
"""
import struct
import numpy as np
import torch
import torch.nn.functional as F

KINDS = {1: np.float32, 2: np.uint8, 3: np.int8, 6: np.int32, 7: np.int64, 9: np.bool_, 10: np.float16, 11: np.float64}
CASTS = {1: torch.float32, 6: torch.int32, 7: torch.int64, 9: torch.bool, 10: torch.float16, 11: torch.float64}


def fields(data):
    """The fields of a message in the wire format of Protocol Buffers: (number, value), a value being a whole number or bytes."""
    at, end = 0, len(data)
    while at < end:
        key, at = varint(data, at)
        kind = key & 7
        if kind == 0: value, at = varint(data, at)
        elif kind == 2:
            length, at = varint(data, at)
            value, at = data[at:at + length], at + length
        elif kind == 5: value, at = data[at:at + 4], at + 4
        elif kind == 1: value, at = data[at:at + 8], at + 8
        else: raise ValueError(f"wire type {kind}")
        yield key >> 3, value


def varint(data, at):
    value = shift = 0
    while True:
        byte = data[at]
        at, value, shift = at + 1, value | (byte & 127) << shift, shift + 7
        if byte < 128: return value, at


def signed(value):
    return value - (1 << 64) if value >> 63 else value


def whole_numbers(value):
    if isinstance(value, int): return [signed(value)]
    numbers, at = [], 0
    while at < len(value):
        number, at = varint(value, at)
        numbers.append(signed(number))
    return numbers


def tensor(data):
    dims, kind, raw, floats, wholes, name = [], 1, None, b"", [], ""
    for number, value in fields(data):
        if number == 1: dims += whole_numbers(value)
        elif number == 2: kind = value
        elif number == 4: floats += bytes(value)
        elif number in (5, 7): wholes += whole_numbers(value)
        elif number == 8: name = bytes(value).decode()
        elif number == 9: raw = bytes(value)
    if raw is not None: array = np.frombuffer(raw, KINDS[kind])
    elif floats: array = np.frombuffer(floats, np.float32)
    else: array = np.array(wholes, KINDS[kind])
    return name, array.reshape(dims).copy()


def attribute(data):
    name, value_, kind, wholes, floats = "", None, 0, [], []
    for number, value in fields(data):
        if number == 1: name = bytes(value).decode()
        elif number == 2: value_ = struct.unpack("<f", value)[0]
        elif number == 3: value_ = signed(value)
        elif number == 4: value_ = bytes(value).decode()
        elif number == 5: value_ = tensor(value)[1]
        elif number == 8: wholes += whole_numbers(value)
        elif number == 20: kind = value
    return name, wholes if kind == 7 else value_


def node(data):
    inputs, outputs, operation, attributes = [], [], "", {}
    for number, value in fields(data):
        if number == 1: inputs.append(bytes(value).decode())
        elif number == 2: outputs.append(bytes(value).decode())
        elif number == 4: operation = bytes(value).decode()
        elif number == 5:
            name, told = attribute(value)
            attributes[name] = told
    return operation, inputs, outputs, attributes


class Network:
    """run({input: tensor}) gives the first output. Numbers of shape stay with the processor, so that the GPU is not waited for."""

    def __init__(self, path, device):
        self.device, self.constants, self.nodes = device, {"": None}, []
        graph = next(value for number, value in fields(memoryview(open(path, "rb").read())) if number == 7)
        for number, value in fields(graph):
            if number == 1: self.nodes.append(node(value))
            elif number == 5:
                name, array = tensor(value)
                self.constants[name] = self.placed(torch.from_numpy(array))
            elif number == 12 and not hasattr(self, "output"): self.output = next(bytes(v).decode() for n, v in fields(value) if n == 1)
        self.fold()

    def placed(self, value):
        return value if value.dtype in (torch.int64, torch.int32) or value.dim() == 0 else value.to(self.device)

    def fold(self):
        """What depends on no input is worked out once; weights of eight bits become plain ones."""
        left, widened = [], {}
        for operation, inputs, outputs, attributes in self.nodes:
            if operation == "DynamicQuantizeLinear":
                self.constants[outputs[1]], self.constants[outputs[2]] = torch.tensor(1.), torch.tensor(0.)
                left.append(("Identity", inputs, outputs[:1], {}))
                continue
            if operation in ("ConvInteger", "MatMulInteger") and inputs[1] in self.constants:
                key = inputs[1], inputs[3]
                if key not in widened: widened[key] = self.widened(*key, operation)
                inputs, operation = [inputs[0], widened[key]], operation.removesuffix("Integer")
            if operation == "DynamicQuantizeLSTM": attributes = dict(attributes, layer=self.layer(inputs))
            if inputs and operation != "DynamicQuantizeLSTM" and all(name in self.constants for name in inputs):
                for name, value in zip(outputs, self.done(operation, [self.constants[name] for name in inputs], attributes)): self.constants[name] = value
            else: left.append((operation, inputs, outputs, attributes))
        self.nodes = left
        last = {name: at for at, (_, inputs, _, _) in enumerate(left) for name in inputs}
        self.spent = [[name for name in set(inputs) if last[name] == at and name not in self.constants] for at, (_, inputs, _, _) in enumerate(left)]

    def widened(self, weights, zero, operation):
        value, point = self.constants[weights].float(), self.constants[zero].float().to(self.device)
        if point.dim() == 1 and point.numel() > 1: point = point.reshape([-1] + [1] * (value.dim() - 1)) if operation == "ConvInteger" else point
        self.constants[name := weights + " widened"] = value - point
        return name

    def layer(self, inputs):
        """An LSTM of PyTorch's: gates are input, forget, cell, output there, and input, output, forget, cell here."""
        taken = [self.constants.get(name) for name in inputs]
        order = lambda rows: torch.cat([rows.chunk(4)[k] for k in (0, 2, 3, 1)])
        wide = lambda value, scale, zero, way: ((value[way].float() - zero[way].float().to(self.device)) * scale[way].to(self.device)).T
        layer = torch.nn.LSTM(taken[1].shape[1], taken[2].shape[1], bidirectional=True).to(self.device)
        for way, end in enumerate(("_l0", "_l0_reverse")):
            bias = taken[3][way].chunk(2)
            weights = {"weight_ih": wide(taken[1], taken[8], taken[9], way), "weight_hh": wide(taken[2], taken[10], taken[11], way), "bias_ih": bias[0], "bias_hh": bias[1]}
            for name, value in weights.items(): getattr(layer, name + end).data.copy_(order(value))
        layer.flatten_parameters()
        return layer

    @torch.inference_mode()
    def run(self, inputs):
        values = dict(self.constants, **inputs)
        for (operation, names, outputs, attributes), spent in zip(self.nodes, self.spent):
            for name, value in zip(outputs, self.done(operation, [values[name] for name in names], attributes)): values[name] = value
            for name in spent: del values[name]
        return values[self.output]

    def done(self, operation, taken, attributes):
        """The outputs of one operation, brought to one device first where they are not."""
        if operation not in OF_SHAPE and len({v.device for v in taken if v is not None and v.dim() > 0}) > 1:
            taken = [v.to(self.device) if v is not None and v.dim() > 0 else v for v in taken]
        result = OPERATIONS[operation](*taken, **attributes)
        return result if isinstance(result, (tuple, list)) else (result,)


def gather(data, index, axis=0):
    if index.dim() == 0: return data.select(axis, int(index))
    index = index.to(data.device).long()
    flat = torch.where(index < 0, index + data.shape[axis], index).reshape(-1)
    return data.index_select(axis, flat).reshape(data.shape[:axis] + index.shape + data.shape[axis + 1:])


def sliced(x, starts, ends, axes=None, steps=None):
    starts, ends = starts.tolist(), ends.tolist()
    axes = axes.tolist() if axes is not None else range(len(starts))
    for start, end, axis, step in zip(starts, ends, axes, steps.tolist() if steps is not None else [1] * len(starts)):
        where = [slice(None)] * x.dim()
        where[axis] = slice(start, min(end, x.shape[axis]), step)
        x = x[tuple(where)]
    return x


def reshaped(x, shape, allowzero=0):
    return x.reshape([x.shape[at] if size == 0 else size for at, size in enumerate(shape.tolist())])


def unsqueezed(x, axes):
    rank = x.dim() + axes.numel()
    for axis in sorted(a % rank for a in axes.reshape(-1).tolist()): x = x.unsqueeze(axis)
    return x


def squeezed(x, axes):
    for axis in sorted((a % x.dim() for a in axes.reshape(-1).tolist()), reverse=True): x = x.squeeze(axis)
    return x


def convolved(x, weight, bias=None, pads=(0, 0), strides=(1,), dilations=(1,), group=1, **_):
    """As one product of matrices: every utterance has another length, and to plan for a new length costs cuDNN more than the work."""
    if group != 1 or x.shape[0] != 1: raise ValueError("convolutions of one utterance, all channels together")
    x = F.pad(x, pads)[0]
    count = (x.shape[1] - dilations[0] * (weight.shape[2] - 1) - 1) // strides[0] + 1
    seen = x.as_strided((x.shape[0], weight.shape[2], count), (x.stride(0), dilations[0] * x.stride(1), strides[0] * x.stride(1)))
    out = weight.reshape(weight.shape[0], -1) @ seen.reshape(-1, count)
    return (out if bias is None else out + bias[:, None])[None]


def unconvolved(x, weight, bias=None, pads=(0, 0), strides=(1,), dilations=(1,), group=1, output_padding=(0,), **_):
    if dilations[0] != 1 or x.shape[0] != 1 or group not in (1, x.shape[1]): raise ValueError("transposed convolutions of one utterance")
    (step,), taps, count = strides, weight.shape[2], x.shape[2]
    parts = x[0][:, None] * weight[:, 0, :, None] if group > 1 else (weight.reshape(weight.shape[0], -1).T @ x[0]).reshape(weight.shape[1], taps, count)
    whole = x.new_zeros(parts.shape[0], (count - 1) * step + taps + output_padding[0])
    for tap in range(taps): whole[:, tap:tap + (count - 1) * step + 1:step] += parts[:, tap]
    out = whole[:, pads[0]:whole.shape[1] - pads[1]]
    return (out if bias is None else out + bias[:, None])[None]


def resized(x, _, scales, mode="nearest", **__):
    return F.interpolate(x, scale_factor=scales.tolist()[2:], mode=mode, recompute_scale_factor=False, **({} if mode == "nearest" else {"align_corners": False}))


def recurrent(x, *rest, layer=None, **_):
    out, (hidden, cell) = layer(x, tuple(state.to(x.device).contiguous() for state in (rest[4], rest[5])))
    return out.reshape(x.shape[0], x.shape[1], 2, -1).transpose(1, 2), hidden, cell


def padded(x, pads, *_, mode="constant"):
    before, after = pads[:x.dim()].tolist(), pads[x.dim():].tolist()
    if any(before[:-1] + after[:-1]): raise ValueError("padded in time only")
    return F.pad(x.reshape(1, -1, x.shape[-1]), (before[-1], after[-1]), mode=mode).reshape(*x.shape[:-1], -1)


def short_time(signal, step, window, length, onesided=1):
    """The imaginary parts of both ends, which ought to be zero, are a little off it, as in a runtime's rounding: with true zeros their phases lie the other way, and voices whistle."""
    signal = signal.reshape(signal.shape[0], -1)
    both = torch.view_as_real(torch.stft(signal, int(length), int(step), int(length), window, center=False, return_complex=True)).transpose(1, 2).clone()
    both[:, :, 0, 1] = both[:, :, 0, 0] * -4.5e-7
    both[:, :, -1, 1] = torch.randn_like(both[:, :, -1, 1]) * 2e-7 - 1.3e-7
    return both


def scattered(data, index, updates, reduction="none"):
    out = data.clone()
    out[tuple(index.to(data.device).movedim(-1, 0))] = updates.to(out)
    return out


def expanded(x, shape):
    return x.expand(torch.broadcast_shapes(x.shape, shape.tolist()))


def divided(a, b):
    return a / b if a.is_floating_point() or b.is_floating_point() else torch.div(a, b, rounding_mode="trunc")


def skip_normal(x, skip, weight, bias, epsilon=1e-12):
    return F.layer_norm(x + skip, x.shape[-1:], weight, bias, epsilon)


def filled(shape, value=np.zeros(1, np.float32)):
    return torch.full(shape.tolist(), value.item(), dtype=torch.from_numpy(value).dtype)


def chosen(where, one, other):
    return torch.where(where, *(value.to(where.device) for value in (one, other)))


def mean(x, axes, keepdims=1, **_):
    return x.mean(axes.tolist(), keepdim=bool(keepdims))


OF_SHAPE = {"Shape", "Reshape", "Slice", "Unsqueeze", "Squeeze", "Expand", "Gather", "ReduceMean", "ReduceSum", "Resize", "Pad", "Split", "CumSum", "STFT", "ConstantOfShape", "ScatterND", "DynamicQuantizeLSTM"}
OPERATIONS = {
    "Identity": lambda x: x, "Shape": lambda x, start=0: torch.tensor(x.shape[start:]), "Gather": gather, "Slice": sliced, "Reshape": reshaped,
    "Split": lambda x, sizes, axis=0: x.split(sizes.tolist(), axis), "Unsqueeze": unsqueezed, "Squeeze": squeezed, "Expand": expanded,
    "Transpose": lambda x, perm: x.permute(perm), "Concat": lambda *xs, axis: torch.cat(xs, axis), "Cast": lambda x, to, **_: x.to(CASTS[to]),
    "ConstantOfShape": filled, "Where": chosen, "Equal": torch.eq, "Greater": torch.gt, "Less": torch.lt, "GreaterOrEqual": torch.ge, "And": torch.logical_and,
    "Add": torch.add, "Sub": torch.sub, "Mul": torch.mul, "Div": divided, "Pow": torch.pow, "Floor": torch.floor, "Round": torch.round, "Sqrt": torch.sqrt,
    "Sin": torch.sin, "Cos": torch.cos, "Tanh": torch.tanh, "Atan": lambda x: torch.atan(x.nan_to_num(0.)), "Exp": torch.exp, "Sigmoid": torch.sigmoid,
    "Clip": lambda x, low=None, high=None: x.clamp(*(None if end is None else end.item() for end in (low, high))), "MatMul": torch.matmul, "Conv": convolved, "ConvTranspose": unconvolved, "Resize": resized,
    "FusedMatMul": lambda a, b, transA=0, transB=0, alpha=1., **_: alpha * torch.matmul(a.transpose(-1, -2) if transA else a, b.transpose(-1, -2) if transB else b),
    "Softmax": lambda x, axis=-1: x.softmax(axis), "LeakyRelu": lambda x, alpha=.01: F.leaky_relu(x, alpha),
    "LayerNormalization": lambda x, weight, bias, epsilon=1e-5, **_: F.layer_norm(x, x.shape[-1:], weight, bias, epsilon), "SkipLayerNormalization": skip_normal,
    "FastGelu": lambda x, bias=None: F.gelu(x if bias is None else x + bias, approximate="tanh"), "DynamicQuantizeLSTM": recurrent,
    "DequantizeLinear": lambda x, scale, zero: (x.float() - zero.float()) * scale, "ReduceMean": mean,
    "ReduceSum": lambda x, axes, keepdims=1, **_: x.sum(axes.tolist(), keepdim=bool(keepdims)), "CumSum": lambda x, axis, **_: x.cumsum(int(axis)),
    "Range": lambda a, b, c: torch.arange(a.item(), b.item(), c.item()), "Pad": padded, "STFT": short_time,
    "NonZero": lambda x: torch.nonzero(x).T, "ScatterND": scattered,
}
