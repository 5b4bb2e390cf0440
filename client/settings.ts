// Answers the server's question for settings. It stands apart because one answer, `auto`, depends on which other
// extensions are enabled, which only the editor's side can see.
import * as vscode from 'vscode';
import type { ConfigurationParams, ConfigurationRequest } from 'vscode-languageclient';
import { readSettings, type Settings } from '../schema/settings.ts';

type Answer = ReturnType<ConfigurationRequest.HandlerSignature>;

/** The settings that hold outside any particular file. */
export function currentSettings(): object {
  // The editor gives objects that guard what is in them, which cannot be sent to a worker; as text and back they are plain.
  return JSON.parse(JSON.stringify(resolved(vscode.workspace.getConfiguration().get('tidemark'))));
}

/** Middleware for `workspace/configuration`: the editor's answers, with `auto` replaced by what it means here. */
export async function answerSettings(
  params: ConfigurationParams,
  token: vscode.CancellationToken,
  next: ConfigurationRequest.HandlerSignature,
): Promise<Awaited<Answer>> {
  const answers = await next(params, token);
  if (!Array.isArray(answers)) return answers;
  return answers.map((answer, index) => (params.items[index]?.section === 'tidemark' ? resolved(answer) : answer));
}

function resolved(sent: unknown): object {
  const own = typeof sent === 'object' && sent !== null ? sent : {};
  return { ...own, yamlIntegration: resolveIntegration(readSettings(sent).yamlIntegration) };
}

function resolveIntegration(wish: Settings['yamlIntegration']): Settings['yamlIntegration'] {
  if (wish !== 'auto') return wish;
  return vscode.extensions.all.some(checksAllYaml) ? 'semanticOnly' : 'full';
}

/** A generic YAML extension is known by its settings: it lets the reader map schemas to YAML files. */
function checksAllYaml(extension: vscode.Extension<unknown>): boolean {
  const manifest: { contributes?: { configuration?: unknown } } = extension.packageJSON;
  const contributed = manifest.contributes?.configuration;
  const groups: readonly unknown[] = Array.isArray(contributed) ? contributed : [contributed];
  return groups.some(group => {
    if (typeof group !== 'object' || group === null || !('properties' in group)) return false;
    return typeof group.properties === 'object' && group.properties !== null && 'yaml.schemas' in group.properties;
  });
}
