// The loads of a batch on its sheet: a few have room of their own to write on, many share it.

import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import { type Cell, room } from '../print/page.ts';

export function loadCount({ loads }: BatchPlan): number {
  return numberOf(loads) ?? 1;
}

/** Loads that have room of their own; with more of them one room stands for each. */
export const mostLoads = 3;

/** Room for a value, for each load where there are few of them. */
export function loadRooms(count: number, forWhat: string): readonly Cell[] {
  return count > 1 && count <= mostLoads
    ? Array.from({ length: count }, (_, at) => room(`${forWhat}, load ${at + 1}`))
    : [room(forWhat)];
}
