import type { Interval } from '../scenario/index.ts';
import type { Conductor } from './depiction.ts';
import type { Place, PoseName } from './place.ts';

/** Every drawn conductor as it is now: whole, interrupted, loose, or not there. */
export function conductors({ conditions }: Interval, place: Place, pose: PoseName): readonly Conductor[] {
  const chosen = (condition: string): boolean => conditions[condition] === 'yes';
  return place.stretches[pose].flatMap((stretch): Conductor[] => {
    const { wire, absent, present, breaks, loosens } = stretch;
    if (!wire || absent.some(chosen) || !present.every(chosen)) return [];
    const broken = Object.entries(breaks).find(([condition]) => chosen(condition))?.[1];
    const loose = Object.entries(loosens).find(([condition]) => chosen(condition))?.[1];
    return [
      {
        id: stretch.id,
        route: stretch.route,
        insulation: wire,
        width: stretch.width,
        ...(broken ? { broken } : {}),
        ...(loose ? { loose } : {}),
      },
    ];
  });
}
