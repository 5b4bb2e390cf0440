// What every parser of a small text answers: a value, or one exact complaint. Separate, so that parsers share one shape
// and whoever shows a complaint needs to know only this file.

import type { FindingParams } from './findings.ts';

/** Part of the text that was parsed, in UTF-16 units from its start; `to` is exclusive. */
export interface Slice {
  readonly from: number;
  readonly to: number;
}

export type Parsed<T> = Read<T> | Complaint;

export interface Read<T> {
  readonly kind: 'read';
  readonly value: T;
}

export type ComplaintCode = 'unit-unknown' | 'unit-mismatch' | 'unit-missing' | 'value-invalid';

/** Why a text could not be read: a finding that lacks only its place. */
export type Complaint = { readonly [C in ComplaintCode]: ComplaintOf<C> }[ComplaintCode];

export interface ComplaintOf<C extends ComplaintCode> {
  readonly kind: 'complaint';
  readonly code: C;
  /** The part of the text that is wrong. */
  readonly slice: Slice;
  readonly params: FindingParams<C>;
  /** What to put in place of `slice` to be understood, where that is clear. */
  readonly instead?: string;
}

export function read<T>(value: T): Read<T> {
  return { kind: 'read', value };
}

export function complain<C extends ComplaintCode>(
  code: C,
  slice: Slice,
  params: FindingParams<C>,
  instead?: string,
): ComplaintOf<C> {
  const complaint = { kind: 'complaint', code, slice, params } as const;
  return instead === undefined ? complaint : { ...complaint, instead };
}

/**
 * A `value-invalid` complaint about part of a text. `why` says what is wrong with it, as a clause in small letters:
 * `the number has a decimal comma`.
 */
export function invalid(
  text: string,
  from: number,
  to: number,
  why: string,
  instead?: string,
): ComplaintOf<'value-invalid'> {
  const written = text.slice(from, to).trim();
  const reason = written === '' ? `${why.charAt(0).toUpperCase()}${why.slice(1)}.` : `\`${written}\`: ${why}.`;
  const suggestion = instead === '' ? undefined : instead?.trim();
  return complain(
    'value-invalid',
    { from, to },
    suggestion === undefined ? { reason } : { reason, suggestion },
    instead,
  );
}

/** The same complaint about a longer text in which the parsed one begins at `by`. */
export function shifted<C extends Complaint>(complaint: C, by: number): C {
  return { ...complaint, slice: { from: complaint.slice.from + by, to: complaint.slice.to + by } };
}
