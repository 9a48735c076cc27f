"""Makes reference.json: random costs and what scipy pairs off at the least cost.

/usr/bin/python3 make_reference.py > reference.json
"""
import json

import numpy as np
import scipy
from scipy.optimize import linear_sum_assignment

rng = np.random.default_rng(20260)
cases = []
for rows, cols in [(1, 1), (3, 3), (5, 8), (8, 5), (12, 12), (20, 31), (31, 20), (40, 40)]:
    cost = np.round(rng.uniform(-5, 20, (rows, cols)), 2)
    r, c = linear_sum_assignment(cost)
    cases.append({"cost": cost.tolist(), "least": round(float(cost[r, c].sum()), 6), "pairs": len(r)})
print(json.dumps({"source": "scipy.optimize.linear_sum_assignment, scipy " + scipy.__version__, "cases": cases}))
