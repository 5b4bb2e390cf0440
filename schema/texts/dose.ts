// How much of a feed: `label`, `50 % of label`, a rate such as `4 mL/gal`, or an amount for the whole batch.

import { nearest } from '../nearest.ts';
import { plainNumber, readNumber } from '../number.ts';
import { type Complaint, invalid, type Parsed, read } from '../parsed.ts';
import { type AnyQuantity, parseQuantity, type Quantity, quantity } from '../quantity.ts';

export type Dose =
  /** A share of the label's rate; 1 for all of it. */
  | { readonly kind: 'label'; readonly share: Quantity<'fraction'> }
  /** So much feed for each litre of the batch. */
  | { readonly kind: 'rate'; readonly rate: AnyQuantity<'volume-per-volume' | 'mass-per-volume'> }
  /** So much feed for the whole batch. */
  | { readonly kind: 'amount'; readonly amount: AnyQuantity<'volume' | 'mass'> };

export function parseDose(text: string): Parsed<Dose> {
  const written = text.trim();
  if (written === 'label') return read({ kind: 'label', share: quantity('fraction', 1) });
  const labelled = /^(?<share>.*?\S)(?<words>\s+(?:of\s+)?(?:the\s+)?label(?:\s+rate)?)\s*$/iu.exec(text)?.groups;
  if (labelled !== undefined) return parseShare(text, labelled.share ?? '', labelled.words ?? '');
  if (written !== '' && !/[\d½⅓¼⅛⅔¾]/u.test(written)) return otherWord(text, written);
  const parsed = parseQuantity(text, ['volume-per-volume', 'mass-per-volume', 'volume', 'mass']);
  if (parsed.kind === 'complaint') {
    const share = parseQuantity(text, ['fraction']);
    if (share.kind === 'complaint') return parsed;
    return invalid(text, share.numberSlice.from, share.unitSlice.to, 'a share says of what', `${written} of label`);
  }
  const { value } = parsed;
  if (value.dimension === 'volume' || value.dimension === 'mass') return read({ kind: 'amount', amount: value });
  return read({ kind: 'rate', rate: value });
}

function parseShare(text: string, share: string, words: string): Parsed<Dose> {
  const word = share.trim().toLowerCase();
  if (word === 'half' || word === 'quarter') {
    const instead = word === 'half' ? '50 %' : '25 %';
    return invalid(text, share.length - word.length, share.length, 'the share is written as a number', instead);
  }
  const parsed = parseQuantity(share, ['fraction']);
  if (parsed.kind === 'complaint') return withPercent(parsed, share);
  if (!/^\s+of\s+label$/u.test(words)) {
    return invalid(text, share.length, share.length + words.length, 'a share ends in `of label`', ' of label');
  }
  return read({ kind: 'label', share: parsed.value });
}

/** `1/2 of label` is a half and `50 of label` is 50 %; `0.5 of label` might be either, so nothing is offered for it. */
function withPercent(complaint: Complaint, share: string): Complaint {
  if (complaint.code !== 'unit-missing') return complaint;
  const number = readNumber(share);
  const { instead: _, ...bare } = complaint;
  if (number.kind === 'complaint') return bare;
  if (/[/½⅓¼⅛⅔¾]/u.test(share)) return { ...bare, instead: `${plainNumber(number.value * 100)} %` };
  return 2 <= number.value ? { ...bare, instead: `${plainNumber(number.value)} %` } : bare;
}

function otherWord(text: string, written: string): Complaint {
  const from = text.indexOf(written);
  const why = 'a dose is `label`, a percent of the label, a rate such as 2 mL/L, or an amount such as 20 mL';
  const label = nearest(written, ['label', 'label rate']) === undefined ? undefined : 'label';
  return invalid(text, from, from + written.length, why, label);
}
