"""
Stage 4: training, while the voices still speak.
python3 train.py VOICES_FOLDER OUT.npz SECONDS [--from WEIGHTS.npz] [--rate 0.0025] [--batch 192] [--wait UTTERANCES]
    [--mouths SHARE] [--mouth SIZE] [--noisy SHARE] [--learned SHARE] [--sampled SHARE]
    [--seed NUMBER]
Connectionist temporal classification (A. Graves et al., ICML 2006). VOICES_FOLDER is read again and again until it says that it is complete.
"""
import argparse, glob, math, os, time
import numpy as np
import torch
import torch.nn.functional as F
from network import Net
from phones import OUTPUTS
from origins import BY_RULES, FROM_PIECES, LEARNED
from sound import CEPSTRA, Features, LIFTER, RATE, SHIFT, Shop, Speakers, UNWARPED, WARPS, WINDOW, bank, cosines

SEED = 20261125
PIECES_SHARE = .68       # of the spoken utterances that are not of learned voices: those put together from a person's recordings, against formant synthesis
# CMUSphinx's cepstra are means removed; the engine's are not, and differ by these constants.
SPHINX_MEAN = np.array([41., -5.29, -.12, 5.09, 2.48, -4.07, -1.37, -1.78, -5.08, -2.05, -6.45, -1.42, 1.17])
ENGINE_OFFSET = np.array([-26.79, 7.74, .03, 1.85, .03, .98, .12, 1.11, .2, .42, .22, .2, -.03])
MEAN_SPREAD = [8., 8, 6, 5, 5, 4, 4, 4, 4, 4, 3, 3, 3]


class Store:
    """Utterances in the GPU's memory, filled from the folder as they come."""

    def __init__(self, device, dtype, width=(), learned=0.):
        self.device, self.width, self.learned = device, width, learned
        self.data, self.used = torch.zeros((1, *width), dtype=dtype, device=device), 0
        self.at, self.length, self.labels, self.origin = [], [], [], []

    def add(self, file):
        data = torch.from_numpy(file["data"])
        if self.used + len(data) > len(self.data):
            larger = torch.zeros((int((self.used + len(data)) * 1.5), *self.width), dtype=self.data.dtype, device=self.device)
            larger[:self.used] = self.data[:self.used]
            self.data = larger
        self.data[self.used:self.used + len(data)] = data.to(self.device)
        ends = np.cumsum(file["length"])
        self.at += list(ends - file["length"] + self.used)
        self.length += list(file["length"])
        self.labels += np.split(file["labels"], np.cumsum(file["labelled"])[:-1])
        self.origin += list(file["origin"])
        self.used += len(data)

    def settle(self):
        self.starts, self.lengths, origin = np.array(self.at), np.array(self.length), np.array(self.origin)
        weight = np.zeros(len(origin))
        for kind, share in ((BY_RULES, (1 - self.learned) * (1 - PIECES_SHARE)), (FROM_PIECES, (1 - self.learned) * PIECES_SHARE), (LEARNED, self.learned)):
            weight[origin == kind] = share / max(1, (origin == kind).sum())
        self.weight = weight / weight.sum()

    def pick(self, count):
        """Utterances of about the same length, so that little is padding."""
        some = np.random.choice(len(self.lengths), count * 4, p=self.weight)
        some = some[np.argsort(self.lengths[some])]
        first = np.random.randint(0, 4) * count
        return some[first:first + count]


