export type { Scene, SceneOptions, Theme } from './scene.ts';
