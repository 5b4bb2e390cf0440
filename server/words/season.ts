// Days and what happens on them, in words: one place for hovers, hints and reports.

import { formatDate } from '../../schema/date.ts';
import { plainNumber } from '../../schema/number.ts';
import type { Money } from '../../schema/texts/money.ts';
import type { ForecastDay } from '../plan/forecast-day.ts';
import type { TopUp } from '../plan/top-up.ts';
import { amountText, type Reader } from './amount.ts';

/** `2027-03-16: 1.2 L of opening, up to 8 cm`, for each container. */
export function topUpText({ date, volume_L, level_cm, with: what, batch, water }: TopUp, reader: Reader): string {
  const volume = amountText({ dimension: 'volume', value: volume_L }, reader);
  const level = amountText({ dimension: 'length', value: level_cm }, reader);
  const of =
    what === 'water'
      ? water === undefined
        ? 'plain water'
        : `\`${water}\``
      : batch === undefined
        ? 'solution'
        : `\`${batch}\``;
  return `${formatDate(date)}: ${volume} of ${of}, up to ${level}`;
}

export interface DayWords {
  readonly level: string;
  readonly airGap: string;
  /** `?` where it is not known. */
  readonly EC: string;
}

/** What a container is expected to show on a day. */
export function dayWords({ level_cm, airGap_cm, EC }: ForecastDay, reader: Reader): DayWords {
  return {
    level: amountText({ dimension: 'length', value: level_cm }, reader),
    airGap: amountText({ dimension: 'length', value: airGap_cm }, reader),
    EC: EC === undefined ? '?' : amountText({ dimension: 'conductivity', value: EC }, reader),
  };
}

/** `36 EUR`. */
export function moneyText({ amount, currency }: Money): string {
  return `${plainNumber(Number(amount.toFixed(2)))} ${currency}`;
}
