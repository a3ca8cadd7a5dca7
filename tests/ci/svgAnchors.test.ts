import { expect, test } from 'vitest';
import { readAnchors } from '../../.ci/svgAnchors.mjs';

const svg = (inside: string) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-5 0 120 80">${inside}</svg>`;
const read = (inside: string) => readAnchors(svg(inside), 'mixer.svg');

test('an anchor stands where its circle stands, through every group that moves it', () => {
  const { anchors, viewBox } = read(
    '<g transform="translate(10 5)"><g transform="translate(-2.5)"><circle id="at-case" cx="3" cy="4" r="1"/></g></g>' +
      '<circle id="at-line" cx="7" cy="8"/><circle id="bolt" cx="1" cy="1"/>',
  );
  expect(anchors).toEqual({ case: { x: 10.5, y: 9 }, line: { x: 7, y: 8 } });
  expect(viewBox).toEqual({ x: -5, y: 0, width: 120, height: 80 });
});

test('a turned group is refused only where an anchor stands in it', () => {
  expect(read('<g transform="rotate(30)"><rect width="3"/></g>').anchors).toEqual({});
  expect(() => read('<g transform="rotate(30)"><circle id="at-case"/></g>')).toThrow(
    'mixer.svg: only translate() may stand above the anchor at-case',
  );
});

test('two anchors of one name, an anchor without numbers and a drawing without a view box are refused by name', () => {
  expect(() => read('<circle id="at-a"/><circle id="at-a"/>')).toThrow('the anchor at-a stands twice');
  expect(() => read('<circle id="at-a" cx="50%"/>')).toThrow('the anchor at-a needs plain numbers');
  expect(() => readAnchors('<svg/>', 'oven.svg')).toThrow('oven.svg: write viewBox=');
});
