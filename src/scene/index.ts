export { openScene } from './openScene.ts';
export type { Scene, Theme } from './scene.ts';
