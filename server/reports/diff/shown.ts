// What a fact looked like before and looks like now, in the reader's units and at the precision at which it is shown anywhere else; and
// the difference between the two, with sign and percent.

import { formatDate } from '../../../schema/date.ts';
import { dimensions } from '../../../schema/dimensions.ts';
import { plainNumber } from '../../../schema/number.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Change } from '../../plan/change.ts';
import type { FactValue } from '../../plan/fact.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { measuredText } from '../../words/measured.ts';
import { moneyText } from '../../words/season.ts';
import { tidy } from '../plan-json/gaps.ts';

export interface Shown {
  /** Undefined where the fact is new, or gone. */
  readonly before: string | undefined;
  readonly after: string | undefined;
  /** `+4 L (+5 %)`; undefined where there are no two amounts to compare. */
  readonly change: string | undefined;
  readonly raw: Raw;
}

/** The same for programs. A number that is not known is null, as is one that is not there. */
export interface Raw {
  readonly before: number | string | null;
  readonly after: number | string | null;
  /** The unit of the numbers; null for words, dates and numbers without one. */
  readonly unit: string | null;
  /** After less before; of two dates, in days. */
  readonly change: number | null;
  readonly percent: number | null;
}

/** Undefined where nobody could see the change. */
export function shownChange({ before, after }: Pick<Change, 'before' | 'after'>, reader: Reader): Shown | undefined {
  const was = before === undefined ? undefined : valueText(before, reader);
  const is = after === undefined ? undefined : valueText(after, reader);
  if (was === is) return undefined;
  const old = numberIn(before);
  const now = numberIn(after);
  const comparable = old !== undefined && now !== undefined && old.unit === now.unit;
  const change = comparable ? now.value - old.value : undefined;
  const percent =
    change === undefined ||
    old === undefined ||
    !hasPercent(before) ||
    old.value <= 0 ||
    now === undefined ||
    now.value < 0
      ? undefined
      : (change / Math.abs(old.value)) * 100;
  return {
    before: was,
    after: is,
    change: change === undefined ? undefined : changeText(before, was, is, change, percent, reader),
    raw: {
      before: rawValue(before, reader),
      after: rawValue(after, reader),
      unit: (now ?? old)?.unit ?? null,
      change: change === undefined ? null : tidy(change),
      percent: percent === undefined ? null : Number(percent.toFixed(2)),
    },
  };
}

export function valueText(value: FactValue, reader: Reader): string {
  switch (value.kind) {
    case 'figure':
      return value.figure.kind === 'known' ? amountText(value.figure.quantity, reader) : 'not known';
    case 'amount':
      return amountText(value.quantity, reader);
    case 'date':
      return formatDate(value.day);
    case 'money':
      return moneyText(value.money);
    case 'measured':
      return measuringText(value, reader);
    case 'text':
      return value.text;
  }
}

/**
 * `in each load 165 mL with jug, then 3 mL with syringe`; `once, with jug` where the amount is that of the dose. A name in a table needs
 * no signs around it.
 */
function measuringText(
  { measured, dimension, isOfEachLoad }: Extract<FactValue, { readonly kind: 'measured' }>,
  reader: Reader,
): string {
  const [first, ...more] = measured.kind === 'measured' ? measured.with : [];
  if (first?.times === 1 && more.length === 0 && !isOfEachLoad) return `once, with ${first.tool}`;
  const ways = measuredText(measured, dimension, reader)?.replaceAll('`', '') ?? '';
  return isOfEachLoad ? `in each load ${ways}` : ways;
}

interface Counted {
  readonly value: number;
  readonly unit: string | null;
}

function numberIn(value: FactValue | undefined): Counted | undefined {
  if (value?.kind === 'money') return { value: value.money.amount, unit: value.money.currency };
  if (value?.kind === 'date') return { value: value.day, unit: null };
  const quantity = quantityIn(value);
  if (quantity === undefined) return undefined;
  const { dimension, value: amount } = quantity;
  const { base } = dimensions[dimension];
  return { value: amount, unit: base === '1' || base === 'pH' ? null : base };
}

function quantityIn(value: FactValue | undefined): Quantity | undefined {
  if (value?.kind === 'amount') return value.quantity;
  return value?.kind === 'figure' && value.figure.kind === 'known' ? value.figure.quantity : undefined;
}

function rawValue(value: FactValue | undefined, reader: Reader): number | string | null {
  if (value === undefined) return null;
  if (value.kind === 'date') return formatDate(value.day);
  const number = numberIn(value);
  if (number !== undefined) return tidy(number.value);
  return value.kind === 'text' || value.kind === 'measured' ? valueText(value, reader) : null;
}

/** A share of a pH, of a count or of a date means nothing; nor does one of what was nothing, or falls below it. */
function hasPercent(value: FactValue | undefined): boolean {
  if (value?.kind === 'money') return true;
  const quantity = quantityIn(value);
  return quantity !== undefined && quantity.dimension !== 'pH' && quantity.dimension !== 'number';
}

function changeText(
  value: FactValue | undefined,
  was: string | undefined,
  is: string | undefined,
  change: number,
  percent: number | undefined,
  reader: Reader,
): string {
  const share = percent === undefined ? '' : percentText(percent);
  return `${differenceText(value, was ?? '', is ?? '', change, reader)}${share === '' ? '' : ` (${share})`}`;
}

/** What a reader would get by subtracting the two amounts as shown; where they are shown in two units, the amount itself. */
function differenceText(value: FactValue | undefined, was: string, is: string, change: number, reader: Reader): string {
  if (value?.kind === 'date') return `${signed(change, 0)} d`;
  const [, old = '', unit = ''] = amountPattern.exec(was) ?? [];
  const [, now = '', other = ''] = amountPattern.exec(is) ?? [];
  if (old !== '' && now !== '' && unit === other) {
    const decimals = Math.max(decimalsIn(old), decimalsIn(now));
    return `${signed(Number(now) - Number(old), decimals)}${unit}`;
  }
  const quantity = quantityIn(value);
  if (quantity === undefined) return signed(change, 2);
  const { dimension } = quantity;
  return `${change < 0 ? '-' : '+'}${amountText({ dimension, value: Math.abs(change) }, reader)}`;
}

const amountPattern = /^(-?\d+(?:\.\d+)?)((?: .*)?)$/u;

function decimalsIn(number: string): number {
  return number.split('.')[1]?.length ?? 0;
}

function signed(value: number, decimals: number): string {
  const text = plainNumber(Number(Math.abs(value).toFixed(decimals)));
  return `${value < 0 ? '-' : '+'}${text}`;
}

function percentText(percent: number): string {
  const size = Math.abs(percent);
  const rounded = size < 9.95 ? Number(size.toFixed(1)) : Math.round(size);
  return rounded === 0 ? '' : `${percent < 0 ? '-' : '+'}${plainNumber(rounded)} %`;
}
