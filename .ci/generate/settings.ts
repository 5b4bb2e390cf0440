// The settings in package.json, made from schema/settings.ts. It stands apart because the manifest is the one generated
// file in which everything else is written by hand.
import { settings } from '../../schema/settings.ts';

/** The text of package.json with its contributed settings replaced; every other key keeps its place. */
export function withSettings(manifestText: string): string {
  const manifest = JSON.parse(manifestText);
  manifest.contributes = { ...manifest.contributes, configuration: contributedSettings() };
  return `${JSON.stringify(manifest, null, 2)}\n`;
}

/** What the manifest says under `contributes.configuration`. */
export function contributedSettings(): object {
  const rows = Object.entries(settings).map(([key, row], order) => [
    `tidemark.${key}`,
    {
      order,
      scope: row.effect === 'log' ? 'window' : 'resource',
      ...('choices' in row
        ? { type: 'string', enum: Object.keys(row.choices), enumDescriptions: Object.values(row.choices) }
        : { type: 'boolean' }),
      default: row.default,
      markdownDescription: row.words,
    },
  ]);
  return { title: 'Tidemark', properties: Object.fromEntries(rows) };
}
