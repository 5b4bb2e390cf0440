// Units behind a number, those of the dimension that belongs there, and phrases that begin with a number.

import { dimensions } from '../../../schema/dimensions.ts';
import { words } from '../../../schema/field.ts';
import { unitsFor } from '../../../schema/find-unit.ts';
import { recipe } from '../../../schema/recipe.ts';
import { schemaAt } from '../../recipe/form.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Completion } from './completion.ts';
import type { ValueSpot } from './spot.ts';

/** A number, fraction or range, and the unit or words that may follow. */
const numberAndUnit =
  /^(\s*[-+]?[\d.,/½¼¾⅓⅔⅛ ]*\d[\d./]*(?:\s*\.\.\s*[-+]?[\d.]*\d)?|\s*[½¼¾⅓⅔⅛])(\s*)([^\d\s.][^\d]*)?$/u;

export function unitCompletions({ recipe: { show } }: Snapshot, spot: ValueSpot): readonly Completion[] {
  const { path, replaces, said } = spot;
  const schema = schemaAt(recipe, path);
  const is = schema === undefined ? undefined : words.get(schema);
  const [, number = '', blank = '', follows = ''] = numberAndUnit.exec(said) ?? [];
  const written = number.trim();
  if (is?.dimensions === undefined || written === '') return [];
  const item = (text: string, detail: string): Completion => ({
    kind: 'unit',
    label: `${written} ${text}`,
    text: `${written} ${text}`,
    detail,
    // An editor compares with what is typed, which may have a quote before it, and no blank between number and unit.
    filter: `${typedLead(spot)}${written}${blank === '' && said !== written ? '' : ' '}${text}`,
    replaces,
    about: '',
  });
  const phrases = (is.fixed ?? []).flatMap(fixed => {
    const phrase = /^\d+ (\S+) (.+)$/.exec(fixed);
    if (phrase === null) return [];
    const [, unit = '', rest = ''] = phrase;
    const own = /^\S+(?=\s|$)/.exec(follows)?.[0];
    return [item(`${own === undefined || unit === '%' ? unit : own} ${rest}`, '')];
  });
  const units = is.dimensions.flatMap(dimension =>
    unitsFor(dimension, show).map(({ symbol }) => item(symbol, dimensions[dimension].title)),
  );
  return phrases.length > 0 && /\s/.test(follows.trim())
    ? phrases
    : [...units.slice(0, mostFirst), ...phrases, ...units.slice(mostFirst)];
}

/** Phrases come behind the commonest units. */
const mostFirst = 3;

function typedLead({ typed, said }: ValueSpot): string {
  return typed.slice(0, typed.length - said.length);
}
