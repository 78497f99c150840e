"""The network: frames 25 cepstra to either side go in, one row of scores comes out for each 30 ms."""
import torch
import torch.nn as nn
import torch.nn.functional as F
from phones import OUTPUTS
from shape import COARSE_LAYERS, CONTEXT, FINE_LAYERS, NARROW, SKIP, SUBSAMPLING, WIDTH


class Factored(nn.Module):
    """Two frames squeezed into few numbers, two of those spread out again, beside the way around (D. Povey et al., Interspeech 2018, TDNN-F)."""

    def __init__(self):
        super().__init__()
        self.l = nn.Conv1d(WIDTH, NARROW, 2, bias=False)
        self.a = nn.Conv1d(NARROW, WIDTH, 2)
        self.bn = nn.BatchNorm1d(WIDTH, affine=False)
        nn.init.orthogonal_(self.l.weight.view(NARROW, -1))

    def forward(self, x):
        return self.bn(F.relu(self.a(self.l(x)))) + SKIP * x[:, :, 1:-1]


class Net(nn.Module):
    def __init__(self):
        super().__init__()
        self.c1, self.b1 = nn.Conv1d(13, WIDTH, 5), nn.BatchNorm1d(WIDTH, affine=False)
        self.f = nn.ModuleList(Factored() for _ in range(FINE_LAYERS))
        self.g = nn.ModuleList(Factored() for _ in range(COARSE_LAYERS))
        self.o, self.dropout = nn.Conv1d(WIDTH, OUTPUTS, 1), nn.Dropout(.1)
        self.register_buffer("mu", torch.zeros(13))
        self.register_buffer("sd", torch.ones(13))

    def forward(self, x):
        """(utterances, frames, 13) -> (utterances, frames / 3, outputs), not normalised. The edge frames are repeated, as the engine does."""
        x = F.pad(((x - self.mu) / self.sd).transpose(1, 2), (CONTEXT, CONTEXT), mode="replicate")
        x = self.b1(F.relu(self.c1(x)))
        for layer in self.f: x = layer(x)
        x = x[:, :, ::SUBSAMPLING]
        for layer in self.g: x = self.dropout(layer(x))
        return self.o(x).transpose(1, 2)
