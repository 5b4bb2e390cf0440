// A figure as a tree: what it is, its formula with the numbers in place, and below it every number that went in, down to what is
// written and where. A number that several others rest on is told once.

import { dimensions } from '../../../schema/dimensions.ts';
import type { ExplainNode } from '../../../schema/explain-json.ts';
import type { Place } from '../../../schema/place.ts';
import { sources } from '../../../schema/sources.ts';
import { type Figure, inputsOf, type Known, type Step } from '../../plan/figure.ts';
import type { Reader } from '../../words/amount.ts';
import { explain } from '../../words/figure.ts';
import type { PlaceJson } from '../plan-json/gaps.ts';
import { tidy } from '../plan-json/gaps.ts';

export function treeOf(figure: Figure, reader: Reader, placed: (at: Place) => PlaceJson): ExplainNode {
  const told = new Set<Step>();
  return nodeOf(figure, '');

  function nodeOf(of: Figure, name: string): ExplainNode {
    if (of.kind === 'unknown') {
      return { kind: 'unknown', wants: of.wants.map(({ says, at }) => ({ says, at: placed(at) })) };
    }
    const explained = explain(of, reader);
    if (explained.kind === 'unknown') throw new Error('a known figure is explained as an unknown one');
    const { amount, says, statement = '', account } = explained;
    const { quantity, by } = of;
    const common = { name, amount, value: tidy(quantity.value), unit: dimensions[quantity.dimension].base };
    if (by.kind === 'given') return { kind: 'written', ...common, at: placed(by.at) };
    if (by.kind === 'assumed') return { kind: 'assumed', ...common, says: by.says, source: sources[by.source].title };
    const again = told.has(by);
    told.add(by);
    const names = explained.inputs.map(input => input.name);
    const inputs = again ? [] : inputsOf(by).filter(isKnown);
    return {
      kind: 'computed',
      ...common,
      says,
      statement,
      source: sources[by.formula.source].title,
      account: again ? [] : [...account],
      again,
      inputs: inputs.map((input, index) => nodeOf(input, names[index] ?? '')),
    };
  }
}

function isKnown(figure: Figure): figure is Known {
  return figure.kind === 'known';
}
