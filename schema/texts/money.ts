// An amount of money: `18 EUR`. The three letters are those of ISO 4217; amounts in different currencies never add up.

import { readNumber } from '../number.ts';
import { type Complaint, invalid, type Parsed, read } from '../parsed.ts';

export interface Money {
  readonly amount: number;
  /** Three capital letters. */
  readonly currency: string;
}

/** Signs that one currency has for itself; `$`, `kr` and `R` belong to several and are not guessed. */
const signs: Readonly<Record<string, string>> = {
  '€': 'EUR',
  '£': 'GBP',
  '₹': 'INR',
  '₩': 'KRW',
  '₺': 'TRY',
  '₴': 'UAH',
  zł: 'PLN',
};

export function parseMoney(text: string): Parsed<Money> {
  const first = /^\s*(?<word>[^\d\s.,+-]+)\s*(?<number>\d+(?:\.\d+)?)\s*$/u.exec(text)?.groups;
  if (first !== undefined) return currencyFirst(text, first.word ?? '', first.number ?? '');
  const number = readNumber(text);
  if (number.kind === 'complaint') return number;
  const end = text.trimEnd().length;
  const { from, to } = number.slice;
  if (number.value < 0) return invalid(text, from, to, 'a price cannot be below zero', text.slice(from + 1, to).trim());
  const currency = text.slice(to).trim();
  const at = end - currency.length;
  if (currency === '') return invalid(text, from, end, 'a price needs its currency, as in `18 EUR`');
  if (/^[A-Z]{3}$/u.test(currency)) return read({ amount: number.value, currency });
  const why = 'a currency is its three letters in ISO 4217, as in EUR';
  return invalid(text, at, end, why, codeOf(currency));
}

function currencyFirst(text: string, word: string, number: string): Complaint {
  const code = codeOf(word);
  const why = 'the amount comes first, then the three letters of the currency';
  return invalid(text, 0, text.length, why, code === undefined ? undefined : `${number} ${code}`);
}

function codeOf(word: string): string | undefined {
  if (/^[A-Za-z]{3}$/u.test(word)) return word.toUpperCase();
  if (/^euros?$/iu.test(word)) return 'EUR';
  return signs[word];
}
