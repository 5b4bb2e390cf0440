// One fact of a plan, as a review compares it: what it is about, its value, and the places that it rests on.

import type { Day } from '../../schema/date.ts';
import type { Dimension } from '../../schema/dimensions.ts';
import type { Path } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import type { Money } from '../../schema/texts/money.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Figure } from './figure.ts';
import type { Measured } from './measure.ts';

/** Which part of a plan a fact is about, in the order in which a reader meets them. */
export const factGroups = ['batch', 'planting', 'container', 'supply', 'task'] as const;

export type FactGroup = (typeof factGroups)[number];

export interface Fact {
  readonly group: FactGroup;
  /** The batch, planting, container or supply. */
  readonly name: string;
  /** What of it, as a phrase: `dose of green`, `pH after standing in air`. Unique within the name. */
  readonly what: string;
  readonly value: FactValue;
  /** Entries, or values in them, that it rests on, beside what its figure names itself. */
  readonly rests: readonly Path[];
  /** The acid or base whose amount it is: cautions go wherever it goes. */
  readonly adjuster?: Adjuster;
}

export type FactValue =
  | { readonly kind: 'figure'; readonly figure: Figure }
  /** A number of a forecast, which is reckoned day by day. */
  | { readonly kind: 'amount'; readonly quantity: Quantity }
  | { readonly kind: 'date'; readonly day: Day }
  | { readonly kind: 'money'; readonly money: Money }
  /** How a dose is measured; of several loads, how the share of each is. */
  | {
      readonly kind: 'measured';
      readonly measured: Measured;
      readonly dimension: 'volume' | 'mass';
      readonly isOfEachLoad: boolean;
    }
  | { readonly kind: 'text'; readonly text: string };

export type Put = (what: string, value: FactValue | Figure, rests: readonly Path[], adjuster?: Adjuster) => Fact;

export function about(group: FactGroup, name: string): Put {
  return (what, value, rests, adjuster) => {
    const isFigure = value.kind === 'known' || value.kind === 'unknown';
    const fact: Fact = { group, name, what, value: isFigure ? { kind: 'figure', figure: value } : value, rests };
    return adjuster === undefined ? fact : { ...fact, adjuster };
  };
}

/** A number of a forecast. */
export function amount(dimension: Dimension, value: number): FactValue {
  return { kind: 'amount', quantity: { dimension, value } };
}
