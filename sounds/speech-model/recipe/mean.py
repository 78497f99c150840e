"""
The mean of several trainings that went on from the same weights: python3 mean.py OUT.npz WEIGHTS.npz …
What each learned by itself stays in it, what each learned by chance is lost (M. Wortsman et al., ICML 2022, "Model soups").
"""
import sys
import numpy as np

out, *names = sys.argv[1:]
trainings = [np.load(name) for name in names]
if any(each.files != trainings[0].files for each in trainings): raise SystemExit("these weights are not of one network")
np.savez(out, **{name: np.mean([each[name] for each in trainings], 0).astype(np.float32) for name in trainings[0].files})
