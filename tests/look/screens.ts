import type { Page } from 'playwright-core';

/** One screen to look at: where it begins and what somebody does to get there. */
export interface Screen {
  readonly name: string;
  /** What stands behind the address: place and conditions. */
  readonly link?: string;
  readonly act?: (page: Page) => Promise<void>;
}

/** One animation to look at as a strip of frames. */
export interface Motion extends Screen {
  /** Time between two frames on the page's own clock, ms. */
  readonly every_ms: number;
}

const FAULT = '#bakery/line_touches_the_case=solid';

async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name }).first().click();
}

/** Every screen, each a name that appears once. */
export const screens: readonly Screen[] = [
  { name: 'explore, all in order' },
  { name: 'explore, bolted fault', link: FAULT },
  { name: 'explore, third wire open and wet shoes', link: `${FAULT}/protective_conductor_open=yes/baker_touches=the_case/baker_wears=wet_shoes` },
  { name: 'explore, a rod of its own', link: `${FAULT}/protective_conductor_to_its_own_rod=yes/baker_touches=the_case/baker_wears=wet_shoes` },
  { name: 'explore, bonding jumper missing, hand and sink', link: `${FAULT}/bonding_jumper_missing=yes/baker_touches=the_case_and_the_sink` },
  { name: 'explore, GFCI and no third wire', link: `${FAULT}/protective_conductor_open=yes/gfci_fitted=yes/baker_touches=the_case/baker_wears=bare_feet` },
  { name: 'explore, breaker jammed', link: `${FAULT}/breaker_jammed=yes` },
  { name: 'explore, service neutral open', link: '#bakery/service_neutral_open=yes' },
  { name: 'explore, neutral linked', link: '#bakery/neutral_linked_to_the_case=yes' },
  { name: 'explore, the schematic', link: FAULT, act: (page) => press(page, 'Schematic') },
  { name: 'explore, a place without a drawing', link: '#clinic/first_fault_in_the_lamp=solid/second_fault_in_the_pump=solid' },
  { name: 'explore, all conditions', act: (page) => press(page, /more…/) },
  { name: 'explore, numbers covered', link: FAULT, act: (page) => page.keyboard.press('u') },
  { name: 'demonstrate', link: FAULT, act: (page) => press(page, 'Demonstrate') },
  {
    name: 'demonstrate, outcome covered',
    link: `${FAULT}/bonding_jumper_missing=yes`,
    act: async (page) => {
      await press(page, 'Demonstrate');
      await page.keyboard.press('u');
    },
  },
  { name: 'learn, list', act: (page) => press(page, 'Learn') },
  {
    name: 'learn, first step',
    act: async (page) => {
      await press(page, 'Learn');
      await press(page, 'Begin');
    },
  },
  {
    name: 'learn, prediction',
    act: async (page) => {
      await press(page, 'Learn');
      await press(page, 'Begin');
      await press(page, 'Continue');
    },
  },
  {
    name: 'learn, answered',
    act: async (page) => {
      await press(page, 'Learn');
      await press(page, 'Begin');
      await press(page, 'Continue');
      await page.locator('.answer').first().click();
      await press(page, 'Now run it');
      await press(page, 'To the end');
    },
  },
  { name: 'explore, in IEC words', link: `${FAULT}/words=iec` },
  { name: 'explore, one thing asked about', link: FAULT, act: (page) => press(page, /^Mixer,/) },
  { name: 'explore, a way pointed at', link: FAULT, act: (page) => page.locator('.ledger .way button').first().click() },
  {
    name: 'explore, the story',
    link: `${FAULT}/protective_conductor_open=yes/baker_touches=the_case`,
    act: async (page) => {
      const story = page.getByText('The story, in order of time');
      await story.click();
      await story.evaluate((node) => node.scrollIntoView());
    },
  },
  {
    name: 'explore, charts',
    link: `${FAULT}/baker_touches=the_case`,
    act: async (page) => {
      const charts = page.getByText('Charts');
      await charts.click();
      await page.locator('.log-chart').first().waitFor();
      await charts.evaluate((node) => node.scrollIntoView());
    },
  },
  { name: 'the menu', act: (page) => page.getByText('More', { exact: true }).click() },
  { name: 'the keys', act: (page) => page.keyboard.press('?') },
  {
    name: 'about the model',
    act: async (page) => {
      await page.getByText('More', { exact: true }).click();
      await press(page, 'About the model');
    },
  },
  {
    name: 'demonstrate, conditions',
    link: FAULT,
    act: async (page) => {
      await press(page, 'Demonstrate');
      await press(page, 'Conditions');
    },
  },
  {
    name: 'a bad file',
    act: async (page) => {
      const buffer = Buffer.from('place: My kitchen\nregion: north-america\nparts:\n  thing: { kind: gizmo }\njoins: []\n');
      await page.locator('input[type=file]').setInputFiles({ name: 'kitchen.yaml', mimeType: 'application/yaml', buffer });
    },
  },
  { name: 'a broken link', link: '#bakery/line_touches_the_roof=yes' },
];

/** Every animation. */
export const motions: readonly Motion[] = [
  {
    name: 'the fault runs home',
    every_ms: 80,
    act: async (page) => {
      await press(page, /touches the mixer/);
    },
  },
  {
    name: 'the breaker opens and the way drains',
    every_ms: 500,
    act: async (page) => {
      await press(page, /touches the mixer/);
      await page.clock.runFor(2200);
    },
  },
  {
    name: 'the baker is held',
    link: '#bakery/protective_conductor_open=yes/baker_touches=the_case/baker_wears=wet_shoes',
    every_ms: 250,
    act: async (page) => {
      await press(page, /touches the mixer/);
    },
  },
  { name: 'ordinary work', every_ms: 120 },
];
