/**
 * Makes the sounds of the scene: `node assets/sounds/make.mjs` writes the WAV files beside this script, the same bytes every time.
 * None is louder than PEAK and none begins faster than ATTACK_s, so that nothing startles.
 */
import { writeFileSync } from 'node:fs';

const RATE_Hz = 22_050;
const PEAK = 0.3; // −10 dB of full scale
const ATTACK_s = 0.003;

const samples = (/** @type {number} */ seconds) => Math.round(seconds * RATE_Hz);

/** @returns {() => number} noise within ±1, the same for the same seed */
function noise(/** @type {number} */ seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 0x8000_0000 - 1;
  };
}

/** Whole cycles, so that it loops without a seam. @returns {number[]} */
function hum(/** @type {number} */ frequency_Hz) {
  const harmonics = [0.25, 1, 0.18, 0.42, 0.06, 0.16]; // a core hums at twice the supply's frequency
  return Array.from({ length: samples(0.2) }, (_, i) =>
    harmonics.reduce(
      (sum, level, n) => sum + level * Math.sin(2 * Math.PI * frequency_Hz * (n + 1) * (i / RATE_Hz)),
      0,
    ),
  );
}

/** A struck body: damped tones after each blow. @returns {number[]} */
function struck(
  /** @type {number} */ seconds,
  /** @type {readonly number[]} */ blows_s,
  /** @type {readonly (readonly [number, number, number])[]} */ tones,
) {
  const hiss = noise(7);
  return Array.from({ length: samples(seconds) }, (_, i) => {
    let sum = 0;
    blows_s.forEach((blow, n) => {
      const t = i / RATE_Hz - blow;
      if (t < 0) return;
      const strength = 1 / (n + 1);
      for (const [frequency, decay_s, level] of tones)
        sum += strength * level * Math.exp(-t / decay_s) * Math.sin(2 * Math.PI * frequency * t);
      sum += strength * 0.5 * Math.exp(-t / 0.006) * hiss();
    });
    return sum;
  });
}

/** A dry crackle that dies away: noise let through in short bursts. @returns {number[]} */
function crackle() {
  const hiss = noise(42);
  const chance = noise(1234);
  let gate = 0;
  let low = 0;
  return Array.from({ length: samples(0.32) }, (_, i) => {
    const t = i / RATE_Hz;
    if (i % 60 === 0 && chance() > 0.2 + 2 * t) gate = 1;
    gate *= 0.965;
    low += 0.35 * (hiss() - low);
    return low * (0.25 + gate) * Math.exp(-t / 0.12);
  });
}

/** Peak-limited, with a soft beginning and end (not for what loops). @returns {number[]} */
function tamed(/** @type {readonly number[]} */ wave, loops = false) {
  const top = wave.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const ramp = samples(ATTACK_s);
  return wave.map((value, i) => {
    const edge = loops ? 1 : Math.min(1, i / ramp, (wave.length - 1 - i) / ramp);
    return (value / top) * PEAK * edge;
  });
}

/** 16 bit, one channel. @returns {Buffer} */
function wav(/** @type {readonly number[]} */ wave) {
  const file = Buffer.alloc(44 + wave.length * 2);
  file.write('RIFF', 0);
  file.writeUInt32LE(36 + wave.length * 2, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(RATE_Hz, 24);
  file.writeUInt32LE(RATE_Hz * 2, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(wave.length * 2, 40);
  wave.forEach((value, i) => file.writeInt16LE(Math.round(value * 32_767), 44 + i * 2));
  return file;
}

/** @type {Readonly<Record<string, readonly number[]>>} */
const sounds = {
  'hum-50': tamed(hum(50), true),
  'hum-60': tamed(hum(60), true),
  contact: tamed(crackle()),
  breaker: tamed(struck(0.16, [0, 0.018], [[310, 0.03, 1], [870, 0.018, 0.7], [1_900, 0.008, 0.4]])), // prettier-ignore
  gfci: tamed(struck(0.07, [0], [[1_450, 0.01, 1], [2_700, 0.006, 0.6]])), // prettier-ignore
};

for (const [name, wave] of Object.entries(sounds)) writeFileSync(new URL(`${name}.wav`, import.meta.url), wav(wave));
