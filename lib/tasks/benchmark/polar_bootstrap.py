"""Their side of benchmark A: python polar_bootstrap.py FOLDER ROUNDS, in the fastest way found with numpy alone."""
import json, sys, time
import numpy as np

folder, rounds = sys.argv[1], int(sys.argv[2])
points = json.load(open(folder + "/points.json"))
terms, observed, weights = (np.array(points[k]) for k in ("terms", "observed", "weights"))
n, resamples = len(observed), points["resamples"]
row = np.arange(resamples)[:, None] * n


def bootstrap(places):
    i, j = [0, 0, 0, 1, 1, 2], [0, 1, 2, 1, 2, 2]
    products = np.concatenate([terms[:, i] * terms[:, j], terms * observed[:, None]], axis=1) * weights[:, None]
    counts = np.bincount((places + row).ravel(), minlength=resamples * n).reshape(resamples, n).astype(float)
    sums = counts @ products
    normal = sums[:, [0, 1, 2, 1, 3, 4, 2, 4, 5]].reshape(-1, 3, 3)
    found = np.linalg.solve(normal, sums[:, 6:, None])[:, :, 0]
    once = products.sum(axis=0)
    whole = np.linalg.solve(once[[0, 1, 2, 1, 3, 4, 2, 4, 5]].reshape(3, 3), once[6:])
    low, high = np.quantile(found, [0.025, 0.975], axis=0)
    return dict(parameters=whole.tolist(), standardErrors=found.std(axis=0, ddof=1).tolist(), low=low.tolist(), high=high.tolist())


times = []
for r in range(rounds):
    start = time.perf_counter()
    own = bootstrap(np.random.default_rng(r).integers(0, n, (resamples, n)))
    times.append(1000 * (time.perf_counter() - start))
shared = bootstrap(np.fromfile(folder + "/places.bin", dtype=np.int32).reshape(resamples, n).astype(np.int64)) if rounds > 1 else None
print(json.dumps(dict(times=times, shared=shared, own=own)))
