"""From clean speech to what a microphone in a shop gives: rooms, noises, levels; and the features that the engine computes (../README.md's mfcc.conf)."""
import math
import numpy as np
import torch

RATE, WINDOW, SHIFT, FFT, BANDS, CEPSTRA, LOW_HZ, HIGH_HZ = 16000, 410, 160, 512, 25, 13, 130.0, 6800.0
WARPS = np.linspace(.80, 1.22, 22)
UNWARPED = int(np.argmin(abs(WARPS - 1)))


def mel(hertz):
    return 1127.0 * np.log(1 + hertz / 700.0)


def bank(warp):
    """The triangles of the mel filter bank over the power spectrum, for a vocal tract `warp` times as short."""
    low, high = mel(LOW_HZ), mel(HIGH_HZ)
    step = (high - low) / (BANDS + 1)
    at = mel(np.arange(FFT // 2) * RATE / FFT * warp)
    weights = np.zeros((BANDS, FFT // 2 + 1))
    for i in range(BANDS):
        left, centre, right = low + i * step, low + (i + 1) * step, low + (i + 2) * step
        weights[i, :FFT // 2] = np.where((at > left) & (at < right), np.where(at <= centre, (at - left) / (centre - left), (right - at) / (right - centre)), 0)
    return weights


def cosines():
    k, n = np.arange(CEPSTRA)[:, None], np.arange(BANDS)[None]
    matrix = np.sqrt(2. / BANDS) * np.cos(np.pi / BANDS * (n + .5) * k)
    matrix[0] = np.sqrt(1. / BANDS)
    return matrix


LIFTER = 1 + 11 * np.sin(np.pi * np.arange(CEPSTRA) / 22)


class Features:
    def __init__(self, device):
        tensor = lambda a: torch.tensor(a, dtype=torch.float32, device=device)
        self.banks = tensor(np.stack([bank(warp) for warp in WARPS]))
        self.cosines, self.lifter = tensor(cosines()), tensor(LIFTER)
        self.hamming = tensor(.54 - .46 * np.cos(2 * np.pi * np.arange(WINDOW) / (WINDOW - 1)))

    def __call__(self, sound, warps):
        """(utterances, samples) of 16-bit sound -> (utterances, frames, 13)."""
        frames = sound.unfold(1, WINDOW, SHIFT)
        frames = frames - frames.mean(2, keepdim=True)
        frames = torch.cat([frames[:, :, :1] * (1 - .97), frames[:, :, 1:] - .97 * frames[:, :, :-1]], 2) * self.hamming
        power = torch.fft.rfft(frames, FFT).abs() ** 2
        energies = torch.bmm(power, self.banks[warps].transpose(1, 2)).clamp_min(1.1920929e-07).log()
        return energies @ (self.cosines * self.lifter[:, None]).T


def loudness(sound, over=None):
    total = sound.pow(2).sum(1, keepdim=True)
    return (total / (sound.shape[1] if over is None else over)).sqrt().clamp_min(1e-3)


class Speakers:
    """
    Another mouth for every utterance, by its cepstra alone: a random map near to none, first linear, then bent a little differently in every region of sounds,
    and the same for the whole utterance. Few voices can be had; by this no sound is known by how those few say it.
    """
    BENDS, FARTHEST = 8, .45

    def __init__(self, device, share, size):
        """`share` of the utterances get another mouth, at most `size` (0 to 1) times as far from their own as may be."""
        self.device, self.share, self.size = device, share, size

    def __call__(self, x, mean, spread):
        count, width, normal = x.shape[0], x.shape[2], lambda *shape: torch.randn(*shape, device=self.device)
        much = self.size * torch.rand(count, 1, 1, device=self.device) * (torch.rand(count, 1, 1, device=self.device) < self.share)
        z = (x - mean) / spread
        linear = z @ (normal(count, width, width) * (.10 * much))
        regions = torch.tanh(z @ (normal(count, width, self.BENDS) * .45) + normal(count, 1, self.BENDS))
        bent = regions @ (normal(count, self.BENDS, width) * (self.FARTHEST * much / math.sqrt(self.BENDS)))
        return x + (linear + bent) * spread


class Shop:
    """Noises and rooms, drawn afresh each time."""
    KINDS = (0, 1, 1, 2, 2, 3, 4, 5)     # coloured noise, fan or vacuum, planing, sawing, mallet or chisel, rain on a roof; what the ear finds hardest twice

    def __init__(self, device, noisy=.75):
        """`noisy`: the share of utterances that are under a noise that can be heard."""
        self.device, self.noisy = device, noisy

    def chance(self, *shape):
        return torch.rand(*shape, device=self.device)

    def noise(self, count, length):
        """(count, length), each of the mean power 1, each of one of KINDS."""
        p, size = self.chance, 2 ** math.ceil(math.log2(length))
        frequency = torch.fft.rfftfreq(size, 1 / RATE, device=self.device)[None].clamp_min(20)
        shape = (frequency / 1000) ** (-(p(count, 1) * 2.2 - .4) / 2)
        centre, width = 300 * 20 ** p(count, 1), .3 + 1.2 * p(count, 1)
        banded = (p(count, 1) < .4).float()
        shape = shape * (banded * torch.exp(-.5 * ((frequency / centre).log() / width) ** 2) + 1 - banded)
        kind = torch.tensor(self.KINDS, device=self.device)[torch.randint(0, len(self.KINDS), (count, 1), device=self.device)]
        # Moving air and motors: level up to a knee, falling by 6 or 12 dB an octave above it.
        knee, steepness = 120 * 15 ** p(count, 1), 1 + (p(count, 1) < .4).float()
        shape = torch.where(p(count, 1) < torch.where(kind == 1, .6, .25), (1 + (frequency / knee) ** 2) ** (-steepness / 2), shape)
        # Edges in wood: from a knee on level, falling below it.
        knee = 400 * 8 ** p(count, 1)
        shape = torch.where((p(count, 1) < .5) & ((kind == 2) | (kind == 3)), (1 + (knee / frequency) ** 2) ** -.5, shape)
        white = torch.randn(count, size, device=self.device)
        drops = white * (p(count, size) < 10 ** (-3.5 + 2 * p(count, 1))) * (.2 + p(count, size)) * 20
        coloured = torch.fft.irfft(torch.fft.rfft(torch.where(kind == 5, drops, white)) * shape, size)[:, :length]
        coloured = coloured / (coloured.std(1, keepdim=True) + 1e-6)
        time = torch.arange(length, device=self.device)[None] / RATE
        whirr = 40 * 10 ** p(count, 1)
        hum = sum(torch.sin(2 * math.pi * whirr * h * time + 6.28 * p(count, 1)) * p(count, 1) / h for h in (1, 2, 3, 4, 6))
        swing = torch.sin(2 * math.pi * (.6 + 2.2 * p(count, 1)) * time + 6.28 * p(count, 1))
        sharp = .5 + 2 * p(count, 1)
        planing, sawing = swing.clamp_min(0) ** sharp, swing.abs() ** sharp * torch.where(swing > 0, 1., .5)
        period = .25 + .9 * p(count, 1)
        since = (time + p(count, 1) * period) % period
        ring = torch.where(p(count, 1) < .5, coloured, torch.sin(2 * math.pi * (250 + 2500 * p(count, 1)) * since) + .3 * coloured)
        blows = torch.exp(-since / (.01 + .08 * p(count, 1))) * ring
        heard = torch.where(kind == 1, coloured + 2 * p(count, 1) * hum, coloured)
        heard = torch.where(kind == 2, coloured * planing + .05 * coloured, heard)
        heard = torch.where(kind == 3, coloured * sawing + .05 * coloured, heard)
        heard = torch.where(kind == 4, blows, heard)
        return heard / (heard.pow(2).mean(1, keepdim=True).sqrt() + 1e-6)

    def room_and_microphone(self, sound):
        p, count, length = self.chance, *sound.shape
        tail = 6000
        size = 2 ** math.ceil(math.log2(length + tail))
        time = torch.arange(tail, device=self.device)[None] / RATE
        room = torch.randn(count, tail, device=self.device) * torch.exp(-6.9 * time / (.08 + .6 * p(count, 1) ** 1.5))
        room[:, :40] *= .2
        room = room / room.pow(2).sum(1, keepdim=True).sqrt() * 10 ** ((-14 + 20 * p(count, 1)) / 20) * (p(count, 1) < .65).float()
        room[:, 0] += 1
        frequency = torch.fft.rfftfreq(size, 1 / RATE, device=self.device)[None]
        octave = (frequency.clamp_min(60) / 1000).log2()
        tilt = (p(count, 1) * 2 - 1) * 2.5 * octave + 3 * torch.sin(octave * (.5 + p(count, 1) * 1.2) + 6.28 * p(count, 1)) * p(count, 1)
        low_cut = 60 + 240 * p(count, 1) * (p(count, 1) < .5).float()
        high_cut = torch.where(p(count, 1) < .25, 3300 + 3500 * p(count, 1), torch.full((count, 1), 9000., device=self.device))
        gain = 10 ** (tilt / 20) / (1 + (low_cut / frequency.clamp_min(1)) ** 4).sqrt() / (1 + (frequency / high_cut) ** 12).sqrt()
        return torch.fft.irfft(torch.fft.rfft(sound, size) * torch.fft.rfft(room, size) * gain, size)[:, :length]

    def heard(self, sound, spoken):
        """`sound` in a room, under noise of -8 to 26 dB (often loud) or nearly none, at any level a microphone gives; `spoken` is how many samples are speech."""
        p, count, length = self.chance, *sound.shape
        sound = self.room_and_microphone(sound / loudness(sound, spoken))
        sound = sound / loudness(sound, spoken)
        ratio = torch.where(p(count, 1) < self.noisy, -8 + 34 * p(count, 1) ** 1.25, 40 + 45 * p(count, 1))
        noise = self.noise(count, length)
        talk = sound.roll(1, 0).flip(1) + sound.roll(2, 0)
        talk = talk / talk.pow(2).mean(1, keepdim=True).sqrt().clamp_min(1e-3)
        radio = p(count, 1) < .1
        sound = sound + torch.where(radio, talk, noise) * 10 ** (-torch.where(radio, ratio.clamp_min(10), ratio) / 20)
        sound = sound * 10 ** ((-42 + 30 * p(count, 1)) / 20) * 32768 + torch.randn_like(sound) * p(count, 1) * 3
        return sound.round().clamp(-32768, 32767)
