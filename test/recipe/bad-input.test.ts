// What people really write, paste and merge: each gives a clear finding at its exact place, once, and the rest of the file is
// computed all the same.

import { describe, expect, test } from 'vitest';
import { checkFindings } from '../check-findings.ts';
import { markedRecipe, recipe } from '../recipe.ts';
import { check, sound, withSound } from './sound.ts';

describe('keys and names', () => {
  test('a misspelt section is one finding, and so is everything that it would have held', () => {
    checkFindings(recipe`
      recipe: 1
      waterz: { mains: { pH: 7.8 } }
      #<----- key-unknown: did you mean \`waters\`?
      batches:
        opening: { water: mains, volume: 20 L }
    `);
  });

  test('a key that nobody knows', () => {
    check(withSound`
      recipe: 1
      colour: green
      #<----- key-unknown: a recipe has no key \`colour\`
      waters:
        mains: { pH: 7.8, hardness: 8, x-note: mine }
        #                 ^^^^^^^^ key-unknown: a water has no key \`hardness\`
    `);
  });

  test('a needed key that is only misspelt is not missing too', () => {
    check(withSound`
      recipe: 1
      tools:
        can: { hlods: 12 L }
        #      ^^^^^ key-unknown: did you mean \`holds\`?
      containers:
        crock: { inside: { cilinder: { diameter: 14 cm, height: 20 cm } } }
        #                  ^^^^^^^^ key-unknown: did you mean \`cylinder\`?
      waters:
    `);
  });

  test('a name that is missing', () => {
    check(withSound`
      recipe: 1
      targets:
        "": { pH-aim: 5.8 }
      # ^^ name-invalid: the name is missing
      waters:
    `);
  });

  test('a name that stands twice', () => {
    check(withSound`
      recipe: 1
      waters:
        mains: { pH: 7.8 }
        mains: { pH: 7.4 }
      # ^^^^^ name-duplicate: a second time
    `);
  });

  test('a section that stands twice', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { mains: { pH: 7.8 } }
      waters: { rain: { pH: 5.6 } }
      #<----- name-duplicate: a second time
    `);
  });

  test('names of what every object has are names like others', () => {
    check(withSound`
      recipe: 1
      __proto__: { mains: 1 }
      #<-------- key-unknown: a recipe has no key \`__proto__\`
      containers:
        constructor: { inside: { cylinder: { diameter: 14 cm, height: 20 cm, toString: 1 } } }
        #                                                                    ^^^^^^^^ key-unknown: no key \`toString\`
      stages:
        __proto__: { lasts: 3 d, batch: hasOwnProperty }
      # ^^^^^^^^^ name-invalid: write \`proto\`?
        #                               ^^^^^^^^^^^^^^ name-unknown: no batch named \`hasOwnProperty\`
      waters:
    `);
    expect(Object.prototype).not.toHaveProperty('mains');
  });

  test('keys that are numbers, nothing, or no text at all', () => {
    check(withSound`
      recipe: 1
      7: seven
      #< key-unknown: no key \`7\`
      null: nothing
      #<--- key-unknown: no key \`null\`
      [a, b]: list
      #<----- yaml-invalid: a key must be a text
      { a: b }: map
      #<------- yaml-invalid: a key must be a text
      waters:
        3: { pH: 7 }
      # ^ name-invalid: not a name
    `);
  });
});

describe('amounts', () => {
  test('an unknown unit, and a unit of something else', () => {
    check(withSound`
      recipe: 1
      tools:
        can: { holds: 3 galon }
        #               ^^^^^ unit-unknown: did you mean \`gal\`?
        rod: { holds: 12 cm }
        #                ^^ unit-mismatch: \`cm\` is the unit of a length; a volume belongs here
      waters:
    `);
  });

  test('a volume below zero, and none at all', () => {
    check(
      markedRecipe(`recipe: 1
waters:
  rain: { alkalinity: 0 mg/L CaCO3 }
${sound}  later: { water: rain, volume: -20 L, feed: { green: label } }
  #                             ^^^ value-invalid: a volume cannot be below zero
  last: { water: rain, volume: 0 L, feed: { green: label } }
  #                            ^ value-invalid: this must be above zero
`),
    );
  });

  test('a container without height, and one that its net cup is too deep for', () => {
    check(withSound`
      recipe: 1
      containers:
        plate: { inside: { cylinder: { diameter: 30 cm, height: 0 cm } } }
        #                                                       ^ value-invalid: above zero
        dish:
          inside: { cylinder: { diameter: 30 cm, height: 5 cm } }
          net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
          #                 ^^^^ net-cup-too-deep: 6 cm deep, and the container is 5 cm high
      plantings:
        berry: { container: plate }
        melon: { container: dish }
      waters:
    `);
  });

  test('more than a hundred percent', () => {
    check(withSound`
      recipe: 1
      adjusters:
        down: { acid: { citric: 180 % } }
        #                       ^^^ value-invalid: the most that can be meant here is 100 %
      waters:
    `);
  });

  test('a label rate without a volume: the dose is not known, and one finding says why', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { mains: { pH: 7.8 } }
      feeds: { green: { label: 2 mL/L, analysis: { N: 5 % }, density: 1.1 kg/L } }
      batches:
        opening: { water: mains, feed: { green: label } }
      # ^^^^^^^ value-missing: a batch needs \`volume\`
    `);
  });

  test('a day that no calendar has', () => {
    check(withSound`
      recipe: 1
      start: 2027-13-01
      #           ^^ value-invalid: there are months 01 to 12
      log:
        - { on: 2027-02-29, pH: 6 }
        #               ^^ value-invalid: February 2027 has 28 days
        - { on: yesterday, pH: 6 }
        #       ^^^^^^^^^ value-invalid: a date is written year-month-day
      waters:
    `);
  });

  test('a number in quotes, and words where one of some words belongs', () => {
    check(withSound`
      recipe: 1
      waters:
        mains: { pH: "7.8", air: opn }
        #            ^^^^^ value-invalid: stands in quotes
        #                        ^^^ value-invalid: \`closed\` or \`open\` belongs here
    `);
  });
});

