import { describe, expect, test } from 'vitest';
import { readInstallation, type Diagnostic } from '../../src/installation/index.ts';
import { bakeryText } from './places.ts';

function faults(text: string): readonly Diagnostic[] {
  const reading = readInstallation(text, 'lessons/places/wrong.yaml');
  return reading.ok ? [] : reading.diagnostics;
}

describe('wrong YAML', () => {
  test.each([
    ['a bracket left open', 'place: [a, b\nregion: iec\n'],
    ['a tab for a blank', 'place: x\nparts:\n\ta: { kind: outlet }\n'],
    ['a quote left open', 'place: "x\nregion: iec\n'],
    ['two documents', 'place: x\n---\nplace: y\n'],
    ['a stray colon', 'place: x: y\n'],
  ])('%s is told by line and column', (_, text) => {
    const syntax = faults(text).filter(({ code }) => code === 'yaml-syntax');
    expect(syntax.length).toBeGreaterThan(0);
    for (const { line, column, instead } of syntax) {
      expect(line).toBeGreaterThan(0);
      expect(column).toBeGreaterThan(0);
      expect(instead).toBeTruthy();
    }
  });

  test.each([
    ['a: [1, 2\nb: 3', 'a [ that was opened is not closed before here', '] after its last entry'],
    ['a: {b: 1\n', 'a { that was opened is not closed before here', '} after its last entry'],
    ['a: "x\nb: 1', 'a quote that was opened is not closed', '" after the value'],
    ['a: b: c', 'a second "name:" begins within a value', 'on a line of its own'],
    ['\ta: 1', 'a tab stands where only blanks may indent a line', 'two blanks for each tab'],
    ['place: x\nregion iec\nparts:\n', 'this line is no "name: value"; a colon is missing', 'name: value'],
    ['a: @x', 'a value cannot begin with @', 'in quotes'],
    ['a: "\\q"', 'a backslash in "…" means nothing before this letter', 'single quotes'],
    ['x: {a: 1 b: 2}', 'within [ ] or { } a comma is missing', 'a comma between two entries'],
    ['a: 1\nb: ]', 'this ] closes nothing', 'the bracket that opens before it'],
    ['a:\n - b\n c', 'this line is not indented like those it belongs to', 'as many blanks as they have'],
  ])('%j is told in our words, with what to write instead', (text, message, instead) => {
    const told = faults(text).filter(({ code }) => code === 'yaml-syntax');
    expect(told.map((fault) => fault.message)).toContain(message);
    expect(told.find((fault) => fault.message === message)?.instead).toContain(instead);
  });

  test('what an empty file is told to hold is an installation', () => {
    const [fault] = faults('');
    expect(fault?.message).toBe('the file is empty');
    expect(faults(fault?.instead ?? '')).toEqual([]);
  });

  test('lines that end with a carriage return alone are lines', () => {
    expect(faults(bakeryText.replaceAll('\n', '\r'))).toEqual([]);
    expect(faults('place: x\rregion: mars\rparts: {}\r').find(({ code }) => code === 'unknown-choice')?.line).toBe(2);
  });

  test('every fault of a file is told, however many there are', () => {
    const names = Array.from({ length: 450 }, (_, at) => `  thing ${at}: { kind: gizmo }`);
    const told = faults(`place: x\nregion: iec\nparts:\n${names.join('\n')}\n`);
    expect(told.filter(({ code }) => code === 'unknown-kind').map(({ line }) => line)).toEqual(
      names.map((_, at) => at + 4),
    );
  });

  test('what stands before the fault is still checked', () => {
    const codes = faults('place: x\nregion: mars\nparts: [\n').map(({ code }) => code);
    expect(codes).toContain('unknown-choice');
    expect(codes).toContain('yaml-syntax');
  });

  test('what stands after the fault is not guessed at', () => {
    const all = faults('place: x\nregion: mars\nparts:\n  a: { kind: outlet ]\n  b: { kind: moon }\ncolour: red\n');
    const fault = all.find(({ code }) => code === 'yaml-syntax')?.line ?? NaN;
    expect(all.map(({ code }) => code)).toContain('unknown-choice');
    expect(all.filter(({ line, code }) => line > fault && code !== 'yaml-syntax')).toEqual([]);
  });
});
