/** Where the programs are that the tests drive. Node built-ins only. */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * Full path of a program on PATH, or undefined.
 * @param {string} program
 * @returns {string | undefined}
 */
export function onPath(program) {
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter(Boolean)
    .map((folder) => join(folder, program))
    .find((file) => {
      try {
        accessSync(file, constants.X_OK);
        return true;
      } catch {
        return false;
      }
    });
}

/**
 * Full path of a Chromium: the variable CHROMIUM if set, otherwise the first of the usual names on PATH, or undefined.
 * @returns {string | undefined}
 */
export function findChromium() {
  return (
    process.env['CHROMIUM'] ??
    ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'].map(onPath).find(Boolean)
  );
}