describe('shapes', () => {
  test('a value of another shape than its key takes', () => {
    check(withSound`
      recipe: 1
      use: ./shelf.grow.yaml
      #    ^^^^^^^^^^^^^^^^^ value-invalid: a list belongs here
      targets: 5
      #        ^ value-invalid: a map belongs here
      tools:
        can: 12 L
        #    ^^^^ value-invalid: a tool is a map of keys
        jug: { holds: [3 L] }
        #             ^^^^^ value-invalid: a list stands here; a value, as in \`12 L\`, belongs here
      waters:
    `);
  });

  test('keys without a value', () => {
    check(withSound`
      recipe: 1
      title:
      #<---- value-invalid: nothing is written here
      targets:
      waters:
        mains:
        pond: { pH: }
        #       ^^ value-invalid: nothing is written here
    `);
  });

  test('a file that is one word, or a list', () => {
    checkFindings(recipe`
      hello
      #<---- yaml-invalid: a colon is missing after this key
    `);
    checkFindings(recipe`
      - mains
      #<------ value-invalid: a recipe is a map of keys
      - rain
    `);
  });

  test('an empty file, and one of comments alone, are left in peace', () => {
    checkFindings(markedRecipe(''));
    checkFindings(markedRecipe('# to be written\n\n'));
  });

  test('a version that is not known: one finding, and nothing of the file is taken for what it may not mean', () => {
    const marked = recipe`
      recipe: 2
      #       ^ version-unsupported: this Tidemark reads version 1
      basins: { one: 12 floz }
      batches:
        opening: { water: rain, vol: 20 L }
    `;
    checkFindings(marked);
    expect(marked.snapshot().plan.batches.size).toBe(0);
  });
});
