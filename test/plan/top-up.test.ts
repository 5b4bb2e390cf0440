// What a container is topped up with.

import { expect, test } from 'vitest';
import { bestPour, type Pourable } from '../../server/plan/top-up.ts';

const pours = (solution: number, water: number): readonly [Pourable, Pourable] => [
  { with: 'solution', name: 'mix', EC: solution },
  { with: 'water', name: 'rain', EC: water },
];

test('what leaves the EC nearest to the aim is poured', () => {
  const now = { EC: 1.6, volume_L: 2 };
  expect(bestPour(pours(1.2, 0.1), now, 1, 1.4).with).toBe('solution');
  expect(bestPour(pours(1.2, 0.1), now, 1, 1.0).with).toBe('water');
});

test('between two of one EC the noise of computing does not choose', () => {
  const now = { EC: 0.05, volume_L: 2 };
  expect(bestPour(pours(0.05, 0.05 + 1e-13), now, 1, 0.05).with).toBe('solution');
  expect(bestPour(pours(0.05 + 1e-13, 0.05), now, 1, 0.05).with).toBe('solution');
});
