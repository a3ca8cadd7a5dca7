import { expect, test } from 'vitest';
import { createStore } from '../../src/app/store.ts';

const sum = (state: number, add: number): number => state + add;

test('a store tells its listeners of a change, and of nothing else', () => {
  const store = createStore(1, sum, () => {});
  const heard: number[] = [];
  const stop = store.subscribe(() => heard.push(store.get()));
  store.send(2);
  store.send(0);
  stop();
  store.send(5);
  expect(heard).toEqual([3]);
  expect(store.get()).toBe(8);
});

test('whoever follows is told later, of several changes at once', () => {
  const waiting: (() => void)[] = [];
  const store = createStore(1, sum, (call) => waiting.push(call));
  const heard: number[] = [];
  const stop = store.follow(() => heard.push(store.get()));
  store.send(2);
  store.send(3);
  expect(heard).toEqual([]);
  expect(waiting).toHaveLength(1);
  waiting.pop()?.();
  store.send(4);
  waiting.pop()?.();
  stop();
  store.send(5);
  waiting.pop()?.();
  expect(heard).toEqual([6, 10]);
});
