import bakery from '../../../lessons/places/bakery.yaml?raw';
import place from '../../../assets/places/bakery/layout.json?drawn';
import drawings from '../../../assets/places/bakery/layout.json?sheets';
import { depict, enterDrawing } from '../../../src/depiction/index.ts';
import { compile, initialConditions, readInstallation } from '../../../src/installation/index.ts';
import { run } from '../../../src/scenario/index.ts';
import { openScene, type Scene } from '../../../src/scene/index.ts';

const reading = readInstallation(bakery, 'bakery.yaml');
if (!reading.ok) throw new Error('the bakery cannot be read');
enterDrawing('bakery', place);
const build = compile(reading.installation);
const usual = initialConditions(reading.installation);
let scene: Scene | undefined;

/** What a test drives: opens the picture, shows moments of runs, draws frames at given times. */
const bench = {
  async open(options: Omit<Parameters<typeof openScene>[1], 'drawings'>): Promise<string> {
    scene?.destroy();
    const host = document.querySelector<HTMLElement>('#host');
    if (!host) throw new Error('no host');
    scene = await openScene(host, { drawings, ...options });
    return scene.renderer;
  },
  /** Shows a moment of the run under these conditions; gives back what is depicted. */
  show(conditions: Readonly<Record<string, string>>, time_s: number) {
    const depiction = depict(run(build, { ...usual, ...conditions }), time_s, 'north-america');
    scene?.show(depiction);
    return depiction;
  },
  /** Draws frames of 1/60 s; gives back the script time of each, ms. */
  frames(from_s: number, to_s: number, time_s = 0, slow = 100): number[] {
    const times: number[] = [];
    for (let wall_s = from_s; wall_s <= to_s + 1e-9; wall_s += 1 / 60) {
      scene?.frame({ time_s, slow, wall_s });
      times.push(scene?.lastFrameScript_ms ?? 0);
    }
    return times;
  },
  scene: () => scene,
};

declare global {
  interface Window {
    bench: typeof bench;
  }
}
window.bench = bench;
document.documentElement.dataset['ready'] = 'yes';
