import { z } from 'zod';
import type { ResidualSettings } from '../protection/index.ts';
import type { Region } from './plan.ts';

/** Keys by which a part says what residual device it is or holds. */
export const residualKeys = {
  residual_family: z
    .enum(['ul943-class-a', 'iec61008', 'equipment'])
    .optional()
    .describe('absent: ul943-class-a in north-america, iec61008 in iec; equipment protects no people'),
  residual_A: z
    .number()
    .gt(0)
    .max(100)
    .default(0.03)
    .describe('rated residual current; a class A device has its own, 6 mA'),
  type: z.enum(['AC', 'A', 'F', 'B']).default('A').describe('the waves an iec61008 device sees'),
  selective: z.boolean().default(false).describe('type S of iec61008: waits for those downstream'),
};

/** The residual device a part says it is or holds. */
export function residualSettings(
  part: {
    readonly residual_family?: ResidualSettings['family'] | undefined;
    readonly residual_A: number;
    readonly type: 'AC' | 'A' | 'F' | 'B';
    readonly selective: boolean;
  },
  region: Region,
): ResidualSettings {
  const family = part.residual_family ?? (region === 'iec' ? 'iec61008' : 'ul943-class-a');
  const { residual_A, type, selective } = part;
  switch (family) {
    case 'ul943-class-a':
      return { family };
    case 'equipment':
      return { family, residual_A };
    case 'iec61008':
      return { family, residual_A, type, selective };
  }
}
