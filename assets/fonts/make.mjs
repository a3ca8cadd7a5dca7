/**
 * Cuts the fonts of the first view down to the letters and weights it needs: `node assets/fonts/make.mjs` writes the files
 * beside this script. Any other letter is fetched from the whole font when it is met.
 * Atkinson Hyperlegible Next and Bitter: SIL Open Font License 1.1, neither reserves its name.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import subsetFont from 'subset-font';

const ASCII = Array.from({ length: 95 }, (_, i) => String.fromCodePoint(32 + i)).join('');
const OF_THE_TRADE = '\u00A0\u202F“”‘’–—…·°±²³×÷½ΩπµμΔΣ√≤≥≈→←↑↓−∞•✓✕';

/** @type {readonly (readonly [string, string, import('subset-font').Options['variationAxes']])[]} */
const FONTS = [
  ['words', 'atkinson-hyperlegible-next', { wght: { min: 400, max: 700 } }],
  ['headings', 'bitter', { wght: 760 }],
];

for (const [name, font, variationAxes] of FONTS) {
  const whole = new URL(
    `../../node_modules/@fontsource-variable/${font}/files/${font}-latin-wght-normal.woff2`,
    import.meta.url,
  );
  const cut = await subsetFont(readFileSync(whole), ASCII + OF_THE_TRADE, { targetFormat: 'woff2', variationAxes });
  writeFileSync(new URL(`${name}.woff2`, import.meta.url), cut);
}
