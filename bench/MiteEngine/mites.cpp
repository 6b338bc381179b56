// The inner loop of src/Foundress.Science/Dynamics/MiteDay.cs in plain C++, for the comparison of bench/MiteEngine/run.sh.
// g++ -O3 -march=native -std=c++17 mites.cpp -o mites
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <vector>

namespace {
constexpr int kDays = 365, kParticles = 2000, kBlock = 128;

uint32_t Mix(uint32_t x) {
  x ^= x >> 16; x *= 0x7FEB352Du; x ^= x >> 15; x *= 0x846CA68Bu;
  return x ^ (x >> 16);
}
uint32_t Word(uint32_t seed, int day, int draw) { return Mix(seed ^ Mix(uint32_t(day) * 16u + uint32_t(draw) + 0x9E3779B9u)); }
inline float Normal(uint32_t b) { return (float((b & 255) + ((b >> 8) & 255) + ((b >> 16) & 255) + (b >> 24)) - 510.f) * (1.f / 147.80054f); }
inline float Uniform(uint32_t b) { return float(((b ^ (b >> 15)) * 0x2C1B3C6Du) >> 16) * (1.f / 65536.f); }
inline float Whole(float mean, float variance, uint32_t b) {
  float square = mean * mean, rounding = mean < 0.2113f ? mean - square : 1.f / 6.f;
  float relative = std::max(variance - rounding, 0.f) / (square + 1e-12f);
  float t = std::max(1.f - relative * (1.f / 9.f) + Normal(b) * std::sqrt(relative) * (1.f / 3.f), 0.f);
  return std::floor(mean * (t * t * t) + Uniform(b));
}
inline float Arrived(float adults, float flow, uint32_t key, uint32_t w0, uint32_t w1) {
  flow = flow < 32.f && flow > 0.f ? Whole(flow, flow, Mix(key + w1)) : flow;
  adults = std::min(adults + flow, 1e7f);
  return adults < 128.f && adults != std::floor(adults) ? std::floor(adults + Uniform(Mix(key + w0))) : adults;
}
inline float Left(float adults, float leaving, float staying, uint32_t key) {
  return adults < 128.f && adults > 0.f ? std::min(Whole(leaving, leaving * staying, Mix(key)), adults) : leaving;
}
inline float Exp(float x) {
  x = std::min(std::max(x, -87.f), 88.f);
  float n = std::floor(x * 1.44269504f + 0.5f), r = x - n * 0.693359375f - n * -2.12194440e-4f;
  float y = r * (1.f / 720.f) + 1.f / 120.f;
  y = y * r + 1.f / 24.f; y = y * r + 1.f / 6.f; y = y * r + 0.5f; y = y * r + 1.f; y = y * r + 1.f;
  int32_t bits = (int32_t(n) + 127) << 23;
  float power;
  std::memcpy(&power, &bits, 4);
  return y * power;
}

struct Ensemble {
  std::vector<float> adults, week, strength, own, inflow, late, perAdultScale, perBroodScale, brood, drone, reproduction, perAdult, laying, infested, workers, drones;
  std::vector<uint32_t> keys;
  explicit Ensemble(float mites) {
    for (auto* v : {&adults, &week, &strength, &own, &inflow, &late, &perAdultScale, &perBroodScale, &brood, &drone, &reproduction, &perAdult, &laying, &infested}) v->assign(kParticles, 0.f);
    std::fill(adults.begin(), adults.end(), mites);
    for (auto* v : {&strength, &perAdultScale, &perBroodScale, &brood, &drone}) std::fill(v->begin(), v->end(), 1.f);
    workers.assign(12 * kParticles, 0.f);
    drones.assign(14 * kParticles, 0.f);
    for (int i = 0; i < kParticles; i++) keys.push_back(Mix(uint32_t(i) * 0x9E3779B9u + 0x7F4A7C15u));
  }
};

// A season of round numbers: full brood from day 90 to 240.
float BroodOn(int day) { return day < 60 || day > 280 ? 0.f : 1000.f * std::min({1.f, (day - 60) / 40.f, (280 - day) / 40.f}); }

void Run(Ensemble& e, uint32_t seed) {
  const float kWorkerCrowd = 1.f - std::exp(-0.15f), kDroneCrowd = 1.f - std::exp(-0.18f);
  for (int first = 0; first < kParticles; first += kBlock) {
    int end = std::min(first + kBlock, kParticles);
    for (int day = 0; day < kDays; day++) {
      float bees = 10000.f + 15.f * BroodOn(day), workersToday = BroodOn(day), dronesToday = day > 100 && day < 210 ? 0.04f * workersToday : 0.f;
      float emerging = std::max(BroodOn(std::max(day - 12, 0)), 1.f), dronesEmerging = std::max(0.04f * BroodOn(std::max(day - 14, 0)), 1.f);
      float workerRate = 0.65f * 0.56f * workersToday / 0.125f, droneRate = 0.65f * 6.49f * dronesToday / 0.125f, recruits = std::min(0.3f, emerging / bees);
      float* workers = &e.workers[day % 12 * kParticles];
      float* drones = &e.drones[day % 14 * kParticles];
      if (day % 7 == 0) {
        uint32_t word = Word(seed, day, 6);
#pragma GCC ivdep
        for (int i = first; i < end; i++) {
          e.week[i] = e.week[i] * 0.8f + 0.072f * Normal(Mix(e.keys[i] + word));
          e.reproduction[i] = Exp(e.own[i] + e.week[i]);
        }
      }
      float full = bees + 8000.f, perFull = 1.f / full, perBee = 1.f / bees, death = workersToday > 200.f ? 0.004f : 0.0025f;
      uint32_t w0 = Word(seed, day, 0), w1 = Word(seed, day, 1), w3 = Word(seed, day, 3);
      bool broodless = workersToday == 0.f && BroodOn(std::max(day - 14, 0)) == 0.f && BroodOn(std::max(day - 12, 0)) == 0.f;
      if (broodless) {
#pragma GCC ivdep
        for (int i = first; i < end; i++) {
          e.perAdult[i] = perBee * e.perAdultScale[i] / e.strength[i];
          e.adults[i] = Arrived(e.adults[i], e.inflow[i] + e.late[i], e.keys[i], w0, w1);
        }
#pragma GCC ivdep
        for (int i = first; i < end; i++) {
          float adults = e.adults[i], load = std::min(adults * e.perAdult[i], 2.f), survive = Exp(-(death + 0.015f * load));
          e.adults[i] = adults - Left(adults, adults * (1.f - survive), survive, e.keys[i] + w3);
          workers[i] = drones[i] = 0.f;
          e.strength[i] = std::min(std::max(e.strength[i] * (1.f - recruits) * (1.f - std::min(0.03f * load, 0.5f)), 0.02f), 1.f);
        }
        continue;
      }
#pragma GCC ivdep
      for (int i = first; i < end; i++) {
        float strength = e.strength[i], layers = bees * strength + 8000.f, quotient = 1.f / (strength * layers), perStrength = layers * quotient;
        e.perAdult[i] = perBee * e.perAdultScale[i] * perStrength;
        e.laying[i] = full * strength * strength * quotient;
        float perCells = e.perBroodScale[i] * (layers * perStrength * perFull), mothers = workers[i], perCell = mothers / emerging * perCells, all = 1.f + perCell;
        float crowd = 1.f + perCell * kWorkerCrowd, droneMothers = drones[i], droneCrowd = 1.f + droneMothers / dronesEmerging * perCells * kDroneCrowd / e.drone[i];
        crowd *= crowd;
        droneCrowd *= droneCrowd;
        float apart = 1.f / (all * crowd * droneCrowd);
        e.infested[i] = perCell * (crowd * droneCrowd * apart);
        float flow = mothers * (0.55f + 0.72f * e.reproduction[i] * (all * droneCrowd * apart)) + droneMothers * (0.55f + 1.6f * e.reproduction[i] * (all * crowd * apart));
        e.adults[i] = Arrived(e.adults[i], flow + (e.inflow[i] + e.late[i]), e.keys[i], w0, w1);
      }
#pragma GCC ivdep
      for (int i = first; i < end; i++) {
        float adults = e.adults[i], load = std::min(adults * e.perAdult[i], 2.f), survive = Exp(-(death + 0.015f * load));
        float perGram = e.laying[i] * e.brood[i] * e.perAdult[i], worker = workerRate * perGram, drone = droneRate * e.drone[i] * perGram, rate = worker + drone, outside = Exp(-rate);
        float entering = adults * survive * (1.f - outside), leaving = adults * (1.f - survive) + entering;
        float left = Left(adults, leaving, survive * outside, e.keys[i] + w3);
        e.adults[i] = adults - left;
        entering *= left / std::max(leaving * rate, 1e-30f);
        workers[i] = entering * worker;
        drones[i] = entering * drone;
        float old = e.strength[i] * (1.f - recruits) * (1.f - std::min(0.03f * load, 0.5f)), young = recruits * e.laying[i] * (1.f - e.infested[i] * 0.49f);
        e.strength[i] = std::min(std::max(old + young, 0.02f), 1.f);
      }
    }
  }
}
}  // namespace

int main() {
  for (float mites : {20000.f, 20.f}) {
    double best = 1e9, sum = 0;
    for (int i = 0; i < 40; i++) {
      Ensemble e(mites);
      auto start = std::chrono::steady_clock::now();
      Run(e, 7);
      best = std::min(best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
      sum += e.adults[0];
    }
    std::printf("C++ %s mites: %.2f ms (check %.3g)\n", mites > 1000 ? "many" : "few", best, sum);
  }
}
