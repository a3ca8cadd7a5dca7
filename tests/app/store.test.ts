import { expect, test } from 'vitest';
import { createStore } from '../../src/app/store.ts';

test('a store tells its listeners of a change, and of nothing else', () => {
  const store = createStore(1, (state, add: number) => state + add);
  const heard: number[] = [];
  const stop = store.subscribe(() => heard.push(store.get()));
  store.send(2);
  store.send(0);
  stop();
  store.send(5);
  expect(heard).toEqual([3]);
  expect(store.get()).toBe(8);
});