class Batches:
    def __init__(self, folder, device, speakers, shop, learned, sampled):
        self.folder, self.device, self.share, self.read, self.complete = folder, device, sampled, set(), False
        self.spoken, self.sampled = Store(device, torch.int16, (), learned), Store(device, torch.float16, (CEPSTRA,))
        self.features, self.shop, self.speakers, self.usual = Features(device), shop, speakers, None
        tensor = lambda a: torch.tensor(a, dtype=torch.float32, device=device)
        self.cosines, self.lifter, self.spread = tensor(cosines()), tensor(LIFTER), tensor(MEAN_SPREAD)
        self.mean = tensor(SPHINX_MEAN - ENGINE_OFFSET)

    def refill(self):
        if self.complete: return
        complete = os.path.exists(os.path.join(self.folder, "complete"))
        for path in sorted(glob.glob(os.path.join(self.folder, "*.npz"))):
            if path in self.read or path.endswith(".part.npz"): continue
            self.read.add(path)
            with np.load(path) as file: (self.spoken if str(file["kind"]) == "sound" else self.sampled).add(file)
        for store in (self.spoken, self.sampled):
            if store.length: store.settle()
        self.complete = complete
        if complete: print("all voices: %d spoken, %.1f hours; %d sampled" % (len(self.spoken.length), self.spoken.used / RATE / 3600, len(self.sampled.length)), flush=True)

    def spoken_batch(self, count):
        store, chosen = self.spoken, self.spoken.pick(count)
        length, speed = store.lengths[chosen], np.random.uniform(.86, 1.16, count)
        before, after = np.random.randint(800, 6400, count), np.random.randint(1600, 6400, count)
        total = before + (length / speed).astype(int) + after
        column = lambda a: torch.tensor(a, device=self.device, dtype=torch.float64)[:, None]
        place = (torch.arange(int(total.max()), device=self.device)[None].double() - column(before)) * column(speed)
        within = (place >= 0) & (place < column(length - 2))
        whole = torch.minimum(place.clamp_min(0).floor(), column(length - 2)).clamp_min(0)
        part = (place - whole).float().clamp(0, 1)
        index = torch.tensor(store.starts[chosen], device=self.device)[:, None] + whole.long()
        one, two = store.data[index].float(), store.data[index + 1].float()
        sound = self.shop.heard((one + (two - one) * part) * within, within.sum(1, keepdim=True))
        warps = torch.randint(0, len(WARPS), (count,), device=self.device)
        x = self.features(sound, warps)
        if self.usual is not None: x = self.speakers(x, *self.usual)
        x, frames = unevenly(x, 1 + (torch.tensor(total) - WINDOW) // SHIFT)
        return x, frames, [store.labels[i] for i in chosen]

    def sampled_batch(self, count):
        store, chosen, p = self.sampled, self.sampled.pick(count), self.shop.chance
        length = store.lengths[chosen]
        frames = torch.arange(int(length.max()), device=self.device)[None]
        last = torch.tensor(length - 1, device=self.device)[:, None]
        x = store.data[torch.tensor(store.starts[chosen], device=self.device)[:, None] + torch.minimum(frames, last)].float()
        mean = self.mean + torch.randn(count, 1, CEPSTRA, device=self.device) * self.spread
        mean[:, :, 0] -= 6 * p(count, 1)
        return self.under_noise(x + mean), torch.tensor(length), [store.labels[i] for i in chosen]

    def under_noise(self, x):
        """Cepstra back to smooth mel energies, shifted as by another vocal tract, under noise, and to cepstra again."""
        p, (count, frames, _) = self.shop.chance, x.shape
        energy = (x / self.lifter) @ self.cosines
        bands = energy.shape[2]
        place = (torch.arange(bands, device=self.device)[None] * (1 + .08 * (2 * p(count, 1) - 1)) + (2 * p(count, 1) - 1) * .5).clamp(0, bands - 1.001)
        low = place.floor().long()
        part = (place - low)[:, None]
        take = lambda index: torch.gather(energy, 2, index[:, None].expand(-1, frames, -1))
        energy = take(low) * (1 - part) + take(low + 1) * part
        peak = energy.flatten(1).quantile(.9, dim=1)[:, None, None]
        ratio = torch.where(p(count, 1, 1) < .75, 30 * p(count, 1, 1), torch.full((count, 1, 1), 45., device=self.device)) * .23
        band = torch.arange(bands, device=self.device)[None, None] / bands
        curve = (p(count, 1, 1) * 2 - 1) * 6 * (band - .5) + 2 * torch.sin(band * 9.42 * p(count, 1, 1) + 6.28 * p(count, 1, 1)) * p(count, 1, 1)
        time = torch.arange(frames, device=self.device)[None, :, None]
        swing = torch.sin(time * .0628 * (.6 + 2.5 * p(count, 1, 1)) + 6.28 * p(count, 1, 1)) * 2.5 * p(count, 1, 1) * (p(count, 1, 1) < .4)
        noise = peak - ratio + curve + swing + torch.randn(count, frames, bands, device=self.device) * .45 - .5
        return (torch.logaddexp(energy, noise) @ self.cosines.T) * self.lifter

    def noise_batch(self, count):
        noise = self.shop.noise(count, 2 * RATE) * 10 ** ((-60 + 48 * self.shop.chance(count, 1)) / 20) * 32768
        x = self.features(noise.round().clamp(-32768, 32767), torch.full((count,), UNWARPED, device=self.device))
        return x, torch.full((count,), x.shape[1]), [np.zeros(0, np.uint8)] * count

    def next(self, count, with_noise):
        sampled = int(count * self.share) if self.sampled.length else 0
        parts = [self.spoken_batch(count - sampled)] + ([self.sampled_batch(sampled)] if sampled else []) + ([self.noise_batch(max(2, count // 12))] if with_noise else [])
        longest = max(x.shape[1] for x, _, _ in parts)
        pad = lambda x: F.pad(x.transpose(1, 2), (0, longest - x.shape[1]), mode="replicate").transpose(1, 2)
        return torch.cat([pad(x) for x, _, _ in parts]), torch.cat([n for _, n, _ in parts]), sum((labels for _, _, labels in parts), [])


def unevenly(x, frames):
    """Now faster, now slower, so that no sound is known by its length; and how many frames there are then."""
    count, total = x.shape[:2]
    pace = torch.exp(.4 * torch.rand(count, 1, 1, device=x.device) * torch.randn(count, 1, total // 12 + 2, device=x.device))
    place = F.interpolate(pace, size=total, mode="linear", align_corners=True)[:, 0].cumsum(1)
    place = ((place - place[:, :1]) / (place[:, -1:] - place[:, :1]) * (total - 1)).clamp(0, total - 1.001)
    low = place.floor().long()
    part = (place - low)[:, :, None]
    take = lambda index: torch.gather(x, 1, index[:, :, None].expand(-1, -1, x.shape[2]))
    return take(low) * (1 - part) + take(low + 1) * part, (place < frames.to(x.device)[:, None]).sum(1).cpu()


def masked(x):
    """A stretch of up to 120 ms hidden, in most utterances."""
    count, frames = x.shape[:2]
    start, width = torch.rand(count, 1, device=x.device) * frames, torch.rand(count, 1, device=x.device) * 12 * (torch.rand(count, 1, device=x.device) < .7)
    at = torch.arange(frames, device=x.device)[None]
    return torch.where(((at >= start) & (at < start + width))[:, :, None], x.mean(1, keepdim=True), x)


def save(net, prior, path):
    weights = {name: value.detach().cpu().float().numpy() for name, value in net.state_dict().items() if "num_batches" not in name}
    np.savez(path + ".part.npz", prior=prior.cpu().numpy(), **weights)
    os.replace(path + ".part.npz", path)


def main():
    options = argparse.ArgumentParser()
    for name in ("folder", "out"): options.add_argument(name)
    options.add_argument("seconds", type=float)
    options.add_argument("--from", dest="begin")
    options.add_argument("--rate", type=float, default=2.5e-3)
    options.add_argument("--batch", type=int, default=192)
    options.add_argument("--wait", type=int, default=4000)
    options.add_argument("--mouths", type=float, default=.35, help="share of utterances with another mouth")
    options.add_argument("--mouth", type=float, default=.6, help="how far another mouth may be, 0 to 1")
    options.add_argument("--noisy", type=float, default=.75, help="share of utterances under noise")
    options.add_argument("--learned", type=float, default=.5, help="share of the spoken utterances by learned voices")
    options.add_argument("--sampled", type=float, default=.38, help="share of a batch sampled from the CMUSphinx statistics")
    options.add_argument("--seed", type=int, default=SEED)
    options = options.parse_args()
    began = time.time()
    torch.manual_seed(options.seed); np.random.seed(options.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    device = "cuda" if torch.cuda.is_available() else "cpu"
    net, batches = Net().to(device), Batches(options.folder, device, Speakers(device, options.mouths, options.mouth), Shop(device, options.noisy), options.learned, options.sampled)
    print("parameters", sum(p.numel() for p in net.parameters()), flush=True)
    while True:
        batches.refill()
        enough = len(batches.spoken.length) >= options.wait and len(batches.sampled.length) >= options.wait / 4
        if batches.complete or enough and os.path.exists(os.path.join(options.folder, "learned")): break
        time.sleep(1)
    print("begin after %.0f s with %d spoken" % (time.time() - began, len(batches.spoken.length)), flush=True)
    if options.begin:
        with np.load(options.begin) as file: net.load_state_dict({k: torch.tensor(file[k]) for k in file.files if k != "prior"}, strict=False)
    else:
        some = torch.cat([batches.next(options.batch, False)[0].reshape(-1, CEPSTRA) for _ in range(4)])
        net.mu.copy_(some.mean(0)); net.sd.copy_(some.std(0))
    batches.usual = (net.mu.clone(), net.sd.clone())
    optimiser = torch.optim.AdamW(net.parameters(), lr=options.rate, weight_decay=1e-3)
    prior, step, mean, refilled, started, kept = torch.zeros(OUTPUTS, device=device), 0, None, time.time(), time.time(), time.time()
    while True:
        done = (time.time() - started) / (options.seconds - (started - began))
        if done >= 1: break
        if time.time() - refilled > 15: batches.refill(); refilled = time.time()
        if time.time() - kept > 240: save(net, prior, options.out); kept = time.time()
        for group in optimiser.param_groups: group["lr"] = options.rate * min(1, (step + 1) / 300) * (.5 * (1 + math.cos(math.pi * done)) * .98 + .02)
        net.train()
        x, frames, labels = batches.next(options.batch, step % 4 == 0)
        scores = F.log_softmax(net(masked(x) if done < .9 else x).float(), 2)
        told = torch.tensor([len(row) for row in labels])
        rows = torch.div(frames + 2, 3, rounding_mode="floor").clamp(max=scores.shape[1])
        spoken, silent = torch.nonzero(told > 0)[:, 0], torch.nonzero(told == 0)[:, 0]
        targets = torch.tensor(np.concatenate(labels).astype(np.int64), device=device)
        inner = scores[spoken.to(device)]
        losses = F.ctc_loss(inner.transpose(0, 1), targets, rows[spoken].to(device), told[spoken].to(device), reduction="none", zero_infinity=True)
        loss = heard = (losses / told[spoken].to(device)).mean()
        if len(silent): loss = loss - .3 * scores[silent.to(device)][:, :, 0].mean()
        if done > .9 or step % 20 == 0: prior = prior * .98 + .02 * inner.detach().exp().mean((0, 1))
        optimiser.zero_grad(set_to_none=True); loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 5.)
        optimiser.step(); step += 1
        if step % 100 == 0 or step == 10:
            value = heard.item()
            if not math.isfinite(value): raise SystemExit(f"the loss is {value} at step {step}")
            mean = value if mean is None else .9 * mean + .1 * value
            if step % 500 == 0 or step in (10, 100): print("step %d, %.0f s, loss %.3f, share %.2f" % (step, time.time() - began, mean, done), flush=True)
    save(net, prior, options.out)
    print("done: %d steps, loss %s" % (step, mean), flush=True)


if __name__ == "__main__":
    main()
