"""The inner loop of the mite engine on NumPy arrays, for the comparison of bench/MiteEngine/run.sh. Many mites: no chance in flows."""
import time

import numpy as np

DAYS, PARTICLES = 365, 2000


def brood_on(day):
    return 0.0 if day < 60 or day > 280 else 1000.0 * min(1.0, (day - 60) / 40, (280 - day) / 40)


def run(mites):
    f = np.float32
    rng = np.random.default_rng(7)
    adults, strength, week = np.full(PARTICLES, mites, f), np.ones(PARTICLES, f), np.zeros(PARTICLES, f)
    workers, drones = np.zeros((12, PARTICLES), f), np.zeros((14, PARTICLES), f)
    reproduction = np.ones(PARTICLES, f)
    for day in range(DAYS):
        bees, sealed = f(10000 + 15 * brood_on(day)), f(brood_on(day))
        sealed_drones = f(0.04) * sealed if 100 < day < 210 else f(0)
        emerging, drones_emerging = f(max(brood_on(max(day - 12, 0)), 1)), f(max(0.04 * brood_on(max(day - 14, 0)), 1))
        if day % 7 == 0:
            week = week * f(0.8) + f(0.072) * rng.standard_normal(PARTICLES, dtype=f)
            reproduction = np.exp(week)
        laying = strength * (bees + f(8000)) / (strength * bees + f(8000))
        per_adult = 1 / (bees * strength)
        mothers = workers[day % 12]
        per_cell = mothers / (emerging * laying)
        crowd = 1 + per_cell * f(0.1393)
        infested = per_cell / (1 + per_cell)
        back = mothers * (f(0.55) + f(0.72) * reproduction / (crowd * crowd))
        mothers = drones[day % 14]
        crowd = 1 + mothers / (drones_emerging * laying) * f(0.1647)
        back += mothers * (f(0.55) + f(1.6) * reproduction / (crowd * crowd))
        adults = np.minimum(adults + back, f(1e7))
        load = np.minimum(adults * per_adult, f(2))
        adults = adults * np.exp(-(f(0.004) + f(0.015) * load))
        per_gram = laying * per_adult
        drone = f(0.65 * 6.49 / 0.125) * sealed_drones * per_gram
        rate = f(0.65 * 0.56 / 0.125) * sealed * per_gram + drone
        entering = adults * (1 - np.exp(-rate))
        into_drones = entering * (drone / (rate + f(1e-20)))
        workers[day % 12], drones[day % 14] = entering - into_drones, into_drones
        adults = adults - entering
        recruits = min(f(0.3), emerging / bees)
        strength = strength * (1 - recruits) * (1 - np.minimum(f(0.03) * load, f(0.5))) + recruits * laying * (1 - infested * f(0.49))
        strength = np.clip(strength, f(0.02), f(1))
    return adults


best = 1e9
for _ in range(5):
    start = time.perf_counter()
    run(20000)
    best = min(best, time.perf_counter() - start)
print(f"NumPy many mites: {best * 1000:.2f} ms")
