import type { Build, Conditions } from '../installation/index.ts';
import type { Tolerance } from '../protection/index.ts';
import type { Timeline } from './timeline.ts';

/** What happens, in order of time, when this installation stands under these conditions. */
export declare function run(
  build: Build,
  conditions: Conditions,
  options?: { readonly tolerance?: Tolerance; readonly horizon_s?: number },
): Timeline;
