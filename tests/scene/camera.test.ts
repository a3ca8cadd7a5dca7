import { expect, test } from 'vitest';
import { openCamera } from '../../src/scene/camera.ts';

const WORLD = { width: 1600, height: 824 };
const MIXER = { x: 600, y: 220, width: 520, height: 400 };

test('the whole place fills a stage of nearly its own shape', () => {
  const camera = openCamera(false);
  camera.fit({ width: 896, height: 462 }, WORLD);
  expect(camera.toScreen({ x: 0, y: 0 }).x).toBeLessThanOrEqual(0);
  expect(camera.toScreen({ x: 1600, y: 824 }).x).toBeGreaterThanOrEqual(896);
});

test('on a tall stage nothing of the whole is cut off', () => {
  const camera = openCamera(false);
  camera.fit({ width: 390, height: 600 }, WORLD);
  expect(camera.toScreen({ x: 0, y: 0 }).x).toBeCloseTo(0, 9);
  expect(camera.toScreen({ x: 1600, y: 0 }).x).toBeCloseTo(390, 9);
});

test('a frame comes to lie in the middle within 0.4 s, easing out', () => {
  const camera = openCamera(false);
  camera.fit({ width: 896, height: 462 }, WORLD);
  camera.focus(MIXER);
  expect(camera.beat(10)).toBe(true);
  const start = camera.view.scale;
  camera.beat(10.1);
  const early = camera.view.scale - start;
  camera.beat(10.2);
  expect(camera.view.scale - start).toBeLessThan(early * 2);
  camera.beat(10.4);
  expect(camera.beat(10.5)).toBe(false);
  const centre = camera.toScreen({ x: MIXER.x + MIXER.width / 2, y: MIXER.y + MIXER.height / 2 });
  expect(centre.x).toBeCloseTo(448, 6);
  expect(centre.y).toBeCloseTo(231, 6);
});

test('a move can be interrupted by another from where it stands', () => {
  const camera = openCamera(false);
  camera.fit({ width: 896, height: 462 }, WORLD);
  camera.focus(MIXER);
  camera.beat(1);
  camera.beat(1.1);
  const halfway = camera.view;
  camera.focus(null);
  camera.beat(1.1);
  expect(camera.view).toEqual(halfway);
});

test('with stillness asked for, the camera is there at once', () => {
  const camera = openCamera(true);
  camera.fit({ width: 896, height: 462 }, WORLD);
  camera.focus(MIXER);
  camera.beat(1);
  expect(camera.view).toEqual(camera.goal());
});
